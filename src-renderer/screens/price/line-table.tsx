import type { QuoteLine } from '../../../src-main/domain/quote.ts'
import { Card } from '../../parts/card.tsx'
import { hoursAndMinutes, money, plain } from '../../parts/figures-in-words.ts'
import { GenericMark } from '../../parts/notice.tsx'
import { useWhy, WhyButton, WhyTree } from '../../parts/why.tsx'
import type { LineGroup } from './group-lines.ts'
import styles from './price.module.css'

/** The lines of one room, or of the whole job. */
export function LineTable({ group }: { readonly group: LineGroup }) {
  return (
    <Card title={group.title} aside={<strong>{money(group.netPence)} before VAT</strong>}>
      <table className={styles.table} aria-label={`Lines: ${group.title}`}>
        <thead>
          <tr>
            <th scope="col">Part or work</th>
            <th scope="col" className={styles.number}>
              How much
            </th>
            <th scope="col" className={styles.number}>
              Price
            </th>
            <td />
          </tr>
        </thead>
        <tbody>
          {group.lines.map((line) => (
            <LineRows key={line.lineId} line={line} />
          ))}
        </tbody>
      </table>
    </Card>
  )
}

function LineRows({ line }: { readonly line: QuoteLine }) {
  const why = useWhy(line.name)
  return (
    <>
      <tr data-line={line.lineId}>
        <th scope="row" className={line.section === 'emitter' ? styles.emitterName : undefined}>
          {line.name} {line.generic ? <GenericMark /> : null}
        </th>
        <td className={styles.number}>{howMuch(line)}</td>
        <td className={styles.number}>{money(line.netPence)}</td>
        <td className={styles.why}>
          <WhyButton {...why} />
        </td>
      </tr>
      {why.open ? (
        <tr>
          <td colSpan={4} id={why.regionId} className={styles.reasons}>
            <WhyTree why={line.why} />
          </td>
        </tr>
      ) : null}
    </>
  )
}

function howMuch({ quantity, unit }: QuoteLine): string {
  if (unit === 'each') return plain(quantity)
  if (unit === 'sum') return ''
  if (unit === 'min') return hoursAndMinutes(quantity)
  if (unit === 'm2') return `${plain(quantity)} m²`
  return `${plain(quantity)} ${unit === 'L' ? 'litres' : unit}`
}
