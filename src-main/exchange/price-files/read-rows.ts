import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { FileReading, ListRow, RejectedRow } from '../../domain/price-list.ts'
import { lineColumns } from './forms/catalogue-line.ts'
import { withOpenFile } from './forms/open-file.ts'
import type { PriceSource } from './forms/open-file.ts'
import { rowsOf } from './forms/rows-of.ts'
import { rowReaderOf } from './row-reader.ts'
import type { RowReader } from './row-reader.ts'

export { deletedLine } from './forms/catalogue-rows.ts'
export type { PriceSource } from './forms/open-file.ts'

/** What hears a file's rows, in the file's order. */
export type RowHearer = {
  /** A row as it stands, before it is looked into, and what is wrong with it already: 'skip' leaves it at that. */
  readonly raw?: (rowNo: number, cells: readonly string[], fault?: string) => 'skip' | 'read'
  readonly row: (rowNo: number, row: ListRow) => void
  readonly rejected: (row: RejectedRow) => void
  /** What was kept in spite of a flaw, and how: a wrong GTIN left out, a price rounded. */
  readonly noted?: (rowNo: number, says: string) => void
  /** The share that is done; false stops. */
  readonly progress?: (doneRatio: number) => boolean
}

export type ReadSummary = {
  /** Rows below the headings that hold anything, taken or not. */
  readonly rows: number
  /** SHA-256 of the file's bytes, in hexadecimal. */
  readonly fileHash: string
}

/** Reads a supplier's file row by row. What it cannot take it hands over with its row's number and the reason. */
export async function readRows(
  source: PriceSource,
  reading: FileReading,
  hear: RowHearer,
): Promise<Outcome<ReadSummary>> {
  const reader = readerFor(reading)
  if (!reader.ok) return reader
  return withOpenFile(source, async (file) => {
    const told = toldOf(reader.value, hear)
    let rows = 0
    let stopped = false
    const heard = await rowsOf(file, reading, {
      row: (rowNo, cells, fault) => {
        if (rowNo <= reading.headerRow || isBlank(cells)) return true
        rows += 1
        told(rowNo, cells, fault)
        return true
      },
      part: (ratio) => {
        stopped ||= hear.progress?.(ratio) === false
        return !stopped
      },
    })
    if (stopped) return refuse('refused', `Reading "${source.name}" was stopped before its end.`)
    if (!heard.ok) return heard
    return rows === 0
      ? noRows(source.name, reading.headerRow)
      : accept({ rows, fileHash: heard.value.fileHash })
  })
}

/** A catalogue's columns are its form's. */
export function readerFor(reading: FileReading): Outcome<RowReader> {
  const isCatalogue = reading.form === 'ublCatalogue'
  return rowReaderOf(
    isCatalogue ? { ...reading, decimal: 'point', dates: 'yearFirst', columns: lineColumns } : reading,
  )
}

function noRows(name: string, headerRow: number): Outcome<never> {
  const where = headerRow === 0 ? '' : ` below its headings in row ${headerRow}`
  return refuse('invalid', `"${name}" has no row${where}: there is nothing to read in.`, 'reading.headerRow')
}

/** Takes one row, and tells the hearer what became of it. */
export function toldOf(read: RowReader, hear: RowHearer) {
  let now = 0
  const note = (says: string) => hear.noted?.(now, says)
  return (rowNo: number, cells: readonly string[], fault: string | undefined): void => {
    now = rowNo
    if (hear.raw?.(rowNo, cells, fault) === 'skip') return
    const row = fault ?? read(cells, note)
    if (typeof row === 'string') hear.rejected({ rowNo, text: rowText(cells), says: row })
    else hear.row(rowNo, row)
  }
}

export function isBlank(cells: readonly string[]): boolean {
  for (const cell of cells) if (cell !== '' && cell.trim() !== '') return false
  return true
}

const mostText = 200

function rowText(cells: readonly string[]): string {
  const text = cells
    .slice(0, 60)
    .map((cell) => cell.slice(0, mostText).trim())
    .join(' | ')
  return text.length <= mostText ? text : `${text.slice(0, mostText - 1)}…`
}
