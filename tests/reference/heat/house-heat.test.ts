import { describe, expect, it } from 'vitest'
import type { Boundary, RoomHeat } from '../../../src-main/domain/room-heat.ts'
import { houseFlow } from '../../../src-main/engine/heat/house-flow.ts'
import { houseHeat } from '../../../src-main/engine/heat/house-heat.ts'
import { houseSwapEffects } from '../../../src-main/engine/heat/house-swap-effects.ts'
import { btuPerHourFromW } from '../../../src-main/engine/units/exact-units.ts'
import { answered } from '../../answered.ts'

describe('the rooms of a published house, in feet, Fahrenheit and Btu (diydata.com, ch_design)', () => {
  const cOf = (fahrenheit: number) => (fahrenheit - 32) / 1.8
  const uOf = (btuPerHourFt2F: number) => (btuPerHourFt2F * 1.8) / (btuPerHourFromW(1) * 0.09290304)
  type Row = readonly [name: string, squareFeet: number, behindF: number, u: number, printed: number]
  const dining: readonly Row[] = [
    ['back wall', 72, 30, 0.18, 518],
    ['window', 40, 30, 0.51, 816],
    ['ceiling to bedroom 1', 238, 65, 0.29, 345],
    ['floor', 238, 30, 0.12, 1142],
    ['kitchen wall', 112, 65, 0.39, 218],
    ['hall wall', 24, 60, 0.39, 94],
  ]
  const lounge: readonly Row[] = [
    ['front wall', 72, 30, 0.18, 518],
    ['window', 40, 30, 0.51, 816],
    ['floor', 210, 30, 0.12, 1008],
    ['hall wall', 120, 60, 0.39, 468],
  ]
  const kitchen: readonly Row[] = [
    ['back wall', 32, 30, 0.18, 202],
    ['window', 16, 30, 0.51, 286],
    ['side wall', 95.75, 30, 0.18, 603],
    ['back door', 16.25, 30, 0.42, 239],
    ['floor', 84, 30, 0.12, 353],
    ['dining room wall', 112, 70, 0.39, -218],
    ['hall wall', 48, 60, 0.39, 94],
  ]
  const hall: readonly Row[] = [
    ['side wall', 231.5, 30, 0.18, 1250],
    ['window', 16, 30, 0.51, 245],
    ['front wall', 28.5, 30, 0.18, 154],
    ['front door', 19.5, 30, 0.42, 246],
    ['ceiling to roof', 80, 30, 0.05, 120],
    ['floor', 108, 30, 0.12, 389],
    ['lounge and dining room wall', 144, 70, 0.39, -562],
    // The page takes the kitchen for 70 here and prints -187; in the kitchen's own list it is 65 and prints +94.
    ['kitchen wall', 48, 65, 0.39, -94],
  ]
  const bedroom: readonly Row[] = [
    ['back wall', 72, 30, 0.18, 454],
    ['window', 40, 30, 0.51, 714],
    ['ceiling', 238, 30, 0.05, 417],
    ['floor to dining room', 238, 70, 0.29, -345],
  ]
  const list = [
    ['Dining room', 70, dining],
    ['Lounge', 70, lounge],
    ['Kitchen', 65, kitchen],
    ['Hall', 60, hall],
    ['Bedroom 1', 65, bedroom],
  ] as const
  const behind = (behindF: number): Boundary =>
    behindF === 30 ? { kind: 'outside' } : { kind: 'room', roomC: cOf(behindF) }
  const rooms = list.map(([name, roomF, rows]): RoomHeat => ({
    name,
    roomC: cOf(roomF),
    outsideC: cOf(30),
    volumeM3: 1,
    floorAreaM2: 1,
    airChangesPerHour: 0,
    elements: rows.map(([element, squareFeet, behindF, u]) => ({
      name: element,
      areaM2: squareFeet * 0.09290304,
      uWPerM2K: uOf(u),
      boundary: behind(behindF),
    })),
  }))
  const heat = answered(houseHeat({ rooms }))
  const printedOf = (rows: readonly Row[], outside: boolean) =>
    rows.filter((row) => (row[2] === 30) === outside).reduce((sum, row) => sum + row[4], 0)

  it.each(list.map(([name, , rows], index) => ({ name, rows, index })))(
    '$name: to outside, and to the other rooms, as printed',
    ({ rows, index }) => {
      const room = heat.rooms[index]
      // Every row is printed in whole Btu: half a Btu a row; the floor's 1142.4 is within it.
      const within = rows.length / 2
      const apart = (watts: number, printed: number) => Math.abs(btuPerHourFromW(watts) - printed)
      expect(apart(room?.transmissionW ?? NaN, printedOf(rows, true))).toBeLessThanOrEqual(within)
      expect(apart(room?.betweenRoomsW ?? NaN, printedOf(rows, false))).toBeLessThanOrEqual(within)
    },
  )

  it('what the rooms give each other cancels, so the house is the sum of its outside rows, in Btu/h too', () => {
    const printed = list.reduce((sum, [, , rows]) => sum + printedOf(rows, true), 0)
    expect(heat.betweenRoomsW).toBeCloseTo(0, 6)
    expect(Math.abs(heat.btuPerHour - printed)).toBeLessThanOrEqual(20)
    expect(heat.warnings).toEqual([])
  })

  it('with the page’s own slip in the hall it is told that the lists do not agree', () => {
    const slipped = rooms.map((room) =>
      room.name === 'Hall' && 'elements' in room
        ? {
            ...room,
            elements: room.elements.map((element) =>
              element.name === 'kitchen wall' ? { ...element, boundary: behind(70) } : element,
            ),
          }
        : room,
    )
    const { warnings, betweenRoomsW } = answered(houseHeat({ rooms: slipped }))
    expect(warnings).toHaveLength(2) // hall and kitchen lose their match; hall and 70 have one too many
    expect(Math.abs(btuPerHourFromW(betweenRoomsW) - (94 - 187))).toBeLessThanOrEqual(1)
  })
})

