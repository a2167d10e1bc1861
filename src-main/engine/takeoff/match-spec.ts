import type { WantedSpec } from '../../domain/item.ts'

/**
 * Whether a thing's spec is what a need asks for: every wanted field equalled, or within its bound.
 * @param spec the thing's own fields
 * @param wanted the fields that matter
 * @source practice, no published source
 * @example specMatches({ thread: 'G1/2', lengthMm: 40 }, { thread: 'G1/2', lengthMm: { atLeast: 25 } }) // => true
 */
export function specMatches(spec: Readonly<Record<string, unknown>>, wanted: WantedSpec): boolean {
  return Object.entries(wanted).every(([field, want]) => {
    const found = spec[field]
    if (typeof want !== 'object') return found === want
    if (typeof found !== 'number') return false
    return 'atLeast' in want ? found >= want.atLeast : found <= want.atMost
  })
}

/**
 * A spec as one line of text, the same for equal specs whatever order their fields came in.
 * @param spec the wanted fields
 * @source practice, no published source
 * @example specKey({ b: 1, a: 'x' }) // => "a=\"x\" b=1"
 */
export function specKey(spec: WantedSpec): string {
  return Object.entries(spec)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([field, value]) => `${field}=${JSON.stringify(value)}`)
    .join(' ')
}
