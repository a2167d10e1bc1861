import { describe, expect, it } from 'vitest'
import type { MeasuredRoomHeat, RoomHeat } from '../../../../src-main/domain/room-heat.ts'
import { betweenRoomsW, exchangeWarnings } from '../../../../src-main/engine/heat/house-exchange.ts'
import { houseFlow, houseReach, worstFirst } from '../../../../src-main/engine/heat/house-flow.ts'
import type { HouseFlowInput } from '../../../../src-main/engine/heat/house-flow.ts'
import { houseHeat } from '../../../../src-main/engine/heat/house-heat.ts'
import { roomFlow, roomNeed } from '../../../../src-main/engine/heat/house-room-flow.ts'
import type { RoomFlow } from '../../../../src-main/engine/heat/house-room-flow.ts'
import { answered, refused } from '../../../answered.ts'
import { readOut } from '../../../why-for-tests.ts'

/** An emitter rated 1000 W at a flow and a return 10 K below it, in a room of 20 °C: it gives 1000 W from that flow. */
const from = (flowC: number) => ({
  ratedW: 1000,
  exponent: 1.3,
  rating: { flowC, returnC: flowC - 10, roomC: 20 },
})
const warmFrom = (name: string, flowC: number) => ({ name, loadW: 1000, roomC: 20, emitters: [from(flowC)] })
const guess = (name: string): RoomHeat => ({ name, roomC: 18, outsideC: -3, volumeM3: 20, roughWPerM3: 40 })
const bare: MeasuredRoomHeat = {
  name: 'Landing',
  roomC: 20,
  outsideC: 0,
  volumeM3: 20,
  floorAreaM2: 8,
  airChangesPerHour: 0,
  elements: [],
}
const house = (...rooms: HouseFlowInput['rooms']) => answered(houseFlow({ rooms, spreadK: 10 }))
const tops = (input: ReturnType<typeof house>) => [
  readOut(input.why)[0],
  ...input.why.from.map((one) => readOut(one)[0]),
]

