import { isOpen } from './flow-answer.ts'
import type { FlowAnswer, RoomState } from './flow-answer.ts'
import { words } from './house.words.ts'

/** Where a room stands on the scale: at a temperature, or beside it in words. */
export type Stand = { readonly flowC: number | null; readonly says: string }
export type RoomRow = {
  readonly roomId: string
  readonly roomIndex: number
  readonly name: string
  readonly loadW: number
  readonly before: Stand
  readonly after: Stand
  /** It has a swap, so that before and after may differ. */
  readonly swapped: boolean
  /** The room whose need is the house's. */
  readonly decides: boolean
}
export type OpenRoom = {
  readonly roomId: string
  readonly roomIndex: number
  readonly name: string
  readonly kind: 'rough' | 'notSurveyed'
  readonly says: string
}

/** A flow temperature as it stands in a column: to the tenth that it was found to. */
export function degrees(flowC: number): string {
  return words.degrees(flowC.toFixed(1))
}

export function standOf(room: RoomState, maxFlowC: number): Stand {
  if (room.flowC !== undefined) return { flowC: room.flowC, says: degrees(room.flowC) }
  if (room.state === 'short') return { flowC: null, says: words.shortAt(degrees(maxFlowC)) }
  return { flowC: null, says: words.states[room.state] }
}

/** The rooms that back a flow temperature with the swaps done, worst on top: those that stay short first of all. */
export function roomRows(answer: FlowAnswer, swappedRooms: ReadonlySet<string>): readonly RoomRow[] {
  const { before, after, maxFlowC } = answer
  const was = new Map(before.rooms.map((room) => [room.roomId, room]))
  return after.rooms
    .filter((room) => !isOpen(room))
    .toSorted((a, b) => height(b) - height(a))
    .map((room) => ({
      roomId: room.roomId,
      roomIndex: room.roomIndex,
      name: room.name,
      loadW: room.loadW,
      before: standOf(was.get(room.roomId) ?? room, maxFlowC),
      after: standOf(room, maxFlowC),
      swapped: swappedRooms.has(room.roomId),
      decides: after.flowC !== undefined && room.flowC === after.flowC,
    }))
}

function height({ state, flowC, loadW, outputAtMaxW = 0 }: RoomState): number {
  if (state === 'needsNoHeat') return -1000
  return flowC ?? 1000 + (loadW - outputAtMaxW)
}

/** The rooms that can't back a flow temperature with the swaps done, in the order of the job. */
export function openRooms({ after }: FlowAnswer): readonly OpenRoom[] {
  return after.rooms
    .flatMap(({ roomId, roomIndex, name, state, says }) =>
      state === 'rough' || state === 'notSurveyed' ? [{ roomId, roomIndex, name, kind: state, says }] : [],
    )
    .toSorted((a, b) => a.roomIndex - b.roomIndex)
}

export type Axis = { readonly fromC: number; readonly toC: number; readonly ticksC: readonly number[] }

const stepC = 10

/** A scale of whole tens that holds every temperature of the rows; at least two tens wide. */
export function axisOf(rows: readonly RoomRow[]): Axis {
  const all = rows.flatMap(({ before, after }) => [before.flowC, after.flowC].filter((c) => c !== null))
  const fromC = all.length === 0 ? 30 : Math.floor((Math.min(...all) - 1) / stepC) * stepC
  const highest = all.length === 0 ? fromC : Math.ceil((Math.max(...all) + 1) / stepC) * stepC
  const toC = Math.max(highest, fromC + 2 * stepC)
  const ticksC = Array.from({ length: (toC - fromC) / stepC + 1 }, (_, at) => fromC + at * stepC)
  return { fromC, toC, ticksC }
}

/** How far along the scale a temperature lies, 0 to 1. */
export function shareAt({ fromC, toC }: Axis, flowC: number): number {
  return Math.min(1, Math.max(0, (flowC - fromC) / (toC - fromC)))
}
