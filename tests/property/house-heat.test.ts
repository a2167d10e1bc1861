import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as contract from '../../src-main/contract/heating/house.ts'
import type { HeatElement, MeasuredRoomHeat } from '../../src-main/domain/room-heat.ts'
import { heatLoad } from '../../src-main/engine/heat/heat-load.ts'
import { houseFlow } from '../../src-main/engine/heat/house-flow.ts'
import { houseHeat } from '../../src-main/engine/heat/house-heat.ts'
import { houseSwapEffects } from '../../src-main/engine/heat/house-swap-effects.ts'
import { lowestFlow } from '../../src-main/engine/heat/lowest-flow.ts'
import { answered, nonFiniteIn } from '../answered.ts'

const runs = { numRuns: 200 }
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A house whose rooms name each other's walls in both lists, and the same house without those walls. */
const mutualHouse = fc
  .record({
    temperatures: fc.array(within(5, 28), { minLength: 2, maxLength: 8 }),
    outsideC: within(-20, 4),
    walls: fc.array(
      fc.record({ a: fc.nat(7), b: fc.nat(7), areaM2: within(0.5, 30), uWPerM2K: within(0.1, 5) }),
      { maxLength: 12 },
    ),
    air: within(0, 4),
    u: within(0.1, 3),
  })
  .map(({ temperatures, outsideC, walls, air, u }) => {
    const apart = temperatures.map((roomC, index): MeasuredRoomHeat => ({
      name: `Room ${index}`,
      roomC,
      outsideC,
      volumeM3: 20 + index,
      floorAreaM2: 10,
      airChangesPerHour: air,
      reheatWPerM2: index,
      elements: [
        { name: 'Wall', areaM2: 5 + index, uWPerM2K: u, boundary: { kind: 'outside' } },
        { name: 'Floor', areaM2: 10, uWPerM2K: u, boundary: { kind: 'ground', meanOutsideC: 10 } },
        { name: 'Roof', areaM2: 10, uWPerM2K: u, boundary: { kind: 'unheated', factor: 0.7 } },
      ],
    }))
    const inside = (index: number): readonly HeatElement[] =>
      walls.flatMap(({ a, b, areaM2, uWPerM2K }) => {
        const [one, other] = [a % temperatures.length, b % temperatures.length]
        if (one === other || (index !== one && index !== other)) return []
        const roomC = temperatures[index === one ? other : one] as number
        return [{ name: 'Inside wall', areaM2, uWPerM2K, boundary: { kind: 'room', roomC } }]
      })
    const joined = apart.map((room, index) => ({ ...room, elements: [...room.elements, ...inside(index)] }))
    return { apart, joined }
  })

describe('the heat of a house', () => {
  it('is the sum over what is no room, when every inside wall stands in both lists', () => {
    fc.assert(
      fc.property(mutualHouse, ({ apart, joined }) => {
        const house = answered(houseHeat({ rooms: joined }))
        const alone = apart.reduce((sum, room) => sum + answered(heatLoad({ room })).watts, 0)
        expect(house.watts).toBeCloseTo(alone, 5)
        expect(house.betweenRoomsW).toBeCloseTo(0, 5)
        expect(house.warnings).toEqual([])
        expect(contract.houseHeat.output.safeParse(house).success).toBe(true)
      }),
      runs,
    )
  })

  it('is its rooms added up, in each part, and its source asks at most that', () => {
    fc.assert(
      fc.property(mutualHouse, within(0, 1), ({ joined }, ventilationRatio) => {
        const rooms = joined.slice(1) // a room is left out, so that what is passed no longer cancels
        const house = answered(houseHeat({ rooms, ventilationRatio }))
        const { transmissionW, betweenRoomsW, ventilationW, reheatW, watts, source } = house
        expect(watts).toBeCloseTo(
          house.rooms.reduce((sum, room) => sum + room.watts, 0),
          6,
        )
        expect(watts).toBeCloseTo(transmissionW + betweenRoomsW + ventilationW + reheatW, 6)
        expect(watts - source.watts).toBeCloseTo((1 - ventilationRatio) * ventilationW, 6)
        expect(source.watts).toBeLessThanOrEqual(watts + 1e-6)
      }),
      runs,
    )
  })
})

const emitter = fc.record({ ratedW: within(50, 5000), exponent: within(1.1, 1.4) })
const flowRoom = fc.record(
  {
    name: fc.constantFrom('Lounge', 'Kitchen', 'Bath'),
    loadW: within(20, 4000),
    roomC: within(15, 24),
    rough: fc.boolean(),
    emitters: fc.array(emitter, { maxLength: 3 }),
  },
  { requiredKeys: ['name', 'loadW', 'roomC', 'emitters'] },
)
const someRooms = fc.array(flowRoom, { minLength: 1, maxLength: 8 })
const spreadK = within(2, 20)