describe('the reason of a house’s flow', () => {
  it('is its worst room’s, with the limits and every room', () => {
    const found = house(warmFrom('Hall', 50), warmFrom('Bath', 60))
    expect(found).toMatchObject({
      flowC: 60,
      returnC: 50,
      measuredFlowC: 60,
      worstRoom: 'Bath',
      backed: true,
    })
    expect(tops(found)).toEqual([
      'The house is warm from a flow of 60 °C; the worst room is Bath.: 60 °C (EN 442-2)',
      'Drop from flow to return: 10 K',
      'Highest flow allowed: 75 °C',
      'Bath is warm from a flow of 60 °C.: 60 °C',
      'Hall is warm from a flow of 50 °C.: 50 °C',
    ])
    const [need, flow] = found.why.from[2]?.from ?? []
    expect(need).toEqual({ says: 'Heat the room needs, as given', value: 1000, unit: 'W', from: [] })
    expect(flow?.says).toBe(
      'Lowest flow, in tenths of a degree, at which the emitters give what the room needs',
    )
  })

  it('counts the watts that are short, and the rooms', () => {
    const cold = { ...warmFrom('Cold', 75), loadW: 1300 }
    const one = house(warmFrom('Hall', 50), cold)
    expect(tops(one)).toEqual([
      'The house is not warm at the highest flow: one room is short, the worst is Cold.: 300 W',
      'Drop from flow to return: 10 K',
      'Highest flow allowed: 75 °C',
      'Cold needs 1300 W and gets 1000 W at the highest flow of 75 °C.: 1000 W',
      'Hall is warm from a flow of 50 °C.: 50 °C',
    ])
    expect(one).not.toHaveProperty('flowC')
    const none = { name: 'Bare', loadW: 200.4, roomC: 20, emitters: [] }
    const two = house(cold, none)
    expect(two.says).toBe('The house is not warm at the highest flow: 2 rooms are short, the worst is Bare.')
    expect(two.why.value).toBeCloseTo(500.4, 9)
    expect(two.rooms[0]).toMatchObject({ outputAtMaxW: 0, says: 'Bare needs 200 W and has no emitter.' })
    expect(tops(two)[3]).toBe('Bare needs 200 W and has no emitter.: 200.4 W')
  })

  it('of rooms only guessed says so, and what is measured beside them', () => {
    const all = house({ room: guess('Box'), emitters: [] })
    expect(tops(all)).toEqual([
      'Every room is only guessed, so nothing can be said of the flow temperature: measure them first.: 0 W',
      'Drop from flow to return: 10 K',
      'Highest flow allowed: 75 °C',
      // 20 m3 × 40 W.
      'Box needs 800 W only by a guess, which cannot back a flow temperature: measure it element by element.: 800 W',
    ])
    expect(all).toMatchObject({ reachable: false, backed: false })
    const part = house({ room: guess('Box'), emitters: [] }, warmFrom('Hall', 50))
    expect(part.says).toBe(
      'The measured rooms are warm from a flow of 50 °C; the worst room is Hall. That is not the whole house: Box is only guessed, which cannot back a flow temperature.',
    )
    const more = house(
      { room: guess('Box'), emitters: [] },
      { room: guess('Den'), emitters: [] },
      { ...warmFrom('Hall', 75), loadW: 1100 },
    )
    expect(more.says).toBe(
      'The measured rooms are not warm at the highest flow: one room is short, the worst is Hall. That is not the whole house: Box, Den are only guessed, which cannot back a flow temperature.',
    )
    const still = house({ room: guess('Box'), emitters: [] }, { room: bare, emitters: [] })
    expect(still.says).toBe(
      'No measured room needs heat. That is not the whole house: Box is only guessed, which cannot back a flow temperature.',
    )
  })

  it('of rooms that need nothing is nothing', () => {
    const found = house({ room: bare, emitters: [from(50)] })
    expect(tops(found)).toEqual([
      'No room needs heat.: 0 W',
      'Drop from flow to return: 10 K',
      'Highest flow allowed: 75 °C',
      'Landing needs no heat: what it is given is as much as it loses.: 0 W',
    ])
    expect(found).toMatchObject({ reachable: true, backed: true })
    expect(found).not.toHaveProperty('worstRoom')
  })

  it('is refused without rooms, and for too small a drop', () => {
    expect(refused(houseFlow({ rooms: [], spreadK: 10 }))).toEqual({
      code: 'invalid',
      path: 'rooms',
      message: 'There are no rooms; give at least one.',
    })
    expect(refused(houseFlow({ rooms: [warmFrom('Hall', 50)], spreadK: 0.009 }))).toEqual({
      code: 'invalid',
      path: 'spreadK',
      message: 'The drop from flow to return must be at least 0.01 K; it was 0.009.',
    })
    expect(houseFlow({ rooms: [warmFrom('Hall', 50)], spreadK: 0.01 }).ok).toBe(true)
    expect(refused(houseFlow({ rooms: [{ ...warmFrom('Hall', 50), loadW: NaN }], spreadK: 10 })).path).toBe(
      'rooms[0].loadW',
    )
  })

  it('stands on what each room needs and whether it is a guess', () => {
    const given = (rough?: boolean) =>
      answered(
        roomNeed(
          { name: 'Hall', loadW: 5, roomC: 18, emitters: [], ...(rough === undefined ? {} : { rough }) },
          3,
        ),
      )
    expect(given()).toMatchObject({ roomIndex: 3, name: 'Hall', loadW: 5, roomC: 18, rough: false })
    expect(given(true).why).toEqual({
      says: 'Heat the room needs, a rough figure as given',
      value: 5,
      unit: 'W',
      from: [],
    })
    const limits = { spreadK: 10, maxFlowC: 75 }
    expect(answered(roomFlow({ ...given(), loadW: 0 }, [from(50)], limits)).state).toBe('needsNoHeat')
    expect(answered(roomFlow({ ...given(), loadW: 0.1 }, [], limits)).state).toBe('noEmitters')
    expect(refused(roomFlow(given(), [{ ratedW: 0, exponent: 1 }], limits)).path).toBe('rooms[3].emitters[0]')
  })
})

