import { Button } from '@mantine/core'
import { useVirtualizer } from '@tanstack/react-virtual'
import { useEffect, useRef, useState } from 'react'
import type { KeyboardEvent } from 'react'
import { Link } from 'wouter'
import type { AnswerOf, InputOf } from '../../../src-main/contract/requests.ts'
import { sentencesOf } from '../../bridge/call.ts'
import { counted } from '../../parts/counted.ts'
import { money } from '../../parts/figures-in-words.ts'
import { GenericMark, Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import { useWindows } from '../../parts/use-windows.ts'
import styles from './catalogue.module.css'
import { words } from './catalogue.words.ts'

export type ItemFilter = Omit<InputOf<'catalogue.search'>, 'from' | 'most' | 'generic'>
type One = AnswerOf<'catalogue.search'>['items'][number]
type Items = ReturnType<typeof useItems>

const rowPx = 54

function useItems(filter: ItemFilter) {
  return useWindows<'catalogue.search', One>({
    name: 'catalogue.search',
    filter,
    rowsOf: ({ items }) => items,
  })
}

/** Items of the catalogue, as many as there are; only those in sight are in the page. */
export function ItemList({
  filter,
  chosen,
}: {
  readonly filter: ItemFilter
  readonly chosen: string | undefined
}) {
  const items = useItems(filter)
  const { isPending, error } = items.first
  if (isPending) return <Waiting what={words.list.waiting} />
  if (error !== null) {
    return <ProblemList title={words.list.failed} problems={sentencesOf(error)} />
  }
  if (items.found === 0) {
    return (
      <Nothing title={words.list.none}>
        <p>{words.list.noneSays}</p>
        <Button component={Link} href="/catalogue/new">
          {words.add}
        </Button>
      </Nothing>
    )
  }
  return <Found key={JSON.stringify(filter)} items={items} chosen={chosen} />
}

function Found({ items, chosen }: { readonly items: Items; readonly chosen: string | undefined }) {
  const scroller = useRef<HTMLDivElement>(null)
  const { found, show, rowAt } = items
  const virtual = useVirtualizer({
    count: found,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowPx,
    overscan: 10,
  })
  const shown = virtual.getVirtualItems()
  const [from, to] = [shown[0]?.index ?? 0, shown.at(-1)?.index ?? 0]
  // oxlint-disable-next-line react-hooks/exhaustive-deps -- what is in sight decides, not who is told
  useEffect(() => show(from, to), [from, to])
  const goTo = useFocusAt(scroller)
  const onKeyDown = (event: KeyboardEvent) => {
    const at = Number((event.target as HTMLElement).closest('li')?.dataset['at'] ?? Number.NaN)
    const inSight = Math.max(1, Math.floor((scroller.current?.clientHeight ?? rowPx) / rowPx) - 1)
    const next = Number.isNaN(at) ? undefined : placeAfter(event.key, { at, count: found, inSight })
    if (next === undefined || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    // The item that has the focus may leave the page before the next one has come into it.
    scroller.current?.focus({ preventScroll: true })
    virtual.scrollToIndex(next)
    goTo(next)
  }
  return (
    <div>
      <p role="status" className={styles.soft}>
        {counted(found, words.items)}
      </p>
      <div ref={scroller} className={styles.list} tabIndex={-1}>
        <ul aria-label={words.list.name} onKeyDown={onKeyDown} style={{ height: virtual.getTotalSize() }}>
          {shown.map(({ index, start }) => (
            <OneItem key={index} at={index} many={found} start={start} one={rowAt(index)} chosen={chosen} />
          ))}
        </ul>
      </div>
    </div>
  )
}

/** Moves the focus to the item at a place, once it is in the page. */
function useFocusAt(list: { readonly current: HTMLElement | null }): (at: number) => void {
  const [wanted, setWanted] = useState<number | null>(null)
  // oxlint-disable-next-line react-hooks/exhaustive-deps -- after each drawing, until the item is in the page
  useEffect(() => {
    if (wanted === null) return
    const link = list.current?.querySelector<HTMLElement>(`li[data-at="${wanted}"] a`)
    if (link === null || link === undefined) return
    link.focus({ preventScroll: true })
    setWanted(null)
  })
  return setWanted
}

type Place = { readonly at: number; readonly count: number; readonly inSight: number }

/** Where a key leads from an item; undefined for a key that leads nowhere. */
function placeAfter(key: string, { at, count, inSight }: Place): number | undefined {
  const moves: Readonly<Record<string, number>> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    PageDown: at + inSight,
    PageUp: at - inSight,
    Home: 0,
    End: count - 1,
  }
  const to = moves[key]
  return to === undefined ? undefined : Math.max(0, Math.min(count - 1, to))
}

type OneProps = {
  readonly at: number
  readonly many: number
  readonly start: number
  readonly one: One | undefined
  readonly chosen: string | undefined
}

function OneItem({ at, many, start, one, chosen }: OneProps) {
  const isChosen = one !== undefined && one.item.itemId === chosen
  return (
    <li
      className={styles.item}
      data-at={at}
      data-chosen={isChosen}
      aria-setsize={many}
      aria-posinset={at + 1}
      style={{ transform: `translateY(${start}px)`, height: rowPx }}
    >
      {one === undefined ? '…' : <Cells one={one} isChosen={isChosen} />}
    </li>
  )
}

function Cells({ one, isChosen }: { readonly one: One; readonly isChosen: boolean }) {
  const { item, fromPence, favourite } = one
  return (
    <>
      <Link
        href={`/catalogue/${item.itemId}`}
        className={styles.name}
        title={item.name}
        {...(isChosen ? { 'aria-current': 'true' } : {})}
      >
        {item.name}
      </Link>
      <span className={styles.marks}>
        {favourite === true ? <span className={styles.usual}>{words.list.usual}</span> : null}
        {item.generic ? <GenericMark /> : null}
        {item.retired === true ? <span>{words.list.retired}</span> : null}
      </span>
      <span className={styles.price}>
        {fromPence === null ? words.list.noPrice : words.list.from(money(fromPence))}
      </span>
    </>
  )
}
