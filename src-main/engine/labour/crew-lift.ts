import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { SwapAsk } from '../takeoff/asks.ts'
import type { Named } from '../takeoff/rule.ts'

/** How a thing is lifted: `handsMm` above the floor (elbow to knuckle when not known), on stairs, with arms stretched out. */
export type Hold = {
  readonly handsMm?: number | undefined
  readonly stairs?: boolean | undefined
  readonly far?: boolean | undefined
}
export type LiftLimit = {
  readonly oneKg: number
  readonly twoKg: number
  readonly threeKg: number
  readonly people: 1 | 2
  readonly needsAid: boolean
  readonly why: Derivation
}

const zones = ['aboveShoulder', 'shoulderToElbow', 'elbowToKnuckle', 'knuckleToShin', 'belowShin'] as const
type Zone = (typeof zones)[number]

const zoneInWords: Readonly<Record<Zone, string>> = {
  aboveShoulder: 'above the shoulder',
  shoulderToElbow: 'between shoulder and elbow',
  elbowToKnuckle: 'between elbow and knuckle',
  knuckleToShin: 'between knuckle and lower leg',
  belowShin: 'below the middle of the lower leg',
}

/** Every setting that a lift reads. */
export const liftSettings: readonly string[] = [
  'lift.onePersonKg',
  'lift.stairsRatio',
  'lift.pairRatio',
  'lift.threeRatio',
  ...['shoulder', 'elbow', 'knuckle', 'shin'].map((height) => `lift.${height}Mm`),
  ...zones.flatMap((zone) => [`lift.${zone}Kg`, `lift.${zone}FarKg`]),
]

/**
 * How many people a lift takes. One lifts up to: the firm's figure for the waist x (the filter's figure for the zone that
 * the hands are in / its figure between elbow and knuckle, close) x what stairs leave. Two lift 2 x 2/3 of that, three
 * 3 x 1/2. Over what one lifts it takes two; over what two lift it wants an aid or a third person as well.
 * @param massKg mass of the thing, 0 or more
 * @param hold where the hands are, and whether on stairs or stretched out
 * @param use the lift settings
 * @source HSE lifting and lowering risk filter (INDG143) and guidance on team handling (Manual Handling Operations Regulations, L23): guidance, not limits
 * @example liftLimit(30, {}, { value: (id) => ({ 'lift.pairRatio': 0.667, 'lift.threeRatio': 0.5, 'lift.stairsRatio': 0.8 })[id] ?? 25, why: () => ({ says: 'x', value: 1, from: [] }) }).people // => 2
 */
export function liftLimit(massKg: number, hold: Hold, use: Named): LiftLimit {
  const zone = zoneOf(hold.handsMm, use)
  const zoneId = `lift.${zone}${hold.far === true ? 'Far' : ''}Kg`
  const ofWaist = use.value(zoneId) / use.value('lift.elbowToKnuckleKg')
  const onStairs = hold.stairs === true ? use.value('lift.stairsRatio') : 1
  const oneKg = use.value('lift.onePersonKg') * ofWaist * onStairs
  const twoKg = 2 * oneKg * use.value('lift.pairRatio')
  const threeKg = 3 * oneKg * use.value('lift.threeRatio')
  const people = massKg > oneKg ? 2 : 1
  const why = because(`Hands ${zoneInWords[zone]}: up to ${plainKg(oneKg)} kg for one.`, people, {
    from: [
      given('Mass, dry', massKg, 'kg'),
      use.why('lift.onePersonKg'),
      use.why(zoneId),
      use.why('lift.elbowToKnuckleKg'),
      ...(hold.handsMm === undefined ? [] : [given('Height of the hands', hold.handsMm, 'mm')]),
      ...(hold.stairs === true ? [use.why('lift.stairsRatio')] : []),
      ...(people === 1 ? [] : [use.why('lift.pairRatio')]),
    ],
  })
  return { oneKg, twoKg, threeKg, people, needsAid: massKg > twoKg, why }
}

/**
 * What hanging an emitter takes: carried in, over stairs where there are any, and held up to its brackets.
 * @param swap mass, height of the hands, storey and access
 * @param use the lift settings
 * @source as `liftLimit`
 * @example hangingCrew({ emitterMassKg: 10, storey: 0 }, { value: (id) => ({ 'lift.pairRatio': 0.667, 'lift.threeRatio': 0.5, 'lift.stairsRatio': 0.8 })[id] ?? 25, why: () => ({ says: 'x', value: 1, from: [] }) }).people // => 1
 */
export function hangingCrew(
  swap: Pick<SwapAsk, 'emitterMassKg' | 'handsMm' | 'storey' | 'tightAccess'>,
  use: Named,
): { readonly people: 1 | 2; readonly whys: readonly Derivation[] } {
  const hung = liftLimit(swap.emitterMassKg, { handsMm: swap.handsMm, far: swap.tightAccess }, use)
  const carried = liftLimit(swap.emitterMassKg, { stairs: swap.storey !== 0 }, use)
  return { people: hung.people === 2 || carried.people === 2 ? 2 : 1, whys: [hung.why, carried.why] }
}

function zoneOf(handsMm: number | undefined, use: Named): Zone {
  if (handsMm === undefined) return 'elbowToKnuckle'
  if (handsMm > use.value('lift.shoulderMm')) return 'aboveShoulder'
  if (handsMm > use.value('lift.elbowMm')) return 'shoulderToElbow'
  if (handsMm >= use.value('lift.knuckleMm')) return 'elbowToKnuckle'
  return handsMm >= use.value('lift.shinMm') ? 'knuckleToShin' : 'belowShin'
}

function plainKg(kg: number): string {
  return String(Math.round(kg * 10) / 10)
}
