type Step = string | number

/** `rooms[2].walls[0].widthMm` as its steps; a name with dots in it stands in quotation marks: `figures["a.b"]`. */
export function stepsOf(path: string): readonly Step[] {
  return [...path.matchAll(/"([^"]*)"|[^.[\]"]+/g)].map(([step, quoted]) =>
    quoted !== undefined ? quoted : /^\d+$/.test(step) ? Number(step) : step,
  )
}

/** What lies at a path, or undefined. */
export function valueAt(whole: unknown, path: string): unknown {
  return stepsOf(path).reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null ? (value as Record<Step, unknown>)[step] : undefined,
    whole,
  )
}

/** The same thing with one value changed; undefined takes the field, or the list's entry, away. */
export function withValue<T>(whole: T, path: string, value: unknown): T {
  return placed(whole, stepsOf(path), value) as T
}

function placed(whole: unknown, steps: readonly Step[], value: unknown): unknown {
  const [step, ...rest] = steps
  if (step === undefined) return value
  return typeof step === 'number'
    ? inList(whole, [step, ...rest], value)
    : inRecord(whole, [step, ...rest], value)
}

function inList(whole: unknown, steps: readonly [number, ...Step[]], value: unknown): unknown {
  const [at, ...rest] = steps
  const list: readonly unknown[] = Array.isArray(whole) ? whole : []
  if (rest.length === 0 && value === undefined) return list.filter((_, index) => index !== at)
  const inside = placed(list[at], rest, value)
  return at < list.length ? list.map((old, index) => (index === at ? inside : old)) : [...list, inside]
}

function inRecord(whole: unknown, steps: readonly [string, ...Step[]], value: unknown): unknown {
  const [field, ...rest] = steps
  const record = typeof whole === 'object' && whole !== null ? (whole as Record<string, unknown>) : {}
  if (rest.length > 0 || value !== undefined)
    return { ...record, [field]: placed(record[field], rest, value) }
  return Object.fromEntries(Object.entries(record).filter(([name]) => name !== field))
}
