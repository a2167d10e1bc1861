import { Button, TextInput } from '@mantine/core'
import { useDocumentTitle } from '@mantine/hooks'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { useLocation } from 'wouter'
import type { Firm } from '../../../src-main/domain/firm.ts'
import { problemsOf } from '../../bridge/call.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { figureSaid, figureText } from './figure-text.ts'
import type { OwnFigure } from './figure-groups.ts'
import { FirmBox, UnitBoxes } from './firm-boxes.tsx'
import type { Boxes } from './firm-boxes.tsx'
import styles from './firm.module.css'
import { words } from './firm.words.ts'
import { LogoBox } from './logo-box.tsx'
import { WhatNext } from './what-next.tsx'
import { changedFigures, useFigures } from './use-figures.ts'
import type { TypedFigures } from './use-figures.ts'
import { textOf, useFirm } from './use-firm.ts'
import type { FirmText } from './use-firm.ts'

/** The figures that a first quote wants, each with its own plain label. */
const firstFigures = [
  ['money.labourPencePerHour', words.start.labour],
  ['money.markUpEmitterBasisPoints', words.start.markUpEmitters],
  ['money.markUpPartsBasisPoints', words.start.markUpParts],
  ['tax.standardBasisPoints', words.start.vat],
] as const

/** One short form before the first quote. It can be skipped, and come back to. */
export function StartScreen() {
  const firm = useFirm()
  const figures = useFigures()
  useDocumentTitle(words.start.documentTitle)
  const problems = problemsOf(firm.asked.error ?? figures.asked.error)
  if (problems.length > 0) return <ProblemList title={words.cannotShow} problems={problems} />
  if (firm.asked.data === undefined || figures.asked.data === undefined) {
    return <Waiting what={words.looking} />
  }
  return (
    <StartForm
      old={firm.asked.data.firm}
      known={figures.asked.data.figures}
      saveFirm={firm.save}
      saveFigures={figures.save}
    />
  )
}

type Form = {
  readonly old: Firm | null
  readonly known: readonly OwnFigure[]
  readonly saveFirm: ReturnType<typeof useFirm>['save']
  readonly saveFigures: ReturnType<typeof useFigures>['save']
}

function StartForm({ old, known, saveFirm, saveFigures }: Form) {
  const [text, setText] = useState(textOf(old))
  const [typed, setTyped] = useState<TypedFigures>({})
  const [done, setDone] = useState(false)
  const [, navigate] = useLocation()
  const problems = [...problemsOf(saveFirm.error), ...problemsOf(saveFigures.error)]
  const set = (changes: Partial<FirmText>) => setText({ ...text, ...changes })
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const changed = changedFigures(known, typed)
    try {
      await saveFirm.mutateAsync(text)
      if (Object.keys(changed).length > 0) await saveFigures.mutateAsync(changed)
      setDone(true)
    } catch {
      // What was refused is in the mutation's own error, which is shown.
      document.getElementById('main')?.focus()
    }
  }
  if (done) return <WhatNext />
  return (
    <form className={styles.page} onSubmit={(event) => void submit(event)} noValidate>
      <Stack>
        <div>
          <h1>{words.start.title}</h1>
          <p className={styles.under}>{words.start.says}</p>
        </div>
        {problems.length === 0 ? null : (
          <ProblemList
            title={words.start.notAll}
            problems={problems}
            goTo={(path) => document.getElementById(path)?.focus()}
          />
        )}
        <Who text={text} set={set} problems={problems} logoChanged={text.logo !== old?.logo} />
        <Charges known={known} typed={typed} problems={problems} set={setTyped} />
        <Card title={words.units.title}>
          <UnitBoxes text={text} set={set} />
        </Card>
        <Row>
          <Button type="submit" loading={saveFirm.isPending || saveFigures.isPending}>
            {words.start.save}
          </Button>
          <Button variant="default" onClick={() => navigate('/')}>
            {words.start.skip}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}

function Who({ logoChanged, ...boxes }: Boxes & { readonly logoChanged: boolean }) {
  return (
    <Card title={words.start.who}>
      <FieldGrid>
        <Wide>
          <FirmBox field="name" {...boxes} />
        </Wide>
        <FirmBox field="phone" {...boxes} />
        <FirmBox field="email" {...boxes} />
        <FirmBox field="taxNumber" {...boxes} />
        <Wide>
          <FirmBox field="address" {...boxes} tall />
        </Wide>
        <Wide>
          <LogoBox logo={boxes.text.logo} changed={logoChanged} set={(logo) => boxes.set({ logo })} />
        </Wide>
      </FieldGrid>
    </Card>
  )
}

type ChargesProps = {
  readonly known: readonly OwnFigure[]
  readonly typed: TypedFigures
  readonly problems: Boxes['problems']
  readonly set: (typed: TypedFigures) => void
}

function Charges({ known, typed, problems, set }: ChargesProps) {
  return (
    <Card title={words.start.prices}>
      <FieldGrid>
        {firstFigures.map(([id, label]) => {
          const figure = known.find((one) => one.id === id)
          if (figure === undefined) return null
          const { own, usual, unit, source } = figure
          return (
            <TextInput
              key={id}
              id={`figures.${id}`}
              label={label}
              description={words.start.usual(
                figureSaid(own ?? usual, unit),
                own === null ? source : words.figures.yours,
              )}
              error={problems.find(({ path }) => path === `figures.${id}`)?.message}
              inputMode="decimal"
              value={typed[id] ?? figureText(own ?? usual, unit)}
              onChange={({ currentTarget }) => set({ ...typed, [id]: currentTarget.value })}
            />
          )
        })}
        <Wide>
          <p>{words.tax}</p>
        </Wide>
      </FieldGrid>
    </Card>
  )
}
