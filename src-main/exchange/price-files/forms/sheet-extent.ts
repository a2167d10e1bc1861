import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'

/** An address wherever it stands, with any prefix: better one that is no cell's than one that is missed. */
const address = /(?<!xmlns:)\br\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/g

/**
 * Refuses a sheet whose cells lie so far out that the empty ones between would fill the memory: the workbook reader lays
 * out every row up to the widest, and every row up to the last, so that a sheet of two cells can come to billions.
 */
export function checkExtent(sheetXml: string, name: string): Outcome<null> {
  let rows = 0
  let columns = 0
  for (const [, quoted, apostrophed] of sheetXml.matchAll(address)) {
    const written = quoted ?? apostrophed ?? ''
    const [, letters = '', figures = ''] = /^\s*([A-Za-z]*)(.*)$/s.exec(written) ?? []
    const row = written.includes('&') ? Infinity : Number(figures)
    if (row > rows) rows = row
    if (letters !== '') columns = Math.max(columns, columnOf(letters))
    if (columns > priceFileLimits.rowCells || rows * Math.max(columns, 1) > priceFileLimits.sheetCells)
      return refuse(
        'refused',
        `The sheet "${name}" reaches to cell ${written.trim().slice(0, 20)}: ${priceFileLimits.rowCells} columns and ` +
          `${priceFileLimits.sheetCells.toLocaleString('en-GB')} cells are the most. Copy the list alone to a new workbook, or save it as CSV.`,
      )
  }
  return accept(null)
}

/** A is 1, AA is 27; what is no capital letter counts as further out. */
function columnOf(letters: string): number {
  let column = 0
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64
  return column
}
