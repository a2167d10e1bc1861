import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { Card, Row, Stack } from '../../parts/card.tsx'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { FigureRow } from './figure-row.tsx'
import { figureGroups } from './figure-groups.ts'
import type { GroupId, OwnFigure } from './figure-groups.ts'
import styles from './firm.module.css'
import { words } from './firm.words.ts'
import { changedFigures, useFigures } from './use-figures.ts'
import type { TypedFigures } from './use-figures.ts'

/** The firm's own figures, group by group, each with what stands when it has none. */
export function FiguresCard() {
  const { asked, save } = useFigures()
  return (
    <Card title={words.figures.title} says={words.figures.says}>
      {asked.isPending ? <Waiting what={words.figures.looking} /> : null}
      {asked.error === null ? null : (
        <ProblemList title={words.figures.cannotShow} problems={problemsOf(asked.error)} />
      )}
      {asked.data === undefined ? null : <Figures figures={asked.data.figures} save={save} />}
    </Card>
  )
}

type Save = ReturnType<typeof useFigures>['save']

function Figures({ figures, save }: { readonly figures: readonly OwnFigure[]; readonly save: Save }) {
  const [text, setText] = useState('')
  const [typed, setTyped] = useState<TypedFigures>({})
  const changed = changedFigures(figures, typed)
  const count = Object.keys(changed).length
  const problems = problemsOf(save.error)
  const set = (id: string, value: string) => {
    if (!save.isIdle) save.reset()
    setTyped({ ...typed, [id]: value })
  }
  const forget = (id: string) =>
    setTyped(Object.fromEntries(Object.entries(typed).filter(([known]) => known !== id)))
  const groups = figureGroups(figures, text)
  return (
    <Stack>
      <TextInput
        type="search"
        label={words.figures.find}
        value={text}
        onChange={({ currentTarget }) => setText(currentTarget.value)}
      />
      {problems.length === 0 ? null : (
        <ProblemList
          title={words.notSaved}
          problems={problems}
          goTo={(path) => document.getElementById(path)?.focus()}
        />
      )}
      {groups.length === 0 ? <p role="status">{words.figures.none}</p> : null}
      {groups.map((group) => (
        <FigureGroup
          key={`${group.group} ${text !== ''}`}
          {...group}
          open={text !== ''}
          typed={typed}
          problems={problems}
          set={set}
          reset={(id) => save.mutate({ [id]: null }, { onSuccess: () => forget(id) })}
        />
      ))}
      <SaveLine
        count={count}
        save={save}
        onSave={() => save.mutate(changed, { onSuccess: () => setTyped({}) })}
      />
    </Stack>
  )
}

type GroupProps = {
  readonly group: GroupId
  readonly figures: readonly OwnFigure[]
  readonly open: boolean
  readonly typed: TypedFigures
  readonly problems: ReturnType<typeof problemsOf>
  readonly set: (id: string, value: string) => void
  readonly reset: (id: string) => void
}

function FigureGroup({ group, figures, open, typed, problems, set, reset }: GroupProps) {
  const own = figures.filter((figure) => figure.own !== null).length
  const wrong = figures.some(({ id }) => problems.some(({ path }) => path === `figures.${id}`))
  const says = own === 0 ? words.figures.count(figures.length) : words.figures.own(own)
  return (
    <details className={styles.group} {...(open || wrong || group === 'money' ? { open: true } : {})}>
      <summary className={styles.summary}>
        {words.groups[group]} <span className={styles.under}>({says})</span>
      </summary>
      {group === 'tax' ? <p className={styles.taxNote}>{words.tax}</p> : null}
      <ul className={styles.figures}>
        {figures.map((figure) => (
          <FigureRow
            key={figure.id}
            figure={figure}
            typed={typed[figure.id]}
            error={problems.find(({ path }) => path === `figures.${figure.id}`)?.message}
            set={(value) => set(figure.id, value)}
            reset={() => reset(figure.id)}
          />
        ))}
      </ul>
    </details>
  )
}

type SaveProps = { readonly count: number; readonly save: Save; readonly onSave: () => void }

function SaveLine({ count, save, onSave }: SaveProps) {
  return (
    <div className={styles.saveLine}>
      <Row>
        <Button loading={save.isPending} disabled={count === 0} onClick={onSave}>
          {count === 0 ? words.figures.nothingToSave : words.figures.save(count)}
        </Button>
        <span role="status">{save.isSuccess && count === 0 ? words.figures.saved : ''}</span>
      </Row>
    </div>
  )
}
