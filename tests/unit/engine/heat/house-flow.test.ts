import { describe, expect, it } from 'vitest'
import { houseFlow as request } from '../../../../src-main/contract/heating/house.ts'
import type { RoomHeat } from '../../../../src-main/domain/room-heat.ts'
import { houseFlow } from '../../../../src-main/engine/heat/house-flow.ts'
import { lowestFlow } from '../../../../src-main/engine/heat/lowest-flow.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const radiator = (ratedW: number) => ({ ratedW, exponent: 1.3 })
const asked = (name: string, loadW: number, ratedW: number) => ({
  name,
  loadW,
  roomC: 20,
  emitters: [radiator(ratedW)],
})
const guess: RoomHeat = { name: 'Box room', roomC: 18, outsideC: -3, volumeM3: 20, roughWPerM3: 40 }
const measured: RoomHeat = {
  name: 'Hall',
  roomC: 20,
  outsideC: 0,
  volumeM3: 20,
  floorAreaM2: 8,
  airChangesPerHour: 0,
  elements: [{ name: 'Wall', areaM2: 20, uWPerM2K: 2, boundary: { kind: 'outside' } }],
}
const warmer: RoomHeat = {
  ...measured,
  name: 'Landing',
  elements: [{ name: 'Wall', areaM2: 20, uWPerM2K: 2, boundary: { kind: 'room', roomC: 22 } }],
}

describe('the flow temperature of a house', () => {
  it('is its worst room’s, and the rooms stand worst first', () => {
    const rooms = [asked('Easy', 300, 1000), asked('Worst', 900, 1000), asked('Middle', 500, 1000)]
    const house = answered(houseFlow({ rooms, spreadK: 10 }))
    expect(house.rooms.map(({ name }) => name)).toEqual(['Worst', 'Middle', 'Easy'])
    expect(house.rooms.map(({ roomIndex }) => roomIndex)).toEqual([1, 2, 0])
    const alone = answered(lowestFlow({ loadW: 900, roomC: 20, spreadK: 10, emitters: [radiator(1000)] }))
    expect(house).toMatchObject({ reachable: true, backed: true, worstRoom: 'Worst' })
    expect(house.flowC).toBe(alone.flowC)
    expect(house.measuredFlowC).toBe(alone.flowC)
    expect(house.returnC).toBe(alone.returnC)
  })

  it('takes a room by its survey as well as by its load', () => {
    const house = answered(houseFlow({ rooms: [{ room: measured, emitters: [radiator(800)] }], spreadK: 10 }))
    expect(house.rooms[0]).toMatchObject({ name: 'Hall', loadW: 800, state: 'warm', flowC: 75, returnC: 65 })
    expect(leavesOf(house.why)).toEqual(expect.arrayContaining([20, 2, 0, 800, 1.3, 10, 75]))
    expect(request.output.safeParse(house).success).toBe(true)
  })

  it('claims nothing for the house while one room is only guessed, and says which', () => {
    const rooms = [{ room: guess, emitters: [radiator(3000)] }, asked('Lounge', 500, 1000)]
    const house = answered(houseFlow({ rooms, spreadK: 10 }))
    expect(house).toMatchObject({ backed: false, reachable: true, roughRooms: ['Box room'] })
    expect(house.flowC).toBeUndefined()
    expect(house.returnC).toBeUndefined()
    expect(house.measuredFlowC).toBeGreaterThan(40)
    expect(house.rooms.at(-1)).toMatchObject({ name: 'Box room', state: 'rough', loadW: 800 })
    expect(house.rooms.at(-1)).not.toHaveProperty('flowC')
    expect(house.says).toMatch(/measured rooms .* not the whole house: Box room is only guessed/i)
  })

  it('counts a given load that is marked rough as a guess', () => {
    const house = answered(houseFlow({ rooms: [{ ...asked('Den', 500, 1000), rough: true }], spreadK: 10 }))
    expect(house).toMatchObject({ backed: false, reachable: false, roughRooms: ['Den'] })
    expect(house.says).toMatch(/^Every room is only guessed/)
  })

  it('is not reachable with a room that is short or has no emitter; those come first, the worst share first', () => {
    const bare = { name: 'Bare', loadW: 100, roomC: 20, emitters: [] }
    const rooms = [asked('Warm', 300, 1000), asked('Short', 2000, 1000), bare, asked('Nearly', 1100, 1000)]
    const house = answered(houseFlow({ rooms, spreadK: 10 }))
    expect(house.rooms.map(({ name, state }) => `${name} ${state}`)).toEqual([
      'Bare noEmitters',
      'Short short',
      'Nearly short',
      'Warm warm',
    ])
    expect(house).toMatchObject({ reachable: false, backed: true, worstRoom: 'Bare' })
    expect(house.flowC).toBeUndefined()
    expect(house.says).toContain('3 rooms are short')
    expect(house.rooms[1]?.says).toBe('Short needs 2000 W and gets 1000 W at the highest flow of 75 °C.')
  })

  it('asks no flow for a room that is warmed by its neighbours', () => {
    const house = answered(houseFlow({ rooms: [{ room: warmer, emitters: [] }], spreadK: 10 }))
    expect(house).toMatchObject({ reachable: true, backed: true, says: 'No room needs heat.' })
    expect(house.rooms[0]?.state).toBe('needsNoHeat')
    expect(house.flowC).toBeUndefined()
  })

  it('keeps to the highest flow that it is given', () => {
    const rooms = [asked('Lounge', 1000, 1000)]
    expect(answered(houseFlow({ rooms, spreadK: 10, maxFlowC: 60 })).reachable).toBe(false)
    expect(answered(houseFlow({ rooms, spreadK: 10, maxFlowC: 75 })).reachable).toBe(true)
  })

  it('refuses with the place of what is wrong', () => {
    expect(refused(houseFlow({ rooms: [asked('A', 1, 1)], spreadK: 0 })).path).toBe('spreadK')
    expect(refused(houseFlow({ rooms: [], spreadK: 10 })).path).toBe('rooms')
    const odd = { name: 'B', loadW: 100, roomC: 20, emitters: [radiator(1000), radiator(-1)] }
    expect(refused(houseFlow({ rooms: [asked('A', 1, 1), odd], spreadK: 10 })).path).toBe(
      'rooms[1].emitters[1]',
    )
    const wall = { name: 'Wall', areaM2: 1, uWPerM2K: 1, boundary: { kind: 'outside' as const } }
    const openings = [{ name: 'Window', areaM2: 2, uWPerM2K: 1 }]
    const room = { ...measured, elements: [{ ...wall, openings }] }
    expect(refused(houseFlow({ rooms: [{ room, emitters: [] }], spreadK: 10 })).path).toBe(
      'rooms[0].room.elements[0].openings',
    )
  })
})