describe('the order of rooms', () => {
  const room = (state: RoomFlow['state'], more: Partial<RoomFlow> = {}): RoomFlow => ({
    roomIndex: 0,
    name: state,
    loadW: 100,
    state,
    says: '',
    ...more,
  })
  it('is short ones by share, warm ones by flow, then those that need none, then guesses', () => {
    const rooms = [
      room('rough'),
      room('needsNoHeat'),
      room('warm', { name: 'cool', flowC: 40 }),
      room('warm', { name: 'hot', flowC: 60 }),
      room('short', { name: 'half', outputAtMaxW: 50 }),
      room('noEmitters', { name: 'bare' }),
      room('short', { name: 'quarter', outputAtMaxW: 25 }),
    ]
    expect(rooms.toSorted(worstFirst).map(({ name }) => name)).toEqual([
      'bare',
      'quarter',
      'half',
      'hot',
      'cool',
      'needsNoHeat',
      'rough',
    ])
    expect(houseReach(rooms)).toEqual({ reachable: false, worstRoom: 'bare', roomsShort: 3, shortW: 225 })
    expect(houseReach(rooms.slice(0, 4))).toEqual({
      reachable: true,
      flowC: 60,
      worstRoom: 'hot',
      roomsShort: 0,
      shortW: 0,
    })
    expect(houseReach(rooms.slice(0, 2))).toEqual({ reachable: true, roomsShort: 0, shortW: 0 })
    expect(houseReach(rooms.slice(0, 1))).toEqual({ reachable: false, roomsShort: 0, shortW: 0 })
  })

  it('of two alike is the first', () => {
    const two = [room('warm', { name: 'one', flowC: 50 }), room('warm', { name: 'two', flowC: 50 })]
    expect(houseReach(two).worstRoom).toBe('one')
  })
})

describe('the reason of a house’s heat', () => {
  const wall = { name: 'Wall', areaM2: 10, uWPerM2K: 1, boundary: { kind: 'outside' } } as const
  const airy = { ...bare, name: 'Hall', airChangesPerHour: 1, elements: [wall] }

  // 10 × 1 × 20 = 200 W, air 0.34 × 1 × 20 × 20 = 136 W: 336 W a room; two: 672 W, of their air 136 W at once: 536 W.
  it('tells each room, and what the source gives', () => {
    const heat = answered(houseHeat({ rooms: [airy, { ...airy, name: 'Bath' }] }))
    expect(heat.source).toMatchObject({ ventilationRatio: 0.5, watts: expect.closeTo(536, 9) })
    expect(heat.source.btuPerHour).toBeCloseTo(536 * 3.412142, 2)
    expect([
      readOut(heat.why)[0],
      ...heat.why.from.flatMap((one) => readOut(one).filter((line) => !line.startsWith('    '))),
    ]).toEqual([
      'Heat the house needs: its rooms together, and what they pass each other cancels: 672 W (EN 12831-1, simplified)',
      'Hall needs: 336 W',
      '  Heat the room needs: transmission + ventilation + reheat: 336 W (EN 12831-1, simplified)',
      'Bath needs: 336 W',
      '  Heat the room needs: transmission + ventilation + reheat: 336 W (EN 12831-1, simplified)',
      'The source gives: the rooms together, with the air from outside once: 536 W (EN 12831-1:2017, building heat load)',
      '  Ventilation of all rooms: 272 W',
      '  Share of the rooms’ air that comes from outside at once: 0.5 (EN 12831-1:2017 table B.5)',
    ])
    const given = answered(houseHeat({ rooms: [airy], ventilationRatio: 0 }))
    expect(readOut(given.why).at(-1)).toBe(
      '  '.repeat(2) + 'Share of the rooms’ air that comes from outside at once, as given: 0',
    )
    expect(given.source.watts).toBeCloseTo(200, 9)
  })

  it('takes all of the air where only one room has any, or a guess stands beside it', () => {
    const ratio = (...rooms: readonly RoomHeat[]) => answered(houseHeat({ rooms })).source.ventilationRatio
    expect([
      ratio(airy),
      ratio(airy, bare),
      ratio(airy, guess('Box')),
      ratio(airy, airy, bare),
      ratio(bare),
    ]).toEqual([1, 1, 1, 0.5, 1])
  })

  it('is warned of guesses and of two temperatures outside', () => {
    const { warnings } = answered(houseHeat({ rooms: [airy, guess('Box'), guess('Den')] }))
    expect(warnings).toEqual([
      "Only guessed by volume: Box, Den. The house's figure is rough with them.",
      'The rooms differ in the temperature outside (0, -3 °C): a house has one.',
    ])
  })

  it('is refused without rooms, and for a share that is none', () => {
    expect(refused(houseHeat({ rooms: [] }))).toEqual({
      code: 'invalid',
      path: 'rooms',
      message: 'There are no rooms; give at least one.',
    })
    for (const ventilationRatio of [-0.01, 1.01])
      expect(refused(houseHeat({ rooms: [airy], ventilationRatio }))).toEqual({
        code: 'invalid',
        path: 'ventilationRatio',
        message: `The share of the rooms' air must be 0 to 1; it was ${ventilationRatio}.`,
      })
    expect(houseHeat({ rooms: [airy], ventilationRatio: 1 }).ok).toBe(true)
    const vast = { ...guess('Box'), volumeM3: 1e10, roughWPerM3: 1e10 }
    expect(refused(houseHeat({ rooms: [airy, vast] })).path).toBe('rooms[1]')
  })
})

