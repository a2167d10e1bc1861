import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { pipeContent } from './pipe-content.ts'
import type { PipeBores, PipeRun } from './pipe-content.ts'

export type EmitterWater = {
  readonly name: string
  readonly waterLitres: number
  /** One when absent. */
  readonly count?: number | undefined
}
export type SurveyedContentInput = {
  /** Every emitter of the system; absent when they were not surveyed. */
  readonly emitters?: readonly EmitterWater[] | undefined
  /** Every run of pipe, flow and return together; absent when they were not surveyed. */
  readonly pipes?: readonly PipeRun[] | undefined
  /** The boiler or heat pump itself; absent when nobody looked. */
  readonly boilerLitres?: number | undefined
  readonly boilerKW?: number | undefined
  readonly litresPerKW: number
  readonly allowanceWhy?: Derivation | undefined
}
export type ContentPart = {
  readonly what: 'emitters' | 'pipes' | 'boiler' | 'allowance'
  readonly litres: number
  readonly surveyed: boolean
}
export type SurveyedContent = {
  readonly litres: number
  /** False when a part of the litres is an allowance, and should be marked so. */
  readonly surveyed: boolean
  readonly parts: readonly ContentPart[]
  readonly says: string
  readonly why: Derivation
}

type Part = ContentPart & { readonly why: Derivation }

/**
 * The water in a heating system from what was surveyed of it, L: emitters + pipes (pi / 4 d^2 L) + boiler. For what was not
 * surveyed an allowance stands in, marked so: what the whole system would have by boiler output, kW x litres per kW, less what
 * was surveyed, but never below 0.
 * Refuses figures below 0, an allowance not above 0, pipes that `pipeContent` refuses, nothing surveyed, and a part not
 * surveyed without the boiler output to allow for it by.
 *
 * @param input litres of emitters and boiler, runs of pipe in mm and m, boiler output in kW, litres per kW of the firm
 * @param bores the bores of the sizes that are known
 * @source volume of a cylinder; that the allowance covers the rest: practice, no published source
 * @example surveyedContent({ emitters: [{ name: 'Panel', waterLitres: 3, count: 8 }], pipes: [{ insideMm: 13.6, lengthM: 60 }], boilerLitres: 2, litresPerKW: 11 }, []).value.litres // => 34.716
 */
export function surveyedContent(
  input: SurveyedContentInput,
  bores: readonly PipeBores[],
): Outcome<SurveyedContent> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const found = partsOf(input, bores)
  if (!found.ok) return found
  const missing = missingOf(input)
  const rest = missing.length === 0 ? null : allowance(input, found.value, missing)
  if (rest !== null && !rest.ok) return rest
  const parts = rest === null ? found.value : [...found.value, rest.value]
  const litres = sum(parts)
  const says = saysOf(missing, rest === null ? null : rest.value.litres)
  const why = because(says, litres, { unit: 'L', from: parts.map((part) => part.why) })
  return acceptFinite(
    { litres, surveyed: missing.length === 0, parts: parts.map(withoutWhy), says, why },
    'These figures make more water than can be reckoned; check them.',
  )
}

function withoutWhy({ what, litres, surveyed }: Part): ContentPart {
  return { what, litres, surveyed }
}

function sum(parts: readonly { readonly litres: number }[]): number {
  return parts.reduce((total, { litres }) => total + litres, 0)
}

function partsOf(input: SurveyedContentInput, bores: readonly PipeBores[]): Outcome<readonly Part[]> {
  const { emitters, boilerLitres } = input
  const parts: Part[] = []
  if (emitters !== undefined) parts.push(emitterPart(emitters))
  const pipes = pipePart(input.pipes, bores)
  if (!pipes.ok) return pipes
  if (pipes.value !== null) parts.push(pipes.value)
  if (boilerLitres !== undefined) {
    const why = given('Water in the boiler, as surveyed', boilerLitres, 'L', 'survey')
    parts.push({ what: 'boiler', litres: boilerLitres, surveyed: true, why })
  }
  return accept(parts)
}

