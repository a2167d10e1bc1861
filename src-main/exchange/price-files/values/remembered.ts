/** Entries that are kept at most: columns of days, groups and pack sizes say the same few things over and over. */
const mostKept = 5000

/** The same answers as `read`, kept for texts that come again. `read` must depend on its text alone. */
export function remembered<T>(read: (text: string) => T): (text: string) => T {
  const kept = new Map<string, { readonly value: T }>()
  return (text) => {
    const known = kept.get(text)
    if (known !== undefined) return known.value
    const value = read(text)
    if (kept.size < mostKept && text.length <= 100) kept.set(text, { value })
    return value
  }
}
