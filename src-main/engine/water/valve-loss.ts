import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { waterProperties } from './water-properties.ts'

export type ValveLossInput = {
  readonly kvM3PerH: number
  readonly litresPerMinute: number
  readonly meanC: number
}
export type ValveLossAnswer = {
  readonly pa: number
  readonly densityKgPerM3: number
  readonly why: Derivation
}
export type ValveKvInput = { readonly litresPerMinute: number; readonly pa: number; readonly meanC: number }
export type ValveKvAnswer = {
  readonly kvM3PerH: number
  readonly densityKgPerM3: number
  readonly why: Derivation
}

const standard = 'IEC 60534-2-1, incompressible, turbulent, not choked'
const m3PerHInLPerMin = 0.06
/** A Kv below or above these is no valve of a house. */
const leastKvM3PerH = 0.0001
const mostKvM3PerH = 10_000
const leastLitresPerMinute = 1e-9
const mostLitresPerMinute = 1_000_000
/** Less pressure than this is none. */
const leastPa = 1e-6
const mostPa = 1e8

type Water = { readonly litresPerMinute: number; readonly densityKgPerM3: number }

/**
 * The bare equation of a valve's loss, Pa: dp [bar] = (q / Kv)^2 rho / 1000, with q in m3/h.
 * Throws for a figure not above 0, and where the loss passes what can be reckoned: `valveLoss` refuses those first.
 *
 * @param valve Kv in m3/h at 1 bar, flow in L/min, density in kg/m3
 * @source IEC 60534-2-1 (turbulent, not choked), density beside 1000 kg/m3
 * @example valveLossPa({ kvM3PerH: 0.6, litresPerMinute: 86 / 60, densityKgPerM3: 1000 }) // => 2054
 */
export function valveLossPa(valve: Water & { readonly kvM3PerH: number }): number {
  const m3PerH = valve.litresPerMinute * m3PerHInLPerMin
  const pa = 100 * valve.densityKgPerM3 * (m3PerH / valve.kvM3PerH) ** 2
  if (valve.kvM3PerH > 0 && m3PerH > 0 && Number.isFinite(pa)) return pa
  throw new Error(`No loss of a valve of Kv ${valve.kvM3PerH} at ${valve.litresPerMinute} L/min`)
}

/**
 * The bare equation turned round, the Kv that loses so much: Kv = q sqrt(rho / 1000 / dp [bar]), m3/h.
 * Throws for a figure not above 0, and where Kv passes what can be reckoned: `valveKv` refuses those first.
 *
 * @param valve flow in L/min, pressure to lose in Pa, density in kg/m3
 * @source IEC 60534-2-1 (turbulent, not choked), density beside 1000 kg/m3
 * @example valveKvM3PerH({ litresPerMinute: 50, pa: 300000, densityKgPerM3: 1000 }) // => 1.7
 */
export function valveKvM3PerH(valve: Water & { readonly pa: number }): number {
  const m3PerH = valve.litresPerMinute * m3PerHInLPerMin
  const kvM3PerH = m3PerH * Math.sqrt((100 * valve.densityKgPerM3) / valve.pa)
  if (valve.pa > 0 && m3PerH > 0 && Number.isFinite(kvM3PerH)) return kvM3PerH
  throw new Error(`No Kv that loses ${valve.pa} Pa at ${valve.litresPerMinute} L/min`)
}

/**
 * The pressure that a valve takes, Pa: dp [bar] = (q / Kv)^2 rho / 1000. At a trickle, where the water runs in layers, a real
 * valve takes more.
 * Refuses a Kv outside 0.0001 to 10000 m3/h, a flow outside 0.000000001 to 1000000 L/min, and water outside 1 to 110 degrees.
 *
 * @param input Kv in m3/h at 1 bar, flow in L/min, mean temperature of the water in degrees Celsius
 * @source IEC 60534-2-1; water by `waterProperties`
 * @example valveLoss({ kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 }).value.pa // => 2212
 */
