import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'

/** How the temperature along the emitter is averaged. */
export type MeanKind = 'logarithmic' | 'arithmetic'
/** Water in, water out, and the air of the room. */
export type Temperatures = { readonly flowC: number; readonly returnC: number; readonly roomC: number }
export type ExcessInput = Temperatures & { readonly mean?: MeanKind | undefined }
export type ExcessAnswer = { readonly excessK: number; readonly mean: MeanKind; readonly why: Derivation }

const sentences: Readonly<Record<MeanKind, string>> = {
  logarithmic: 'Emitter over room, logarithmic mean: (flow - return) / ln((flow - room) / (return - room))',
  arithmetic: 'Emitter over room, arithmetic mean: (flow + return) / 2 - room',
}

/**
 * How much warmer the emitter is than the room, K.
 * Logarithmic (the default): (flow - return) / ln((flow - room) / (return - room)).
 * Arithmetic, on request: (flow + return) / 2 - room.
 * Refuses a flow that is not above the return, and a return that is not above the room.
 *
 * @param input temperatures in degrees Celsius, -60 to 130; `mean` logarithmic or arithmetic
 * @source EN 442-2 for the excess temperature; the logarithmic form as in heat exchanger textbooks
 * @example excessTemperatureK({ flowC: 75, returnC: 65, roomC: 20 }).value.excessK // => 49.8329
 */
export function excessTemperatureK(input: ExcessInput): Outcome<ExcessAnswer> {
  const { flowC, returnC, roomC, mean = 'logarithmic' } = input
  const wrong = refuseUnlessFinite(input) ?? outOfOrder(input)
  if (wrong !== null) return wrong
  const excessK = meanExcessK(input, mean)
  const why = because(sentences[mean], excessK, {
    unit: 'K',
    from: [given('Flow', flowC, '°C'), given('Return', returnC, '°C'), given('Room', roomC, '°C')],
  })
  return acceptFinite({ excessK, mean, why }, 'These temperatures lie too far apart to reckon with.')
}

/**
 * The same as a bare number, for searches that ask many times: 0 where flow, return and room do not fall in that order.
 * @param temperatures degrees Celsius, any
 * @param mean logarithmic or arithmetic
 * @source as excessTemperatureK
 * @example meanExcessK({ flowC: 55, returnC: 45, roomC: 20 }, 'arithmetic') // => 30
 */
export function meanExcessK({ flowC, returnC, roomC }: Temperatures, mean: MeanKind): number {
  if (!(flowC > returnC && returnC > roomC) || !Number.isFinite(flowC - roomC)) return 0
  const atFlowK = flowC - roomC
  const atReturnK = returnC - roomC
  if (mean === 'arithmetic') return (atFlowK + atReturnK) / 2
  const dropK = flowC - returnC
  // ln(1 + x) where the two are close, so that a small drop keeps its digits; a difference of logs where they are far apart.
  const logarithm =
    dropK < atReturnK ? Math.log1p(dropK / atReturnK) : Math.log(atFlowK) - Math.log(atReturnK)
  return dropK / logarithm
}

function outOfOrder({ flowC, returnC, roomC }: Temperatures): Outcome<never> | null {
  if (flowC <= returnC) {
    return refuse(
      'impossible',
      `The flow must be warmer than the return; they are ${flowC} °C and ${returnC} °C.`,
      'flowC',
    )
  }
  if (returnC <= roomC) {
    return refuse(
      'impossible',
      `The return must be warmer than the room; they are ${returnC} °C and ${roomC} °C.`,
      'returnC',
    )
  }
  return null
}