describe('the air of the house follows EN 12831-1:2017', () => {
  const room = (name: string, airChangesPerHour: number): RoomHeat => ({
    name,
    roomC: 20,
    outsideC: -5,
    volumeM3: 40,
    floorAreaM2: 16,
    airChangesPerHour,
    elements: [],
  })

  it('two rooms: the source warms half of 2 x 0.34 x 1 x 40 x 25 W (table B.5: 0.5 for two rooms or more)', () => {
    const { source, ventilationW } = answered(houseHeat({ rooms: [room('A', 1), room('B', 1)] }))
    expect(ventilationW).toBeCloseTo(680, 9)
    expect(source.watts).toBeCloseTo(340, 9)
    expect(source.ventilationW).toBeCloseTo(340, 9)
    expect(source.ventilationRatio).toBe(0.5)
  })

  it('one room: all of it (table B.5: 1), also where the other takes no air from outside', () => {
    expect(answered(houseHeat({ rooms: [room('A', 1)] })).source.watts).toBeCloseTo(340, 9)
    expect(answered(houseHeat({ rooms: [room('A', 1), room('B', 0)] })).source.watts).toBeCloseTo(340, 9)
  })
})

/** The excess temperature in the log mean, and its share of the rated one, to the power 1.3: what 1000 W then gives. */
const given = (excessK: number) => 1000 * (excessK / 49.8329) ** 1.3
const emitters = [{ ratedW: 1000, exponent: 1.3 }]

describe('a house’s flow temperature agrees with published temperatures (EN 442-2; log mean excess by general library)', () => {
  const cases = [
    { spreadK: 10, roomC: 20, excessK: 49.8329, flowC: 75 },
    { spreadK: 10, roomC: 20, excessK: 29.7201, flowC: 55 },
    { spreadK: 15, roomC: 20, excessK: 42.0551, flowC: 70 },
    { spreadK: 20, roomC: 21, excessK: 38.1298, flowC: 70 },
    { spreadK: 20, roomC: 22, excessK: 26.7661, flowC: 60 },
    { spreadK: 30, roomC: 20, excessK: 32.7407, flowC: 70 },
    { spreadK: 20, roomC: 20, excessK: 59.4403, flowC: 90 },
  ]
  it.each(cases)('$flowC °C at $spreadK K in a room at $roomC °C', ({ spreadK, roomC, excessK, flowC }) => {
    const worst = { name: 'Worst', roomC, loadW: given(excessK), emitters }
    const easy = { name: 'Easy', roomC, loadW: given(excessK) / 4, emitters }
    const house = answered(houseFlow({ spreadK, maxFlowC: 95, rooms: [easy, worst] }))
    expect(house.worstRoom).toBe('Worst')
    expect(Math.abs((house.flowC ?? NaN) - flowC)).toBeLessThan(0.11) // solved in whole tenths
  })

  it.each([
    [455, 1020.8],
    [559, 1254.1],
  ])(
    'a bathroom of %d W at 60/40/22 wants %d W rated at n = 1.3 (public exercise, log mean)',
    (loadW, ratedW) => {
      const bath = { name: 'Bath', roomC: 22, loadW, emitters: [{ ratedW, exponent: 1.3 }] }
      const { flowC } = answered(houseFlow({ spreadK: 20, rooms: [bath] }))
      expect(Math.abs((flowC ?? NaN) - 60)).toBeLessThan(0.11)
    },
  )

  it('swaps: the room at 90/70 brought to 60/40 leaves the house at the next room, 70/50 in 21 (spread 20)', () => {
    const rooms = [
      { name: 'Bedroom', roomC: 21, loadW: given(38.1298), emitters },
      { name: 'Lounge', roomC: 20, loadW: given(59.4403), emitters },
    ]
    const big = [{ ratedW: 5000, exponent: 1.3 }]
    const answer = answered(
      houseSwapEffects({
        spreadK: 20,
        maxFlowC: 95,
        rooms,
        candidates: [
          { name: 'Bigger in the bedroom', roomName: 'Bedroom', remove: [0], add: big },
          { name: 'Bigger in the lounge', roomName: 'Lounge', remove: [0], add: big },
        ],
      }),
    )
    expect(answer.ranked.map(({ name }) => name)).toEqual(['Bigger in the lounge', 'Bigger in the bedroom'])
    expect(Math.abs((answer.before.flowC ?? NaN) - 90)).toBeLessThan(0.11)
    expect(Math.abs((answer.ranked[0]?.after.flowC ?? NaN) - 70)).toBeLessThan(0.11)
    expect(Math.abs((answer.ranked[0]?.lowersK ?? NaN) - 20)).toBeLessThan(0.21)
    expect(answer.ranked[1]?.lowersK).toBe(0)
  })
})
