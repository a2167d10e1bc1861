import { Link } from 'wouter'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import type { VanMove } from '../../../../src-main/domain/follow-up/van.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { dayInWords } from '../../../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../../../parts/notice.tsx'
import { amount } from '../amount.ts'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import { NoteForm } from './note-form.tsx'

/** One item: how much of it is in the van, a change to note, and every move with what was there after it. */
export function StockItem({ itemId }: { readonly itemId: string }) {
  const moves = useAsk('van.moves', { itemId })
  const problems = sentencesOf(moves.error)
  return (
    <Stack>
      <p>
        <Link href="/van/stock" className={styles.go}>
          ← {words.stock.back}
        </Link>
      </p>
      {problems.length > 0 ? <ProblemList title={words.stock.cannotOpen} problems={problems} /> : null}
      {moves.data === undefined ? (
        problems.length > 0 ? null : (
          <Waiting what={words.stock.looking} />
        )
      ) : (
        <Item item={moves.data} />
      )}
    </Stack>
  )
}

type Moves = AnswerOf<'van.moves'>

function Item({ item }: { readonly item: Moves }) {
  const { name, quantity, unit } = item
  return (
    <>
      <Card title={name}>
        <p className={styles.big}>
          {quantity === 0 ? words.stock.heldNone : words.stock.held(amount(quantity, unit))}
        </p>
        <NoteForm item={item} />
      </Card>
      <Card title={words.moves.title}>
        {item.moves.length === 0 ? (
          <p className={styles.soft}>{words.moves.none}</p>
        ) : (
          <MoveTable item={item} />
        )}
      </Card>
    </>
  )
}

function MoveTable({ item }: { readonly item: Moves }) {
  const { columns } = words.moves
  return (
    <div className={styles.scroll} tabIndex={0} role="group" aria-label={words.moves.title}>
      <table className={styles.table} aria-label={words.moves.title}>
        <thead>
          <tr>
            <th scope="col">{columns.day}</th>
            <th scope="col">{columns.what}</th>
            <th scope="col" className={styles.right}>
              {columns.change}
            </th>
            <th scope="col" className={styles.right}>
              {columns.after}
            </th>
          </tr>
        </thead>
        <tbody>
          {item.moves.toReversed().map((move, at) => (
            <MoveRow key={item.moves.length - at} move={move} unit={item.unit} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function MoveRow({ move, unit }: { readonly move: VanMove; readonly unit: string }) {
  const { kind, quantity, counted, after, onDay, says, pickingNo } = move
  const sign = quantity > 0 ? '+' : quantity < 0 ? '−' : ''
  return (
    <tr>
      <td className={styles.nowrap}>{dayInWords(onDay)}</td>
      <td>
        {counted === undefined ? words.note.kinds[kind] : words.moves.counted(amount(counted, unit))}
        {pickingNo === undefined ? (
          says === undefined || says === '' ? null : (
            <span className={styles.below}>{says}</span>
          )
        ) : (
          <Link href={`/van/pick/${pickingNo}`} className={`${styles.go} ${styles.below2}`}>
            {says ?? words.moves.pick(pickingNo)}
          </Link>
        )}
      </td>
      <td className={styles.right}>{`${sign}${amount(Math.abs(quantity), unit)}`}</td>
      <td className={styles.right}>{amount(after, unit)}</td>
    </tr>
  )
}
