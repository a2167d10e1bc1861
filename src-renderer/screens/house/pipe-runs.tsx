import { Button, NativeSelect } from '@mantine/core'
import type { PipeLeg, RunEnd } from '../../../src-main/domain/house-pipes.ts'
import { DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob, useProblemsAt } from '../../draft/use-draft.ts'
import { Row } from '../../parts/card.tsx'
import { idOf } from './circuits.ts'
import type { Circuit } from './circuits.ts'
import styles from './house.module.css'
import { words as all } from './house.words.ts'
import { LockshieldTable } from './lockshield-table.tsx'

const words = all.runs

/** The pipes of the house, run by run: from where, to where, how long, how wide. Closed until there is one. */
export function PipeRuns({ circuits }: { readonly circuits: readonly Circuit[] }) {
  const { job, change } = useOpenJob()
  const legs = job.house?.legs ?? []
  const add = () => change({ kind: 'add', path: 'house.legs', value: newLeg(legs) })
  return (
    <section aria-label={words.title}>
      <h3 className={styles.runsTitle}>{words.title}</h3>
      <p className={styles.soft}>{words.says}</p>
      {legs.length === 0 ? null : (
        <div className={styles.scroll}>
          <table className={styles.runs} aria-label={words.title}>
            <thead>
              <tr>
                <th scope="col">{words.columns.name}</th>
                <th scope="col">{words.columns.from}</th>
                <th scope="col">{words.columns.to}</th>
                <th scope="col">{words.columns.length}</th>
                <th scope="col">{words.columns.inside}</th>
                <th scope="col">{words.columns.zeta}</th>
                <th scope="col">
                  <span className={styles.unseen}>{words.columns.remove}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {legs.map((leg, at) => (
                <RunLine key={leg.legId} at={at} legs={legs} circuits={circuits} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Row>
        <Button variant="default" onClick={add}>
          {words.add}
        </Button>
      </Row>
      {legs.length === 0 ? null : <LockshieldTable />}
    </section>
  )
}

/** A run not measured yet, from the boiler, in 15 mm copper (EN 1057: 13.6 mm inside). */
export function newLeg(legs: readonly PipeLeg[]): PipeLeg {
  const taken = new Set(legs.map(({ legId }) => legId))
  let nth = legs.length + 1
  while (taken.has(`run-${nth}`)) nth += 1
  return { legId: `run-${nth}`, name: words.newName(nth), from: null, insideMm: 13.6 }
}

type Line = { readonly at: number; readonly legs: readonly PipeLeg[]; readonly circuits: readonly Circuit[] }

function RunLine({ at, legs, circuits }: Line) {
  const { change } = useOpenJob()
  const leg = legs[at]
  if (leg === undefined) return null
  const path = `house.legs[${at}]`
  const of = (what: string) => words.of(what, leg.name === '' ? words.newName(at + 1) : leg.name)
  const remove = () => change({ kind: 'alter', alter: (job) => withoutLeg(job, leg.legId) })
  return (
    <tr>
      <td className={styles.wideBox}>
        <DraftText path={`${path}.name`} label={of(words.columns.name)} bare />
      </td>
      <td className={styles.wideBox}>
        <FromChoice path={path} leg={leg} legs={legs} label={of(words.columns.from)} />
      </td>
      <td className={styles.wideBox}>
        <ToChoice path={path} leg={leg} circuits={circuits} label={of(words.columns.to)} />
      </td>
      <td className={styles.narrowBox}>
        <DraftNumber path={`${path}.lengthM`} label={of(words.columns.length)} bare />
      </td>
      <td className={styles.narrowBox}>
        <DraftNumber path={`${path}.insideMm`} label={of(words.columns.inside)} bare />
      </td>
      <td className={styles.narrowBox}>
        <DraftNumber path={`${path}.zeta`} label={of(words.columns.zeta)} bare />
      </td>
      <td>
        <Button variant="subtle" color="gray" aria-label={of(words.remove)} onClick={remove}>
          {words.remove}
        </Button>
      </td>
    </tr>
  )
}

type Job = ReturnType<typeof useOpenJob>['job']

/** What the removed run fed hangs on whatever fed it. */
export function withoutLeg(job: Job, legId: string): Job {
  const { house } = job
  const gone = house?.legs.find((leg) => leg.legId === legId)
  if (house === undefined || gone === undefined) return job
  const legs = house.legs
    .filter((leg) => leg !== gone)
    .map((leg) => (leg.from === legId ? { ...leg, from: gone.from } : leg))
  return { ...job, house: { ...house, legs } }
}

type Choice = { readonly path: string; readonly leg: PipeLeg; readonly label: string }

function FromChoice({ path, leg, legs, label }: Choice & { readonly legs: readonly PipeLeg[] }) {
  const { change } = useOpenJob()
  const error = useProblemsAt(`${path}.from`)
  return (
    <NativeSelect
      id={`${path}.from`}
      aria-label={label}
      error={error}
      value={leg.from ?? ''}
      data={[
        { value: '', label: words.boiler },
        ...legs
          .filter(({ legId }) => legId !== leg.legId)
          .map(({ legId, name }) => ({ value: legId, label: words.endOf(name) })),
      ]}
      onChange={({ currentTarget: { value } }) => {
        change({ kind: 'set', path: `${path}.from`, value: value === '' ? null : value })
        change({ kind: 'settle' })
      }}
    />
  )
}

function ToChoice({ path, leg, circuits, label }: Choice & { readonly circuits: readonly Circuit[] }) {
  const { change } = useOpenJob()
  const error = useProblemsAt(`${path}.to`)
  const now = leg.to === undefined ? '' : idOf(leg.to)
  const known = now === '' || circuits.some(({ id }) => id === now)
  const set = (id: string) => {
    const end: RunEnd | undefined = circuits.find((one) => one.id === id)?.end
    change({ kind: 'set', path: `${path}.to`, value: end })
    change({ kind: 'settle' })
  }
  return (
    <NativeSelect
      id={`${path}.to`}
      aria-label={label}
      error={error}
      value={now}
      data={[
        { value: '', label: words.branch },
        ...(known ? [] : [{ value: now, label: words.gone }]),
        ...circuits.map(({ id, roomName, name }) => ({
          value: id,
          label: all.balance.emitterIn(roomName, name),
        })),
      ]}
      onChange={({ currentTarget }) => set(currentTarget.value)}
    />
  )
}
