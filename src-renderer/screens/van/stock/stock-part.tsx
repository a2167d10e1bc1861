import { useState } from 'react'
import { TextInput } from '@mantine/core'
import { Link, useLocation } from 'wouter'
import type { VanItem } from '../../../../src-main/domain/follow-up/van.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { Card } from '../../../parts/card.tsx'
import { dayInWords } from '../../../parts/figures-in-words.ts'
import { FindPart } from '../../../parts/find-part.tsx'
import { ProblemList, Waiting } from '../../../parts/notice.tsx'
import { kindWords } from '../../../parts/words.ts'
import { amount } from '../amount.ts'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import { StockItem } from './stock-item.tsx'

/** What is in the van, and beside it one item with all that went in and out. */
export function StockPart({ itemId }: { readonly itemId: string | undefined }) {
  const [, goTo] = useLocation()
  return (
    <div className={styles.sides}>
      <Card title={words.stock.title}>
        <Stock here={itemId} />
      </Card>
      <div className={styles.side}>
        {itemId === undefined ? (
          <Card title={words.stock.note} says={words.stock.noteSays}>
            <FindPart
              kind={undefined}
              label={words.stock.item}
              choose={(found) => goTo(stockHref(found.itemId))}
            />
          </Card>
        ) : (
          <StockItem key={itemId} itemId={itemId} />
        )}
      </div>
    </div>
  )
}

function stockHref(itemId: string): string {
  return `/van/stock/${encodeURIComponent(itemId)}`
}

function Stock({ here }: { readonly here: string | undefined }) {
  const stock = useAsk('van.stock', {})
  const [text, setText] = useState('')
  const problems = sentencesOf(stock.error)
  if (problems.length > 0) return <ProblemList title={words.notFound} problems={problems} />
  if (stock.data === undefined) return <Waiting what={words.stock.looking} />
  const { items } = stock.data
  if (items.length === 0) {
    return (
      <>
        <p className={styles.strong}>{words.stock.none}</p>
        <p className={styles.soft}>{words.stock.noneSays}</p>
      </>
    )
  }
  const found = items.filter((item) => hasWords(item, text))
  return (
    <>
      <div className={styles.searchLine}>
        <TextInput
          type="search"
          label={words.stock.find}
          value={text}
          onChange={({ currentTarget }) => setText(currentTarget.value)}
        />
        <p role="status">{found.length === 0 ? words.stock.noMatch : words.stock.count(found.length)}</p>
      </div>
      {found.length === 0 ? null : <StockTable items={found} here={here} />}
    </>
  )
}

function hasWords({ name, kind }: VanItem, text: string): boolean {
  const all = `${name} ${kindWords[kind]}`.toLowerCase()
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word))
}

type Table = { readonly items: readonly VanItem[]; readonly here: string | undefined }

function StockTable({ items, here }: Table) {
  const { columns } = words.stock
  return (
    <div className={styles.scroll} tabIndex={0} role="group" aria-label={words.stock.title}>
      <table className={styles.table} aria-label={words.stock.title}>
        <thead>
          <tr>
            <th scope="col">{columns.item}</th>
            <th scope="col" className={styles.right}>
              {columns.held}
            </th>
            <th scope="col">{columns.since}</th>
          </tr>
        </thead>
        <tbody>
          {items.map(({ itemId, name, kind, unit, quantity, since }) => (
            <tr key={itemId} data-here={itemId === here}>
              <th scope="row">
                <Link
                  href={stockHref(itemId)}
                  className={styles.go}
                  {...(itemId === here ? { 'aria-current': 'true' as const } : {})}
                >
                  {name}
                </Link>
                <span className={styles.below}>{kindWords[kind]}</span>
              </th>
              <td className={styles.right}>{amount(quantity, unit)}</td>
              <td className={styles.nowrap}>{dayInWords(since)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
