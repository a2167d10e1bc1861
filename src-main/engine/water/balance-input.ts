import type { Outcome, Problem } from '../../domain/outcome.ts'
import { kvProblem } from './valve-loss.ts'
import { tableFault } from './valve-opening.ts'
import type { ValveRow } from './valve-opening.ts'

/** A length of pipe that carries all that hangs on it: flow and return together, from the leg before it to its end. */
export type BalanceLeg = {
  readonly id: string
  /** The leg that feeds this one; null at the pump. */
  readonly from: string | null
  readonly pipe: { readonly insideMm: number; readonly lengthM: number; readonly roughnessMm: number }
  readonly zetas?: readonly number[] | undefined
}
export type Lockshield = {
  /** The valve's own table, from closed to open. */
  readonly table?: readonly ValveRow[] | undefined
  /** What the table counts in; turns when absent. */
  readonly unit?: string | undefined
}
/** An emitter at the end of a leg, with its valves. */
export type BalanceCircuit = {
  readonly id: string
  readonly legId: string
  readonly watts: number
  readonly emitterLossPa?: number | undefined
  /** The thermostatic valve. */
  readonly valveKvM3PerH?: number | undefined
  readonly lockshield?: Lockshield | undefined
}
export type BalanceInput = {
  readonly legs: readonly BalanceLeg[]
  readonly circuits: readonly BalanceCircuit[]
  readonly flowC: number
  readonly returnC: number
  /** The head that the pump can give at this flow, when it is known. */
  readonly availablePa?: number | undefined
}

/**
 * Everything that keeps legs and circuits from being a tree with sound valves: an id given twice, a leg or circuit that hangs
 * on a leg that is not there, legs that go round, a Kv, a loss or a table that has no sense, and nothing to balance.
 *
 * @param input legs and circuits; each circuit names the leg it hangs on
 * @source practice, no published source
 * @example balanceProblems({ legs: [{ id: 'a', from: 'b' }], circuits: [] })[0].path // => 'circuits'
 */
export function balanceProblems(input: BalanceInput): readonly Problem[] {
  const { legs, circuits, availablePa } = input
  const none =
    circuits.length === 0 ? [invalid('There must be at least one circuit to balance.', 'circuits')] : []
  const noHead =
    availablePa === undefined || availablePa > 0
      ? []
      : [invalid(`The pump's head must be more than 0 Pa; it was ${availablePa}.`, 'availablePa')]
  return [
    ...none,
    ...noHead,
    ...namedTwice('legs', legs),
    ...namedTwice('circuits', circuits),
    ...lostLegs(legs),
    ...ringsIn(legs),
    ...circuits.flatMap((circuit, index) => circuitProblems(circuit, index, legs)),
  ]
}

/**
 * For each leg's id, the places of the legs on the way from it up to the pump, itself first.
 * Throws for legs that go round or hang on nothing: `balanceProblems` finds those first.
 *
 * @param legs the legs of a tree
 * @source practice, no published source
 * @example legsUpward([{ id: 'main', from: null }, { id: 'tail', from: 'main' }]).get('tail') // => [1, 0]
 */
export function legsUpward(legs: readonly BalanceLeg[]): ReadonlyMap<string, readonly number[]> {
  const placeOf = new Map(legs.map(({ id }, index) => [id, index]))
  return new Map(
    legs.map(({ id }) => {
      const way: number[] = []
      for (let at: string | null = id; at !== null;) {
        const place = placeOf.get(at)
        const leg: BalanceLeg | undefined = place === undefined ? undefined : legs[place]
        if (place === undefined || leg === undefined || way.length >= legs.length) {
          throw new Error(`The way from leg ${id} does not end at the pump`)
        }
        way.push(place)
        at = leg.from
      }
      return [id, way]
    }),
  )
}

function invalid(message: string, path: string): Problem {
  return { code: 'invalid', message, path }
}

function namedTwice(what: 'legs' | 'circuits', all: readonly { readonly id: string }[]): readonly Problem[] {
  const first = new Map<string, number>()
  return all.flatMap(({ id }, index) => {
    const before = first.get(id)
    if (before === undefined) {
      first.set(id, index)
      return []
    }
    const message = `There are two ${what} called ${id}; give each its own name.`
    return [invalid(message, `${what}[${index}].id`)]
  })
}

function lostLegs(legs: readonly BalanceLeg[]): readonly Problem[] {
  const known = new Set(legs.map(({ id }) => id))
  return legs.flatMap(({ id, from }, index) => {
    if (from === null || known.has(from)) return []
    const message = `Leg ${id} comes from ${from}, and there is no leg of that name; name one, or null for the pump.`
    return [invalid(message, `legs[${index}].from`)]
  })
}

/** One problem for each ring, at the first of its legs. */
function ringsIn(legs: readonly BalanceLeg[]): readonly Problem[] {
  const feeds = new Map(legs.map(({ id, from }) => [id, from]))
  const done = new Set<string>()
  return legs.flatMap(({ id }) => {
    const way: string[] = []
    let at: string | null = id
    while (at !== null && !done.has(at) && !way.includes(at)) {
      way.push(at)
      at = feeds.get(at) ?? null
    }
    for (const passed of way) done.add(passed)
    if (at === null || !way.includes(at)) return []
    const ring = way.slice(way.indexOf(at))
    const place = legs.findIndex((leg) => ring.includes(leg.id))
    const message = `Legs ${ring.join(', ')} feed each other in a ring; one of them must come from the pump (null).`
    return [invalid(message, `legs[${place}].from`)]
  })
}

function circuitProblems(
  circuit: BalanceCircuit,
  index: number,
  legs: readonly BalanceLeg[],
): readonly Problem[] {
  const at = `circuits[${index}]`
  const { id, legId, emitterLossPa, valveKvM3PerH, lockshield } = circuit
  const lost = legs.some((leg) => leg.id === legId)
    ? []
    : [invalid(`Circuit ${id} hangs on leg ${legId}, and there is no leg of that name.`, `${at}.legId`)]
  const less =
    emitterLossPa === undefined || emitterLossPa >= 0
      ? []
      : [invalid(`An emitter's loss must be 0 Pa or more; it was ${emitterLossPa}.`, `${at}.emitterLossPa`)]
  const kv = valveKvM3PerH === undefined ? null : kvProblem(valveKvM3PerH)
  const fault = lockshield?.table === undefined ? null : tableFault(lockshield.table)
  return [
    ...lost,
    ...less,
    ...problemsOf(kv).map(({ message }) => invalid(message, `${at}.valveKvM3PerH`)),
    ...(fault === null ? [] : [invalid(fault.message, `${at}.lockshield.table[${fault.row}]`)]),
  ]
}

function problemsOf(outcome: Outcome<never> | null): readonly Problem[] {
  return outcome === null || outcome.ok ? [] : outcome.problems
}
