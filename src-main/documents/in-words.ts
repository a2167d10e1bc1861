import type { Firm } from '../domain/firm.ts'
import type { Unit } from '../domain/item.ts'

const pounds = new Intl.NumberFormat('en-GB', { style: 'currency', currency: 'GBP' })
const hundredths = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 2 })
const twoDigits = new Intl.NumberFormat('en-GB', { maximumSignificantDigits: 2 })
const whole = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 0 })

/** BTU an hour in one watt: 3600 s / 1055.05585262 J, the International Table BTU (NIST SP 811, Appendix B). */
const btuPerHourInW = 3600 / 1055.05585262

/** A space at which no line is broken, for a number and its unit. */
export const tight = '\u00a0'

/** Pence as pounds: 123456 is £1,234.56. */
export function money(pence: number): string {
  return pence < 0 ? `−${pounds.format(-pence / 100)}` : pounds.format(pence / 100)
}

/** Basis points as a percentage: 2000 is 20%. */
export function percent(basisPoints: number): string {
  return `${hundredths.format(basisPoints / 100)}%`
}

/** A number with at most two decimals; a small one keeps two digits. */
export function numberInWords(value: number): string {
  return Math.abs(value) < 1 ? twoDigits.format(value) : hundredths.format(value)
}

/** Millimetres without a thousands comma, as the trade writes them: 1200 mm. */
export function mm(value: number): string {
  return `${bareMm(value)}${tight}mm`
}

/** Millimetres to a tenth, without the unit. */
export function bareMm(value: number): string {
  const rounded = Math.round(value * 10) / 10
  return String(rounded === 0 ? 0 : rounded)
}

export function kg(massKg: number): string {
  return `${numberInWords(massKg)}${tight}kg`
}

/** Heat in both units, the one that the firm reads first in front: 308 W (1,051 BTU/h). */
export function heat(watts: number, first: Firm['heatFirst'] = 'W'): string {
  const inW = `${whole.format(watts)}${tight}W`
  const inBtu = `${whole.format(watts * btuPerHourInW)}${tight}BTU/h`
  return first === 'W' ? `${inW} (${inBtu})` : `${inBtu} (${inW})`
}

export function degrees(celsius: number): string {
  return `${celsius < 0 ? '−' : ''}${hundredths.format(Math.abs(celsius))}${tight}°C`
}

/** Minutes of work, to the nearest five: 2 h 40 min. */
export function about(minutes: number): string {
  const rounded = Math.max(5, Math.round(minutes / 5) * 5)
  const hours = Math.floor(rounded / 60)
  const rest = rounded % 60
  const parts = [...(hours > 0 ? [`${hours}${tight}h`] : []), ...(rest > 0 ? [`${rest}${tight}min`] : [])]
  return `about${tight}${parts.join(tight)}`
}

/** How much of something, in its unit. A sum has no quantity. */
export function quantity(value: number, unit: Unit | 'min' | 'km' | 'sum'): string {
  switch (unit) {
    case 'each':
      return numberInWords(value)
    case 'm':
      return value < 1 ? `${whole.format(value * 1000)}${tight}mm` : `${numberInWords(value)}${tight}m`
    case 'm2':
      return `${numberInWords(value)}${tight}m²`
    case 'ml':
      return value < 1 ? `${numberInWords(value)}${tight}ml` : `${whole.format(value)}${tight}ml`
    case 'L':
    case 'km':
      return `${numberInWords(value)}${tight}${unit}`
    case 'min':
      return about(value)
    case 'sum':
      return ''
  }
}

/** `the first`, `the first and the second`, `a, b and c`. */
export function listed(things: readonly string[]): string {
  if (things.length < 2) return things.join('')
  return `${things.slice(0, -1).join(', ')} and ${things.at(-1) ?? ''}`
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** Takes a name into the middle of a sentence: `Single panel` as `single panel`, `TRV` as it is. */
export function inSentence(name: string): string {
  const [first = '', second = ''] = Array.from(name)
  return second === second.toLowerCase() && /\p{L}/u.test(second)
    ? first.toLowerCase() + name.slice(first.length)
    : name
}

/** A count and its thing: 1 hole, 4 holes. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count}${tight}${count === 1 ? one : many}`
}

/** A name as print sets it: with a true times sign between its sizes. */
export function printedName(name: string): string {
  return name.replace(/ x (?=[\dG])/g, ' × ')
}

/** The same for a column of names, where no line is broken between a number and its unit. */
export function nameInColumn(name: string): string {
  return printedName(name).replace(/(\d) (?=(?:mm|m|ml|kg|litres?)\b)/g, `$1${tight}`)
}
