import { useVirtualizer } from '@tanstack/react-virtual'
import { useEffect, useRef, useState } from 'react'
import type { KeyboardEvent, ReactNode } from 'react'
import { Link } from 'wouter'
import { dayInWords, money } from '../../../parts/figures-in-words.ts'
import { words } from './grid.words.ts'
import { PriceBox } from './price-box.tsx'
import styles from '../prices.module.css'
import { usePriceEdit } from './use-price-edit.ts'
import type { PriceRow, usePriceRows } from './use-price-rows.ts'
import { useSupplierNameById } from '../use-supplier-names.ts'

type Grid = {
  readonly rows: ReturnType<typeof usePriceRows>
  readonly chosen: number | null
  readonly choose: (rowNo: number) => void
}

const rowPx = 46
const headPx = 43
/** Chromium draws nothing taller than about 33 million pixels. */
const mostRows = 600_000

const many = new Intl.NumberFormat('en-GB')

const measures = {
  estimateSize: () => rowPx,
  overscan: 12,
  scrollMargin: headPx,
  scrollPaddingStart: headPx,
} as const

/** Rows of price lists, as many as there are; only those in sight are in the page. A row's price is changed in its place. */
export function PriceGrid({ rows, chosen, choose }: Grid) {
  const scroller = useRef<HTMLDivElement>(null)
  const [at, setAt] = useState(0)
  const names = useSupplierNameById()
  const count = Math.min(rows.found, mostRows)
  const virtual = useVirtualizer({ count, getScrollElement: () => scroller.current, ...measures })
  const scrollTo = (index: number) => virtual.scrollToIndex(index)
  const { editing, priceOf, press } = usePriceBoxes({ rows, setAt, choose, scroller, scrollTo })
  useInSight(rows.show, virtual.getVirtualItems())
  const go = (index: number) => {
    const next = Math.max(0, Math.min(count - 1, index))
    setAt(next)
    scrollTo(next)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const inSight = Math.max(1, Math.floor((scroller.current?.clientHeight ?? rowPx) / rowPx) - 1)
    const move = placeAfter(event.key, { at, count, inSight })
    if (move !== undefined) go(move)
    else if (!pressedAt(rows.rowAt(at), event.key, { choose, open: editing.open })) return
    event.preventDefault()
  }
  return (
    <div className={styles.gridSide}>
      <Told told={editing.told} />
      <div
        ref={scroller}
        role="grid"
        aria-label={words.name}
        aria-rowcount={rows.found + 1}
        aria-colcount={words.columns.length}
        aria-activedescendant={`price-row-${at}`}
        tabIndex={0}
        className={styles.grid}
        onKeyDown={onKeyDown}
      >
        <GridHead />
        <div style={{ height: virtual.getTotalSize(), position: 'relative' }} role="rowgroup">
          {virtual.getVirtualItems().map(({ index, start }) => (
            <GridRow
              key={index}
              index={index}
              start={start - headPx}
              row={rows.rowAt(index)}
              names={names}
              marked={index === at}
              chosen={chosen}
              onPress={(row) => press(index, row)}
              onEdit={(row) => editing.open(row)}
              box={(row) => priceOf(index, row)}
            />
          ))}
        </div>
      </div>
    </div>
  )
}

type Doings = {
  readonly choose: (rowNo: number) => void
  readonly open: (row: PriceRow, typed?: string) => void
}

/** Does what a key asks of a row; false for a key that asks nothing. */
function pressedAt(row: PriceRow | undefined, key: string, { choose, open }: Doings): boolean {
  if (row === undefined) return false
  if (key === 'Enter') choose(row.rowNo)
  else if (key === 'F2') open(row)
  else if (/^[0-9.£]$/.test(key)) open(row, key)
  else return false
  return true
}

type Boxes = {
  readonly rows: Grid['rows']
  readonly setAt: (index: number) => void
  readonly choose: Grid['choose']
  readonly scroller: { readonly current: HTMLElement | null }
  readonly scrollTo: (index: number) => void
}

