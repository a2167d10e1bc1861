import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'

export type SystemContentInput = {
  /** What the survey found; when absent, the allowance by boiler output stands in. */
  readonly surveyedLitres?: number | undefined
  readonly boilerKW?: number | undefined
  readonly litresPerKW: number
  /** Where the two come from, when the asker knows. */
  readonly boilerWhy?: Derivation | undefined
  readonly allowanceWhy?: Derivation | undefined
}
export type SystemContent = {
  readonly litres: number
  /** False when the litres are an allowance, and should be marked so. */
  readonly surveyed: boolean
  readonly why: Derivation
}
export type DoseInput = {
  readonly contentLitres: number
  readonly contentWhy?: Derivation | undefined
  readonly drainedShare: number
  readonly treatedLitresPerLitre: number
  readonly treatedWhy?: Derivation | undefined
}
export type Dose = { readonly litres: number; readonly why: Derivation }

const tooMuch = 'These figures make more water than can be reckoned; check them.'

/**
 * The water in a heating system, L: what was surveyed, else boiler kW x litres per kW, marked as an allowance.
 * Refuses litres or kW below 0, an allowance not above 0, and neither litres nor kW.
 *
 * @param input surveyed litres, or boiler output in kW, and litres per kW of the firm
 * @source allowance per kW: trade sheet of a chemical supplier (11 L/kW for steel panels)
 * @example systemContent({ boilerKW: 10, litresPerKW: 11 }).value.litres // => 110
 */
export function systemContent(input: SystemContentInput): Outcome<SystemContent> {
  const { surveyedLitres, boilerKW, litresPerKW } = input
  const wrong = refuseUnlessFinite(input) ?? contentProblem(input)
  if (wrong !== null) return wrong
  if (surveyedLitres !== undefined) {
    const why = given('Water in the system, as surveyed', surveyedLitres, 'L', 'survey')
    return acceptFinite({ litres: surveyedLitres, surveyed: true, why }, tooMuch)
  }
  if (boilerKW === undefined) {
    return refuse(
      'invalid',
      'Give the water in the system, or the boiler output to allow for it by.',
      'boilerKW',
    )
  }
  const litres = boilerKW * litresPerKW
  const why = because('Water in the system, an allowance: boiler output × litres per kW', litres, {
    unit: 'L',
    from: [
      input.boilerWhy ?? given('Boiler output', boilerKW, 'kW'),
      input.allowanceWhy ?? given('Allowance', litresPerKW, 'L/kW'),
    ],
  })
  return acceptFinite({ litres, surveyed: false, why }, tooMuch)
}

/**
 * The product a system takes, L: content x drained share / litres that one litre treats. Whole containers are the buyer's
 * sum, not this one's.
 * Refuses a content below 0, a share outside 0 to 1, and a treated amount not above 0.
 *
 * @param input content in litres, with its reason where there is one; the share let out, 0 to 1; litres treated by one litre
 * @source 1 L to 100 L: trade, from memory; the share that is let out: practice, no published source
 * @example doseLitres({ contentLitres: 110, drainedShare: 0.5, treatedLitresPerLitre: 100 }).value.litres // => 0.55
 */
export function doseLitres(input: DoseInput): Outcome<Dose> {
  const { contentLitres, contentWhy, drainedShare, treatedLitresPerLitre } = input
  const wrong = refuseUnlessFinite(input) ?? doseProblem(input)
  if (wrong !== null) return wrong
  const litres = (contentLitres * drainedShare) / treatedLitresPerLitre
  const why = because('Product: water in the system × share let out / litres that one litre treats', litres, {
    unit: 'L',
    from: [
      contentWhy ?? given('Water in the system', contentLitres, 'L'),
      given('Share let out', drainedShare),
      input.treatedWhy ?? given('Litres that one litre treats', treatedLitresPerLitre, 'L/L'),
    ],
  })
  return acceptFinite({ litres, why }, tooMuch)
}

function contentProblem({
  surveyedLitres,
  boilerKW,
  litresPerKW,
}: SystemContentInput): Outcome<never> | null {
  if (surveyedLitres !== undefined && surveyedLitres < 0) {
    return refuse(
      'invalid',
      `The water in the system must be 0 L or more; it was ${surveyedLitres}.`,
      'surveyedLitres',
    )
  }
  if (boilerKW !== undefined && boilerKW < 0) {
    return refuse('invalid', `The boiler output must be 0 kW or more; it was ${boilerKW}.`, 'boilerKW')
  }
  if (litresPerKW > 0) return null
  return refuse('invalid', `The allowance must be more than 0 L/kW; it was ${litresPerKW}.`, 'litresPerKW')
}

function doseProblem({
  contentLitres,
  drainedShare,
  treatedLitresPerLitre,
}: DoseInput): Outcome<never> | null {
  if (contentLitres < 0) {
    return refuse(
      'invalid',
      `The water in the system must be 0 L or more; it was ${contentLitres}.`,
      'contentLitres',
    )
  }
  if (drainedShare < 0 || drainedShare > 1) {
    return refuse('invalid', `The share let out must be 0 to 1; it was ${drainedShare}.`, 'drainedShare')
  }
  if (treatedLitresPerLitre > 0) return null
  const message = `One litre must treat more than 0 L; it was ${treatedLitresPerLitre}.`
  return refuse('invalid', message, 'treatedLitresPerLitre')
}
