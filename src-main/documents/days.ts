const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

type Parts = { readonly year: number; readonly month: number; readonly dayOfMonth: number }

/** `2026-11-05` as 5 November 2026. No clock and no time zone comes into it. */
export function dayInWords(day: string): string {
  const { year, month, dayOfMonth } = partsOf(day)
  return `${dayOfMonth}\u00a0${months[month - 1] ?? ''}\u00a0${year}`
}

/** The calendar day so many days after another. */
export function daysAfter(day: string, count: number): string {
  return dayOf(numberOf(partsOf(day)) + count)
}

function partsOf(day: string): Parts {
  const [year = 0, month = 0, dayOfMonth = 0] = day.split('-').map(Number)
  if (!(year > 0 && month >= 1 && month <= 12 && dayOfMonth >= 1))
    throw new Error(`${day} is no calendar day`)
  return { year, month, dayOfMonth }
}

/** Days since 1 March of the year 0, in the Gregorian calendar: years are counted from March, so a leap day comes last. */
function numberOf({ year, month, dayOfMonth }: Parts): number {
  const marchYear = month > 2 ? year : year - 1
  const monthsSinceMarch = (month + 9) % 12
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400)
  return marchYear * 365 + leapDays + daysBeforeMonth(monthsSinceMarch) + dayOfMonth - 1
}

/** Days from 1 March to the first of a month that comes so many months later. */
function daysBeforeMonth(monthsSinceMarch: number): number {
  return Math.floor((153 * monthsSinceMarch + 2) / 5)
}

function dayOf(number: number): string {
  const guess = Math.floor(number / 365.2425)
  const marchYear = [guess + 1, guess, guess - 1].find((year) => firstOf(year) <= number) ?? guess
  const dayOfYear = number - firstOf(marchYear)
  const monthsSinceMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const month = ((monthsSinceMarch + 2) % 12) + 1
  const year = month > 2 ? marchYear : marchYear + 1
  const dayOfMonth = dayOfYear - daysBeforeMonth(monthsSinceMarch) + 1
  return [String(year).padStart(4, '0'), two(month), two(dayOfMonth)].join('-')
}

function firstOf(marchYear: number): number {
  return numberOf({ year: marchYear, month: 3, dayOfMonth: 1 })
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}
