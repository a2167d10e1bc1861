import { trustedFrom } from '../../domain/price.ts'

/**
 * How many days lie between two calendar days: the difference of their day numbers, negative when the second is earlier.
 * @param from a calendar day as YYYY-MM-DD
 * @param to a calendar day as YYYY-MM-DD
 * @source the Gregorian calendar; day numbers after E. G. Richards, Explanatory Supplement to the Astronomical Almanac, ch. 15
 * @example daysBetween('2024-02-28', '2024-03-01') // => 2
 */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from)
}

/** Days since 1 March of the year 0, when years begin in March so that the odd day comes last. */
function dayNumber(day: string): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  const marchYear = month > 2 ? year : year - 1
  const marchMonth = (month + 9) % 12
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400)
  return 365 * marchYear + leapDays + Math.floor((153 * marchMonth + 2) / 5) + date - 1
}

/**
 * Whether a price has stood for longer than the firm takes a price on trust, in a sentence; null while it is young enough. Its age
 * counts from the later of the day it began and the day the supplier's list last confirmed it.
 * @param price the day it began, the day it was last confirmed if it was, its code and who asks it
 * @param on the day it is looked at
 * @param limitDays after how many days it is too old, a whole number
 * @source practice, no published source
 * @example stalePrice({ validFrom: '2025-01-05', code: '00126', supplierName: 'Town Counter' }, '2026-01-06', 365) // => "The price of 00126 at Town Counter began on 2025-01-05, 366 days ago, and the firm takes a price on trust for 365: ask for a new one."
 */
export function stalePrice(
  price: {
    readonly validFrom: string
    readonly confirmedOn?: string | undefined
    readonly code: string
    readonly supplierName: string
  },
  on: string,
  limitDays: number,
): string | null {
  const { validFrom, code, supplierName } = price
  const from = trustedFrom(price)
  const age = daysBetween(from, on)
  if (age <= limitDays) return null
  return `The price of ${code} at ${supplierName} ${from === validFrom ? 'began' : 'was last confirmed'} on ${from}, ${age === 1 ? 'a day' : `${age} days`} ago, and the firm takes a price on trust for ${limitDays}: ask for a new one.`
}
