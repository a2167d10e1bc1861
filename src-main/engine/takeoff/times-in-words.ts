/**
 * How often, in words: once, twice, then in figures.
 * @param count a whole number, 1 or more
 * @source practice, no published source
 * @example timesInWords(3) // => "3 times"
 */
export function timesInWords(count: number): string {
  if (count === 1) return 'once'
  return count === 2 ? 'twice' : `${count} times`
}
