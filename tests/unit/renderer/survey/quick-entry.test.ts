import { describe, expect, it } from 'vitest'
import { room as roomSchema } from '../../../../src-main/domain/job.ts'
import type { Room } from '../../../../src-main/domain/job.ts'
import { quickRoomOf, roomAgain } from '../../../../src-renderer/screens/job/new-things.ts'
import {
  bandChoices,
  bandOfYear,
  constructionChoices,
} from '../../../../src-renderer/screens/job/quick/table-choices.ts'
import {
  byStorey,
  roomWith,
  startEntry,
  workedOut,
} from '../../../../src-renderer/screens/job/quick/worked-out.ts'
import { heatTablesOnDisk } from '../../../heat-tables-for-tests.ts'
import { quickEntry, quickWatts } from '../../../quick-room-for-tests.ts'

const typed = { use: 'living', roomC: undefined, entry: { ...quickEntry() } } as const
const work = (entry: Readonly<Record<string, unknown>>) =>
  workedOut({ ...typed, entry }, heatTablesOnDisk, -3)

function lounge(): Room {
  const worked = work(typed.entry)
  if (!worked.ok) throw new Error('The room is whole')
  return quickRoomOf({ name: 'Lounge', use: 'living', storey: 1 }, { typed, made: worked.made }, ['room-1'])
}

describe('quick answers as they are typed', () => {
  it('come to the heat that the desk works out', () => {
    const worked = work(typed.entry)
    expect(worked.ok && worked.load.watts).toBe(quickWatts())
    expect(worked.ok && worked.load.rough).toBe(false)
  })
  it('name what is wanted by the answer’s own name', () => {
    const worked = work({ ...typed.entry, lengthM: 'abc', ageBand: undefined })
    expect(worked.ok ? [] : worked.problems.map(({ path }) => path)).toEqual(['lengthM', 'ageBand'])
    const glass = work({ ...typed.entry, glazedM2: 20 })
    expect(glass.ok ? [] : glass.problems.map(({ path }) => path)).toEqual(['glazedM2'])
  })
  it('make a room that the desk takes, with its answers and its heat', () => {
    const room = lounge()
    expect(roomSchema.safeParse(room).success).toBe(true)
    expect(room).toMatchObject({ roomId: 'room-2', roomC: 21, storey: 1, quick: { entry: quickEntry() } })
    expect(room.walls).toMatchObject([{ widthMm: 4000, heightMm: 2400 }])
  })
  it('leave the old heat while they cannot be worked out', () => {
    const room = lounge()
    const wrong = { ...typed, entry: { ...typed.entry, widthM: '3 m' } }
    const after = roomWith(room, wrong, workedOut(wrong, heatTablesOnDisk, -3))
    expect(after).toMatchObject({ heat: room.heat, quick: { entry: { widthM: '3 m' } } })
    expect(after).not.toHaveProperty('roomC')
  })
})

describe('what a new room’s quick answers begin with', () => {
  it('never guess the age of the house', () => {
    expect(startEntry([], 0)).not.toHaveProperty('ageBand')
  })
  it('take wall, glass, age and country from the last room that was entered quickly', () => {
    const entry = quickEntry({ wall: 'solidBrick', glazing: 'single', ageBand: 'A', country: 'wales' })
    const start = startEntry(
      [
        { ...lounge(), quick: { entry } },
        { ...lounge(), quick: undefined },
      ],
      0,
    )
    expect(start).toMatchObject({ wall: 'solidBrick', glazing: 'single', ageBand: 'A', country: 'wales' })
    expect(start).not.toHaveProperty('lengthM')
  })
  it('put rooms above and the ground below the ground floor, and a loft above the others', () => {
    expect(byStorey(0)).toEqual({ above: 'heatedRoom', below: 'solidGround' })
    expect(byStorey(1)).toEqual({ above: 'loft', below: 'heatedRoom' })
  })
})

describe('choices from the tables', () => {
  it('are each construction once, by its printed name', () => {
    const walls = constructionChoices(heatTablesOnDisk, 'wall', undefined)
    expect(walls.filter(({ value }) => value === 'cavity')).toEqual([
      { value: 'cavity', label: 'Cavity, as built' },
    ])
  })
  it('are age bands by their years, and find the one of a year', () => {
    const bands = bandChoices(heatTablesOnDisk, undefined).map(({ label }) => label)
    expect([bands[0], bands[2], bands.at(-1)]).toEqual(['Before 1900', '1930 to 1949', '2012 or later'])
    expect(bandOfYear(heatTablesOnDisk, undefined, 1936)).toBe('C')
    expect(bandOfYear(heatTablesOnDisk, 'scotland', 1910)).toBe('A')
    expect(bandOfYear(heatTablesOnDisk, undefined, undefined)).toBeUndefined()
  })
})

describe('another room like this', () => {
  it('has the same walls and heat under an id and a name of its own, without the photos', () => {
    const room = { ...lounge(), photos: [{ photoId: 'one' }] }
    const again = roomAgain(room, ['room-1', 'room-2'])
    const { photos: _, ...rest } = room
    expect(again).toEqual({ ...rest, roomId: 'room-3', name: 'Lounge (copy)' })
  })
})
