import { NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { groundFloorUValue } from '../../../../src-main/engine/heat/ground/ground-floor.ts'
import { FieldGrid } from '../../../parts/card.tsx'
import { NumberBox } from '../quick/number-box.tsx'
import type { TakeFound } from './found-u.ts'
import { words } from './u-value.words.ts'

type Answers = {
  readonly kind: 'slab' | 'suspended'
  readonly areaM2: unknown
  readonly perimeterM: unknown
  readonly insulationM2KPerW: unknown
  readonly wallMm: unknown
}

/** The U-value of a floor on the ground, from its area and its outside edge. */
export function ByGround({ areaM2, found }: { readonly areaM2: number; readonly found: TakeFound }) {
  const [answers, setAnswers] = useState<Answers>({
    kind: 'slab',
    areaM2,
    perimeterM: undefined,
    insulationM2KPerW: undefined,
    wallMm: undefined,
  })
  const answer = (part: Partial<Answers>) => {
    const next = { ...answers, ...part }
    setAnswers(next)
    found(read(next))
  }
  const box = (field: Exclude<keyof Answers, 'kind'>, label: string, hint?: string) => (
    <NumberBox
      id={`ground-${field}`}
      label={label}
      hint={hint}
      value={answers[field]}
      set={(value) => answer({ [field]: value })}
    />
  )
  return (
    <FieldGrid>
      <NativeSelect
        label={words.ground.floor}
        value={answers.kind}
        data={[
          { value: 'slab', label: words.ground.kinds.slab },
          { value: 'suspended', label: words.ground.kinds.suspended },
        ]}
        onChange={({ currentTarget }) =>
          answer({ kind: currentTarget.value === 'slab' ? 'slab' : 'suspended' })
        }
      />
      {box('areaM2', words.ground.area)}
      {box('perimeterM', words.ground.edge)}
      {box('insulationM2KPerW', words.ground.insulation, words.ground.insulationHint)}
      {box('wallMm', words.ground.wall, words.ground.wallHint)}
    </FieldGrid>
  )
}

function read({ kind, areaM2, perimeterM, insulationM2KPerW, wallMm }: Answers) {
  if (typeof areaM2 !== 'number' || typeof perimeterM !== 'number') return null
  return groundFloorUValue({
    kind,
    areaM2,
    perimeterM,
    ...(typeof insulationM2KPerW === 'number' ? { insulationM2KPerW } : {}),
    ...(typeof wallMm === 'number' ? { wallMm } : {}),
  })
}
