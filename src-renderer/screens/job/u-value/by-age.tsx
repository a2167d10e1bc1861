import { NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import { ageBand as ageBandShape, uValueElement } from '../../../../src-main/contract/heating/house.ts'
import { ageBandUValue } from '../../../../src-main/engine/heat/age-band-u-value.ts'
import { FieldGrid } from '../../../parts/card.tsx'
import type { Choice } from '../../../parts/words.ts'
import { NumberBox } from '../quick/number-box.tsx'
import { bandChoices, constructionChoices } from '../quick/table-choices.ts'
import type { TakeFound } from './found-u.ts'
import { words } from './u-value.words.ts'

const elements: readonly Choice[] = Object.entries(words.age.elements).map(([value, label]) => ({
  value,
  label,
}))

type Answers = {
  readonly element: string
  readonly construction: string
  readonly ageBand: string
  readonly insulationMm: unknown
}

/** A U-value as the published tables have it. */
export function ByAge({
  tables,
  found,
}: {
  readonly tables: AnswerOf<'heat.tables'>
  readonly found: TakeFound
}) {
  const [answers, setAnswers] = useState<Answers>({
    element: 'wall',
    construction: '',
    ageBand: '',
    insulationMm: undefined,
  })
  const answer = (part: Partial<Answers>) => {
    const next = { ...answers, ...part }
    setAnswers(next)
    found(read(next, tables))
  }
  const choose = (label: string, field: 'construction' | 'ageBand', choices: readonly Choice[]) => (
    <NativeSelect
      label={label}
      value={answers[field]}
      data={[
        { value: '', label: words.age.choose },
        ...choices.map(({ value, label: says }) => ({ value: String(value), label: says })),
      ]}
      onChange={({ currentTarget }) => answer({ [field]: currentTarget.value })}
    />
  )
  const element = uValueElement.parse(answers.element)
  return (
    <FieldGrid>
      <NativeSelect
        label={words.age.what}
        value={answers.element}
        data={elements.map(({ value, label }) => ({ value: String(value), label }))}
        onChange={({ currentTarget }) => answer({ element: currentTarget.value, construction: '' })}
      />
      {choose(words.age.built, 'construction', constructionChoices(tables, element, undefined))}
      {choose(words.age.ageBand, 'ageBand', bandChoices(tables, undefined))}
      {element === 'roof' ? (
        <NumberBox
          id="loft-insulation"
          label={words.age.loft}
          hint={words.age.loftHint}
          value={answers.insulationMm}
          set={(insulationMm) => answer({ insulationMm })}
        />
      ) : null}
    </FieldGrid>
  )
}

function read({ element, construction, ageBand, insulationMm }: Answers, tables: AnswerOf<'heat.tables'>) {
  if (construction === '') return null
  const kind = uValueElement.parse(element)
  const band = ageBandShape.safeParse(ageBand)
  const thick = kind === 'roof' && typeof insulationMm === 'number' ? { insulationMm } : {}
  return ageBandUValue(
    { element: kind, construction, ...thick, ...(band.success ? { ageBand: band.data } : {}) },
    tables,
  )
}
