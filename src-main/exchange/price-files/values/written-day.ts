export type DayOrder = 'dayFirst' | 'monthFirst' | 'yearFirst'

const earliestYear = 1990
const latestYear = 2100
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

const yearAhead = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ][\d:.]+Z?)?$/
const yearBehind = /^(\d{1,2})[-/.\s](\d{1,2})[-/.\s](\d{4}|\d{2})(?:[T ][\d:.]+)?$/
const named = /^(\d{1,2})(?:st|nd|rd|th)?[-/.\s]*([a-z]{3})[a-z]*\.?[-/.,\s]*(\d{4}|\d{2})$/i
const namedFirst = /^([a-z]{3})[a-z]*\.?\s*(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/i
const serial = /^(\d{1,6})(?:\.\d+)?$/

/** A day as YYYY-MM-DD from what a cell says, or a sentence that says why it is none. */
export function readDay(text: string, order: DayOrder): string | { readonly fault: string } {
  const parts = partsOf(text, order)
  if (parts === null) return { fault: `"${text.slice(0, 40)}" is not a date that can be read.` }
  const [year, month, day] = parts
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month))
    return { fault: `"${text.slice(0, 40)}" is not a day of the calendar, read ${inWords[order]}.` }
  if (year < earliestYear || year > latestYear)
    return {
      fault: `"${text.slice(0, 40)}" is the year ${year}: a price's date lies between ${earliestYear} and ${latestYear}.`,
    }
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}

const inWords = { dayFirst: 'day first', monthFirst: 'month first', yearFirst: 'year first' } as const

type Parts = readonly [year: number, month: number, day: number]

function partsOf(text: string, order: DayOrder): Parts | null {
  const [, year, month, day] = yearAhead.exec(text) ?? []
  if (year !== undefined) return [Number(year), Number(month), Number(day)]
  const compact = /^(\d{4})(\d{2})(\d{2})$/.exec(text)
  if (compact !== null) return [Number(compact[1]), Number(compact[2]), Number(compact[3])]
  const behind = yearBehind.exec(text)
  if (behind !== null) return inOrder(behind, order)
  return namedParts(text) ?? serialParts(text)
}

function inOrder([, first = '', second = '', third = '']: RegExpExecArray, order: DayOrder): Parts {
  if (order === 'yearFirst' && third.length === 2) return [fullYear(first), Number(second), Number(third)]
  const [month, day] = order === 'monthFirst' ? [first, second] : [second, first]
  return [fullYear(third), Number(month), Number(day)]
}

const fullYear = (text: string) => (text.length <= 2 ? 2000 + Number(text) : Number(text))

function namedParts(text: string): Parts | null {
  const [, day, month, year] = named.exec(text) ?? []
  if (day !== undefined) return [fullYear(year ?? ''), monthOf(month), Number(day)]
  const [, before, dayBehind, yearBehindAll] = namedFirst.exec(text) ?? []
  return before === undefined ? null : [Number(yearBehindAll), monthOf(before), Number(dayBehind)]
}

const monthOf = (name = '') => months.indexOf(name.toLowerCase()) + 1

/**
 * The number by which a spreadsheet counts days: 1 is 1 January 1900, and 60 is a 29 February 1900 that never was, so
 * from 61 on every number is one too many.
 */
function serialParts(text: string): Parts | null {
  const found = serial.exec(text)
  if (found === null) return null
  const count = Number(found[1])
  if (count < 1) return null
  if (count === 60) return [1900, 2, 29]
  return partsOfDayNumber(count < 60 ? count + 1 : count)
}

/** Days counted so that 61 is 1 March 1900. */
function partsOfDayNumber(count: number): Parts {
  const at = new Date(Date.UTC(1899, 11, 30) + count * 86_400_000)
  return [at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate()]
}

export function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}

/** Whether days are written day, month or year first, as far as samples tell; day first when nothing tells. */
export function dayOrderOf(samples: readonly string[]): DayOrder {
  let monthFirst = 0
  let dayFirst = 0
  let yearFirst = 0
  for (const text of samples) {
    const behind = yearBehind.exec(text)
    if (yearAhead.test(text)) yearFirst += 1
    else if (behind !== null && Number(behind[1]) > 12) dayFirst += 1
    else if (behind !== null && Number(behind[2]) > 12) monthFirst += 1
  }
  if (monthFirst > dayFirst) return 'monthFirst'
  return yearFirst > 0 && dayFirst === 0 ? 'yearFirst' : 'dayFirst'
}
