import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { darcyFriction, mostRelativeRoughness } from './friction-factor.ts'
import type { Friction, Regime } from './friction-factor.ts'
import { waterProperties } from './water-properties.ts'
import type { WaterProperties } from './water-properties.ts'

export type PipeLossInput = {
  readonly insideMm: number
  readonly lengthM: number
  readonly roughnessMm: number
  readonly meanC: number
  readonly litresPerMinute: number
  readonly zetas?: readonly number[] | undefined
}
export type PipeLossAnswer = {
  readonly totalPa: number
  readonly perMetrePa: number
  readonly velocityMPerS: number
  readonly reynolds: number
  readonly frictionFactor: number
  readonly regime: Regime
  readonly why: Derivation
}

const leastReynolds = 1e-9
const mostVelocityMPerS = 1e6

/**
 * The pressure that a length of pipe and its fittings take: Pa = f (L / D) rho v^2 / 2 + sum(zeta) rho v^2 / 2, with
 * v = 4 Q / (pi D^2), Re = rho v D / mu, and f of `darcyFriction`.
 * Refuses a bore, length or flow not above 0, a roughness below 0 or past 0.05 of the bore, a zeta below 0, water outside
 * 1 to 110 degrees Celsius, and a flow and bore that have no sense together (Re under 0.000000001, v over 1000 km/s).
 *
 * @param input bore and roughness in mm, length in m, mean temperature in degrees Celsius, L/min, zeta of each fitting
 * @source Darcy-Weisbach (from memory); friction as in `darcyFriction`; water by `waterProperties`
 * @example pipeLoss({ insideMm: 13.6, lengthM: 1, roughnessMm: 0.0015, meanC: 60, litresPerMinute: 5 }).value.perMetrePa // => 325.7
 */
export function pipeLoss(input: PipeLossInput): Outcome<PipeLossAnswer> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const water = waterProperties({ waterC: input.meanC })
  if (!water.ok) return water
  const boreM = input.insideMm / 1000
  const velocityMPerS = input.litresPerMinute / 60_000 / ((Math.PI / 4) * boreM * boreM)
  const reynolds = (water.value.densityKgPerM3 * velocityMPerS * boreM) / water.value.viscosityPaS
  if (!(reynolds >= leastReynolds && velocityMPerS <= mostVelocityMPerS)) return senseless(input)
  const friction = darcyFriction({ reynolds, relativeRoughness: input.roughnessMm / input.insideMm })
  const velocityPa = (water.value.densityKgPerM3 * velocityMPerS * velocityMPerS) / 2
  const perMetrePa = (friction.frictionFactor / boreM) * velocityPa
  const fittingsPa = (input.zetas ?? []).reduce((sum, zeta) => sum + zeta, 0) * velocityPa
  const totalPa = perMetrePa * input.lengthM + fittingsPa
  const worked = { velocityMPerS, reynolds, friction, velocityPa, perMetrePa, fittingsPa, totalPa }
  const why = whyOf(input, water.value, worked)
  return acceptFinite(
    { totalPa, perMetrePa, velocityMPerS, reynolds, ...friction, why },
    'Such a flow through such a pipe loses more than can be reckoned; check bore and flow.',
  )
}

type Worked = {
  readonly velocityMPerS: number
  readonly reynolds: number
  readonly friction: Friction
  readonly velocityPa: number
  readonly perMetrePa: number
  readonly fittingsPa: number
  readonly totalPa: number
}

const frictionSays: Readonly<Record<Regime, string>> = {
  laminar: 'Friction factor, laminar: 64 / Re',
  transition: 'Friction factor, between laminar at Re 2300 and turbulent at Re 4000: a straight line',
  turbulent: 'Friction factor, turbulent: Colebrook-White',
}

function whyOf(input: PipeLossInput, water: WaterProperties, worked: Worked): Derivation {
  const { velocityMPerS, reynolds, friction, velocityPa, perMetrePa, fittingsPa, totalPa } = worked
  const bore = given('Inside diameter', input.insideMm, 'mm')
  const velocity = because('Velocity: flow / area of the bore', velocityMPerS, {
    unit: 'm/s',
    from: [given('Water flow', input.litresPerMinute, 'L/min'), bore],
  })
  const reynoldsWhy = because('Re: density × velocity × bore / viscosity', reynolds, {
    from: [velocity, bore, water.densityWhy, water.viscosityWhy],
  })
  const factor = because(frictionSays[friction.regime], friction.frictionFactor, {
    from: [reynoldsWhy, given('Roughness', input.roughnessMm, 'mm'), bore],
  })
  const velocityPressure = because('Velocity pressure: density × velocity² / 2', velocityPa, {
    unit: 'Pa',
    from: [velocity, water.densityWhy],
  })
  const perMetre = because('Pipe, per metre: friction factor / bore × velocity pressure', perMetrePa, {
    unit: 'Pa/m',
    from: [factor, bore, velocityPressure],
  })
  const fittings = because('Fittings: zetas added × velocity pressure', fittingsPa, {
    unit: 'Pa',
    from: [...(input.zetas ?? []).map((zeta) => given('Zeta', zeta)), velocityPressure],
  })
  return because('Pressure lost: pipe × length + fittings', totalPa, {
    unit: 'Pa',
    source: 'Darcy-Weisbach',
    from: [perMetre, given('Length', input.lengthM, 'm'), fittings],
  })
}

function problemIn(input: PipeLossInput): Outcome<never> | null {
  const { insideMm, roughnessMm, meanC, zetas = [] } = input
  for (const path of ['insideMm', 'lengthM', 'litresPerMinute'] as const) {
    if (input[path] <= 0) return refuse('invalid', `This must be more than 0; it was ${input[path]}.`, path)
  }
  if (roughnessMm < 0 || roughnessMm / insideMm > mostRelativeRoughness) {
    const most = Number((insideMm * mostRelativeRoughness).toPrecision(3))
    const message =
      `The roughness must be 0 to ${most} mm, 0.05 of the bore, for the friction law to hold; it was ${roughnessMm} mm. ` +
      'Drawn copper is about 0.0015 mm.'
    return refuse('impossible', message, 'roughnessMm')
  }
  if (meanC < 1 || meanC > 110) {
    return refuse('impossible', `Water must be between 1 and 110 °C; it was ${meanC} °C.`, 'meanC')
  }
  const index = zetas.findIndex((zeta) => zeta < 0)
  if (index === -1) return null
  return refuse('invalid', `A fitting's zeta must be 0 or more; it was ${zetas[index]}.`, `zetas[${index}]`)
}

function senseless({ litresPerMinute, insideMm }: PipeLossInput): Outcome<never> {
  const message = `A flow of ${litresPerMinute} L/min through a bore of ${insideMm} mm has no sense; check both.`
  return refuse('impossible', message, 'litresPerMinute')
}
