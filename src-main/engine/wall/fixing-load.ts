import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { LoadAnswer } from '../../domain/set-out.ts'
import { finiteInput } from './wall-input.ts'

export type LoadInput = {
  readonly dryKg: number
  readonly waterLitres: number
  readonly extraKg: number
  readonly projectionToCentreMm: number
  readonly bracketRiseMm: number
  readonly upperFixings: number
  readonly allFixings: number
  readonly allowedShearN: number
  readonly allowedPullN: number
}

/** Standard gravity, m/s2: 3rd CGPM (1901), declaration 2. */
const standardGravity = 9.80665
/** A litre of water is taken as a kilogram. */
const kgPerLitre = 1

/**
 * What each fixing carries beside what it may carry. m = dry + water + extra; shear = m g / n_all; pull on each upper fixing =
 * m g e / (h n_upper); use = load / allowed; it holds when neither use is above 1.
 * Refuses counts that are not whole, more upper fixings than fixings, sizes of 0 or below, negative masses, numbers not finite.
 *
 * @param input masses in kg and litres (0 or above); e wall to centre of mass, mm (0 or above); h bracket rise, mm, above 0; fixings
 *   n (1 or more); allowed loads N, above 0
 * @source statics (moments about the lower bracket); g: 3rd CGPM (1901)
 * @example fixingLoad({ dryKg: 8, waterLitres: 2, extraKg: 0, projectionToCentreMm: 100, bracketRiseMm: 500, upperFixings: 2, allFixings: 4, allowedShearN: 100, allowedPullN: 100 }).value.shearN // => 24.516625
 */
export function fixingLoad(input: LoadInput): Outcome<LoadAnswer> {
  const checked = check(input)
  if (!checked.ok) return checked
  const massKg = input.dryKg + input.waterLitres * kgPerLitre + input.extraKg
  const weightN = massKg * standardGravity
  const shearN = weightN / input.allFixings
  const pullN = (weightN * input.projectionToCentreMm) / input.bracketRiseMm / input.upperFixings
  const shearUse = shearN / input.allowedShearN
  const pullUse = pullN / input.allowedPullN
  if (![shearN, pullN, shearUse, pullUse].every(Number.isFinite)) {
    return refuse(
      'impossible',
      'The load comes out beyond all measure; give sizes of a real bracket.',
      'bracketRiseMm',
    )
  }
  const holds = shearUse <= 1 && pullUse <= 1
  const answer = { shearN, pullN, shearUse, pullUse, holds }
  return accept({ ...answer, why: whyOf(input, answer, weightN) })
}

function check(input: LoadInput): Outcome<LoadInput> {
  const finite = finiteInput(input)
  if (!finite.ok) return finite
  for (const field of ['bracketRiseMm', 'allowedShearN', 'allowedPullN'] as const) {
    if (input[field] <= 0) return wrong(field, 'must be more than 0', input[field])
  }
  for (const field of ['dryKg', 'waterLitres', 'extraKg', 'projectionToCentreMm'] as const) {
    if (input[field] < 0) return wrong(field, 'must be 0 or more', input[field])
  }
  for (const field of ['upperFixings', 'allFixings'] as const) {
    if (!Number.isInteger(input[field]) || input[field] < 1)
      return wrong(field, 'must be a whole number from 1', input[field])
  }
  if (input.upperFixings > input.allFixings) {
    const says = `There cannot be more upper fixings (${input.upperFixings}) than fixings (${input.allFixings}); count the upper ones among all.`
    return refuse('invalid', says, 'upperFixings')
  }
  return finite
}

function wrong(field: keyof LoadInput, says: string, value: number): Outcome<LoadInput> {
  return refuse('invalid', `${field} ${says}; it was ${value}.`, field)
}

type Loads = Omit<LoadAnswer, 'why'>

function whyOf(input: LoadInput, loads: Loads, weightN: number): Derivation {
  const weight = because('Weight of the emitter, its water and whoever leans on it.', weightN, {
    unit: 'N',
    from: [
      given('Dry mass', input.dryKg, 'kg'),
      given('Water content, a kilogram to the litre', input.waterLitres, 'L'),
      given('Extra mass', input.extraKg, 'kg'),
      given('Standard gravity', standardGravity, 'm/s2', '3rd CGPM (1901)'),
    ],
  })
  const shear = because('Every fixing carries its share of the weight.', loads.shearN, {
    unit: 'N',
    from: [weight, given('Fixings', input.allFixings)],
  })
  const pull = because('The upper fixings hold against tipping forward about the lower ones.', loads.pullN, {
    unit: 'N',
    from: [
      weight,
      given('From the wall to the middle of the mass', input.projectionToCentreMm, 'mm'),
      given('Rise from the lower to the upper fixings', input.bracketRiseMm, 'mm'),
      given('Upper fixings', input.upperFixings),
    ],
  })
  const says = loads.holds ? 'The fixing holds in shear and in pull.' : 'The fixing does not hold.'
  return because(says, loads.holds ? 'holds' : 'does not hold', {
    from: [
      because('Shear against what is allowed.', loads.shearUse, {
        from: [shear, given('Allowed shear', input.allowedShearN, 'N')],
      }),
      because('Pull against what is allowed.', loads.pullUse, {
        from: [pull, given('Allowed pull', input.allowedPullN, 'N')],
      }),
    ],
  })
}
