import { Card } from '../../parts/card.tsx'
import { hoursAndMinutes } from '../../parts/figures-in-words.ts'
import styles from './after.module.css'
import { words } from './after.words.ts'
import { NumberBox } from './boxes.tsx'
import type { Notes, Planned } from './use-after.ts'

type Task = Planned['tasks'][number]

/** Task by task: what was reckoned, and what it took. */
export function HoursCard({ notes }: { readonly notes: Notes }) {
  const { planned, after, change, shut } = notes
  const set = ({ taskId, name, count }: Task, minutes: number | undefined) => {
    const others = after.tasks.filter((one) => one.taskId !== taskId)
    change({ tasks: minutes === undefined ? others : [...others, { taskId, name, count, minutes }] })
  }
  return (
    <Card title={words.hours.title} says={words.hours.says}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{words.hours.task}</th>
            <th scope="col">{words.hours.reckoned}</th>
            <th scope="col">{words.hours.real}</th>
          </tr>
        </thead>
        <tbody>
          {planned.tasks
            .filter(({ count }) => count > 0)
            .map((task) => (
              <tr key={task.taskId}>
                <th scope="row">{task.name}</th>
                <td>{hoursAndMinutes(task.expectedMin)}</td>
                <td>
                  <NumberBox
                    bare
                    className={styles.box}
                    label={words.hours.minutes(task.name)}
                    shut={shut}
                    value={after.tasks.find((one) => one.taskId === task.taskId)?.minutes}
                    set={(minutes) => set(task, minutes)}
                  />
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </Card>
  )
}