describe('what rooms pass each other', () => {
  const inside = (roomC: number) =>
    ({ name: 'Inside', areaM2: 1, uWPerM2K: 1, boundary: { kind: 'room', roomC } }) as const
  const room = (name: string, roomC: number, ...behind: readonly number[]): MeasuredRoomHeat => ({
    ...bare,
    name,
    roomC,
    elements: behind.map(inside),
  })
  const losses = (...watts: readonly number[]) => ({
    elements: watts.map((one) => ({ name: 'Inside', netAreaM2: 1, watts: one })),
  })

  it('is found among the elements with their openings', () => {
    const outside = { name: 'Wall', areaM2: 9, uWPerM2K: 1, boundary: { kind: 'outside' } } as const
    const opening = { name: 'Door', areaM2: 1, uWPerM2K: 1 }
    const elements = [
      { ...outside, openings: [opening] },
      { ...inside(18), openings: [opening, opening] },
      outside,
      inside(10),
    ]
    expect(betweenRoomsW({ ...bare, elements }, losses(1, 2, 10, 20, 30, 4, 100).elements)).toBe(160)
  })

  it('leaves the house, or comes from outside it, past a watt of rounding', () => {
    const told = (watts: number) => exchangeWarnings([room('Hall', 20, 10)], [losses(watts)])
    expect(told(1.6)).toEqual([
      'Hall passes 2 W to a room at 10 °C that is not in this list: it leaves the house.',
    ])
    expect(told(-1.6)).toEqual([
      'Hall is given 2 W by a room at 10 °C that is not in this list: it comes from outside the house.',
    ])
    expect([told(1), told(-1)]).toEqual([[], []])
  })

  it('must stand in both lists, past a watt of rounding', () => {
    const told = (up: number, down: number) =>
      exchangeWarnings([room('Hall', 18, 21), room('Lounge', 21, 18)], [losses(up), losses(down)])
    const both = 'each wall between two rooms should stand in both, with the same area and U-value.'
    expect(told(-30, 40)).toEqual([
      `Between rooms at 21 °C and at 18 °C the lists lose 10 W more on one side than on the other: ${both}`,
    ])
    expect(told(-50, 40)).toEqual([
      `Between rooms at 21 °C and at 18 °C the lists are given 10 W more on one side than on the other: ${both}`,
    ])
    expect([told(-39, 40), told(-41, 40), told(-38.9, 40).length]).toEqual([[], [], 1])
  })

  it('between rooms as warm as each other is nothing, and a guess passes nothing', () => {
    expect(exchangeWarnings([room('Hall', 20, 20)], [losses(50)])).toEqual([])
    expect(exchangeWarnings([guess('Box')], [losses(50)])).toEqual([])
  })

  it('is told for each pair of temperatures on its own', () => {
    const rooms = [room('Hall', 18, 21), room('Lounge', 21, 18, 24), room('Bath', 24)]
    const told = exchangeWarnings(rooms, [losses(-30), losses(30, -12), losses()])
    expect(told).toHaveLength(1)
    expect(told[0]).toContain('Between rooms at 24 °C and at 21 °C the lists are given 12 W more')
  })
})
