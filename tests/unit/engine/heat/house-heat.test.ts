import { describe, expect, it } from 'vitest'
import { houseHeat as request } from '../../../../src-main/contract/heating/house.ts'
import type { MeasuredRoomHeat, RoomHeat } from '../../../../src-main/domain/room-heat.ts'
import { houseHeat } from '../../../../src-main/engine/heat/house-heat.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const room = (name: string, roomC: number, more: Partial<MeasuredRoomHeat> = {}): MeasuredRoomHeat => ({
  name,
  roomC,
  outsideC: -3,
  volumeM3: 40,
  floorAreaM2: 16,
  airChangesPerHour: 0,
  elements: [{ name: 'Outside wall', areaM2: 10, uWPerM2K: 1, boundary: { kind: 'outside' } }],
  ...more,
})
const wallTo = (roomC: number, areaM2 = 8) =>
  ({ name: 'Inside wall', areaM2, uWPerM2K: 2, boundary: { kind: 'room', roomC } }) as const
const rough: RoomHeat = { name: 'Box room', roomC: 18, outsideC: -3, volumeM3: 20, roughWPerM3: 40 }

describe('the heat of a house', () => {
  it('is what its rooms lose, and what they pass each other cancels', () => {
    const lounge = room('Lounge', 21)
    const hall = room('Hall', 18)
    const rooms = [
      { ...lounge, elements: [...lounge.elements, wallTo(18)] },
      { ...hall, elements: [...hall.elements, wallTo(21)] },
    ]
    const heat = answered(houseHeat({ rooms }))
    expect(heat.rooms.map((one) => one.watts)).toEqual([240 + 48, 210 - 48])
    expect(heat.rooms.map((one) => one.betweenRoomsW)).toEqual([48, -48])
    expect(heat.watts).toBe(450)
    expect(heat.transmissionW).toBe(450)
    expect(heat.betweenRoomsW).toBe(0)
    expect(heat.btuPerHour / heat.watts).toBeCloseTo(3.412142, 6)
    expect(heat.warnings).toEqual([])
  })

  it('counts the door in an inside wall with the wall', () => {
    const door = { name: 'Door', areaM2: 2, uWPerM2K: 3 }
    const lounge = room('Lounge', 21, { elements: [{ ...wallTo(18), openings: [door] }] })
    const hall = room('Hall', 18, { elements: [{ ...wallTo(21), openings: [door] }] })
    const heat = answered(houseHeat({ rooms: [lounge, hall] }))
    expect(heat.rooms.map((one) => one.betweenRoomsW)).toEqual([3 * (6 * 2 + 2 * 3), -3 * (6 * 2 + 2 * 3)])
    expect(heat.transmissionW).toBe(0)
  })

  it('says where a wall between two rooms stands in one list only, and keeps what is left over', () => {
    const rooms = [room('Lounge', 21, { elements: [wallTo(18)] }), room('Hall', 18)]
    const heat = answered(houseHeat({ rooms }))
    expect(heat.betweenRoomsW).toBe(48)
    expect(heat.watts).toBe(48 + 210)
    expect(heat.warnings).toHaveLength(1)
    expect(heat.warnings[0]).toMatch(/between rooms at 21 °C and at 18 °C .* 48 W/i)
  })

  it('says that heat to a room that is not listed leaves the house, and that heat from one comes from outside it', () => {
    const loses = answered(houseHeat({ rooms: [room('Lounge', 21, { elements: [wallTo(10)] })] }))
    expect(loses.warnings).toEqual([
      'Lounge passes 176 W to a room at 10 °C that is not in this list: it leaves the house.',
    ])
    const gains = answered(houseHeat({ rooms: [room('Store', 10, { elements: [wallTo(21)] })] }))
    expect(gains.warnings[0]).toContain('Store is given 176 W by a room at 21 °C')
  })

  it('warms the air once for the source: half of two rooms’ air, all of one room’s, or the share that is given', () => {
    const airy = (name: string) => room(name, 20, { airChangesPerHour: 1, elements: [], outsideC: -5 })
    const full = 0.34 * 40 * 25
    const two = answered(houseHeat({ rooms: [airy('A'), airy('B')] }))
    expect(two.watts).toBeCloseTo(2 * full, 9)
    expect(two.source.watts).toBeCloseTo(full, 9)
    expect(answered(houseHeat({ rooms: [airy('A')] })).source.watts).toBeCloseTo(full, 9)
    const given = answered(houseHeat({ rooms: [airy('A'), airy('B')], ventilationRatio: 0.75 }))
    expect(given.source).toMatchObject({ ventilationRatio: 0.75 })
    expect(given.source.ventilationW).toBeCloseTo(1.5 * full, 9)
  })

  it('is rough as soon as one room is, and says which', () => {
    const heat = answered(houseHeat({ rooms: [room('Lounge', 21), rough] }))
    expect(heat).toMatchObject({ rough: true, roughW: 800, watts: 240 + 800, transmissionW: 240 })
    expect(heat.warnings).toEqual([
      "Only guessed by volume: Box room. The house's figure is rough with them.",
    ])
    expect(answered(houseHeat({ rooms: [room('Lounge', 21)] })).rough).toBe(false)
  })

  it('notices rooms with different temperatures outside', () => {
    const { warnings } = answered(
      houseHeat({ rooms: [room('Lounge', 21), room('Hall', 18, { outsideC: -5 })] }),
    )
    expect(warnings[0]).toContain('(-3, -5 °C)')
  })

  it('shows every number that went in', () => {
    const heat = answered(houseHeat({ rooms: [room('Lounge', 21), rough] }))
    expect(leavesOf(heat.why)).toEqual(expect.arrayContaining([10, 1, 21, -3, 40, 20]))
    expect(request.output.safeParse(heat).success).toBe(true)
  })

  it('refuses a room at fault under its place, no rooms, and a share outside 0 to 1', () => {
    const window = { name: 'Window', areaM2: 12, uWPerM2K: 2 }
    const wall = { name: 'Wall', areaM2: 10, uWPerM2K: 1, boundary: { kind: 'outside' as const } }
    const wrong = room('Hall', 18, { elements: [{ ...wall, openings: [window] }] })
    expect(refused(houseHeat({ rooms: [rough, wrong] }))).toMatchObject({
      code: 'impossible',
      path: 'rooms[1].elements[0].openings',
    })
    expect(refused(houseHeat({ rooms: [] })).path).toBe('rooms')
    expect(refused(houseHeat({ rooms: [rough], ventilationRatio: 1.2 })).path).toBe('ventilationRatio')
  })
})
