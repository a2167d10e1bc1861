import { priceFileLimits } from '../limits.ts'
import type { SheetCell } from './workbook.ts'

const mergedRef = /<(?:\w+:)?mergeCell\s[^>]*?ref="([A-Z]{1,3})(\d{1,7}):([A-Z]{1,3})(\d{1,7})"/g

/**
 * A cell merged downwards stands for every row that it spans (a group's name beside its rows), so its value is given to
 * each. One merged sideways keeps its value in its first column: a heading or a title does not become several.
 */
export function fillMerged(
  rows: readonly (readonly SheetCell[])[],
  sheetXml: Buffer,
): readonly (readonly SheetCell[])[] {
  // They are listed behind the cells.
  const begin = sheetXml.lastIndexOf('sheetData>')
  // More than a sheet can hold side by side are laid over one another, and no list.
  let left: number = priceFileLimits.mergedCells
  const filled = rows.map((row) => [...row])
  for (const [, column = '', first = '', , last = ''] of sheetXml
    .toString('utf8', Math.max(begin, 0))
    .matchAll(mergedRef)) {
    const at = columnAt(column)
    const value = rows[Number(first) - 1]?.[at]
    if (value === undefined || value === null) continue
    const spanned = filled.slice(Number(first), Number(last))
    left -= spanned.length
    if (left < 0) return filled
    for (const row of spanned) row[at] = value
  }
  return filled
}

/** A is 0, AA is 26. */
function columnAt(name: string): number {
  let at = 0
  for (const letter of name) at = at * 26 + letter.charCodeAt(0) - 64
  return at - 1
}