export function valveLoss(input: ValveLossInput): Outcome<ValveLossAnswer> {
  const { kvM3PerH, litresPerMinute } = input
  const wrong = refuseUnlessFinite(input) ?? kvProblem(kvM3PerH) ?? flowProblem(litresPerMinute)
  if (wrong !== null) return wrong
  const water = waterAt(input.meanC)
  if (!water.ok) return water
  const { densityKgPerM3, densityWhy } = water.value
  const pa = valveLossPa({ kvM3PerH, litresPerMinute, densityKgPerM3 })
  const why = because('Pressure the valve takes: (flow in m³/h / Kv)² × density / 1000, in bar', pa, {
    unit: 'Pa',
    source: standard,
    from: [given('Kv', kvM3PerH, 'm³/h'), given('Water flow', litresPerMinute, 'L/min'), densityWhy],
  })
  return acceptFinite({ pa, densityKgPerM3, why }, 'Such a flow through such a valve cannot be reckoned.')
}

/**
 * The Kv that a valve must have to take so much pressure: Kv = q sqrt(rho / 1000 / dp [bar]), m3/h at 1 bar.
 * Refuses a pressure outside 0.000001 to 100000000 Pa, a flow outside 0.000000001 to 1000000 L/min, and water outside 1 to 110
 * degrees.
 *
 * @param input flow in L/min, pressure to take in Pa, mean temperature of the water in degrees Celsius
 * @source IEC 60534-2-1; water by `waterProperties`
 * @example valveKv({ litresPerMinute: 1.5, pa: 2212.2, meanC: 60 }).value.kvM3PerH // => 0.600
 */
export function valveKv(input: ValveKvInput): Outcome<ValveKvAnswer> {
  const { litresPerMinute, pa } = input
  const wrong = refuseUnlessFinite(input) ?? pressureProblem(pa) ?? flowProblem(litresPerMinute)
  if (wrong !== null) return wrong
  const water = waterAt(input.meanC)
  if (!water.ok) return water
  const { densityKgPerM3, densityWhy } = water.value
  const kvM3PerH = valveKvM3PerH({ litresPerMinute, pa, densityKgPerM3 })
  const why = because('Kv: flow in m³/h × √(density / 1000 / pressure in bar)', kvM3PerH, {
    unit: 'm³/h',
    source: standard,
    from: [given('Water flow', litresPerMinute, 'L/min'), given('Pressure to take', pa, 'Pa'), densityWhy],
  })
  return acceptFinite({ kvM3PerH, densityKgPerM3, why }, 'Such a flow at such a pressure cannot be reckoned.')
}

/**
 * A refusal of a Kv that no valve of a house has; null when it is sound.
 * @param kvM3PerH Kv in m3/h at 1 bar, 0.0001 to 10000
 * @source practice, no published source
 * @example kvProblem(0).problems[0].path // => 'kvM3PerH'
 */
export function kvProblem(kvM3PerH: number): Outcome<never> | null {
  if (kvM3PerH >= leastKvM3PerH && kvM3PerH <= mostKvM3PerH) return null
  const message = `Kv must be ${leastKvM3PerH} to ${mostKvM3PerH} m³/h; it was ${kvM3PerH}.`
  return refuse('invalid', message, 'kvM3PerH')
}

function flowProblem(litresPerMinute: number): Outcome<never> | null {
  if (litresPerMinute >= leastLitresPerMinute && litresPerMinute <= mostLitresPerMinute) return null
  const message = `The flow must be ${leastLitresPerMinute.toFixed(9)} to ${mostLitresPerMinute} L/min; it was ${litresPerMinute}.`
  return refuse('invalid', message, 'litresPerMinute')
}

function pressureProblem(pa: number): Outcome<never> | null {
  if (pa >= leastPa && pa <= mostPa) return null
  return refuse('invalid', `The pressure must be ${leastPa.toFixed(6)} to ${mostPa} Pa; it was ${pa}.`, 'pa')
}

function waterAt(meanC: number): ReturnType<typeof waterProperties> {
  if (meanC >= 1 && meanC <= 110) return waterProperties({ waterC: meanC })
  return refuse('impossible', `Water must be between 1 and 110 °C; it was ${meanC} °C.`, 'meanC')
}
