import type { ColumnMeaning, FileReading } from '../../../domain/price-list.ts'
import { isGtin } from '../values/gtin.ts'
import { mostBreaks } from '../values/price-breaks.ts'
import { readDay } from '../values/written-day.ts'
import { readPrice } from '../values/written-price.ts'
import { quantityInHeading } from './break-heading.ts'
import { meaningsOf } from './column-words.ts'

type Column = FileReading['columns'][number]
type Rows = readonly (readonly string[])[]
type Candidate = Column & { readonly weight: number }

/** Meanings of which a list has several columns, in pairs. */
const repeated: readonly ColumnMeaning[] = ['breakFromPacks', 'breakPrice']

/**
 * What each column of a list probably holds, by the words above it and by what stands in it. Without headings (an
 * empty list of them) contents alone decide. Of two columns that both could be it, the surer, then the further left.
 */
export function proposeColumns(headings: readonly string[], sampleRows: Rows): readonly Column[] {
  const wide = Math.min(1000, Math.max(headings.length, ...sampleRows.map(({ length }) => length)))
  const columns = Array.from({ length: wide }, (_, at) => cellsAt(sampleRows, at))
  const candidates = columns.flatMap((cells, at) => candidatesAt(at, headings[at] ?? '', cells))
  const taken = new Map<number, ColumnMeaning>()
  for (const { at, meaning } of candidates.toSorted((a, b) => b.weight - a.weight || a.at - b.at)) {
    const isFree = repeated.includes(meaning) || ![...taken.values()].includes(meaning)
    if (isFree && !taken.has(at)) taken.set(at, meaning)
  }
  for (const { at, meaning } of byContents(columns, taken)) taken.set(at, meaning)
  const proposed = [...taken].map(([at, meaning]) => ({ at, meaning, ...statedAt(meaning, headings[at]) }))
  return pairedOnly(eachOnce(proposed.toSorted((a, b) => a.at - b.at))).slice(0, 60)
}

/** Of two columns headed with the same quantity the first; no more breaks than a row may have. */
function eachOnce(columns: readonly Column[]): readonly Column[] {
  const quantities = columns.flatMap(({ fromPacks }) => (fromPacks === undefined ? [] : [fromPacks]))
  const wanted = new Set([...new Set(quantities)].slice(0, mostBreaks))
  return columns.filter(({ fromPacks }) => fromPacks === undefined || wanted.delete(fromPacks))
}

/** How many packs a price break is from, when its heading says so. */
function statedAt(meaning: ColumnMeaning, heading = ''): Pick<Column, 'fromPacks'> {
  const quantity = meaning === 'breakPrice' ? quantityInHeading(heading) : null
  return quantity === null ? {} : { fromPacks: quantity }
}

const cellsAt = (rows: Rows, at: number) =>
  rows.map((row) => (row[at] ?? '').trim()).filter((cell) => cell !== '')

function candidatesAt(at: number, heading: string, cells: readonly string[]): readonly Candidate[] {
  return meaningsOf(heading)
    .filter(({ meaning }) => couldHold(meaning, cells) && !areCounts(heading, cells))
    .map(({ meaning, weight }) => ({ at, meaning, weight }))
}

/** Whole numbers below 'Qty 50' may be what is in stock: only amounts with pence or a pound sign are surely prices. */
function areCounts(heading: string, cells: readonly string[]): boolean {
  const isVague = /^\s*(?:qty|quantity)\b[^+]*$/i.test(heading) && quantityInHeading(heading) !== null
  return isVague && cells.length > 0 && !cells.some((cell) => /[£€$]|\d[.,]\d/.test(cell))
}