/** The box in which a row's price is typed over, and where it leads. */
function usePriceBoxes({ rows, setAt, choose, scroller, scrollTo }: Boxes) {
  const editing = usePriceEdit()
  const back = () => {
    editing.leave()
    scroller.current?.focus()
  }
  const save = (index: number, row: PriceRow, onward: -1 | 0 | 1) => {
    const next = onward === 0 ? undefined : rows.rowAt(index + onward)
    void editing.save(row, () => {
      if (next === undefined) return back()
      scrollTo(index + onward)
      editing.open(next)
    })
  }
  const priceOf = (index: number, row: PriceRow) =>
    editing.edit?.rowNo !== row.rowNo ? null : (
      <PriceBox
        key={row.rowNo}
        row={row}
        edit={editing.edit}
        busy={editing.busy}
        type={editing.type}
        save={(onward) => save(index, row, onward)}
        leave={back}
        onFocus={() => setAt(index)}
      />
    )
  const press = (index: number, row: PriceRow) => {
    setAt(index)
    editing.leave()
    choose(row.rowNo)
  }
  return { editing, priceOf, press }
}

/** How a price is changed here; once one was, what it was and is. */
function Told({ told }: { readonly told: readonly string[] }) {
  return (
    <div role="status" className={styles.told}>
      {told.length === 0 ? (
        <p className={styles.soft}>{words.how}</p>
      ) : (
        <p>
          {told.join(' ')} <Link href="/prices/done">{words.seeDone}</Link>
        </p>
      )}
    </div>
  )
}

/** Tells which rows are in sight, so that they are fetched. */
function useInSight(show: (from: number, to: number) => void, items: readonly { readonly index: number }[]) {
  const [from, to] = [items[0]?.index ?? 0, items.at(-1)?.index ?? 0]
  // oxlint-disable-next-line react-hooks/exhaustive-deps -- what is in sight decides, not who is told
  useEffect(() => show(from, to), [from, to])
}

type Place = { readonly at: number; readonly count: number; readonly inSight: number }

/** Where a key leads from a row; undefined for a key that leads nowhere. */
function placeAfter(key: string, { at, count, inSight }: Place): number | undefined {
  const moves: Readonly<Record<string, number>> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    PageDown: at + inSight,
    PageUp: at - inSight,
    Home: 0,
    End: count - 1,
  }
  return moves[key]
}

function GridHead() {
  return (
    <div role="row" aria-rowindex={1} className={styles.gridHead}>
      {words.columns.map((name) => (
        <span role="columnheader" key={name}>
          {name}
        </span>
      ))}
    </div>
  )
}

type OneRow = {
  readonly index: number
  readonly start: number
  readonly row: PriceRow | undefined
  readonly names: ReadonlyMap<string, string>
  readonly marked: boolean
  readonly chosen: number | null
  readonly onPress: (row: PriceRow) => void
  readonly onEdit: (row: PriceRow) => void
  /** The box in which a row's price is typed over, while it is. */
  readonly box: (row: PriceRow) => ReactNode
}

function GridRow({ index, start, row, names, marked, chosen, onPress, onEdit, box }: OneRow) {
  const open = row === undefined ? null : box(row)
  return (
    <div
      role="row"
      id={`price-row-${index}`}
      aria-rowindex={index + 2}
      aria-selected={row !== undefined && row.rowNo === chosen}
      className={styles.gridRow}
      data-marked={marked}
      data-editing={open !== null}
      style={{ transform: `translateY(${start}px)`, height: rowPx }}
      onClick={() => (row === undefined ? undefined : onPress(row))}
    >
      {row === undefined ? (
        <span role="gridcell">…</span>
      ) : (
        <Cells row={row} supplierName={names.get(row.supplierId) ?? ''} onEdit={onEdit} box={open} />
      )}
    </div>
  )
}

type CellsOf = {
  readonly row: PriceRow
  readonly supplierName: string
  readonly onEdit: (row: PriceRow) => void
  readonly box: ReactNode
}

function Cells({ row, supplierName, onEdit, box }: CellsOf) {
  return (
    <>
      <span role="gridcell" className={styles.clip} title={row.code}>
        {row.code}
      </span>
      <span role="gridcell" className={styles.clip} title={row.name}>
        {row.name}
      </span>
      <span role="gridcell" className={styles.clip} title={supplierName}>
        {supplierName}
      </span>
      <span role="gridcell" className={styles.number}>
        {row.packHolds === 1 ? '' : many.format(row.packHolds)}
      </span>
      <span role="gridcell" className={styles.number} onDoubleClick={() => onEdit(row)}>
        {box ?? money(row.netPence)}
      </span>
      <span role="gridcell" className={styles.clip}>
        {dayInWords(row.validFrom)}
        {row.stale ? <span className={styles.old}>{words.old}</span> : null}
        {row.goneFrom === undefined ? null : <span className={styles.old}>{words.notListed}</span>}
      </span>
      <span role="gridcell">{row.itemId === undefined ? '' : words.inCatalogue}</span>
    </>
  )
}
