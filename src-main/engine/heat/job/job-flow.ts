import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../../units/finite.ts'
import { houseReach, worstFirst } from '../house-flow.ts'
import type { HouseReach } from '../house-flow.ts'
import type { RoomNeed } from '../house-room-flow.ts'
import { isJudged, jobNeeds, jobRooms } from './job-flow-rooms.ts'
import type { JobFlowRoom, JobRoom, JobRoomState, When } from './job-flow-rooms.ts'
import { jobSwapEffects } from './job-flow-swaps.ts'
import type { JobSwapEffect, JobSwapNotJudged } from './job-flow-swaps.ts'

export type JobFlowInput = {
  readonly rooms: readonly JobFlowRoom[]
  readonly spreadK: number
  readonly maxFlowC?: number | undefined
}
/** The house before or after all of the job's swaps. */
export type JobHouse = HouseReach & {
  /** Every room is measured and its emitters are known. */
  readonly backed: boolean
  /** The house's own: absent when not backed, not reachable, or no room needs heat. */
  readonly houseFlowC?: number
  readonly houseReturnC?: number
  /** By the flow that each needs, worst first; then those that need none, then those that are not judged. */
  readonly rooms: readonly JobRoomState[]
  readonly says: string
}
export type JobFlowAnswer = {
  readonly spreadK: number
  readonly maxFlowC: number
  readonly before: JobHouse
  readonly after: JobHouse
  /** How far all the swaps together lower the house; only where it is backed and warm before and after. */
  readonly lowersK?: number
  /** Each swap done alone, the best for the house first. */
  readonly swaps: readonly JobSwapEffect[]
  readonly notJudged: readonly JobSwapNotJudged[]
  readonly says: string
  readonly why: Derivation
}

const usualMaxC = 75
const leastSpreadK = 0.01

/**
 * The flow temperature that each room of a job needs, worst first, before the swaps and after all of them; and what each swap alone
 * does for the house, the best first. The house's flow is that of its worst room. A room that is only guessed, or whose emitters
 * nobody surveyed, backs no such claim: it is listed with the reason, and the house then has only the `flowC` of the rooms that
 * are judged, never a `houseFlowC`.
 * Refuses no rooms, a spread under 0.01 K, and rooms or emitters that `heatLoad` or `lowestFlow` refuses.
 *
 * @param input the job's rooms with survey, emitters that stay and swaps; spreadK 0.01 to 50; maxFlowC (75 when absent)
 * @source EN 442-2 characteristic equation, solved for the flow; that the worst room decides: practice, no published source
 * @example jobFlow({ spreadK: 10, rooms: [{ roomId: 'bath', room: { name: 'Bath', roomC: 20, outsideC: 0, volumeM3: 10, floorAreaM2: 4, airChangesPerHour: 0, elements: [{ name: 'Wall', areaM2: 10, uWPerM2K: 2.5535, boundary: { kind: 'outside' } }] }, staying: [], swaps: [{ swapId: 's', name: 'Rail', old: { ratedW: 510.7, exponent: 1.3 }, new: { ratedW: 1000, exponent: 1.3 } }] }] }).value.after.houseFlowC // => 55
 */
export function jobFlow(input: JobFlowInput): Outcome<JobFlowAnswer> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const needs = jobNeeds(input.rooms)
  if (!needs.ok) return needs
  const before = houseOf('before', input, needs.value)
  if (!before.ok) return before
  const after = houseOf('after', input, needs.value)
  if (!after.ok) return after
  const effects = jobSwapEffects({ ...input, before: before.value.house.rooms })
  if (!effects.ok) return effects
  return answer(input, { before: before.value, after: after.value, effects: effects.value })
}

type House = { readonly house: JobHouse; readonly why: Derivation }
type Found = {
  readonly before: House
  readonly after: House
  readonly effects: {
    readonly swaps: readonly JobSwapEffect[]
    readonly notJudged: readonly JobSwapNotJudged[]
    readonly why: Derivation | null
  }
}

