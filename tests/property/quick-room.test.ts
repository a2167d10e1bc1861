import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { quickRoomEntry } from '../../src-main/domain/quick-room.ts'
import { surveyedHeat } from '../../src-main/domain/room-heat.ts'
import { roomUse } from '../../src-main/domain/job.ts'
import { heatLoad } from '../../src-main/engine/heat/heat-load.ts'
import { quickRoom } from '../../src-main/engine/heat/quick-room.ts'
import { heatTablesOnDisk } from '../heat-tables-for-tests.ts'
import { quickEntry } from '../quick-room-for-tests.ts'

const sizeM = fc.double({ min: 2, max: 12, noNaN: true })
const fields = quickRoomEntry.unwrap().shape
const entries = fc.record({
  lengthM: sizeM,
  widthM: sizeM,
  heightM: fc.double({ min: 2, max: 4, noNaN: true }),
  outsideWallCount: fc.constantFrom(1, 2, 3, 4),
  windowCount: fc.constantFrom(0, 1),
  glazing: fc.constantFrom('single', 'double', 'triple'),
  ageBand: fc.constantFrom(...fields.ageBand.options),
  above: fc.constantFrom(...fields.above.options),
  below: fc.constantFrom(...fields.below.options),
})
const uses = fc.constantFrom(...roomUse.options)
type Entry = Parameters<typeof quickEntry>[0]

function watts(entry: Entry, use: (typeof roomUse.options)[number]): number | null {
  const made = quickRoom({ use, entry: quickEntry(entry) }, heatTablesOnDisk)
  if (!made.ok) return null
  const { roomC, heat } = made.value
  const load = heatLoad({ room: { name: 'Room', roomC, outsideC: -3, ...heat } })
  return load.ok ? load.value.watts : null
}

function more(smaller: number | null, larger: number | null): void {
  if (smaller === null || larger === null) throw new Error('A room that can be was refused')
  expect(larger).toBeGreaterThan(smaller)
}

describe('a room entered quickly', () => {
  it('is always a full reckoning that a survey can keep', () => {
    fc.assert(
      fc.property(entries, uses, (entry, use) => {
        const made = quickRoom({ use, entry: quickEntry(entry) }, heatTablesOnDisk)
        expect(made.ok).toBe(true)
        if (made.ok) expect(surveyedHeat.safeParse(made.value.heat).success).toBe(true)
        expect(watts(entry, use)).toBeGreaterThan(0)
      }),
    )
  })
  it('needs more with more glass, wherever glass is worse than wall', () => {
    fc.assert(
      fc.property(entries, uses, (entry, use) => {
        const glassier = { ...entry, windowCount: 2, wall: 'cavityFilled' }
        more(watts({ ...glassier, windowCount: 1 }, use), watts(glassier, use))
      }),
    )
  })
  it('needs more when it is higher, or has another outside wall', () => {
    fc.assert(
      fc.property(entries, uses, (entry, use) => {
        more(watts(entry, use), watts({ ...entry, heightM: entry.heightM + 0.2 }, use))
        const one = { ...entry, outsideWallCount: 1, below: 'heatedRoom' } as const
        more(watts(one, use), watts({ ...one, outsideWallCount: 2 }, use))
      }),
    )
  })
  it('needs more beside cooler rooms', () => {
    fc.assert(
      fc.property(entries, uses, (entry, use) => {
        const open = { ...entry, outsideWallCount: 1 }
        more(watts({ ...open, besideC: 18 }, use), watts({ ...open, besideC: 10 }, use))
      }),
    )
  })
})
