import type { ListRow } from '../../../domain/price-list.ts'
import { hasGtinShape } from './gtin.ts'
import { daysIn } from './written-day.ts'

const mostPence = 100_000_000
const keyShape = /^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/

/**
 * Whether a row is what the schema `listRow` takes. Written out because the schema costs about as much as reading the
 * file; a property test holds the two equal.
 */
export function isListRow(row: ListRow): boolean {
  return (
    isLine(row.code, 1) &&
    isLine(row.name, 0) &&
    (row.gtin === undefined || hasGtinShape(row.gtin)) &&
    row.packHolds > 0 &&
    row.packHolds <= 100_000 &&
    isPence(row.packPence) &&
    (row.breaks === undefined || areBreaks(row.breaks)) &&
    (row.group === undefined || keyShape.test(row.group)) &&
    (row.validFrom === undefined || isDay(row.validFrom)) &&
    (row.validTo === undefined || isDay(row.validTo))
  )
}

function isLine(text: string, least: number): boolean {
  const { length } = text.trim()
  return length >= least && length <= 200
}

const isPence = (pence: number) => Number.isSafeInteger(pence) && pence >= 0 && pence <= mostPence

function areBreaks(breaks: NonNullable<ListRow['breaks']>): boolean {
  return (
    breaks.length <= 20 &&
    breaks.every(
      ({ fromPacks, packPence }) =>
        Number.isSafeInteger(fromPacks) && fromPacks >= 2 && fromPacks <= 100_000 && isPence(packPence),
    )
  )
}

/** YYYY-MM-DD, a day of the calendar. Asked of every row, so it goes by characters. */
function isDay(text: string): boolean {
  if (text.length !== 10 || text.charCodeAt(4) !== dash || text.charCodeAt(7) !== dash) return false
  const month = figuresIn(text, 5, 7)
  const day = figuresIn(text, 8, 10)
  const year = figuresIn(text, 0, 4)
  return year >= 0 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month)
}

const dash = 45

/** The number that stands between two places; -1 when anything there is no figure. */
function figuresIn(text: string, from: number, to: number): number {
  let number = 0
  for (let at = from; at < to; at += 1) {
    const figure = text.charCodeAt(at) - 48
    if (figure < 0 || figure > 9) return -1
    number = number * 10 + figure
  }
  return number
}
