import type { Room, Swap } from '../../../src-main/domain/job.ts'
import { quickRoomEntry } from '../../../src-main/domain/quick-room.ts'
import type { QuickRoomAnswer } from '../../../src-main/engine/heat/quick-room.ts'
import type { QuickTyped } from './quick/worked-out.ts'
import type { Pipe, Side, Wall } from '../../../src-main/domain/wall.ts'
import { words } from './job.words.ts'

/** The first of `room-1`, `room-2` … that nobody has. */
export function freeId(stem: string, taken: readonly string[]): string {
  const search = (nth: number): string =>
    taken.includes(`${stem}-${nth}`) ? search(nth + 1) : `${stem}-${nth}`
  return search(1)
}

/**
 * Where a room's design temperature starts from, to be put right by the survey: from memory of the UK's national annex to
 * EN 12831-1.
 */
const usualC: Readonly<Record<Room['use'], number>> = {
  bathroom: 22,
  bedroom: 18,
  living: 21,
  kitchen: 18,
  dining: 21,
  hall: 18,
  study: 21,
  utility: 18,
  toilet: 18,
  other: 18,
}

/** A heat guess to start from, W for each m³: from memory, and marked rough wherever it shows. */
const usualRoughWPerM3 = 40

/** What is asked before a room is put into the job. */
export type RoomAsked = {
  readonly name: string
  readonly use: Room['use']
  readonly storey?: number
  readonly lengthM: number | string | undefined
  readonly widthM: number | string | undefined
  readonly heightM: number | string | undefined
}

/** A room of the size that was measured, with one wall as long as the room. Values that are no numbers stay as typed. */
export function newRoom(asked: RoomAsked, taken: readonly string[]): Room {
  const { name, use, storey = 0, lengthM, widthM, heightM } = asked
  const sizes = [lengthM, widthM, heightM].map(Number)
  const volumeM3 = Math.round(sizes.reduce((product, size) => product * size, 1) * 100) / 100
  return {
    roomId: freeId('room', taken),
    name,
    use,
    roomC: usualC[use],
    storey,
    floor: 'carpet',
    heat: { volumeM3, roughWPerM3: usualRoughWPerM3 },
    walls: [
      newWall([], {
        widthMm: Math.round(Number(lengthM) * 1000),
        heightMm: Math.round(Number(heightM) * 1000),
      }),
    ],
  }
}

type Quick = { readonly typed: QuickTyped; readonly made: QuickRoomAnswer }

/** A room whose heat was made from quick answers, with one wall as long as the room. */
export function quickRoomOf(
  asked: Pick<RoomAsked, 'name' | 'use' | 'storey'>,
  { typed, made }: Quick,
  taken: readonly string[],
): Room {
  const entry = quickRoomEntry.parse(typed.entry)
  const room = newRoom({ ...asked, ...entry }, taken)
  return { ...room, roomC: made.roomC, heat: made.heat, quick: { entry } }
}

/** The same room again under another name: walls, heat and quick answers, without its photos. */
export function roomAgain(room: Room, taken: readonly string[]): Room {
  const { photos: _, ...rest } = room
  return { ...rest, roomId: freeId('room', taken), name: words.room.copyOf(room.name).slice(0, 200) }
}

export function newWall(
  taken: readonly string[],
  size: { readonly widthMm: number; readonly heightMm: number },
): Wall {
  const wallId = freeId('wall', taken)
  return {
    wallId,
    name: words.wall.fresh(wallId.replace('wall-', '')),
    ...size,
    build: 'solidMasonry',
    finish: 'paint',
  }
}

/** A pipe end to be filled in. */
export function newPipe(side: Side, xMm: number, rest: Pick<Pipe, 'from' | 'outsideMm' | 'material'>): Pipe {
  return { side, xMm, ...rest, carries: 'unknown' }
}

/** What is asked before a swap is put into the job. */
export type SwapAsked = {
  readonly roomId: string
  readonly wallId: string
  readonly emitterId: string
  readonly pipes: readonly Pipe[]
  /** What hangs there now; nothing where the wall is empty. */
  readonly existing: { readonly name: string; readonly widthMm: number; readonly heightMm: number } | null
}

/** A new emitter 150 mm above the floor (practice, no published source), between the pipes where there are two. */
export function newSwap(asked: SwapAsked, taken: readonly string[]): Swap {
  const { existing, ...rest } = asked
  return {
    swapId: freeId('swap', taken),
    ...rest,
    ...(existing === null ? {} : { existing }),
    valves: { kind: 'thermostaticAndLockshield', finish: 'white' },
    centre: asked.pipes.length === 2 ? { kind: 'betweenPipes' } : { kind: 'middleOfWall' },
    bottomMm: 150,
  }
}
