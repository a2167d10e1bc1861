import type { Setting } from '../../domain/figures.ts'
import type { Problem } from '../../domain/outcome.ts'

/** What is wrong with a firm's own figures, each with what would be right; null, which goes back to the usual one, never is. */
export function figureProblems(
  figures: Readonly<Record<string, number | null>>,
  settings: readonly Setting[],
): readonly Problem[] {
  const byId = new Map(settings.map((setting) => [setting.id, setting]))
  return Object.entries(figures).flatMap(([id, value]): readonly Problem[] => {
    const path = `figures.${id}`
    const setting = byId.get(id)
    if (setting === undefined) {
      const message = `There is no figure called ${id}; figures.own names them all.`
      return [{ code: 'invalid', message, path }]
    }
    const message = value === null ? null : wrongWith(setting, value)
    return message === null ? [] : [{ code: 'invalid', message, path }]
  })
}

function wrongWith(setting: Setting, value: number): string | null {
  const { says, least, most, unit } = setting
  const said = (figure: number) => inWords(figure, unit)
  if (value < least || value > most) {
    return `${says} must be between ${said(least)} and ${said(most)}; it was ${said(value)}.`
  }
  if (Number.isInteger(value)) return null
  if (unit.startsWith('Pence')) return `${says} must be in whole pence; it was ${said(value)}.`
  if (unit === 'BasisPoints')
    return `${says} must be in whole hundredths of a percent; it was ${said(value)}.`
  return countsWholes(setting) ? `${says} must be a whole number; it was ${said(value)}.` : null
}

/** Days, years and things that are counted from one up. */
function countsWholes({ unit, least }: Setting): boolean {
  return unit === 'days' || unit === 'Year' || (unit === 'Count' && least === 1)
}

/** A figure in the words that it is typed in: money in pounds, shares in percent. */
function inWords(value: number, unit: string): string {
  if (unit.startsWith('Pence')) return `£${(value / 100).toFixed(Number.isInteger(value) ? 2 : 3)}`
  if (unit === 'BasisPoints') return `${value / 100} %`
  return String(value)
}
