import { memo, useMemo } from 'react'
import type { Job } from '../../../src-main/domain/job.ts'
import type { JobLabour, JobTask, LabourAnswer, Modifier } from '../../../src-main/domain/labour.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { useWhyPlaces } from '../../draft/use-why-places.ts'
import { Card } from '../../parts/card.tsx'
import { hoursAndMinutes, plain } from '../../parts/figures-in-words.ts'
import { ProblemList, Verdict } from '../../parts/notice.tsx'
import { useWhy, Why, WhyButton, WhyTree } from '../../parts/why.tsx'
import styles from './price.module.css'
import { words as all } from './price.words.ts'

const words = all.labour

type Labour = { readonly labour: LabourAnswer; readonly settled: Job }

/** How long the work takes: who comes, how many days, and each task; asked anew only when the work changes. */
export const LabourCard = memo(function LabourCard({ labour, settled }: Labour) {
  const job = useMemo(() => workOf(settled), [settled])
  const asked = useAsk('labour.job', { job }, { keepOld: true })
  const problems = problemsOf(asked.error)
  return (
    <div className={styles.offstage}>
      <Card title={words.title}>
        {problems.length > 0 ? <ProblemList title={words.refused} problems={problems} /> : null}
        {asked.data === undefined ? <BriefTimes labour={labour} /> : <FullLabour labour={asked.data} />}
      </Card>
    </div>
  )
})

/** The job without its prices, which no labour hangs on. */
function workOf(job: Job): Job {
  const { options: _o, pricing: _p, overrides: _c, waivers: _w, fills: _f, ...work } = job
  return work
}

function BriefTimes({ labour }: { readonly labour: LabourAnswer }) {
  return (
    <p>
      {words.brief} <span className={styles.big}>{hoursAndMinutes(labour.expectedMin)}</span>
    </p>
  )
}

const FullLabour = memo(function FullLabour({ labour }: { readonly labour: JobLabour }) {
  const { tasks, modifiers } = labour
  const groups = [
    ...tasks.rooms.map(({ name, expectedMin, tasks: own }) => ({ name, expectedMin, own })),
    {
      name: words.once,
      expectedMin: tasks.shared.reduce((sum, task) => sum + task.expectedMin, 0),
      own: tasks.shared,
    },
  ]
  return (
    <>
      <Times labour={labour} />
      <Crew labour={labour} />
      {groups
        .filter(({ own }) => own.length > 0)
        .map(({ name, expectedMin, own }) => (
          <div key={name} className={styles.taskGroup}>
            <h3>{words.group(name, hoursAndMinutes(expectedMin))}</h3>
            <TaskTable name={name} tasks={own} />
          </div>
        ))}
      <h3>{words.longer}</h3>
      <ul className={styles.bullets}>
        {modifiers.map((one) => (
          <li key={`${one.name} ${one.reason} ${one.factor}`}>
            <ModifierWords one={one} />
          </li>
        ))}
      </ul>
    </>
  )
})

function Times({ labour }: { readonly labour: JobLabour }) {
  const { expectedMin, sdMin, p50Min, p80Min, days } = labour
  return (
    <dl className={styles.times}>
      <Time
        label={words.expected}
        value={words.giveOrTake(hoursAndMinutes(expectedMin), hoursAndMinutes(sdMin))}
      />
      <Time label={words.even} value={hoursAndMinutes(p50Min)} />
      <Time label={words.fourInFive} value={hoursAndMinutes(p80Min)} />
      <Time
        label={words.days}
        value={
          days.p50Days === days.p80Days ? plain(days.p80Days) : words.daysFromTo(days.p50Days, days.p80Days)
        }
      />
    </dl>
  )
}

function Time({ label, value }: { readonly label: string; readonly value: string }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd className={styles.big}>{value}</dd>
    </div>
  )
}

function Crew({ labour: { crew, why } }: { readonly labour: JobLabour }) {
  const heavy = crew.lifts.filter(({ people, needsAid }) => people > 1 || needsAid)
  return (
    <>
      <div>
        {words.crew} <strong>{words.people(crew.people)}</strong>
        {crew.people > 1
          ? words.together(hoursAndMinutes(crew.togetherMin), hoursAndMinutes(crew.aloneMin))
          : ''}
        . <Why of={words.why} why={why} />
      </div>
      <ul className={styles.bullets}>
        {heavy.map((lift) => (
          <li key={`${lift.swapId} ${lift.how}`}>
            {words.lift(lift.name, words.lifts[lift.how], { kg: plain(lift.massKg), people: lift.people })}
          </li>
        ))}
        {crew.notWeighed.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      {crew.aid === undefined ? null : <Verdict tone="warn">{crew.aid}</Verdict>}
    </>
  )
}

function TaskTable({ name, tasks }: { readonly name: string; readonly tasks: readonly JobTask[] }) {
  return (
    <table className={styles.table} aria-label={words.table(name)}>
      <thead>
        <tr>
          <th scope="col">{words.columns.task}</th>
          <th scope="col" className={styles.number}>
            {words.columns.howOften}
          </th>
          <th scope="col" className={styles.number}>
            {words.columns.expected}
          </th>
          <td />
        </tr>
      </thead>
      <tbody>
        {tasks.map((task) => (
          <TaskRows key={task.taskId} task={task} />
        ))}
      </tbody>
    </table>
  )
}

function TaskRows({ task }: { readonly task: JobTask }) {
  const why = useWhy(task.name)
  return (
    <>
      <tr>
        <th scope="row">
          {task.name}
          {task.modifiers.map((one) => (
            <span key={`${one.name} ${one.reason} ${one.factor}`} className={styles.changed}>
              <ModifierWords one={one} />
            </span>
          ))}
        </th>
        <td className={styles.number}>{plain(task.howMany)}</td>
        <td className={styles.number}>{hoursAndMinutes(task.expectedMin)}</td>
        <td className={styles.why}>
          <WhyButton {...why} />
        </td>
      </tr>
      {why.open ? (
        <tr>
          <td colSpan={4} id={why.regionId} className={styles.reasons}>
            <TaskWhy task={task} />
          </td>
        </tr>
      ) : null}
    </>
  )
}

function TaskWhy({ task }: { readonly task: JobTask }) {
  const leads = useWhyPlaces([])
  return <WhyTree why={task.why} leads={leads} />
}

function ModifierWords({ one: { name, how, factor, reason } }: { readonly one: Modifier }) {
  return how === 'adds' ? words.added(name, reason) : words.times(name, plain(factor), reason)
}
