/** What must hold of each field of an object; those that may be absent stand apart. */
export type Fields = {
  readonly must: Readonly<Record<string, Fits>>
  readonly may: Readonly<Record<string, Fits>>
}
export type Fits = (value: unknown) => boolean

/**
 * A check of an object that was written as JSON: every field that must be there is, no other than those named, and each fits. It is the
 * same as a strict schema's answer, without the schema's copy.
 */
export function fieldsFit({ must, may }: Fields): Fits {
  const fits = new Map([...Object.entries(must), ...Object.entries(may)])
  const needed = Object.keys(must)
  return (value) => {
    if (!isObject(value)) return false
    for (const field in value) {
      if (fits.get(field)?.(value[field]) !== true) return false
    }
    return needed.every((field) => Object.hasOwn(value, field))
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** A text as it would be kept: nothing to trim off, and of such a length. */
export function isText(least: number, most: number): Fits {
  return (value) =>
    typeof value === 'string' && value.length >= least && value.length <= most && value.trim() === value
}

/** A number within bounds; `above` is the one that it may not be. */
export function isWithin({ from, above, to }: Bounds): Fits {
  const least = from ?? above ?? -Infinity
  return (value) => typeof value === 'number' && value >= least && value <= to && value !== above
}
type Bounds = { readonly to: number } & (
  | { readonly from: number; readonly above?: undefined }
  | { readonly above: number; readonly from?: undefined }
)

/** A whole number within bounds. */
export function isWhole(from: number, to: number): Fits {
  return (value) => Number.isSafeInteger(value) && (value as number) >= from && (value as number) <= to
}

export function isOneOf(words: readonly string[]): Fits {
  const known = new Set<unknown>(words)
  return (value) => known.has(value)
}

/** A list of no more than so many, each of which fits. */
export function isListOf(fits: Fits, most: number): Fits {
  return (value) => Array.isArray(value) && value.length <= most && value.every(fits)
}

/** A text of such a form. */
export function isLike(form: RegExp): Fits {
  return (value) => typeof value === 'string' && form.test(value)
}

export const isFlag: Fits = (value) => typeof value === 'boolean'
