import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { FileReading, ListRow, RejectedRow } from '../../domain/price-list.ts'
import { detectOpen } from './detect-reading.ts'
import { lineColumns } from './forms/catalogue-line.ts'
import { withOpenFile } from './forms/open-file.ts'
import type { OpenFile, PriceSource } from './forms/open-file.ts'
import { rowsOf } from './forms/rows-of.ts'
import { cellsOfSheet, openBook } from './forms/sheet-rows.ts'
import { priceFileLimits } from './limits.ts'
import { isBlank, readerFor, toldOf } from './read-rows.ts'
import { quantityInHeading } from './seen/break-heading.ts'
import { plainWords } from './seen/column-words.ts'

export type UnderstoodRow = Pick<ListRow, 'code' | 'name' | 'packHolds' | 'packPence' | 'breaks'> & {
  readonly rowNo: number
}

export type FileLook = {
  readonly name: string
  readonly bytes: number
  readonly reading: FileReading
  readonly sheets?: readonly string[]
  readonly headings: readonly string[]
  readonly raw: readonly (readonly string[])[]
  readonly understood: readonly UnderstoodRow[]
  readonly rejected: readonly RejectedRow[]
  /** What a person should know before going on: columns that are missing or named twice, flaws that are passed over. */
  readonly notes: readonly string[]
}

/** How a file is read, by its own look or as the person says, and what its first rows come to. */
export function lookAtFile(source: PriceSource, reading?: FileReading): Promise<Outcome<FileLook>> {
  return withOpenFile(source, async (file) => {
    const chosen = reading === undefined ? await detectOpen(file) : accept(reading)
    return chosen.ok ? look(file, chosen.value) : chosen
  })
}

async function look(file: OpenFile, reading: FileReading): Promise<Outcome<FileLook>> {
  const sheets = reading.form === 'sheet' ? await sheetNames(file) : accept(undefined)
  if (!sheets.ok) return sheets
  const all = await topRows(file, reading)
  if (!all.ok) return all
  const headings = headingsOf(reading, all.value)
  const { notes, ...seen } = understand(reading, all.value)
  if (all.value.every(({ cells }) => isBlank(cells)))
    return refuse('invalid', `"${file.name}" has no row that holds anything.`)
  return accept({
    name: file.name,
    bytes: file.bytes,
    reading,
    ...(sheets.value === undefined ? {} : { sheets: sheets.value }),
    headings,
    raw: all.value
      .slice(0, priceFileLimits.shownRows)
      .map(({ cells }) => cells.map((cell) => cell.slice(0, 300))),
    ...seen,
    notes: [
      ...columnNotes(reading, headings),
      ...breakNotes(reading, headings),
      ...(await codeNotes(file, reading)),
      ...notes,
    ],
  })
}

async function sheetNames(file: OpenFile): Promise<Outcome<readonly string[]>> {
  const book = await openBook(file)
  return book.ok ? accept(book.value.sheets.map(({ name }) => name)) : book
}

/** Of a workbook whose codes are numbers shown as they are: 00126 would be 126 there, and nothing tells. */
async function codeNotes(file: OpenFile, reading: FileReading): Promise<readonly string[]> {
  const at = reading.columns.find(({ meaning }) => meaning === 'code')?.at
  if (reading.form !== 'sheet' || at === undefined) return []
  const book = await openBook(file)
  const cells = book.ok ? await cellsOfSheet(book.value, reading.sheet) : book
  if (!cells.ok) return []
  const below = cells.value.slice(reading.headerRow, reading.headerRow + priceFileLimits.shownRows)
  const count = below.filter((row) => typeof row[at] === 'object' && row[at] !== null).length
  if (count === 0) return []
  return [
    `The codes of ${count} of the first rows are numbers in the workbook: noughts ahead of them, if there were any, are lost. ` +
      'Ask for a list with codes as text.',
  ]
}

type TopRow = {
  readonly rowNo: number
  readonly cells: readonly string[]
  readonly fault: string | undefined
}

/** Rows from the first to some way below the headings. */
async function topRows(file: OpenFile, reading: FileReading): Promise<Outcome<readonly TopRow[]>> {
  const rows: TopRow[] = []
  const most = reading.headerRow + priceFileLimits.shownRows
  const heard = await rowsOf(file, reading, {
    row: (rowNo, cells, fault) => rows.push({ rowNo, cells, fault }) < most,
    part: () => true,
  })
  return heard.ok ? accept(rows) : heard
}

function headingsOf({ form, headerRow }: FileReading, rows: readonly TopRow[]): readonly string[] {
  if (form === 'ublCatalogue') return lineColumns.slice(0, 8).map(({ meaning }) => meaning)
  return (rows.find(({ rowNo }) => rowNo === headerRow)?.cells ?? []).map((cell) => cell.trim().slice(0, 300))
}

function understand(
  reading: FileReading,
  rows: readonly TopRow[],
): Pick<FileLook, 'understood' | 'rejected' | 'notes'> {
  const understood: UnderstoodRow[] = []
  const rejected: RejectedRow[] = []
  const notes: string[] = []
  const reader = readerFor(reading)
  if (!reader.ok) return { understood, rejected, notes: reader.problems.map(({ message }) => message) }
  const told = toldOf(reader.value, {
    row: (rowNo, { code, name, packHolds, packPence, breaks }) =>
      understood.push({
        rowNo,
        code,
        name,
        packHolds,
        packPence,
        ...(breaks === undefined ? {} : { breaks }),
      }),
    rejected: (row) => rejected.push(row),
    noted: (rowNo, says) => notes.push(`Row ${rowNo}: ${says}`),
  })
  for (const { rowNo, cells, fault } of rows)
    if (rowNo > reading.headerRow && !isBlank(cells)) told(rowNo, cells, fault)
  return { understood, rejected, notes }
}

/** Headings that stand twice, so that the person sees which column was taken. */
function columnNotes({ columns }: FileReading, headings: readonly string[]): readonly string[] {
  const plain = headings.map(plainWords)
  return columns.flatMap(({ at, meaning }) => {
    const same = plain.flatMap((heading, other) =>
      heading !== '' && heading === plain[at] ? [other + 1] : [],
    )
    if (same.length < 2) return []
    return [
      `Columns ${same.join(' and ')} are all headed "${headings[at]}": column ${at + 1} is taken as the ${meaning}.`,
    ]
  })
}

/** Columns of price breaks whose headings say another quantity than they are taken for, or that stand out of order. */
function breakNotes({ columns }: FileReading, headings: readonly string[]): readonly string[] {
  const stated = columns.flatMap(({ at, fromPacks }) => (fromPacks === undefined ? [] : [{ at, fromPacks }]))
  const otherwise = stated.flatMap(({ at, fromPacks }) => {
    const says = quantityInHeading(headings[at] ?? '')
    if (says === null || says === fromPacks) return []
    return [
      `Column ${at + 1} is headed "${headings[at]}" and is taken as the price from ${fromPacks} packs: put the number right.`,
    ]
  })
  const quantities = stated.toSorted((a, b) => a.at - b.at).map(({ fromPacks }) => fromPacks)
  const isOrdered = quantities.every((fromPacks, at) => at === 0 || fromPacks > (quantities[at - 1] ?? 0))
  if (isOrdered) return otherwise
  return [
    ...otherwise,
    `The columns of price breaks are out of order (${quantities.join(', ')} packs): they are taken by quantity.`,
  ]
}