function emitterPart(emitters: readonly EmitterWater[]): Part {
  const each = emitters.map(({ name, waterLitres, count = 1 }) => {
    const litres = waterLitres * count
    const why = because(`${name}: water × count`, litres, {
      unit: 'L',
      from: [given('Water in one', waterLitres, 'L'), given('Count', count)],
    })
    return { litres, why }
  })
  const litres = sum(each)
  const why = because('Water in the emitters, added', litres, { unit: 'L', from: each.map((one) => one.why) })
  return { what: 'emitters', litres, surveyed: true, why }
}

function pipePart(pipes: readonly PipeRun[] | undefined, bores: readonly PipeBores[]): Outcome<Part | null> {
  if (pipes === undefined) return accept(null)
  const each = []
  for (const [index, run] of pipes.entries()) {
    const content = pipeContent(run, bores)
    if (!content.ok) return under(`pipes[${index}]`, content)
    each.push(content.value)
  }
  const litres = sum(each)
  const why = because('Water in the pipes, added', litres, { unit: 'L', from: each.map((one) => one.why) })
  return accept({ what: 'pipes', litres, surveyed: true, why })
}

const named = [
  ['emitters', 'emitters'],
  ['pipes', 'pipes'],
  ['boilerLitres', 'boiler'],
] as const

function missingOf(input: SurveyedContentInput): readonly string[] {
  return named.filter(([field]) => input[field] === undefined).map(([, name]) => name)
}

function allowance(
  { boilerKW, litresPerKW, allowanceWhy }: SurveyedContentInput,
  parts: readonly Part[],
  missing: readonly string[],
): Outcome<Part> {
  if (boilerKW === undefined) {
    const message = `Nobody surveyed the ${missing.join(' and the ')}: give the boiler output to allow for that by, or what it holds.`
    return refuse('invalid', message, 'boilerKW')
  }
  const known = sum(parts)
  const litres = Math.max(0, boilerKW * litresPerKW - known)
  const says = 'Allowance for the rest: boiler output × litres per kW, less what was surveyed, not below 0'
  const why = because(says, litres, {
    unit: 'L',
    from: [
      given('Boiler output', boilerKW, 'kW'),
      allowanceWhy ?? given('Allowance', litresPerKW, 'L/kW'),
      because('What was surveyed', known, { unit: 'L', from: parts.map((part) => part.why) }),
    ],
  })
  return accept({ what: 'allowance', litres, surveyed: false, why })
}

function saysOf(missing: readonly string[], restLitres: number | null): string {
  if (restLitres === null) return 'Water in the system, as surveyed: emitters + pipes + boiler'
  const what = missing.join(' and ')
  if (restLitres === 0) {
    return `Water in the system: what was surveyed is already as much as the allowance for all of it, so nothing is added for ${what}; survey that too`
  }
  return `Water in the system: as surveyed, with an allowance for ${what}`
}

function problemIn(input: SurveyedContentInput): Outcome<never> | null {
  const { emitters, boilerLitres, boilerKW, litresPerKW } = input
  if (missingOf(input).length === named.length) {
    return refuse('invalid', 'Give the emitters, the pipes or the water in the boiler.', 'emitters')
  }
  for (const [index, { name, waterLitres, count = 1 }] of (emitters ?? []).entries()) {
    if (waterLitres < 0) {
      const message = `The water in ${name} must be 0 L or more; it was ${waterLitres}.`
      return refuse('invalid', message, `emitters[${index}].waterLitres`)
    }
    if (count < 0) {
      return refuse('invalid', `The count must be 0 or more; it was ${count}.`, `emitters[${index}].count`)
    }
  }
  if (boilerLitres !== undefined && boilerLitres < 0) {
    const message = `The water in the boiler must be 0 L or more; it was ${boilerLitres}.`
    return refuse('invalid', message, 'boilerLitres')
  }
  if (boilerKW !== undefined && boilerKW < 0) {
    return refuse('invalid', `The boiler output must be 0 kW or more; it was ${boilerKW}.`, 'boilerKW')
  }
  if (litresPerKW > 0) return null
  return refuse('invalid', `The allowance must be more than 0 L/kW; it was ${litresPerKW}.`, 'litresPerKW')
}
