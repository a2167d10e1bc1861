/** The pattern of a firm that chose none. */
export const usualNumberPattern = 'Q-{year}-{nnnn}'

/**
 * The series that a number of this day belongs to: the pattern with the year in it. A new year begins a new series where the
 * pattern has the year.
 * @param pattern as the firm wrote it, such as `Q-{year}-{nnnn}`
 * @param onDay the day of issue, YYYY-MM-DD
 * @source practice, no published source
 * @example seriesOf('Q-{year}-{nnnn}', '2026-11-25') // => 'Q-2026-{nnnn}'
 */
export function seriesOf(pattern: string, onDay: string): string {
  return pattern.replace('{year}', onDay.slice(0, 4)).replace('{yy}', onDay.slice(2, 4))
}

/**
 * A number of a series, with at least as many digits as its pattern has.
 * @param series as `seriesOf` gives it
 * @param nth from 1
 * @source practice, no published source
 * @example numberIn('Q-2026-{nnnn}', 7) // => 'Q-2026-0007'
 */
export function numberIn(series: string, nth: number): string {
  return series.replace(/\{(n+)\}/, (_, digits: string) => String(nth).padStart(digits.length, '0'))
}

/**
 * The name of one revision: the number alone for the first, and the number with `-R1`, `-R2` … for those after it.
 * @param number what all revisions share
 * @param revision from 0
 * @source practice, no published source
 * @example revisionId('Q-2026-0007', 2) // => 'Q-2026-0007-R2'
 */
export function revisionId(number: string, revision: number): string {
  return revision === 0 ? number : `${number}-R${revision}`
}
