import { words } from './words.ts'

const pounds = new Intl.NumberFormat('en-GB', { style: 'currency', currency: 'GBP' })

/** 18500 pence as £185.00. */
export function money(pence: number): string {
  return pounds.format(pence / 100)
}

const written: Readonly<Record<string, string>> = words.figures.units

/** A figure with its unit as a fitter reads it: pence as pounds, hundredths of a percent as percent. */
export function figureInWords(value: number | string, unit?: string): string {
  if (typeof value === 'string') return value
  const small = unit?.toLowerCase() ?? ''
  if (small === 'pence') return money(value)
  if (small === 'penceperhour') return words.figures.anHour(money(value))
  if (small === 'penceperkm') return words.figures.aKm(money(value))
  if (small === 'basispoints') return words.figures.percent(plain(value / 100))
  const word = unit === undefined ? '' : (written[unit] ?? unit)
  return word === '' ? plain(value) : `${plain(value)} ${word}`
}

/** A number without needless digits: enough places for what is small, none for what is large. */
export function plain(value: number): string {
  const most = Math.abs(value) >= 100 ? 1 : Math.abs(value) >= 1 ? 2 : 4
  return places[most].format(value)
}

const upTo = (most: number) => new Intl.NumberFormat('en-GB', { maximumFractionDigits: most })
/** Made once: a list of hundreds of figures asks for them at each stroke of a key. */
const places = { 1: upTo(1), 2: upTo(2), 4: upTo(4) } as const

/** 205 minutes as "3 h 25 min". */
export function hoursAndMinutes(minutes: number): string {
  const whole = Math.round(minutes)
  const hours = Math.floor(whole / 60)
  const rest = whole % 60
  if (hours === 0) return words.figures.min(rest)
  return rest === 0 ? words.figures.hours(hours) : words.figures.hoursAndMin(hours, rest)
}

/** The clock time of a moment, where the person is: 19:04. */
export function clockTime(moment: string): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' }).format(new Date(moment))
}

/** The day and the time of a moment: 25 November 2026, 19:04. */
export function dayAndTime(moment: string): string {
  const date = new Date(moment)
  const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' }).format(
    date,
  )
  return `${day}, ${clockTime(moment)}`
}

/** A calendar day as it is read: 2026-01-05 as 5 Jan 2026. */
export function dayInWords(day: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  }).format(new Date(`${day}T00:00:00Z`))
}

/** A quantity with its unit as it stands on a list: 2, 0.16 m, 2 litres, 3 h 5 min. */
export function howMuchOf(quantity: number, unit: string): string {
  if (unit === 'each') return plain(quantity)
  if (unit === 'sum') return ''
  if (unit === 'min') return hoursAndMinutes(quantity)
  if (unit === 'm2') return `${plain(quantity)} ${words.figures.m2}`
  return `${plain(quantity)} ${unit === 'L' ? words.figures.litres : unit}`
}
