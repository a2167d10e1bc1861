import { setImmediate as pause } from 'node:timers/promises'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'
import type { DecimalMark } from '../values/written-number.ts'
import { hashOf, inMb, wholeFile } from './open-file.ts'
import type { OpenFile } from './open-file.ts'
import type { RowsHeard, RowsHearer } from './rows-hearer.ts'
import { longCell } from './text-rows.ts'
import { cellText, sheetCells, sheetsOf } from './workbook.ts'
import type { Sheet, SheetCell } from './workbook.ts'
import { workbookParts } from './workbook-parts.ts'
import type { WorkbookParts } from './workbook-parts.ts'

export type Book = {
  readonly name: string
  readonly parts: WorkbookParts
  readonly sheets: readonly Sheet[]
  readonly fileHash: string
}

/** Unpacked once for as long as the file is open; so are the sheets that were read. */
const books = new WeakMap<OpenFile, Promise<Outcome<Book>>>()
const sheets = new WeakMap<Sheet, Promise<Outcome<Cells>>>()
type Cells = readonly (readonly SheetCell[])[]

/** A workbook, unpacked within the limits. */
export function openBook(file: OpenFile): Promise<Outcome<Book>> {
  const book = books.get(file) ?? unpackedBook(file)
  books.set(file, book)
  return book
}

async function unpackedBook(file: OpenFile): Promise<Outcome<Book>> {
  const { workbookBytes } = priceFileLimits
  const { name, bytes } = file
  if (bytes > workbookBytes)
    return refuse(
      'refused',
      `"${name}" has ${inMb(bytes)}; a workbook may have ${inMb(workbookBytes)} at most. Send it as CSV.`,
    )
  const whole = await wholeFile(file)
  const parts = await workbookParts(whole, name)
  if (!parts.ok) return parts
  const found = await sheetsOf(parts.value, name)
  return found.ok ? accept({ name, parts: parts.value, sheets: found.value, fileHash: hashOf(whole) }) : found
}

/** The cells of the sheet of that name; of the first sheet when none is named. */
export async function cellsOfSheet(book: Book, sheetName?: string): Promise<Outcome<Cells>> {
  const sheet = sheetName === undefined ? book.sheets[0] : book.sheets.find(({ name }) => name === sheetName)
  if (sheet !== undefined) {
    const cells = sheets.get(sheet) ?? sheetCells(book.parts, sheet, book.name)
    sheets.set(sheet, cells)
    return cells
  }
  const there = book.sheets.map(({ name }) => `"${name}"`).join(', ')
  return refuse('invalid', `"${book.name}" has no sheet "${sheetName}"; it has ${there}.`, 'reading.sheet')
}

/** Rows between two looks at whether to go on. */
const rowsAtOnce = 2000
/** Unpacking and reading the sheet take about this share of the time. */
const unpackedRatio = 0.7

export type SheetShape = { readonly sheet?: string | undefined; readonly decimal: DecimalMark }

/** Every row of one sheet. Rows are counted from 1. */
export async function sheetRows(
  file: OpenFile,
  shape: SheetShape,
  hear: RowsHearer,
): Promise<Outcome<RowsHeard>> {
  const book = await openBook(file)
  if (!book.ok) return book
  const heard = accept({ fileHash: book.value.fileHash })
  if (!hear.part(unpackedRatio / 2)) return heard
  const cells = await cellsOfSheet(book.value, shape.sheet)
  if (!cells.ok) return cells
  for (const [index, row] of cells.value.entries()) {
    if (index % rowsAtOnce === 0) {
      await pause()
      if (!hear.part(unpackedRatio + ((1 - unpackedRatio) * index) / cells.value.length)) return heard
    }
    const texts = row.map((cell) => cellText(cell, shape.decimal))
    const fault = texts.some(({ length }) => length > priceFileLimits.cellChars) ? longCell : undefined
    if (!hear.row(index + 1, texts, fault)) return heard
  }
  return heard
}
