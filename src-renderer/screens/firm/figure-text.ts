import { figureInWords } from '../../parts/figures-in-words.ts'
import { penceText, typedNumber, typedPence } from '../../draft/typed-number.ts'

const isMoney = (unit: string) => unit.startsWith('Pence')

const unitWords: Readonly<Record<string, string>> = {
  PencePerHour: '£ an hour',
  PencePerKm: '£ a km',
  BasisPoints: '%',
  Mm: 'mm',
  Kg: 'kg',
  M2: 'm²',
  Ml: 'ml',
  C: '°C',
  KW: 'kW',
  LPerKW: 'litres a kW',
  LPerL: 'litres a litre',
  MPerS: 'm/s',
  Hour: 'hours',
  Year: 'year',
  Count: '',
  Ratio: 'share, 0.25 for a quarter',
}

/** The unit in which a figure is typed. */
export function unitTyped(unit: string): string {
  return unitWords[unit] ?? unit
}

/** A figure as it stands in its box: pence as pounds, hundredths of a percent as percent. */
export function figureText(value: number, unit: string): string {
  if (isMoney(unit)) return penceText(value)
  return unit === 'BasisPoints' ? String(value / 100) : String(value)
}

/** What was typed as the figure is kept; what is no number stays text, so that the desk can say what is wrong with it. */
export function typedFigure(text: string, unit: string): number | string | undefined {
  if (isMoney(unit)) return typedPence(text)
  const typed = typedNumber(text.replace(/\s*%$/, ''))
  return unit === 'BasisPoints' && typeof typed === 'number' ? hundredfold(typed) : typed
}

/** Times a hundred by digits alone: 17.5 is 1750, and never 1749.9999. */
function hundredfold(value: number): number {
  return Number(`${value}e2`)
}

/** A figure with its unit, as a person reads it. */
export function figureSaid(value: number, unit: string): string {
  if (isMoney(unit) || unit === 'BasisPoints') return figureInWords(value, unit)
  if (unit === 'Year') return String(value)
  const word = ['Count', 'Ratio'].includes(unit) ? '' : unitTyped(unit)
  return word === '' ? String(value) : `${value} ${word}`
}
