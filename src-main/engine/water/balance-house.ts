import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { balancedCircuit, openCircuit } from './balance-circuits.ts'
import type { BalancedCircuit, OpenCircuit } from './balance-circuits.ts'
import { balanceProblems, legsUpward } from './balance-input.ts'
import type { BalanceInput } from './balance-input.ts'
import { circuitFlows, legLosses } from './balance-legs.ts'
import type { CircuitFlow, WorkedLeg } from './balance-legs.ts'
import { balanceWarnings } from './balance-warnings.ts'
import type { BalanceWarning } from './balance-warnings.ts'
import { waterProperties } from './water-properties.ts'

type SetCircuit = BalancedCircuit & {
  readonly id: string
  readonly index: boolean
  readonly litresPerMinute: number
  readonly pathPa: number
  readonly emitterPa: number
  readonly valvePa: number
}
export type HouseBalance = {
  readonly indexCircuitId: string
  readonly litresPerMinute: number
  readonly headPa: number
  /** The same head in metres of this water. */
  readonly headM: number
  /** What the pump has over the head needed, when its head is known; below 0 when it is too weak. */
  readonly sparePa?: number
  readonly legs: readonly Omit<WorkedLeg, 'carries' | 'why'>[]
  readonly circuits: readonly SetCircuit[]
  readonly warnings: readonly BalanceWarning[]
  readonly why: Derivation
}

const standardGravityMPerS2 = 9.80665
const tooMuch = 'These flows and pipes lose more than can be reckoned; check bores and watts.'

/**
 * A house in balance: the flow in each leg is the sum of what hangs on it; a circuit loses what its legs, emitter and valves
 * lose in series; the index circuit is the one that loses most wide open, and the pump must give just that; every other
 * lockshield gets the Kv that makes its circuit lose the same, and an opening where the valve has a table.
 * Refuses what `balanceProblems`, `waterFlow` and `pipeLoss` refuse.
 *
 * @param input tree of legs (length of flow and return together), circuits, flow and return in degrees Celsius, pump head in Pa
 * @param figures the firm's figures: the limits of speed
 * @source conservation of mass at each branch, equal loss of parallel circuits; Darcy-Weisbach; IEC 60534-2-1
 * @example balanceHouse({ legs: [{ id: 'a', from: null, pipe: { insideMm: 13.6, lengthM: 10, roughnessMm: 0.0015 } }], circuits: [{ id: 'c', legId: 'a', watts: 3000 }], flowC: 65, returnC: 55 }, { settings: { 'hydraulics.smallBoreMm': { value: 10 }, 'hydraulics.largeBoreMm': { value: 50 }, 'hydraulics.noiseMPerS': { value: 1 }, 'hydraulics.airMPerS': { value: 0.3 } } }).value.litresPerMinute // => 4.377
 */
export function balanceHouse(input: BalanceInput, figures: Figures): Outcome<HouseBalance> {
  const wrong = refuseUnlessFinite(input)
  if (wrong !== null) return wrong
  const problems = balanceProblems(input)
  if (problems.length > 0) return { ok: false, problems }
  const flows = circuitFlows(input)
  if (!flows.ok) return flows
  const legs = legLosses(input, flows.value)
  if (!legs.ok) return legs
  const water = waterProperties({ waterC: (input.flowC + input.returnC) / 2 })
  if (!water.ok) return water
  const { densityKgPerM3 } = water.value
  const open = openCircuits(input, { flows: flows.value, legs: legs.value, densityKgPerM3 })
  const index = open.reduce((most, one) => (one.openPa > most.openPa ? one : most))
  const headPa = index.openPa
  if (!Number.isFinite(headPa)) return refuse('impossible', tooMuch, 'circuits')
  const circuits = open.map((one) => setCircuit(one, headPa, one === index))
  const answer: HouseBalance = {
    indexCircuitId: index.circuit.id,
    litresPerMinute: totalFlow(flows.value),
    headPa,
    headM: headPa / (densityKgPerM3 * standardGravityMPerS2),
    ...(input.availablePa === undefined ? {} : { sparePa: input.availablePa - headPa }),
    legs: legs.value.map(({ carries: _carries, why: _why, ...leg }) => leg),
    circuits,
    warnings: balanceWarnings(input, { legs: legs.value, open, circuits, index }, figures),
    why: whyHead(index, wayOf(index, input, legs.value), whyFlow(input, flows.value)),
  }
  return acceptFinite(answer, tooMuch)
}

