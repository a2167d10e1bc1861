import { problemsIn } from '../../../../src-main/contract/sentences.ts'
import type { Room } from '../../../../src-main/domain/job.ts'
import type { Problem } from '../../../../src-main/domain/outcome.ts'
import { quickRoomEntry } from '../../../../src-main/domain/quick-room.ts'
import { heatLoad } from '../../../../src-main/engine/heat/heat-load.ts'
import type { HeatLoadAnswer } from '../../../../src-main/engine/heat/heat-load.ts'
import { quickRoom } from '../../../../src-main/engine/heat/quick-room.ts'
import type { QuickRoomAnswer } from '../../../../src-main/engine/heat/quick-room.ts'
import type { QuickTables } from '../../../../src-main/engine/heat/quick/quick-tables.ts'
import { words } from './quick.words.ts'

/** The quick answers as they are typed: what is no number stays as it was typed. */
export type QuickTyped = {
  readonly use: Room['use']
  readonly roomC: unknown
  readonly entry: Readonly<Record<string, unknown>>
}

export type WorkedOut =
  | { readonly ok: true; readonly made: QuickRoomAnswer; readonly load: HeatLoadAnswer }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** What the quick answers come to, or what is still wanted; each problem's path is the answer's own name. */
export function workedOut(typed: QuickTyped, tables: QuickTables, outsideC: number): WorkedOut {
  const read = quickRoomEntry.safeParse(typed.entry)
  if (!read.success) return { ok: false, problems: problemsIn(read.error, typed.entry) }
  const roomC = typeof typed.roomC === 'number' ? { roomC: typed.roomC } : {}
  const made = quickRoom({ use: typed.use, ...roomC, entry: read.data }, tables)
  if (!made.ok) return made
  const load = heatLoad({
    room: { name: words.load.room, roomC: made.value.roomC, outsideC, ...made.value.heat },
  })
  return load.ok ? { ok: true, made: made.value, load: load.value } : load
}

/** Answers that hold for the whole house: the next room takes them from the last one that was entered quickly. */
const ofTheHouse = ['wall', 'glazing', 'ageBand', 'country'] as const

/** What a new room's quick answers begin with. The age of the house is never guessed. */
export function startEntry(rooms: readonly Room[], storey: number): Readonly<Record<string, unknown>> {
  const last = rooms.findLast((room) => room.quick !== undefined)?.quick?.entry
  const house = Object.fromEntries(ofTheHouse.flatMap((name) => (last?.[name] ? [[name, last[name]]] : [])))
  return {
    heightM: last?.heightM ?? 2.4,
    outsideWallCount: 1,
    windowCount: 1,
    outsideDoorCount: 0,
    wall: 'cavity',
    glazing: 'double',
    country: 'england',
    ...house,
    ...byStorey(storey),
  }
}

/** What usually lies above and below, to be put right: rooms above the ground floor, a loft above the others. */
export function byStorey(storey: unknown): Readonly<Record<string, unknown>> {
  return storey === 0 || storey === undefined
    ? { above: 'heatedRoom', below: 'solidGround' }
    : { above: 'loft', below: 'heatedRoom' }
}

/** A room after its quick answers changed: heat and temperature with them, as long as they can be worked out. */
export function roomWith(room: Room, typed: QuickTyped, worked: WorkedOut | null): unknown {
  const { roomC: _, ...rest } = room
  return {
    ...rest,
    use: typed.use,
    ...(typed.roomC === undefined ? {} : { roomC: typed.roomC }),
    quick: { entry: typed.entry },
    heat: worked?.ok === true ? worked.made.heat : room.heat,
  }
}
