import type { LabourAnswer } from '../../../src-main/domain/labour.ts'
import { Card } from '../../parts/card.tsx'
import { hoursAndMinutes, plain } from '../../parts/figures-in-words.ts'
import { useWhy, Why, WhyButton, WhyTree } from '../../parts/why.tsx'
import styles from './price.module.css'

type Task = LabourAnswer['tasks'][number]

/** How long the work takes: expected, and the time that four jobs in five stay under. */
export function LabourCard({ labour }: { readonly labour: LabourAnswer }) {
  return (
    <Card title="Time on site">
      <div className={styles.times}>
        <p>
          Expected <span className={styles.big}>{hoursAndMinutes(labour.expectedMin)}</span>
        </p>
        <p>
          Four jobs in five take less than{' '}
          <span className={styles.big}>{hoursAndMinutes(labour.p80Min)}</span>
        </p>
        <div>
          <Why of="the time on site" why={labour.why} />
        </div>
      </div>
      <table className={styles.table} aria-label="Time, task by task">
        <thead>
          <tr>
            <th scope="col">Task</th>
            <th scope="col" className={styles.number}>
              How often
            </th>
            <th scope="col" className={styles.number}>
              Expected
            </th>
            <td />
          </tr>
        </thead>
        <tbody>
          {labour.tasks.map((task, at) => (
            <TaskRows key={at} task={task} />
          ))}
        </tbody>
      </table>
    </Card>
  )
}

function TaskRows({ task }: { readonly task: Task }) {
  const why = useWhy(task.name)
  return (
    <>
      <tr>
        <th scope="row">{task.name}</th>
        <td className={styles.number}>{plain(task.count)}</td>
        <td className={styles.number}>{hoursAndMinutes(task.expectedMin)}</td>
        <td className={styles.why}>
          <WhyButton {...why} />
        </td>
      </tr>
      {why.open ? (
        <tr>
          <td colSpan={4} id={why.regionId} className={styles.reasons}>
            <WhyTree why={task.why} />
          </td>
        </tr>
      ) : null}
    </>
  )
}
