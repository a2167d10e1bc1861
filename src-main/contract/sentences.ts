import type { z } from 'zod'
import type { Problem } from '../domain/outcome.ts'

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

/** What each ending of a field's name means, as a person writes it. */
const units: readonly (readonly [ending: string, written: string])[] = [
  ['WPerM2K', 'W/m²K'],
  ['M2KPerW', 'm²K/W'],
  ['WPerMK', 'W/mK'],
  ['WPerM2', 'W/m²'],
  ['WPerM3', 'W/m³'],
  ['M3PerH', 'm³/h'],
  ['PerHour', 'an hour'],
  ['PerMinute', 'a minute'],
  ['Pence', 'pence'],
  ['Litres', 'litres'],
  ['Mm', 'mm'],
  ['M2', 'm²'],
  ['M3', 'm³'],
  ['Kg', 'kg'],
  ['KW', 'kW'],
  ['Km', 'km'],
  ['Min', 'minutes'],
  ['Pa', 'Pa'],
  ['W', 'W'],
  ['C', '°C'],
  ['K', 'K'],
  ['M', 'm'],
  ['N', 'N'],
]

/** Fields whose names alone would not tell a person what is meant. */
const ownWords: Readonly<Record<string, string>> = {
  ratedW: 'rated output (W)',
  flowC: 'flow temperature (°C)',
  returnC: 'return temperature (°C)',
  roomC: 'room temperature (°C)',
  outsideC: 'outside temperature (°C)',
  meanOutsideC: 'mean outside temperature (°C)',
  uWPerM2K: 'U-value (W/m²K)',
  xMm: 'place from the left (mm)',
  yMm: 'height above the floor (mm)',
  outsideMm: 'pipe outside (mm)',
  loadW: 'heat load (W)',
  pa: 'pressure (Pa)',
  rsi: 'inside surface resistance (m²K/W)',
  rse: 'outside surface resistance (m²K/W)',
}

/** `areaM2` as `area (m²)`; `airChangesPerHour` as `air changes (an hour)`. */
export function fieldInWords(field: string): string {
  const own = ownWords[field]
  if (own !== undefined) return own
  const unit = units.find(([ending]) => field.endsWith(ending) && field.length > ending.length)
  const bare = unit === undefined ? field : field.slice(0, -unit[0].length)
  const words = bare.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase()
  return unit === undefined ? words : `${words} (${unit[1]})`
}

/** A path as people write it: `room.elements[2].areaM2`. */
export function writtenPath(path: Path): string {
  return path.reduce<string>((written, step) => {
    if (typeof step === 'number') return `${written}[${step}]`
    return written === '' ? String(step) : `${written}.${String(step)}`
  }, '')
}

/** The problems in an input, each a sentence with the field's path. */
export function problemsIn(error: z.ZodError, input: unknown): readonly Problem[] {
  return error.issues.flatMap((issue) => problemsOf(issue, [], input))
}

function problemsOf(issue: Issue, above: Path, input: unknown): readonly Problem[] {
  const path = [...above, ...issue.path]
  if (issue.code === 'invalid_union' && issue.errors.length > 0)
    return nearestBranch(issue.errors, path, input)
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((unknown) =>
      problem(`There is no field called ${unknown} here; take it out or check its spelling.`, [
        ...path,
        unknown,
      ]),
    )
  }
  return [problem(sentence(issue, path, input), path)]
}

/** Of a union's branches, the one that the input comes nearest to. */
function nearestBranch(
  branches: readonly (readonly Issue[])[],
  path: Path,
  input: unknown,
): readonly Problem[] {
  const values = branches.map(valuesOnly)
  if (values.every((one) => one !== null)) {
    const all = values.flat().join(', ')
    return [problem(`${subjectOf(path)} must be one of ${all}${was(valueAt(input, path))}.`, path)]
  }
  const distance = (branch: readonly Issue[]) =>
    branch.reduce(
      (sum, issue) => sum + (issue.code === 'unrecognized_keys' ? issue.keys.length : 1) * weight(issue),
      0,
    )
  const nearest = branches.toSorted((a, b) => distance(a) - distance(b))[0] ?? []
  return nearest.flatMap((issue) => problemsOf(issue, path, input))
}