function answer(input: JobFlowInput, { before, after, effects }: Found): Outcome<JobFlowAnswer> {
  const { spreadK, maxFlowC = usualMaxC } = input
  const lowersK = difference(before.house.houseFlowC, after.house.houseFlowC)
  const says = `Before: ${before.house.says} After: ${after.house.says}`
  const { swaps, notJudged } = effects
  const figures = {
    spreadK,
    maxFlowC,
    before: before.house,
    after: after.house,
    ...(lowersK === undefined ? {} : { lowersK }),
    swaps,
    notJudged,
    says,
  }
  const why = because(says, lowersK ?? after.house.flowC ?? after.house.roomsShort, {
    ...(lowersK === undefined ? {} : { unit: 'K' }),
    source: 'EN 442-2',
    from: [
      given('Drop from flow to return', spreadK, 'K'),
      given('Highest flow allowed', maxFlowC, '°C'),
      before.why,
      after.why,
      ...(effects.why === null ? [] : [effects.why]),
    ],
  })
  // The reasons are made of answers that were found finite.
  const sound = acceptFinite(figures, 'These rooms go past what can be reckoned with.')
  return sound.ok ? accept({ ...figures, why }) : sound
}

function difference(beforeC: number | undefined, afterC: number | undefined): number | undefined {
  return beforeC === undefined || afterC === undefined
    ? undefined
    : Math.round((beforeC - afterC) * 1e6) / 1e6
}

function houseOf(
  when: When,
  { rooms, spreadK, maxFlowC = usualMaxC }: JobFlowInput,
  needs: readonly RoomNeed[],
): Outcome<House> {
  const found = jobRooms(rooms, needs, { when, spreadK, maxFlowC })
  if (!found.ok) return found
  const states = found.value.map((room) => room.state)
  const judged = states.filter(isJudged)
  const reach = houseReach(judged)
  const open = states.filter((room) => !isJudged(room)).map(({ name }) => name)
  const backed = open.length === 0
  const says = houseSays(reach, open, judged.length)
  const own =
    backed && reach.flowC !== undefined
      ? { houseFlowC: reach.flowC, houseReturnC: Math.round((reach.flowC - spreadK) * 1e9) / 1e9 }
      : {}
  const inOrder = [...judged.toSorted(worstFirst), ...states.filter((room) => !isJudged(room))]
  return accept({
    house: { ...reach, backed, ...own, rooms: inOrder, says },
    why: houseWhy(says, reach, found.value),
  })
}

function houseWhy(says: string, { flowC, roomsShort }: HouseReach, rooms: readonly JobRoom[]): Derivation {
  const from = rooms.map((room) => room.why)
  return flowC === undefined
    ? because(says, roomsShort, { from })
    : because(says, flowC, { unit: '°C', from })
}

function houseSays(reach: HouseReach, open: readonly string[], judged: number): string {
  const names = open.join(', ')
  if (judged === 0)
    return `nothing can be said of the flow temperature, because no room can be judged: ${names}.`
  const who = open.length === 0 ? 'the house' : 'the rooms that can be judged'
  const found = foundSays(reach, who)
  if (open.length === 0) return found
  return `${found} That is not the whole house: ${names} cannot be judged.`
}

function foundSays({ flowC, reachable, roomsShort, worstRoom = '' }: HouseReach, who: string): string {
  const verb = who === 'the house' ? 'is' : 'are'
  if (flowC !== undefined)
    return `${who} ${verb} warm from a flow of ${flowC} °C; the worst room is ${worstRoom}.`
  if (reachable) return `${who} ${verb} in need of no heat.`
  const short = roomsShort === 1 ? 'one room is' : `${roomsShort} rooms are`
  return `${who} ${verb} not warm at the highest flow: ${short} short, the worst is ${worstRoom}.`
}

function problemIn({ rooms, spreadK }: JobFlowInput): Outcome<never> | null {
  if (rooms.length === 0) return refuse('invalid', 'The job has no rooms; give at least one.', 'rooms')
  if (spreadK >= leastSpreadK) return null
  const message = `The drop from flow to return must be at least ${leastSpreadK} K; it was ${spreadK}.`
  return refuse('invalid', message, 'spreadK')
}
