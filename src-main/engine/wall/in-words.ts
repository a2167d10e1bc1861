/**
 * A distance as a fitter reads it: whole millimetres, or one decimal where it has one.
 * @param distanceMm distance, mm, any sign
 * @source practice, no published source
 * @example mmInWords(212.04) // => "212 mm"
 */
export function mmInWords(distanceMm: number): string {
  return `${roundedMm(distanceMm)} mm`
}

/**
 * A distance rounded to a tenth of a millimetre, for print; never minus nothing.
 * @param distanceMm distance, mm, any sign
 * @source practice, no published source
 * @example roundedMm(212.06) // => 212.1
 */
export function roundedMm(distanceMm: number): number {
  const rounded = Math.round(distanceMm * 10) / 10
  return rounded === 0 ? 0 : rounded
}

/**
 * Names in a row: `A1`, `A1 and B1`, `A1, A2 and B1`.
 * @param names at least one
 * @source English
 * @example listInWords(['A1', 'A2', 'B1']) // => "A1, A2 and B1"
 */
export function listInWords(names: readonly string[]): string {
  if (names.length < 2) return names.join('')
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
