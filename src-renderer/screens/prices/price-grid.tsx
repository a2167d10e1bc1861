import { useVirtualizer } from '@tanstack/react-virtual'
import { useEffect, useRef, useState } from 'react'
import type { KeyboardEvent } from 'react'
import { dayInWords, money } from '../../parts/figures-in-words.ts'
import styles from './prices.module.css'
import type { PriceRow, usePriceRows } from './use-price-rows.ts'
import { useSupplierNameById } from './use-supplier-names.ts'

type Grid = {
  readonly rows: ReturnType<typeof usePriceRows>
  readonly chosen: number | null
  readonly choose: (rowNo: number) => void
}

const rowPx = 46
const headPx = 43
/** Chromium draws nothing taller than about 33 million pixels. */
const mostRows = 600_000

const measures = {
  estimateSize: () => rowPx,
  overscan: 12,
  scrollMargin: headPx,
  scrollPaddingStart: headPx,
} as const

const columns = ['Code', 'Name', 'Supplier', 'Pack', 'Price', 'Since', 'In the catalogue'] as const

/** Rows of price lists, as many as there are; only those in sight are in the page. */
export function PriceGrid({ rows, chosen, choose }: Grid) {
  const scroller = useRef<HTMLDivElement>(null)
  const [at, setAt] = useState(0)
  const names = useSupplierNameById()
  const count = Math.min(rows.found, mostRows)
  const virtual = useVirtualizer({ count, getScrollElement: () => scroller.current, ...measures })
  useInSight(rows.show, virtual.getVirtualItems())
  const go = (index: number) => {
    const next = Math.max(0, Math.min(count - 1, index))
    setAt(next)
    virtual.scrollToIndex(next)
  }
  const press = (index: number, row: PriceRow) => {
    setAt(index)
    choose(row.rowNo)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const inSight = Math.max(1, Math.floor((scroller.current?.clientHeight ?? rowPx) / rowPx) - 1)
    const move = placeAfter(event.key, { at, count, inSight })
    const row = rows.rowAt(at)
    if (move !== undefined) go(move)
    else if (event.key === 'Enter' && row !== undefined) choose(row.rowNo)
    else return
    event.preventDefault()
  }
  return (
    <div
      ref={scroller}
      role="grid"
      aria-label="Prices found"
      aria-rowcount={rows.found + 1}
      aria-colcount={columns.length}
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
          />
        ))}
      </div>
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
      {columns.map((name) => (
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
}

function GridRow({ index, start, row, names, marked, chosen, onPress }: OneRow) {
  return (
    <div
      role="row"
      id={`price-row-${index}`}
      aria-rowindex={index + 2}
      aria-selected={row !== undefined && row.rowNo === chosen}
      className={styles.gridRow}
      data-marked={marked}
      style={{ transform: `translateY(${start}px)`, height: rowPx }}
      onClick={() => (row === undefined ? undefined : onPress(row))}
    >
      {row === undefined ? (
        <span role="gridcell">…</span>
      ) : (
        <Cells row={row} supplierName={names.get(row.supplierId) ?? ''} />
      )}
    </div>
  )
}

function Cells({ row, supplierName }: { readonly row: PriceRow; readonly supplierName: string }) {
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
        {row.packHolds === 1 ? '' : row.packHolds}
      </span>
      <span role="gridcell" className={styles.number}>
        {money(row.netPence)}
      </span>
      <span role="gridcell" className={styles.clip}>
        {dayInWords(row.validFrom)}
        {row.stale ? <span className={styles.old}>old</span> : null}
        {row.goneFrom === undefined ? null : <span className={styles.old}>not listed</span>}
      </span>
      <span role="gridcell">{row.itemId === undefined ? '' : 'yes'}</span>
    </>
  )
}
