import type { QuickRoomEntry } from '../src-main/domain/quick-room.ts'
import { certain } from '../src-main/domain/outcome.ts'
import { heatLoad } from '../src-main/engine/heat/heat-load.ts'
import { quickRoom } from '../src-main/engine/heat/quick-room.ts'
import type { QuickRoomInput } from '../src-main/engine/heat/quick-room.ts'
import { heatTablesOnDisk } from './heat-tables-for-tests.ts'

/** A living room of 4 by 3 by 2.4 m in a house of the 1930s: one outside wall with one window, rooms all round. */
export function quickEntry(changes: Partial<QuickRoomEntry> = {}): QuickRoomEntry {
  return {
    lengthM: 4,
    widthM: 3,
    heightM: 2.4,
    outsideWallCount: 1,
    wall: 'cavity',
    glazing: 'double',
    windowCount: 1,
    outsideDoorCount: 0,
    ageBand: 'C',
    above: 'heatedRoom',
    below: 'heatedRoom',
    ...changes,
  }
}

export const quick = (entry: Partial<QuickRoomEntry> = {}, more: Partial<QuickRoomInput> = {}) =>
  quickRoom({ use: 'living', ...more, entry: quickEntry(entry) }, heatTablesOnDisk)

/** The heat that a room entered quickly needs at 3 degrees of frost. */
export function quickWatts(entry: Partial<QuickRoomEntry> = {}, more: Partial<QuickRoomInput> = {}): number {
  const { roomC, heat } = certain(quick(entry, more))
  return certain(heatLoad({ room: { name: 'Room', roomC, outsideC: -3, ...heat } })).watts
}
