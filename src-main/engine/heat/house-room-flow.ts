import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { RoomHeat } from '../../domain/room-heat.ts'
import { heatLoad } from './heat-load.ts'
import { lowestFlow } from './lowest-flow.ts'
import type { FlowEmitter } from './lowest-flow.ts'

/** A room with its survey, or with a load that somebody worked out elsewhere. */
export type FlowRoom =
  | { readonly room: RoomHeat; readonly emitters: readonly FlowEmitter[] }
  | {
      readonly name: string
      readonly loadW: number
      readonly roomC: number
      readonly rough?: boolean | undefined
      readonly emitters: readonly FlowEmitter[]
    }
/** What a room asks of its emitters. */
export type RoomNeed = {
  readonly roomIndex: number
  readonly name: string
  readonly loadW: number
  readonly roomC: number
  readonly rough: boolean
  readonly why: Derivation
}
/** Warm at some flow; short at the highest; without emitters; in need of none; or only guessed, so not judged. */
export type RoomState = 'warm' | 'short' | 'noEmitters' | 'needsNoHeat' | 'rough'
export type RoomFlow = {
  readonly roomIndex: number
  readonly name: string
  readonly loadW: number
  readonly state: RoomState
  readonly flowC?: number
  readonly returnC?: number
  /** What its emitters give at the highest flow; only of rooms that are judged. */
  readonly outputAtMaxW?: number
  readonly says: string
}
export type JudgedRoom = RoomFlow & { readonly why: Derivation }
export type FlowLimits = { readonly spreadK: number; readonly maxFlowC: number }

/**
 * What a room asks of its emitters, from its survey (`heatLoad`) or as given. Refuses rooms that `heatLoad` refuses.
 * @param entry a room with its survey, or a load in watts and a room temperature in degrees Celsius
 * @param roomIndex its place in the list
 * @source as heatLoad
 * @example roomNeed({ name: 'Hall', loadW: 500, roomC: 18, emitters: [] }, 0).value.loadW // => 500
 */
export function roomNeed(entry: FlowRoom, roomIndex: number): Outcome<RoomNeed> {
  if ('room' in entry) {
    const load = heatLoad({ room: entry.room })
    if (!load.ok) return under(`rooms[${roomIndex}]`, load)
    const { name, roomC } = entry.room
    const { watts: loadW, rough, why } = load.value
    return accept({ roomIndex, name, loadW, roomC, rough, why })
  }
  const { name, loadW, roomC, rough = false } = entry
  const says = rough ? 'Heat the room needs, a rough figure as given' : 'Heat the room needs, as given'
  return accept({ roomIndex, name, loadW, roomC, rough, why: given(says, loadW, 'W') })
}

/**
 * A room's lowest flow temperature, by `lowestFlow`, and how it stands. A room whose need is only guessed gets no flow
 * temperature, because a guess backs no such claim. Refuses emitters that `lowestFlow` refuses.
 * @param need what the room asks
 * @param emitters what stands in it, as rated
 * @param limits spreadK 0.01 to 50; maxFlowC in degrees Celsius
 * @source as lowestFlow; that a guess backs no claim: practice, no published source
 * @example roomFlow({ roomIndex: 0, name: 'Hall', loadW: 1000, roomC: 20, rough: false }, [{ ratedW: 1000, exponent: 1.3 }], { spreadK: 10, maxFlowC: 75 }).value.flowC // => 75
 */
export function roomFlow(
  need: RoomNeed,
  emitters: readonly FlowEmitter[],
  limits: FlowLimits,
): Outcome<JudgedRoom> {
  const { roomIndex, name, loadW } = need
  const judged = (room: Omit<JudgedRoom, 'roomIndex' | 'name' | 'loadW'>) =>
    accept({ roomIndex, name, loadW, ...room })
  const w = Math.round(loadW)
  if (need.rough) {
    const says = `${name} needs ${w} W only by a guess, which cannot back a flow temperature: measure it element by element.`
    return judged({ state: 'rough', says, why: because(says, loadW, { unit: 'W', from: [need.why] }) })
  }
  if (loadW <= 0) {
    const says = `${name} needs no heat: what it is given is as much as it loses.`
    return judged({ state: 'needsNoHeat', says, why: because(says, loadW, { unit: 'W', from: [need.why] }) })
  }
  if (emitters.length === 0) {
    const says = `${name} needs ${w} W and has no emitter.`
    const why = because(says, loadW, { unit: 'W', from: [need.why] })
    return judged({ state: 'noEmitters', outputAtMaxW: 0, says, why })
  }
  const flow = lowestFlow({ loadW, roomC: need.roomC, ...limits, emitters })
  if (!flow.ok) return under(`rooms[${roomIndex}]`, flow)
  const { flowC, returnC, outputAtMaxW, why: flowWhy } = flow.value
  if (flowC === undefined || returnC === undefined) {
    const gives = Math.round(outputAtMaxW)
    const says = `${name} needs ${w} W and gets ${gives} W at the highest flow of ${limits.maxFlowC} °C.`
    const why = because(says, outputAtMaxW, { unit: 'W', from: [need.why, flowWhy] })
    return judged({ state: 'short', outputAtMaxW, says, why })
  }
  const says = `${name} is warm from a flow of ${flowC} °C.`
  const why = because(says, flowC, { unit: '°C', from: [need.why, flowWhy] })
  return judged({ state: 'warm', flowC, returnC, outputAtMaxW, says, why })
}
