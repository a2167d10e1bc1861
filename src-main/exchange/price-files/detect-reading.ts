import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { ColumnMeaning, FileReading } from '../../domain/price-list.ts'
import { catalogueReading } from './forms/catalogue-line.ts'
import { catalogueRows } from './forms/catalogue-rows.ts'
import { withOpenFile } from './forms/open-file.ts'
import type { OpenFile, PriceSource } from './forms/open-file.ts'
import { formOf } from './forms/rows-of.ts'
import { cellsOfSheet, openBook } from './forms/sheet-rows.ts'
import { encodingOf } from './forms/text-encoding.ts'
import { textRows } from './forms/text-rows.ts'
import { cellText } from './forms/workbook.ts'
import { priceFileLimits } from './limits.ts'
import { isPerUnit } from './seen/column-words.ts'
import { decimalMarkOf } from './seen/decimal-mark.ts'
import { headerRowOf } from './seen/header-row.ts'
import { isPrice, proposeColumns } from './seen/propose-columns.ts'
import { dayOrderOf } from './values/written-day.ts'

type Rows = readonly (readonly string[])[]
type Delimiter = NonNullable<FileReading['delimiter']>

/** How a supplier's file is probably to be read. A column that nothing gives away is left for the person to name. */
export function detectReading(source: PriceSource): Promise<Outcome<FileReading>> {
  return withOpenFile(source, detectOpen)
}

export async function detectOpen(file: OpenFile): Promise<Outcome<FileReading>> {
  const form = formOf(file)
  if (typeof form !== 'string') return form
  if (form === 'ublCatalogue') return detectCatalogue(file)
  return form === 'sheet' ? detectSheet(file) : detectText(file)
}

/** Up to the first line, which tells whether it is a catalogue at all. */
async function detectCatalogue(file: OpenFile): Promise<Outcome<FileReading>> {
  const heard = await catalogueRows(file, { row: () => false, part: () => true })
  return heard.ok ? accept(catalogueReading) : heard
}

async function detectText(file: OpenFile): Promise<Outcome<FileReading>> {
  const encoding = await encodingOf(file)
  let best: { readonly delimiter: Delimiter; readonly rows: Rows; readonly score: number } | undefined
  let wrong: Outcome<never> | undefined
  for (const delimiter of [',', ';', '\t', '|'] as const) {
    const rows = await firstRows(file, { encoding, delimiter })
    if (!rows.ok) {
      wrong ??= rows
      continue
    }
    const score = evenness(rows.value)
    if (best === undefined || score > best.score) best = { delimiter, rows: rows.value, score }
  }
  // A quotation mark left open is so by every delimiter; one that only looks open by a wrong delimiter does not count.
  if (best === undefined || (best.score === 0 && wrong !== undefined))
    return wrong ?? accept(readingOf('text', []))
  return accept({ ...readingOf('text', best.rows), encoding, delimiter: best.delimiter })
}

async function firstRows(
  file: OpenFile,
  shape: { readonly encoding: NonNullable<FileReading['encoding']>; readonly delimiter: Delimiter },
): Promise<Outcome<Rows>> {
  const rows: (readonly string[])[] = []
  const heard = await textRows(file, shape, {
    row: (_, cells) => rows.push(cells) < priceFileLimits.sampleRows,
    part: () => true,
  })
  return heard.ok ? accept(rows) : heard
}

/** How wide the rows are that most are as wide as, times the share of rows that are; 0 when that is one cell. */
function evenness(rows: Rows): number {
  const widths = new Map<number, number>()
  for (const { length } of rows) if (length > 1) widths.set(length, (widths.get(length) ?? 0) + 1)
  const filled = rows.filter(({ length }) => length > 0).length
  return Math.max(0, ...[...widths].map(([width, count]) => (Math.min(width, 20) * count) / filled))
}

/** The first sheet with a list of prices in it; without one, the first that holds anything. */
async function detectSheet(file: OpenFile): Promise<Outcome<FileReading>> {
  const book = await openBook(file)
  if (!book.ok) return book
  let fallback: FileReading | undefined
  for (const { name } of book.value.sheets.slice(0, priceFileLimits.sheetsTried)) {
    const cells = await cellsOfSheet(book.value, name)
    if (!cells.ok) return cells
    const top = cells.value.slice(0, priceFileLimits.sampleRows)
    const texts = top.map((row) => row.map((cell) => (typeof cell === 'string' ? cell : '')))
    const reading = {
      ...readingOf(
        'sheet',
        top.map((row) => row.map((cell) => cellText(cell, 'point'))),
        texts,
      ),
      sheet: name,
    }
    const has = (meaning: ColumnMeaning) => reading.columns.some((column) => column.meaning === meaning)
    if (has('price') && has('code')) return accept(reading)
    if (top.length > 0) fallback ??= reading
  }
  return accept(fallback ?? { ...readingOf('sheet', []), sheet: book.value.sheets[0]?.name })
}

/** `texts` are the same rows with those cells only that tell how decimals are marked: a sheet's own numbers do not. */
function readingOf(form: 'text' | 'sheet', rows: Rows, texts: Rows = rows): FileReading {
  const headerRow = headerRowOf(rows)
  const headings = headerRow === 0 ? [] : (rows[headerRow - 1] ?? [])
  const columns = proposeColumns(headings, rows.slice(headerRow))
  const cellsOf = (meanings: readonly ColumnMeaning[], of: Rows) =>
    columns
      .filter(({ meaning }) => meanings.includes(meaning))
      .flatMap(({ at }) => of.slice(headerRow).map((row) => (row[at] ?? '').trim()))
  const amounts = cellsOf(['price', 'breakPrice'], texts).filter(isPrice)
  const priceAt = columns.find(({ meaning }) => meaning === 'price')?.at
  const perUnit =
    priceAt !== undefined &&
    isPerUnit(headings[priceAt] ?? '') &&
    columns.some(({ meaning }) => meaning === 'packHolds')
  return {
    form,
    headerRow,
    decimal: decimalMarkOf(amounts),
    dates: dayOrderOf(cellsOf(['validFrom', 'validTo'], rows)),
    columns,
    ...(perUnit ? { pricePerUnit: true } : {}),
  }
}