/** The values that a branch takes, when it takes nothing but these; null when it is of another kind. */
function valuesOnly(branch: readonly Issue[]): readonly string[] | null {
  const [issue, ...others] = branch
  if (issue?.code !== 'invalid_value' || others.length > 0 || issue.path.length > 0) return null
  return issue.values.map((value) => String(value))
}

/** A wrong kind of thing is further away than a field with a wrong value. */
function weight(issue: Issue): number {
  if (issue.path.length === 0) return 1
  return issue.code === 'invalid_value' || issue.code === 'invalid_type' ? 3 : 1
}

function problem(message: string, path: Path): Problem {
  return path.length === 0
    ? { code: 'invalid', message }
    : { code: 'invalid', message, path: writtenPath(path) }
}

function sentence(issue: Issue, path: Path, input: unknown): string {
  const found = valueAt(input, path)
  const subject = subjectOf(path)
  switch (issue.code) {
    case 'invalid_type':
      return found === undefined
        ? `${subject} is missing; give ${kindInWords(issue.expected)}.`
        : `${subject} must be ${kindInWords(issue.expected)}, not ${shown(found)}.`
    case 'too_small':
      if (issue.origin === 'string') return `${subject} must be filled in.`
      return `${subject} must be ${bound(issue.origin, { end: 'least', limit: issue.minimum, open: issue.inclusive === false })}${was(found)}.`
    case 'too_big':
      return `${subject} must be ${bound(issue.origin, { end: 'most', limit: issue.maximum, open: issue.inclusive === false })}${was(found)}.`
    case 'invalid_value':
      return `${subject} must be one of ${issue.values.map((value) => String(value)).join(', ')}${was(found)}.`
    case 'invalid_format':
      return `${subject} must be ${formatInWords(issue.format)}${was(found)}.`
    case 'invalid_union':
      return `${subject} is not one of the kinds that fit here${was(found)}.`
    default:
      return `${subject} is not right${was(found)}.`
  }
}

function subjectOf(path: Path): string {
  const named = path.findLast((step) => typeof step === 'string')
  if (named === undefined) return 'The input'
  const words = fieldInWords(named)
  const last = path.at(-1)
  const nth = typeof last === 'number' ? ` ${last + 1}` : ''
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${nth}`
}

function kindInWords(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    number: 'a number',
    int: 'a whole number',
    string: 'a text',
    boolean: 'true or false',
    array: 'a list',
    object: 'an object with fields',
    record: 'an object with fields',
  }
  return words[expected] ?? expected
}

type Limit = { readonly end: 'least' | 'most'; readonly limit: number | bigint; readonly open: boolean }

function bound(origin: string, { end, limit, open }: Limit): string {
  if (origin === 'string') return `no longer than ${limit} characters`
  if (origin === 'array') return `a list of at ${end} ${limit}`
  if (open) return end === 'least' ? `more than ${limit}` : `less than ${limit}`
  return `at ${end} ${limit}`
}

function formatInWords(format: string): string {
  const words: Readonly<Record<string, string>> = {
    date: 'a calendar day such as 2026-11-25',
    datetime: 'a date and time such as 2026-11-25T19:00:00Z',
    regex: 'letters, digits, dots and dashes only',
    base64: 'base64 text',
  }
  return words[format] ?? `a ${format}`
}

function was(found: unknown): string {
  return found === undefined ? '' : `; it was ${shown(found)}`
}

function shown(found: unknown): string {
  if (typeof found === 'number' || typeof found === 'boolean') return String(found)
  if (found === null) return 'null'
  if (typeof found === 'string') return `"${found.length > 60 ? `${found.slice(0, 60)}…` : found}"`
  if (Array.isArray(found)) return `a list of ${found.length}`
  return typeof found === 'object' ? 'an object' : `a ${typeof found}`
}

function valueAt(input: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined,
    input,
  )
}
