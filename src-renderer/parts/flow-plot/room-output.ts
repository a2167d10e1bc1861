import type { Emitter } from '../../../src-main/domain/item.ts'
import { room as roomShape, survey as surveyShape, swap as swapShape } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { because } from '../../../src-main/domain/derivation.ts'
import { emitterOutput } from '../../../src-main/engine/heat/emitter-output.ts'
import { heatLoad } from '../../../src-main/engine/heat/heat-load.ts'
import { lowestFlow } from '../../../src-main/engine/heat/lowest-flow.ts'
import type { FlowEmitter } from '../../../src-main/engine/heat/lowest-flow.ts'
import { words } from './what-if.words.ts'

/** An emitter that stays is known by one output alone: the generic exponent of a radiator (EN 15316, default table). */
export const stayingExponent = 1.3

/** A room with what hangs in it once its swaps are done. */
export type RoomHeatNow = {
  readonly name: string
  readonly roomC: number
  readonly loadW: number
  /** The need is only guessed, and backs no flow temperature. */
  readonly rough: boolean
  readonly loadWhy: Derivation
  readonly flowC: number
  readonly spreadK: number
  readonly emitters: readonly FlowEmitter[]
}

/** Null while a figure of the room, its swaps or the system is no figure, or an emitter is not known yet. */
export function roomHeatNow(
  job: Job,
  roomId: string,
  items: ReadonlyMap<string, Emitter>,
): RoomHeatNow | null {
  const room = roomShape.safeParse(job.rooms.find((one) => one.roomId === roomId))
  const survey = surveyShape.safeParse(job.survey)
  if (!room.success || !survey.success) return null
  const { outsideC, system } = survey.data
  const { name, roomC, heat, otherEmittersW = 0 } = room.data
  const load = heatLoad({ room: { name, roomC, outsideC, ...heat } })
  if (!load.ok || system.flowC <= system.returnC) return null
  const up = job.swaps.filter((one) => one.roomId === roomId).map((one) => emitterOf(one, items))
  if (up.some((one) => one === null)) return null
  const rating = { flowC: system.flowC, returnC: system.returnC, roomC }
  const staying = otherEmittersW > 0 ? [{ ratedW: otherEmittersW, rating, exponent: stayingExponent }] : []
  return {
    name,
    roomC,
    loadW: load.value.watts,
    rough: load.value.rough,
    loadWhy: load.value.why,
    flowC: system.flowC,
    spreadK: Math.round((system.flowC - system.returnC) * 1e6) / 1e6,
    emitters: [...staying, ...up.filter((one) => one !== null)],
  }
}

function emitterOf(draft: unknown, items: ReadonlyMap<string, Emitter>): FlowEmitter | null {
  const swap = swapShape.safeParse(draft)
  const emitter = swap.success ? items.get(swap.data.emitterId) : undefined
  if (!swap.success || emitter === undefined) return null
  const { exponent, rating } = emitter
  const ratedW = (swap.data.factors ?? []).reduce((watts, { value }) => watts * value, emitter.ratedW)
  return { ratedW, exponent, ...(rating === undefined ? {} : { rating }) }
}

export type OutputAt = { readonly watts: number; readonly why: Derivation | null }

/** What all that hangs in the room gives at a flow temperature; nothing where the return is no warmer than the room. */
export function outputAt(room: RoomHeatNow, flowC: number): OutputAt {
  const { roomC, spreadK, emitters, name } = room
  const returnC = Math.round((flowC - spreadK) * 1e6) / 1e6
  if (returnC <= roomC) return { watts: 0, why: null }
  const outputs = emitters.map((emitter) => emitterOutput({ ...emitter, flowC, returnC, roomC }))
  const found = outputs.flatMap((one) => (one.ok ? [one.value] : []))
  if (found.length < outputs.length) return { watts: 0, why: null }
  const watts = found.reduce((sum, one) => sum + one.watts, 0)
  const says = words.gives(name, flowC)
  return { watts, why: because(says, watts, { unit: 'W', from: found.map((one) => one.why) }) }
}

/** The least flow at which the room is warm; null where none up to the limit is, or its need is only guessed or nothing. */
export function warmFrom(room: RoomHeatNow, maxFlowC: number): number | null {
  const { loadW, roomC, spreadK, emitters, rough } = room
  if (rough || loadW <= 0 || emitters.length === 0) return null
  const flow = lowestFlow({ loadW, roomC, spreadK, maxFlowC, emitters })
  return flow.ok ? (flow.value.flowC ?? null) : null
}