describe('the flow temperature of a house', () => {
  it('is the highest of its rooms’ own, and none where a room is guessed or short', () => {
    fc.assert(
      fc.property(someRooms, spreadK, (rooms, spread) => {
        const house = answered(houseFlow({ rooms, spreadK: spread }))
        expect(nonFiniteIn(house)).toEqual([])
        expect(contract.houseFlow.output.safeParse(house).success).toBe(true)
        const measured = rooms.filter((room) => room.rough !== true)
        const flows = measured.map(({ loadW, roomC, emitters }) =>
          emitters.length === 0
            ? undefined
            : answered(lowestFlow({ loadW, roomC, spreadK: spread, emitters })).flowC,
        )
        const all = flows.every((flow) => flow !== undefined) && measured.length > 0
        expect(house.reachable).toBe(all)
        expect(house.measuredFlowC).toBe(all ? Math.max(...flows) : undefined)
        expect(house.flowC).toBe(measured.length === rooms.length ? house.measuredFlowC : undefined)
        expect(house.rooms.map(({ roomIndex }) => roomIndex).toSorted((a, b) => a - b)).toEqual([
          ...rooms.keys(),
        ])
      }),
      runs,
    )
  })

  it('does not depend on the order of the rooms', () => {
    fc.assert(
      fc.property(someRooms, spreadK, (rooms, spread) => {
        const one = answered(houseFlow({ rooms, spreadK: spread }))
        const other = answered(houseFlow({ rooms: rooms.toReversed(), spreadK: spread }))
        expect([other.reachable, other.flowC, other.measuredFlowC]).toEqual([
          one.reachable,
          one.flowC,
          one.measuredFlowC,
        ])
      }),
      runs,
    )
  })
})

describe('the effects of swaps', () => {
  const candidate = fc.record({
    name: fc.constantFrom('Rail', 'Panel'),
    roomIndex: fc.nat(7),
    goes: fc.boolean(),
    add: fc.array(emitter, { maxLength: 2 }),
  })
  const given = fc
    .tuple(someRooms, fc.array(candidate, { minLength: 1, maxLength: 6 }), spreadK)
    .map(([rooms, all, spread]) => {
      const candidates = all.map(({ name, roomIndex, goes, add }) => {
        const place = roomIndex % rooms.length
        const remove = goes && (rooms[place]?.emitters.length ?? 0) > 0 ? [0] : []
        return { name, roomIndex: place, remove, add }
      })
      return { rooms, candidates, spreadK: spread }
    })

  it('are those of the changed house, reckoned from the beginning', () => {
    fc.assert(
      fc.property(given, (input) => {
        const answer = answered(houseSwapEffects(input))
        expect(nonFiniteIn(answer)).toEqual([])
        expect(contract.houseSwapEffects.output.safeParse(answer).success).toBe(true)
        expect(answer.ranked.length + answer.notJudged.length).toBe(input.candidates.length)
        for (const { candidateIndex, after, roomAfterC } of answer.ranked) {
          const swap = input.candidates[candidateIndex]
          const changed = input.rooms.map((room, index) =>
            index === swap?.roomIndex
              ? { ...room, emitters: [...room.emitters.slice(swap.remove.length), ...swap.add] }
              : room,
          )
          const house = answered(houseFlow({ rooms: changed, spreadK: input.spreadK }))
          expect(after.reachable).toBe(house.reachable)
          expect(after.flowC).toBe(house.measuredFlowC)
          expect(roomAfterC).toBe(house.rooms.find(({ roomIndex }) => roomIndex === swap?.roomIndex)?.flowC)
        }
      }),
      runs,
    )
  })

  it('stand best first, with equal ranks exactly where the house comes to the same', () => {
    fc.assert(
      fc.property(given, (input) => {
        const { ranked } = answered(houseSwapEffects(input))
        for (const [index, one] of ranked.entries()) {
          const next = ranked[index + 1]
          if (next === undefined) continue
          expect(one.rank).toBeLessThanOrEqual(next.rank)
          if (one.after.reachable && next.after.reachable) {
            expect(one.after.flowC ?? 0).toBeLessThanOrEqual(next.after.flowC ?? 0)
            expect(one.rank === next.rank).toBe(one.after.flowC === next.after.flowC)
          } else {
            expect(one.after.reachable || !next.after.reachable).toBe(true)
          }
          expect(one.tie?.with.length ?? 0).toBe(ranked.filter(({ rank }) => rank === one.rank).length - 1)
        }
      }),
      runs,
    )
  })

  it('of one more emitter are never for the worse', () => {
    fc.assert(
      fc.property(someRooms, emitter, spreadK, (rooms, one, spread) => {
        const candidates = rooms.map((_, roomIndex) => ({ name: 'More', roomIndex, remove: [], add: [one] }))
        const { ranked, before } = answered(houseSwapEffects({ rooms, candidates, spreadK: spread }))
        for (const { after, lowersK = 0 } of ranked) {
          expect(lowersK).toBeGreaterThanOrEqual(0)
          expect(after.roomsShort).toBeLessThanOrEqual(before.roomsShort)
        }
      }),
      runs,
    )
  })
})
