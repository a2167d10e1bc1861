import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { roomFlow, roomNeed } from './house-room-flow.ts'
import type { FlowLimits, FlowRoom, JudgedRoom, RoomFlow, RoomNeed } from './house-room-flow.ts'

export type HouseFlowInput = {
  readonly rooms: readonly FlowRoom[]
  readonly spreadK: number
  readonly maxFlowC?: number | undefined
}
export type HouseFlowAnswer = {
  /** Every room that was judged is warm at or below the highest flow, and there was one to judge. */
  readonly reachable: boolean
  /** No room is only guessed. */
  readonly backed: boolean
  /** The house's own: its worst room's. Absent when it is not reachable, not backed, or no room needs heat. */
  readonly flowC?: number
  readonly returnC?: number
  /** The worst of the rooms that were judged, even where others are only guessed. */
  readonly measuredFlowC?: number
  readonly worstRoom?: string
  readonly roughRooms: readonly string[]
  /** Worst first; then rooms that need no heat, then those that are only guessed. */
  readonly rooms: readonly RoomFlow[]
  readonly says: string
  readonly why: Derivation
}
/** How far the judged rooms of a house are. */
export type HouseReach = {
  readonly reachable: boolean
  readonly flowC?: number
  readonly worstRoom?: string
  readonly roomsShort: number
  readonly shortW: number
}

const usualMaxC = 75
const leastSpreadK = 0.01

/**
 * The lowest flow temperature of each room, worst first, and of the house, which is its worst room's:
 * house = max over the rooms of the lowest flow at which each room's emitters give its need.
 * A room whose need is only guessed cannot back such a claim: it is listed, judged by nothing, and then the house has no
 * `flowC`, only the `measuredFlowC` of the other rooms. A room that needs no heat asks no flow. One without emitters, or short at
 * the highest flow, makes the house unreachable.
 * Refuses no rooms, a spread under 0.01 K, and rooms or emitters that `heatLoad` or `lowestFlow` refuses.
 *
 * @param input rooms, each with its survey or its load, and its emitters as rated; spreadK 0.01 to 50; maxFlowC (75 when absent)
 * @source EN 442-2 characteristic equation, solved for the flow; that the worst room decides: practice, no published source
 * @example houseFlow({ spreadK: 10, rooms: [{ name: 'Hall', loadW: 500, roomC: 20, emitters: [{ ratedW: 2000, exponent: 1.3 }] }, { name: 'Bath', loadW: 510.7, roomC: 20, emitters: [{ ratedW: 1000, exponent: 1.3 }] }] }).value.flowC // => 55
 */
export function houseFlow(input: HouseFlowInput): Outcome<HouseFlowAnswer> {
  const rooms = judgedRooms(input)
  if (!rooms.ok) return rooms
  const { judged } = rooms.value
  const reach = houseReach(judged)
  const roughRooms = judged.filter(({ state }) => state === 'rough').map(({ name }) => name)
  const backed = roughRooms.length === 0
  const { reachable, flowC, worstRoom } = reach
  const own =
    backed && flowC !== undefined ? { flowC, returnC: Math.round((flowC - input.spreadK) * 1e9) / 1e9 } : {}
  const says = houseSays(reach, roughRooms, judged.length)
  const inOrder = judged.toSorted(worstFirst)
  const figures = {
    reachable,
    backed,
    ...own,
    ...(flowC === undefined ? {} : { measuredFlowC: flowC }),
    ...(worstRoom === undefined ? {} : { worstRoom }),
    roughRooms,
    rooms: inOrder.map(withoutWhy),
    says,
  }
  // The reasons are made of answers that were found finite: walking them again would cost as much as the rooms.
  const sound = acceptFinite(figures, 'These rooms go past what can be reckoned with.')
  return sound.ok ? accept({ ...figures, why: houseWhy(input, { reach, says, inOrder }) }) : sound
}

function withoutWhy(judged: JudgedRoom): RoomFlow {
  const { why: _, ...room } = judged
  return room
}

export type JudgedHouse = {
  readonly needs: readonly RoomNeed[]
  /** In the order of the input. */
  readonly judged: readonly JudgedRoom[]
  readonly limits: FlowLimits
}

/**
 * Every room of a house judged, in the order of the input, with what each needs. Refuses as `houseFlow` does.
 * @param input as `houseFlow` takes it
 * @source as houseFlow
 * @example judgedRooms({ spreadK: 10, rooms: [{ name: 'Hall', loadW: 500, roomC: 20, emitters: [] }] }).value.judged[0].state // => 'noEmitters'
 */
export function judgedRooms(input: HouseFlowInput): Outcome<JudgedHouse> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const limits = { spreadK: input.spreadK, maxFlowC: input.maxFlowC ?? usualMaxC }
  const needs: RoomNeed[] = []
  const judged: JudgedRoom[] = []
  for (const [index, entry] of input.rooms.entries()) {
    const need = roomNeed(entry, index)
    if (!need.ok) return need
    const flow = roomFlow(need.value, entry.emitters, limits)
    if (!flow.ok) return flow
    needs.push(need.value)
    judged.push(flow.value)
  }
  return accept({ needs, judged, limits })
}

