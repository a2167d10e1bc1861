import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Rating } from '../../domain/room-heat.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { emitterOutput, emitterWatts } from './emitter-output.ts'
import { meanExcessK } from './excess-temperature.ts'
import { ratingExcess } from './rating-excess.ts'

export type FlowEmitter = {
  readonly ratedW: number
  readonly rating?: Rating | undefined
  readonly exponent: number
}
export type LowestFlowInput = {
  readonly loadW: number
  readonly roomC: number
  readonly spreadK: number
  readonly maxFlowC?: number | undefined
  readonly emitters: readonly FlowEmitter[]
}
export type LowestFlowAnswer = {
  readonly reachable: boolean
  /** Absent when no flow up to the limit is enough. */
  readonly flowC?: number
  readonly returnC?: number
  readonly outputAtMaxW: number
  readonly why: Derivation
}

const usualMaxC = 75
const leastSpreadK = 0.01

/**
 * The lowest flow temperature at which a room's emitters give its heat load: the least whole tenth of a degree with
 * sum(W rated (dT / dT rated)^n) >= load, the return being flow - spread and dT the logarithmic mean. The output rises
 * with the flow, so the tenths are halved until one is warm and the one below is not. Where only the limit itself is warm,
 * the limit is the answer. Not reachable at the limit is an answer, not a refusal.
 * Refuses a load that is not above 0, a spread under 0.01 K, no emitters, and emitters that `emitterOutput` refuses.
 *
 * @param input loadW in watts; roomC and maxFlowC (75 when absent) in degrees Celsius; spreadK 0.01 to 50; emitters as rated
 * @source EN 442-2 characteristic equation, solved for the flow
 * @example lowestFlow({ loadW: 1000, roomC: 20, spreadK: 10, emitters: [{ ratedW: 1000, exponent: 1.3 }] }).value.flowC // => 75
 */
export function lowestFlow(input: LowestFlowInput): Outcome<LowestFlowAnswer> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const outputW = outputOf(input)
  if (!outputW.ok) return outputW
  const { maxFlowC = usualMaxC, loadW } = input
  const outputAtMaxW = outputW.value(maxFlowC)
  const reachable = outputAtMaxW >= loadW
  const flowC = reachable ? lowestWarm((flow) => outputW.value(flow) >= loadW, input) : maxFlowC
  const found = reachable ? { flowC, returnC: returnOf(flowC, input.spreadK) } : {}
  const why = whyOf(input, { reachable, flowC, outputAtMaxW })
  return acceptFinite(
    { reachable, ...found, outputAtMaxW, why },
    'These emitters make an output too large to reckon with; check their rated outputs.',
  )
}

/** What all the emitters give together, as a function of the flow temperature. */
function outputOf({ emitters, roomC, spreadK }: LowestFlowInput): Outcome<(flowC: number) => number> {
  const rated: { readonly ratedW: number; readonly exponent: number; readonly ratedExcessK: number }[] = []
  for (const [index, { ratedW, exponent, rating }] of emitters.entries()) {
    const excess = ratingExcess(rating, 'logarithmic')
    if (!excess.ok) return under(`emitters[${index}]`, excess)
    rated.push({ ratedW, exponent, ratedExcessK: excess.value.excessK })
  }
  const value = (flowC: number) => {
    const excessK = meanExcessK({ flowC, returnC: returnOf(flowC, spreadK), roomC }, 'logarithmic')
    return rated.reduce((sum, emitter) => sum + emitterWatts({ ...emitter, excessK }), 0)
  }
  return { ok: true, value }
}

/** Flow less spread, without the last digits that subtraction leaves behind. */
function returnOf(flowC: number, spreadK: number): number {
  return Math.round((flowC - spreadK) * 1e9) / 1e9
}

function lowestWarm(isWarm: (flowC: number) => boolean, input: LowestFlowInput): number {
  const { roomC, spreadK, maxFlowC = usualMaxC } = input
  let warm = Math.floor(maxFlowC * 10 + 1e-6)
  if (warm / 10 > maxFlowC || !isWarm(warm / 10)) return maxFlowC
  let cold = Math.floor((roomC + spreadK) * 10) - 1
  while (warm - cold > 1) {
    const middle = Math.floor((warm + cold) / 2)
    if (isWarm(middle / 10)) warm = middle
    else cold = middle
  }
  return warm / 10
}

function problemIn({ loadW, spreadK, emitters }: LowestFlowInput): Outcome<never> | null {
  if (loadW <= 0) {
    const message = `The heat load must be more than 0 W; it was ${loadW}. A room that needs no heat needs no flow.`
    return refuse('invalid', message, 'loadW')
  }
  if (spreadK < leastSpreadK) {
    const message = `The drop from flow to return must be at least ${leastSpreadK} K; it was ${spreadK}.`
    return refuse('invalid', message, 'spreadK')
  }
  if (emitters.length === 0) {
    return refuse('invalid', 'There are no emitters; give at least one.', 'emitters')
  }
  const index = emitters.findIndex(({ ratedW, exponent }) => ratedW <= 0 || exponent < 1 || exponent > 2)
  if (index === -1) return null
  const message = `Emitter ${index + 1} must have a rated output of more than 0 W and an exponent of 1 to 2.`
  return refuse('invalid', message, `emitters[${index}]`)
}

type Found = { readonly reachable: boolean; readonly flowC: number; readonly outputAtMaxW: number }

function whyOf(input: LowestFlowInput, { reachable, flowC, outputAtMaxW }: Found): Derivation {
  const { loadW, roomC, spreadK, maxFlowC = usualMaxC } = input
  const figures = [
    given('Heat the room needs', loadW, 'W'),
    given('Room', roomC, '°C'),
    given('Drop from flow to return', spreadK, 'K'),
    given('Highest flow allowed', maxFlowC, '°C'),
    ...emitterReasons(input, flowC),
  ]
  if (reachable) {
    const says = 'Lowest flow, in tenths of a degree, at which the emitters give what the room needs'
    return because(says, flowC, { unit: '°C', source: 'EN 442-2', from: figures })
  }
  const says = `Not reachable: at a flow of ${maxFlowC} °C the emitters give less than the room needs`
  return because(says, outputAtMaxW, { unit: 'W', source: 'EN 442-2', from: figures })
}

/** What each emitter gives at a flow temperature; its rated figures alone where it gives nothing. */
function emitterReasons({ emitters, roomC, spreadK }: LowestFlowInput, flowC: number): readonly Derivation[] {
  return emitters.map((emitter, index) => {
    const output = emitterOutput({ ...emitter, flowC, returnC: returnOf(flowC, spreadK), roomC })
    if (output.ok) {
      const says = `Emitter ${index + 1} at a flow of ${flowC} °C`
      return because(says, output.value.watts, { unit: 'W', from: [output.value.why] })
    }
    const says = `Emitter ${index + 1} gives nothing: at a flow of ${flowC} °C its return would not be above the room`
    return because(says, 0, {
      unit: 'W',
      from: [given('Rated output', emitter.ratedW, 'W'), given('Exponent', emitter.exponent)],
    })
  })
}