type Known = {
  readonly flows: readonly CircuitFlow[]
  readonly legs: readonly WorkedLeg[]
  readonly densityKgPerM3: number
}

function openCircuits(input: BalanceInput, { flows, legs, densityKgPerM3 }: Known): readonly OpenCircuit[] {
  const upward = legsUpward(input.legs)
  return input.circuits.map((circuit, place) => {
    const way = upward.get(circuit.legId) ?? []
    const pathPa = way.reduce((sum, leg) => sum + (legs[leg]?.lossPa ?? 0), 0)
    const litresPerMinute = flows[place]?.litresPerMinute ?? 0
    return openCircuit(circuit, { litresPerMinute, densityKgPerM3, pathPa })
  })
}

function setCircuit(open: OpenCircuit, headPa: number, index: boolean): SetCircuit {
  const { circuit, litresPerMinute, pathPa, emitterPa, valvePa } = open
  const balanced = balancedCircuit(open, headPa)
  return { id: circuit.id, index, litresPerMinute, pathPa, emitterPa, valvePa, ...balanced }
}

/** The legs from the pump to a circuit. */
function wayOf(
  { circuit }: OpenCircuit,
  input: BalanceInput,
  legs: readonly WorkedLeg[],
): readonly WorkedLeg[] {
  const way = legsUpward(input.legs).get(circuit.legId) ?? []
  return way.toReversed().flatMap((place) => legs[place] ?? [])
}

/** All the water that the pump moves: the legs' reasons name the circuits' flows, and here is how each came about. */
function whyFlow({ circuits }: BalanceInput, flows: readonly CircuitFlow[]): Derivation {
  return because('Flow that the pump moves: of all circuits', totalFlow(flows), {
    unit: 'L/min',
    from: flows.map(({ litresPerMinute, why }, place) =>
      because(`Flow of circuit ${circuits[place]?.id}`, litresPerMinute, { unit: 'L/min', from: [why] }),
    ),
  })
}

function totalFlow(flows: readonly CircuitFlow[]): number {
  return flows.reduce((sum, flow) => sum + flow.litresPerMinute, 0)
}

function whyHead(index: OpenCircuit, way: readonly WorkedLeg[], flowWhy: Derivation): Derivation {
  const { circuit, emitterPa, valvePa, wideOpen, litresPerMinute } = index
  const flow = given(`Flow of circuit ${circuit.id}`, litresPerMinute, 'L/min')
  const valve = (says: string, kvM3PerH: number, pa: number) =>
    because(says, pa, {
      unit: 'Pa',
      source: 'IEC 60534-2-1',
      from: [flow, given('Kv', kvM3PerH, 'm³/h'), given('Density of water', index.densityKgPerM3, 'kg/m³')],
    })
  const { valveKvM3PerH: kv } = circuit
  return because(
    `Pump head: what the index circuit, ${circuit.id}, loses with its lockshield wide open`,
    index.openPa,
    {
      unit: 'Pa',
      source: 'losses in series add',
      from: [
        flowWhy,
        ...way.map((leg) => leg.why),
        given('Emitter', emitterPa, 'Pa'),
        ...(kv === undefined ? [] : [valve('Thermostatic valve', kv, valvePa)]),
        ...(wideOpen === null ? [] : [valve('Lockshield, wide open', wideOpen.kvM3PerH, wideOpen.pa)]),
      ],
    },
  )
}
