import type { Derivation } from '../src-main/domain/derivation.ts'

/**
 * A reason read aloud: a line for each figure, two spaces further in for what went into it, with unit and source where it has
 * them. Numbers are read to six figures, so that a hand-worked one can stand beside them.
 */
export function readOut(why: Derivation): readonly string[] {
  return linesOf(why, '')
}

function linesOf({ says, value, unit, source, from }: Derivation, inset: string): readonly string[] {
  const shown = typeof value === 'number' ? String(Number(value.toPrecision(6))) : value
  const line = `${inset}${says}: ${shown}${unit === undefined ? '' : ` ${unit}`}${source === undefined ? '' : ` (${source})`}`
  return [line, ...from.flatMap((one) => linesOf(one, `${inset}  `))]
}

/** Every reason in an answer, wherever it stands, with its path. */
export function reasonsIn(
  answer: unknown,
  path = '',
): readonly { readonly path: string; readonly why: Derivation }[] {
  if (typeof answer !== 'object' || answer === null) return []
  if (isReason(answer)) return [{ path, why: answer }]
  return Object.entries(answer).flatMap(([key, inner]) => reasonsIn(inner, `${path}.${key}`))
}

function isReason(thing: object): thing is Derivation {
  return 'says' in thing && 'value' in thing && 'from' in thing && Array.isArray(thing.from)
}

/** The reason itself and every reason below it. */
export function nodesOf(why: Derivation): readonly Derivation[] {
  return [why, ...why.from.flatMap(nodesOf)]
}

/** Every number in plain data, those written inside its words too. */
export function numbersIn(data: unknown): ReadonlySet<number> {
  if (typeof data === 'number') return new Set([data])
  if (typeof data === 'string') return new Set((data.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number))
  if (typeof data !== 'object' || data === null) return new Set()
  return new Set(Object.values(data).flatMap((inner) => [...numbersIn(inner)]))
}

/** The reasons at the ends: those that nothing went into. */
export function leafReasons(why: Derivation): readonly Derivation[] {
  return nodesOf(why).filter(({ from }) => from.length === 0)
}

/** Units that a reason may be told in: signs of the trade, and the names that settings go by. */
const units: ReadonlySet<string> = new Set(
  [
    'W kW W/m² W/m³ W/m²K W/mK m²K/W Wh/m³K J/kgK K °C degrees',
    'mm m m² m³ m²/m m/s m/s2 L L/min L/kW L/L kg kg/s kg/m³ m³/h Pa Pa/m Pa·s N',
    'pence sum each min days lines km turns marks metre litre',
    'Mm M Kg L C K W Pa N Min Ratio Count Pence BasisPoints Year Km MPerS LPerKW HoursPerDay Hours',
  ].flatMap((line) => line.split(' ')),
).add('an hour')

/** What is wrong with how one reason is put: its words, its figure, its unit and its source. */
export function faultsOf(why: Derivation): readonly string[] {
  const { says, value, unit, source } = why
  const told = (fault: string) => [`${fault}: “${says}” = ${value} ${unit ?? ''} (${source ?? ''})`]
  return [
    ...(says.trim() === says && says.length > 1 ? [] : told('says nothing, or begins or ends with a blank')),
    ...(/undefined|null|NaN|Infinity|\[object|\$\{|Stryker/.test(says) ? told('lets the program show') : []),
    ...(/ {2}| [.,;:](?: |$)|\.\.|,,|;;|\(\)/.test(says) ? told('has a gap in its sentence') : []),
    ...(/[:;,×/=(-]$/.test(says) ? told('breaks off') : []),
    ...((says.match(/\(/g)?.length ?? 0) === (says.match(/\)/g)?.length ?? 0)
      ? []
      : told('leaves a bracket open')),
    ...((typeof value === 'number' ? Number.isFinite(value) : value.trim() !== '')
      ? []
      : told('has no figure')),
    ...(unit === undefined || units.has(unit) ? [] : told('has a unit that nobody knows')),
    ...(source === undefined || source.trim().length > 2 ? [] : told('has a blank for its source')),
  ]
}

/** The numbers that a sentence states, but not those inside a name, an equation's own or a standard's. */
export function numbersStated({ says }: Derivation): readonly number[] {
  return [
    ...says.matchAll(
      /(?<![\w./:×-] ?)\d+(?:\.\d+)?(?= (?:mm|m|K|°C|W|L|L\/min|Pa|kg|N|pence|minutes|days)\b)/g,
    ),
  ].map(([number]) => Number(number))
}