function problemIn({ rooms, spreadK }: HouseFlowInput): Outcome<never> | null {
  if (rooms.length === 0) return refuse('invalid', 'There are no rooms; give at least one.', 'rooms')
  if (spreadK >= leastSpreadK) return null
  const message = `The drop from flow to return must be at least ${leastSpreadK} K; it was ${spreadK}.`
  return refuse('invalid', message, 'spreadK')
}

/**
 * How far the rooms that were judged get together: the worst room's flow, or how many rooms are short and by how many watts at
 * the highest flow. Rough rooms count for nothing here; with no other room the house is not reachable.
 * @param rooms judged rooms, in any order
 * @source practice, no published source
 * @example houseReach([{ name: 'Hall', state: 'warm', flowC: 50 }, { name: 'Bath', state: 'warm', flowC: 55 }]).worstRoom // => 'Bath'
 */
export function houseReach(rooms: readonly RoomFlow[]): HouseReach {
  const asking = rooms.filter(({ state }) => state !== 'rough' && state !== 'needsNoHeat')
  const short = asking.filter(({ state }) => state !== 'warm')
  const shortW = short.reduce((sum, { loadW, outputAtMaxW = 0 }) => sum + loadW - outputAtMaxW, 0)
  const worst = asking.reduce<RoomFlow | undefined>(
    (so, room) => (so === undefined || worstFirst(room, so) < 0 ? room : so),
    undefined,
  )
  const reachable = short.length === 0 && rooms.some(({ state }) => state !== 'rough')
  return {
    reachable,
    ...(reachable && worst?.flowC !== undefined ? { flowC: worst.flowC } : {}),
    ...(worst === undefined ? {} : { worstRoom: worst.name }),
    roomsShort: short.length,
    shortW,
  }
}

/**
 * The order of rooms from the worst: short ones by the share of their need that they get, least first; warm ones by flow, highest
 * first; then those that need no heat, then those that are only guessed. Below 0 where `a` stands first.
 * @param a one room
 * @param b another
 * @source practice, no published source
 * @example worstFirst({ state: 'warm', flowC: 50 }, { state: 'warm', flowC: 55 }) // => 5
 */
export function worstFirst(a: RoomFlow, b: RoomFlow): number {
  const byGroup = groupOf(a) - groupOf(b)
  if (byGroup !== 0) return byGroup
  if (groupOf(a) === 0) return shareOf(a) - shareOf(b)
  return (b.flowC ?? 0) - (a.flowC ?? 0)
}

function groupOf({ state }: RoomFlow): number {
  if (state === 'short' || state === 'noEmitters') return 0
  if (state === 'warm') return 1
  return state === 'needsNoHeat' ? 2 : 3
}

function shareOf({ loadW, outputAtMaxW = 0 }: RoomFlow): number {
  return outputAtMaxW / loadW
}

function houseSays(reach: HouseReach, roughRooms: readonly string[], count: number): string {
  if (roughRooms.length === count) {
    return 'Every room is only guessed, so nothing can be said of the flow temperature: measure them first.'
  }
  const found = foundSays(reach, roughRooms.length > 0)
  if (roughRooms.length === 0) return found
  const names = `${roughRooms.join(', ')} ${roughRooms.length === 1 ? 'is' : 'are'}`
  return `${found} That is not the whole house: ${names} only guessed, which cannot back a flow temperature.`
}

function foundSays({ reachable, flowC, worstRoom = '', roomsShort }: HouseReach, partly: boolean): string {
  const who = partly ? 'The measured rooms are' : 'The house is'
  if (flowC !== undefined) return `${who} warm from a flow of ${flowC} °C; the worst room is ${worstRoom}.`
  if (reachable) return partly ? 'No measured room needs heat.' : 'No room needs heat.'
  const short = roomsShort === 1 ? 'one room is' : `${roomsShort} rooms are`
  return `${who} not warm at the highest flow: ${short} short, the worst is ${worstRoom}.`
}

type Told = {
  readonly reach: HouseReach
  readonly says: string
  readonly inOrder: readonly JudgedRoom[]
}

function houseWhy({ spreadK, maxFlowC }: HouseFlowInput, { reach, says, inOrder }: Told): Derivation {
  const limits = [
    given('Drop from flow to return', spreadK, 'K'),
    given('Highest flow allowed', maxFlowC ?? usualMaxC, '°C'),
  ]
  const from = [...limits, ...inOrder.map((room) => room.why)]
  const { flowC, shortW } = reach
  return flowC === undefined
    ? because(says, shortW, { unit: 'W', from })
    : because(says, flowC, { unit: '°C', source: 'EN 442-2', from })
}
