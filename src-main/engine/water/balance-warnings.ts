import type { Figures } from '../../domain/figures.ts'
import type { BalancedCircuit, OpenCircuit } from './balance-circuits.ts'
import type { BalanceInput } from './balance-input.ts'
import type { WorkedLeg } from './balance-legs.ts'
import { valveKvM3PerH } from './valve-loss.ts'
import { velocityWarning } from './velocity-warning.ts'

export type BalanceWarning = {
  readonly kind: 'noise' | 'air' | 'idle' | 'short' | 'tight' | 'uncounted'
  readonly path: string
  readonly message: string
}
export type Worked = {
  readonly legs: readonly WorkedLeg[]
  readonly open: readonly OpenCircuit[]
  readonly circuits: readonly BalancedCircuit[]
  readonly index: OpenCircuit
}

/**
 * What to tell the fitter about a balanced house: water too fast or too slow in a leg, a leg on which nothing hangs, a circuit
 * that the pump cannot serve even wide open, a lockshield that must be tighter than its table goes, and an index circuit whose
 * lockshield has no table, so that its own loss is not in the head.
 *
 * @param input what was asked
 * @param worked the legs and circuits as worked out
 * @param figures the firm's figures: the limits of speed
 * @source practice, no published source; speeds by `velocityWarning`
 * @example balanceWarnings({ legs: [{ id: 'a', pipe: {} }], circuits: [] }, { legs: [{ id: 'a', litresPerMinute: 0, carries: [] }], open: [], circuits: [], index: { circuit: { id: 'c' }, wideOpen: {} } }, {})[0].kind // => 'idle'
 */
export function balanceWarnings(
  input: BalanceInput,
  worked: Worked,
  figures: Figures,
): readonly BalanceWarning[] {
  return [
    ...input.legs.flatMap(({ pipe }, place) => legWarning(pipe.insideMm, place, { worked, figures })),
    ...worked.open.flatMap((open, place) => [
      ...shortWarning(open, place, input.availablePa),
      ...tightWarning(open, place, worked.circuits[place]),
      ...(open === worked.index ? uncountedWarning(open, place) : []),
    ]),
  ]
}

function legWarning(
  insideMm: number,
  place: number,
  { worked, figures }: { readonly worked: Worked; readonly figures: Figures },
): readonly BalanceWarning[] {
  const leg = worked.legs[place]
  if (leg === undefined) return []
  const path = `legs[${place}]`
  if (leg.carries.length === 0) {
    return [
      {
        kind: 'idle',
        path,
        message: `Nothing hangs on leg ${leg.id}; take it out, or hang a circuit on it.`,
      },
    ]
  }
  const warning = velocityWarning({ insideMm, velocityMPerS: leg.velocityMPerS }, figures)
  return warning === null ? [] : [{ kind: warning.kind, path, message: `Leg ${leg.id}: ${warning.message}` }]
}

function shortWarning(
  open: OpenCircuit,
  place: number,
  availablePa: number | undefined,
): readonly BalanceWarning[] {
  if (availablePa === undefined || open.openPa <= availablePa) return []
  const { circuit, fixedPa, wideOpen, openPa } = open
  const leftPa = availablePa - fixedPa
  const wanted = leftPa > 0 ? valveKvM3PerH({ ...open, pa: leftPa }) : null
  const more =
    wideOpen !== null && wanted !== null
      ? ` Its lockshield would need Kv ${rounded(wanted)}, and wide open it has ${rounded(wideOpen.kvM3PerH)}.`
      : ''
  const message =
    `Circuit ${circuit.id} loses ${rounded(openPa)} Pa even wide open, and the pump gives ${rounded(availablePa)} Pa.${more} ` +
    'Wider pipe, a stronger pump or a larger temperature drop would be right.'
  return [{ kind: 'short', path: `circuits[${place}]`, message }]
}

function tightWarning(
  { circuit }: OpenCircuit,
  place: number,
  balanced: BalancedCircuit | undefined,
): readonly BalanceWarning[] {
  const least = circuit.lockshield?.table?.[0]
  const kvM3PerH = balanced?.kvM3PerH ?? null
  if (least === undefined || kvM3PerH === null || kvM3PerH >= least.kvM3PerH) return []
  const message =
    `Circuit ${circuit.id} needs Kv ${rounded(kvM3PerH)}, and its lockshield's table begins at ${rounded(least.kvM3PerH)}: ` +
    'no opening can be named. A finer valve would be right.'
  return [{ kind: 'tight', path: `circuits[${place}].lockshield.table`, message }]
}

function uncountedWarning({ circuit, wideOpen }: OpenCircuit, place: number): readonly BalanceWarning[] {
  if (wideOpen !== null) return []
  const message =
    `Circuit ${circuit.id} is the index circuit, and its lockshield has no table: what it loses wide open is not in the pump ` +
    'head. Give the table, or allow for it.'
  return [{ kind: 'uncounted', path: `circuits[${place}].lockshield`, message }]
}

function rounded(value: number): number {
  return Number(value.toPrecision(3))
}
