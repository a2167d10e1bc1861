import type { Order, OrderLine } from '../../../../src-main/domain/follow-up/order.ts'
import { dayInWords, money, plain } from '../../../parts/figures-in-words.ts'
import { Verdict } from '../../../parts/notice.tsx'
import { amount } from '../amount.ts'
import styles from '../van.module.css'
import { words } from './orders.words.ts'

/** So many packs, and what each holds where that is not one. */
function packsInWords({ unit, packHolds }: OrderLine, packs: number): string {
  if (unit === 'each' && packHolds === 1) return plain(packs)
  return words.order.packOf(plain(packs), amount(packHolds, unit))
}

/** What was ordered, what of it has come, and what is still to come. */
export function OrderLines({ order }: { readonly order: Order }) {
  const { columns } = words.order
  const name = words.order.lines(order.orderId)
  return (
    <div className={styles.scroll} tabIndex={0} role="group" aria-label={name}>
      <table className={styles.table} aria-label={name}>
        <thead>
          <tr>
            <th scope="col">{columns.code}</th>
            <th scope="col">{columns.what}</th>
            {[columns.ordered, columns.came, columns.open].map((column) => (
              <th key={column} scope="col" className={styles.right}>
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {order.lines.map((line) => (
            <LineRow key={line.lineNo} line={line} cancelled={order.state === 'cancelled'} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function LineRow({ line, cancelled }: { readonly line: OrderLine; readonly cancelled: boolean }) {
  const { code, name, packs, linePence, deliveredPacks, backOrderedPacks } = line
  const open = cancelled ? 0 : packs - deliveredPacks
  return (
    <tr>
      <td className={styles.nowrap}>{code}</td>
      <th scope="row">
        {name}
        <span className={styles.below}>{words.order.sum(money(linePence))}</span>
      </th>
      <td className={styles.right}>{packsInWords(line, packs)}</td>
      <td className={styles.right}>{plain(deliveredPacks)}</td>
      <td className={styles.right}>
        {plain(open)}
        {backOrderedPacks === 0 || cancelled ? null : (
          <span className={styles.below}>
            <Verdict tone="warn">{words.order.backOrder}</Verdict>
          </span>
        )}
      </td>
    </tr>
  )
}

export function Deliveries({ order }: { readonly order: Order }) {
  const { deliveries, lines } = order
  if (deliveries.length === 0) return null
  return (
    <div>
      <h3>{words.order.deliveries}</h3>
      <ul className={styles.plain2}>
        {deliveries.map(({ lineNo, packs, onDay, says = '', toVan = 0 }, at) => {
          const line = lines.find((one) => one.lineNo === lineNo)
          const more = [
            ...(toVan > 0 && line !== undefined ? [words.order.toVan(amount(toVan, line.unit))] : []),
            ...(says === '' ? [] : [says]),
          ]
          return (
            <li key={at}>
              {words.order.delivered(dayInWords(onDay), plain(packs), line?.name ?? '')}
              {more.length === 0 ? null : <span className={styles.soft}>{` (${more.join('; ')})`}</span>}
            </li>
          )
        })}
      </ul>
    </div>
  )
}
