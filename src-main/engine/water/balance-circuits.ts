import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { BalanceCircuit } from './balance-input.ts'
import { valveKvM3PerH, valveLossPa } from './valve-loss.ts'
import { valveOpening } from './valve-opening.ts'

/** What a circuit loses before its lockshield is turned down. */
export type OpenCircuit = {
  readonly circuit: BalanceCircuit
  readonly litresPerMinute: number
  readonly densityKgPerM3: number
  readonly pathPa: number
  readonly emitterPa: number
  readonly valvePa: number
  /** Without the lockshield. */
  readonly fixedPa: number
  /** The lockshield's Kv when wide open, and what it then loses; null where it has no table. */
  readonly wideOpen: { readonly kvM3PerH: number; readonly pa: number } | null
  /** With the lockshield wide open, as far as that is known. */
  readonly openPa: number
}
export type BalancedCircuit = {
  /** What the lockshield takes, Pa. */
  readonly lockshieldPa: number
  readonly lossPa: number
  /** What its Kv must be; null where it stays wide open and nobody knows its Kv. */
  readonly kvM3PerH: number | null
  /** In the table's own unit; null where there is no table, or it does not reach so low. */
  readonly opening: { readonly at: number; readonly unit: string } | null
  readonly why: Derivation
}

/** Less than this share of the index loss is nothing that a lockshield is turned for. */
const worthTurning = 0.001
const leastPa = 1e-6

/**
 * What a circuit loses with its lockshield wide open: legs on the way, emitter, thermostatic valve, and the lockshield by the
 * last row of its table. Where it has no table its own loss is not known, and counts as none.
 *
 * @param circuit the emitter and its valves
 * @param known its flow in L/min, density in kg/m3, and what the legs on its way lose, in Pa
 * @source losses in series add; valves by IEC 60534-2-1
 * @example openCircuit({ id: 'a', emitterLossPa: 100, valveKvM3PerH: 0.6 }, { litresPerMinute: 86 / 60, densityKgPerM3: 1000, pathPa: 500 }).openPa // => 2654
 */
export function openCircuit(
  circuit: BalanceCircuit,
  known: { readonly litresPerMinute: number; readonly densityKgPerM3: number; readonly pathPa: number },
): OpenCircuit {
  const { emitterLossPa: emitterPa = 0, valveKvM3PerH: trvKv, lockshield } = circuit
  const valvePa = trvKv === undefined ? 0 : valveLossPa({ ...known, kvM3PerH: trvKv })
  const fixedPa = known.pathPa + emitterPa + valvePa
  const last = lockshield?.table?.at(-1)
  const wideOpen =
    last === undefined
      ? null
      : { kvM3PerH: last.kvM3PerH, pa: valveLossPa({ ...known, kvM3PerH: last.kvM3PerH }) }
  return { circuit, ...known, emitterPa, valvePa, fixedPa, wideOpen, openPa: fixedPa + (wideOpen?.pa ?? 0) }
}

/**
 * The Kv and the opening at which a circuit loses as much as the index circuit: the lockshield takes what the rest leaves.
 * Within a thousandth of the index loss it stays wide open.
 *
 * @param open what the circuit loses wide open
 * @param targetPa the index circuit's loss in Pa, at least as much as the circuit's own wide open
 * @source circuits in parallel lose the same; IEC 60534-2-1
 * @example balancedCircuit({ circuit: { id: 'a' }, litresPerMinute: 86 / 60, densityKgPerM3: 1000, fixedPa: 946, wideOpen: null }, 3000).kvM3PerH // => 0.600
 */
export function balancedCircuit(open: OpenCircuit, targetPa: number): BalancedCircuit {
  const kvM3PerH = kvToSet(open, targetPa)
  const lockshieldPa = kvM3PerH === null ? 0 : valveLossPa({ ...open, kvM3PerH })
  const lossPa = open.fixedPa + lockshieldPa
  const { lockshield } = open.circuit
  const at =
    kvM3PerH === null || lockshield?.table === undefined
      ? null
      : valveOpening({ kvM3PerH, table: lockshield.table })
  const opening = at === null ? null : { at, unit: lockshield?.unit ?? 'turns' }
  return {
    lockshieldPa,
    lossPa,
    kvM3PerH,
    opening,
    why: whyBalanced(open, targetPa, { kvM3PerH, lossPa, opening }),
  }
}

function kvToSet({ fixedPa, openPa, wideOpen, ...water }: OpenCircuit, targetPa: number): number | null {
  const leftPa = targetPa - fixedPa
  const stays = targetPa - openPa <= Math.max(leastPa, worthTurning * targetPa)
  if (stays || leftPa <= leastPa) return wideOpen?.kvM3PerH ?? null
  const wanted = valveKvM3PerH({ ...water, pa: leftPa })
  return wideOpen === null ? wanted : Math.min(wanted, wideOpen.kvM3PerH)
}

function whyBalanced(
  open: OpenCircuit,
  targetPa: number,
  { kvM3PerH, lossPa, opening }: Omit<BalancedCircuit, 'why' | 'lockshieldPa'>,
): Derivation {
  const pa = (says: string, value: number) => given(says, value, 'Pa')
  const from = [
    pa('The index circuit loses', targetPa),
    pa('The legs on the way lose', open.pathPa),
    pa('The emitter loses', open.emitterPa),
    pa('The thermostatic valve loses', open.valvePa),
    given('Water flow', open.litresPerMinute, 'L/min'),
    given('Density of water', open.densityKgPerM3, 'kg/m³'),
  ]
  if (kvM3PerH === null) {
    return because('The lockshield stays wide open; this is what the circuit loses', lossPa, {
      unit: 'Pa',
      from,
    })
  }
  const source = 'IEC 60534-2-1'
  const kv = because('Kv of the lockshield: it takes what the rest leaves of the index loss', kvM3PerH, {
    unit: 'm³/h',
    source,
    from,
  })
  if (opening === null) return kv
  const rows = (open.circuit.lockshield?.table ?? []).map(({ turns, kvM3PerH: rowKv }) =>
    given(`Kv at ${turns} ${opening.unit}`, rowKv, 'm³/h'),
  )
  return because("Opening: straight between the rows of the valve's table", opening.at, {
    unit: opening.unit,
    from: [kv, ...rows],
  })
}
