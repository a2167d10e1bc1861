import { guardedText } from './guarded-text.ts'
import { plainNumber, poundsText } from './table.ts'
import type { Cell, Table } from './table.ts'

const byteOrderMark = '\uFEFF'

/** A table as CSV: UTF-8 behind a byte-order mark, commas, lines that end in CR LF (RFC 4180). */
export function csvFile({ columns, rows }: Table): Uint8Array {
  const headings = columns.map(({ heading }): Cell => ({ kind: 'text', text: heading }))
  const lines = [headings, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`)
  return Buffer.from(`${byteOrderMark}${lines.join('')}`, 'utf8')
}

function csvCell(cell: Cell): string {
  if (cell === null) return ''
  if (cell.kind === 'number') return plainNumber(cell.value)
  if (cell.kind === 'pence') return poundsText(cell.pence)
  const text = guardedText(cell.text)
  // Spaces at either end are within the marks, so that no reader takes them off.
  return /[",\r\n\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
