import { Button } from '@mantine/core'
import type { ActualPart } from '../../../src-main/domain/follow-up/after-job.ts'
import { Card } from '../../parts/card.tsx'
import { howMuchOf } from '../../parts/figures-in-words.ts'
import styles from './after.module.css'
import { words } from './after.words.ts'
import { NumberBox } from './boxes.tsx'
import type { Notes } from './use-after.ts'

const exact = (quantity: number) => Math.round(quantity * 1e6) / 1e6
const leftOf = ({ planned, used }: ActualPart) => Math.max(0, exact(planned - used))

/** What was bought, what was used of it and what goes back. Nothing is noted until something is changed. */
export function PartsCard({ notes }: { readonly notes: Notes }) {
  const { planned, after, change, shut } = notes
  const rows =
    after.parts.length > 0 ? after.parts : planned.parts.map((part) => ({ ...part, used: exact(part.used) }))
  const set = (at: number, part: ActualPart) =>
    change({ parts: rows.map((row, index) => (index === at ? part : row)) })
  const all = () =>
    change({
      parts: rows.map((row) => (row.itemId === undefined ? row : { ...row, backToVan: leftOf(row) })),
    })
  return (
    <Card title={words.parts.title} says={words.parts.says}>
      <div className={styles.scroll} tabIndex={0} role="region" aria-label={words.parts.table}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{words.parts.part}</th>
              <th scope="col">{words.parts.had}</th>
              <th scope="col">{words.parts.used}</th>
              <th scope="col">{words.parts.left}</th>
              <th scope="col">{words.parts.back}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, at) => (
              <PartRow
                key={`${row.itemId ?? row.name}${at}`}
                part={row}
                shut={shut}
                set={(part) => set(at, part)}
              />
            ))}
          </tbody>
        </table>
      </div>
      {shut ? null : (
        <Button mt="md" variant="default" onClick={all}>
          {words.parts.all}
        </Button>
      )}
    </Card>
  )
}

type Row = { readonly part: ActualPart; readonly shut: boolean; readonly set: (part: ActualPart) => void }

function PartRow({ part, shut, set }: Row) {
  const { name, unit, planned, used, backToVan } = part
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{howMuchOf(planned, unit)}</td>
      <td>
        <NumberBox
          bare
          className={styles.box}
          label={words.parts.usedOf(name)}
          shut={shut}
          empty={0}
          value={used}
          set={(is) => set({ ...part, used: is ?? 0 })}
        />
      </td>
      <td>{howMuchOf(leftOf(part), unit)}</td>
      <td>
        {part.itemId === undefined ? (
          <span className={styles.soft}>{words.parts.notKept}</span>
        ) : (
          <NumberBox
            bare
            className={styles.box}
            label={words.parts.backOf(name)}
            shut={shut}
            empty={0}
            blank
            value={backToVan ?? 0}
            set={(is) => set({ ...part, backToVan: is ?? 0 })}
          />
        )}
      </td>
    </tr>
  )
}
