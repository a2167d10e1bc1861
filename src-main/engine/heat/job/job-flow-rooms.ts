import { because } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { accept } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { RoomHeat } from '../../../domain/room-heat.ts'
import { roomFlow, roomNeed } from '../house-room-flow.ts'
import type { FlowLimits, JudgedRoom, RoomFlow, RoomNeed } from '../house-room-flow.ts'
import type { FlowEmitter } from '../lowest-flow.ts'

/** One swap of a job: what comes down, if there is anything and if its output is known, and what goes up. */
export type JobFlowSwap = {
  readonly swapId: string
  readonly name: string
  readonly old: FlowEmitter | 'none' | 'notSurveyed'
  readonly new: FlowEmitter
}
export type JobFlowRoom = {
  readonly roomId: string
  readonly room: RoomHeat
  /** Emitters that stay; null where nobody said whether there are any. */
  readonly staying: readonly FlowEmitter[] | null
  readonly swaps: readonly JobFlowSwap[]
}
/** How a room stands before or after the swaps; `notSurveyed` where its emitters' output is not known. */
export type JobRoomState = Omit<RoomFlow, 'state'> & {
  readonly roomId: string
  readonly state: RoomFlow['state'] | 'notSurveyed'
}
export type JobRoom = { readonly state: JobRoomState; readonly why: Derivation }
export type When = 'before' | 'after'

/**
 * The emitters of a job's room before its swaps: those that stay, then those that come down, in the order of the swaps. Null where
 * the output of one of them is not known.
 * @param room a room of a job
 * @source practice, no published source
 * @example emittersBefore({ roomId: 'hall', staying: null, swaps: [] }) // => null
 */
export function emittersBefore({
  staying,
  swaps,
}: Pick<JobFlowRoom, 'staying' | 'swaps'>): readonly FlowEmitter[] | null {
  if (staying === null && swaps.length === 0) return null
  const old: FlowEmitter[] = []
  for (const swap of swaps) {
    if (swap.old === 'notSurveyed') return null
    if (swap.old !== 'none') old.push(swap.old)
  }
  return [...(staying ?? []), ...old]
}

/**
 * The emitters of a job's room after its swaps: those that stay, then those that go up. Null where nobody surveyed them and none goes up.
 * @param room a room of a job
 * @source practice, no published source
 * @example emittersAfter({ roomId: 'hall', staying: [], swaps: [{ new: { ratedW: 500, exponent: 1.3 } }] })[0].ratedW // => 500
 */
export function emittersAfter({
  staying,
  swaps,
}: Pick<JobFlowRoom, 'staying' | 'swaps'>): readonly FlowEmitter[] | null {
  if (staying === null && swaps.length === 0) return null
  return [...(staying ?? []), ...swaps.map((swap) => swap.new)]
}

/**
 * What each room of a job asks of its emitters. Refuses rooms that `heatLoad` refuses.
 * @param rooms the rooms of a job
 * @source as heatLoad
 * @example jobNeeds([]).value.length // => 0
 */
export function jobNeeds(rooms: readonly JobFlowRoom[]): Outcome<readonly RoomNeed[]> {
  const needs: RoomNeed[] = []
  for (const [index, { room }] of rooms.entries()) {
    const need = roomNeed({ room, emitters: [] }, index)
    if (!need.ok) return need
    needs.push(need.value)
  }
  return accept(needs)
}

/**
 * How each room of a job stands before or after the swaps, in the order of the job. A room whose need is only guessed, or whose
 * emitters nobody surveyed, is not judged: it is there with the reason. Refuses emitters that `lowestFlow` refuses.
 * @param rooms the rooms of a job
 * @param needs what each asks
 * @param how before or after the swaps, the drop from flow to return in K and the highest flow in degrees Celsius
 * @source as roomFlow; that a guess backs no claim: practice, no published source
 * @example jobRooms([{ roomId: 'hall', staying: null, swaps: [] }], [{ roomIndex: 0, name: 'Hall', loadW: 500, roomC: 18, rough: false }], { when: 'before', spreadK: 10, maxFlowC: 75 }).value[0].state.state // => 'notSurveyed'
 */
export function jobRooms(
  rooms: readonly JobFlowRoom[],
  needs: readonly RoomNeed[],
  { when, ...limits }: FlowLimits & { readonly when: When },
): Outcome<readonly JobRoom[]> {
  const answer: JobRoom[] = []
  for (const [index, room] of rooms.entries()) {
    const need = needs[index]
    if (need === undefined) throw new Error(`There is no need of room ${index}`)
    const emitters = when === 'before' ? emittersBefore(room) : emittersAfter(room)
    const asksNothing = need.rough || need.loadW <= 0
    if (emitters === null && !asksNothing) {
      answer.push(notSurveyed(room, need, when))
      continue
    }
    const flow = roomFlow(need, emitters ?? [], limits)
    if (!flow.ok) return flow
    answer.push(judged(room.roomId, flow.value))
  }
  return accept(answer)
}

function judged(roomId: string, { why, ...flow }: JudgedRoom): JobRoom {
  return { state: { roomId, ...flow }, why }
}

function notSurveyed(room: JobFlowRoom, need: RoomNeed, when: When): JobRoom {
  const { roomIndex, name, loadW } = need
  const unknown = room.swaps.filter((swap) => swap.old === 'notSurveyed').map((swap) => swap.name)
  const says =
    when === 'before' && unknown.length > 0
      ? `${name} is not judged as it is: nobody surveyed the output of what ${unknown.join(' and ')} takes the place of.`
      : `${name} is not judged: nobody surveyed its emitters. Give the heat of those that stay.`
  const why = because(says, loadW, { unit: 'W', from: [need.why] })
  return { state: { roomId: room.roomId, roomIndex, name, loadW, state: 'notSurveyed', says }, why }
}

/**
 * True of a room that backs a flow temperature: neither guessed nor with emitters that nobody surveyed.
 * @param room how a room stands
 * @source practice, no published source
 * @example isJudged({ state: 'rough' }) // => false
 */
export function isJudged(room: JobRoomState): room is JobRoomState & RoomFlow {
  return room.state !== 'rough' && room.state !== 'notSurveyed'
}
