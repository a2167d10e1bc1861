import styles from './after.module.css'
import { words } from './after.words.ts'
import { NumberBox } from './boxes.tsx'
import type { RecordPart } from './record-card.tsx'

const own = words.record
const columns = [
  { field: 'flowC', label: own.flow },
  { field: 'returnC', label: own.back },
  { field: 'turnsOpen', label: own.turns },
] as const

/** One line an emitter: how warm the water came and went, and where its lockshield was left. */
export function BalancingTable({ record, set, shut }: RecordPart) {
  const put = (swapId: string, field: (typeof columns)[number]['field'], value: number | undefined) =>
    set({
      balancing: record.balancing.map((row) => {
        if (row.swapId !== swapId) return row
        const { [field]: _was, ...rest } = row
        return value === undefined ? rest : { ...rest, [field]: value }
      }),
    })
  return (
    <div className={styles.scroll} tabIndex={0} role="region" aria-label={own.balancing}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{own.balancing}</th>
            {columns.map(({ field, label }) => (
              <th key={field} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {record.balancing.map((row) => (
            <tr key={row.swapId}>
              <th scope="row">{row.roomName}</th>
              {columns.map(({ field, label }) => (
                <td key={field}>
                  <NumberBox
                    bare
                    className={styles.box}
                    label={own.of(label, row.roomName)}
                    shut={shut}
                    value={row[field]}
                    set={(value) => put(row.swapId, field, value)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