/** A column with the right word over it may still hold something else: a price code is no price. */
function couldHold(meaning: ColumnMeaning, cells: readonly string[]): boolean {
  if (cells.length === 0) return true
  if (meaning === 'price' || meaning === 'breakPrice') return shareOf(cells, isPrice) >= 0.3
  if (meaning === 'gtin') return shareOf(cells, (cell) => /^[\d\sE+.]{8,20}$/.test(cell)) >= 0.3
  if (meaning === 'validFrom' || meaning === 'validTo') return shareOf(cells, isDay) >= 0.3
  if (meaning === 'packHolds') return shareOf(cells, (cell) => /\d|each|ea\b|single/i.test(cell)) >= 0.3
  return true
}

/** Code, name, price and GTIN that no word gave away, by what they look like. */
function byContents(
  columns: readonly (readonly string[])[],
  taken: ReadonlyMap<number, ColumnMeaning>,
): Column[] {
  const has = (meaning: ColumnMeaning) => [...taken.values()].includes(meaning)
  const found: Column[] = []
  const take = (meaning: ColumnMeaning, score: (cells: readonly string[], at: number) => number) => {
    if (has(meaning)) return
    const free = columns
      .map((cells, at) => ({ at, cells }))
      .filter(({ at }) => !taken.has(at) && !found.some((one) => one.at === at))
    const scored = free.map(({ at, cells }) => ({ at, score: cells.length === 0 ? 0 : score(cells, at) }))
    const best = scored.toSorted((a, b) => b.score - a.score || a.at - b.at)[0]
    if (best !== undefined && best.score > 0) found.push({ at: best.at, meaning })
  }
  take('gtin', (cells) => (shareOf(cells, isGtin) > 0.8 ? 1 : 0))
  take('price', (cells) =>
    shareOf(cells, (cell) => /\d[.,]\d{2}(?!\d)/.test(cell) && isPrice(cell)) > 0.8 ? 1 : 0,
  )
  take('name', nameScore)
  take('code', codeScore)
  return found
}

/** Long entries of several words. */
function nameScore(cells: readonly string[]): number {
  const wordy = shareOf(cells, (cell) => /[a-z]/i.test(cell) && cell.includes(' '))
  const long = cells.reduce((sum, { length }) => sum + length, 0) / cells.length
  return wordy > 0.5 && long > 8 ? long : 0
}

/** Short entries without spaces, no two alike; further left is likelier. */
function codeScore(cells: readonly string[], at: number): number {
  const short = shareOf(
    cells,
    (cell) => cell.length <= 30 && !/\s/.test(cell) && /\d/.test(cell) && !/[£€]/.test(cell),
  )
  const distinct = new Set(cells).size / cells.length
  const amounts = shareOf(cells, (cell) => /^\d+[.,]\d{1,2}$/.test(cell))
  return short > 0.8 && distinct > 0.8 && amounts < 0.5 && cells.length > 1 ? 1 / (1 + at) : 0
}

/** A break's price is of no use without its quantity, nor the other way round; a heading may state the quantity. */
function pairedOnly(columns: readonly Column[]): readonly Column[] {
  const count = (wanted: ColumnMeaning) =>
    columns.filter(({ meaning, fromPacks }) => meaning === wanted && fromPacks === undefined).length
  const stated = columns.filter(({ fromPacks }) => fromPacks !== undefined).length
  const pairs = Math.min(mostBreaks - stated, count('breakFromPacks'), count('breakPrice'))
  const seen = { breakFromPacks: 0, breakPrice: 0 }
  return columns.filter(({ meaning, fromPacks }) => {
    if (fromPacks !== undefined || (meaning !== 'breakFromPacks' && meaning !== 'breakPrice')) return true
    seen[meaning] += 1
    return seen[meaning] <= pairs
  })
}

export function shareOf(cells: readonly string[], is: (cell: string) => boolean): number {
  return cells.length === 0 ? 0 : cells.filter(is).length / cells.length
}

/** An amount written with either mark. */
export function isPrice(cell: string): boolean {
  return typeof readPrice(cell, 'point') !== 'string' || typeof readPrice(cell, 'comma') !== 'string'
}

const isDay = (cell: string) =>
  typeof readDay(cell, 'dayFirst') === 'string' || typeof readDay(cell, 'monthFirst') === 'string'
