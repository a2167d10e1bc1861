import { describe, expect, it } from 'vitest'
import { jobFlow } from '../../../../../src-main/engine/heat/job/job-flow.ts'
import type { JobFlowInput } from '../../../../../src-main/engine/heat/job/job-flow.ts'
import {
  emittersAfter,
  emittersBefore,
  isJudged,
} from '../../../../../src-main/engine/heat/job/job-flow-rooms.ts'
import type { JobFlowRoom, JobFlowSwap } from '../../../../../src-main/engine/heat/job/job-flow-rooms.ts'
import { worstFirst } from '../../../../../src-main/engine/heat/house-flow.ts'
import { houseSwapEffects } from '../../../../../src-main/engine/heat/house-swap-effects.ts'
import type { Derivation } from '../../../../../src-main/domain/derivation.ts'
import { answered, leavesOf, refused } from '../../../../answered.ts'

/** A room at 20 °C that loses so many watts at 0 °C outside, through one wall of 10 m². */
const room = (roomId: string, watts: number, more: Partial<JobFlowRoom> = {}): JobFlowRoom => ({
  roomId,
  room: {
    name: roomId,
    roomC: 20,
    outsideC: 0,
    volumeM3: 10,
    floorAreaM2: 4,
    airChangesPerHour: 0,
    elements: [{ name: 'Wall', areaM2: 10, uWPerM2K: watts / 200, boundary: { kind: 'outside' } }],
  },
  staying: [],
  swaps: [],
  ...more,
})
const rated = (ratedW: number) => ({ ratedW, exponent: 1.3 })
const swap = (swapId: string, old: JobFlowSwap['old'], ratedW: number): JobFlowSwap => ({
  swapId,
  name: `New ${swapId}`,
  old,
  new: rated(ratedW),
})
const flow = (rooms: readonly JobFlowRoom[], more: Partial<JobFlowInput> = {}) =>
  answered(jobFlow({ rooms, spreadK: 10, ...more }))
const saysOf = (why: Derivation): readonly string[] => [why.says, ...why.from.flatMap(saysOf)]

/** 510.7 W of a 1000 W radiator of n 1.3 at 55/45/20 (29.7201 K of 49.8329 K): the published nominal excesses. */
const half = 510.7

describe('the emitters of a job’s room', () => {
  it('are those that stay with those that come down, then with those that go up', () => {
    const two = room('Bath', 500, {
      staying: [rated(100)],
      swaps: [swap('a', rated(200), 300), swap('b', 'none', 400), swap('c', rated(500), 600)],
    })
    expect(emittersBefore(two)?.map(({ ratedW }) => ratedW)).toEqual([100, 200, 500])
    expect(emittersAfter(two)?.map(({ ratedW }) => ratedW)).toEqual([100, 300, 400, 600])
  })

  it('are not known where nobody surveyed them', () => {
    expect(emittersBefore({ staying: null, swaps: [] })).toBeNull()
    expect(emittersAfter({ staying: null, swaps: [] })).toBeNull()
    const unknown = { staying: null, swaps: [swap('a', 'notSurveyed', 300)] }
    expect(emittersBefore(unknown)).toBeNull()
    expect(emittersAfter(unknown)?.map(({ ratedW }) => ratedW)).toEqual([300])
    expect(emittersBefore({ staying: null, swaps: [swap('a', 'none', 300)] })).toEqual([])
  })

  it('are judged in every state but two', () => {
    const base = { roomId: 'a', roomIndex: 0, name: 'A', loadW: 1, says: 'A.' }
    const states = ['warm', 'short', 'noEmitters', 'needsNoHeat', 'rough', 'notSurveyed'] as const
    expect(states.filter((state) => isJudged({ ...base, state }))).toEqual(states.slice(0, 4))
  })
})

describe('a job before and after its swaps', () => {
  const bath = room('Bath', half, { swaps: [swap('rail', rated(half), 1000)] })
  const hall = room('Hall', half, { staying: [rated(800)] })

  it('is held by its worst room, and lowered as far as the next one lets it', () => {
    const told = flow([hall, bath])
    // Bath: 75 °C before, 55 after. Hall: LMTD 49.8329 (510.7 / 800)^(1/1.3) = 35.2855 K, ratio 1.32763, 20 + 40.52 = 60.6 °C.
    expect(told.before.rooms.map(({ name, flowC }) => [name, flowC])).toEqual([
      ['Bath', 75],
      ['Hall', 60.6],
    ])
    expect(told.after.rooms.map(({ name, flowC }) => [name, flowC])).toEqual([
      ['Hall', 60.6],
      ['Bath', 55],
    ])
    expect(told).toMatchObject({ spreadK: 10, maxFlowC: 75, lowersK: 14.4, notJudged: [] })
    expect(told.before).toMatchObject({ backed: true, houseFlowC: 75, houseReturnC: 65, worstRoom: 'Bath' })
    expect(told.after).toMatchObject({
      houseFlowC: 60.6,
      houseReturnC: 50.6,
      worstRoom: 'Hall',
      roomsShort: 0,
    })
    expect(told.says).toBe(
      'Before: the house is warm from a flow of 75 °C; the worst room is Bath. After: the house is warm from a flow of 60.6 °C; the worst room is Hall.',
    )
  })

  it('tells each swap alone, with the place of what it takes down', () => {
    const twice = room('Bath', 2 * half, {
      staying: [rated(half)],
      swaps: [swap('first', rated(half), 1000), swap('second', 'none', half)],
    })
    const { swaps } = flow([twice])
    // Before: 1021.4 of 1021.4 W: 75 °C. First: 1510.7 W; second: 1532.1 W, which lowers more.
    expect(swaps.map(({ swapId, rank }) => [swapId, rank])).toEqual([
      ['second', 1],
      ['first', 2],
    ])
    const [best, next] = swaps
    expect(best).toMatchObject({ roomId: 'Bath', roomName: 'Bath', roomBeforeC: 75, name: 'New second' })
    expect(best).not.toHaveProperty('candidateIndex')
    expect(best).not.toHaveProperty('roomIndex')
    expect(best?.roomAfterC).toBeLessThan(next?.roomAfterC ?? 0)
  })

  it('walks back to the figures that went in', () => {
    const { why } = flow([bath], { maxFlowC: 80 })
    expect(leavesOf(why)).toEqual(expect.arrayContaining([10, 80, 1000, half, 1.3, 20]))
    expect(why).toMatchObject({ value: 20, unit: 'K', source: 'EN 442-2' })
    expect(why.from.slice(0, 2).map(({ says }) => says)).toEqual([
      'Drop from flow to return',
      'Highest flow allowed',
    ])
    expect(why.from.slice(2).map(({ value }) => value)).toEqual([75, 55, 20])
    const open = flow([room('Hall', half, { staying: null })]).why
    expect(open.value).toBe(0)
    expect(open.unit).toBeUndefined()
    expect(open.from).toHaveLength(4)
  })

  it('says what is short, what needs no heat, and what cannot be judged', () => {
    const short = flow([room('Bath', half), room('Hall', half)])
    expect(short.before.says).toBe(
      'the house is not warm at the highest flow: 2 rooms are short, the worst is Bath.',
    )
    expect(short.before).toMatchObject({ reachable: false, roomsShort: 2 })
    expect(short.before.shortW).toBeCloseTo(2 * half, 9)
    const neighbour = room('Hall', half, { staying: null })
    const open = flow([neighbour])
    expect(open.before.says).toBe(
      'nothing can be said of the flow temperature, because no room can be judged: Hall.',
    )
    expect(open.before).toMatchObject({ backed: false, reachable: false, roomsShort: 0 })
    const partly = flow([bath, neighbour])
    expect(partly.before.says).toBe(
      'the rooms that can be judged are warm from a flow of 75 °C; the worst room is Bath. That is not the whole house: Hall cannot be judged.',
    )
    expect(partly.before).toMatchObject({ flowC: 75, reachable: true, backed: false })
    expect(partly.before).not.toHaveProperty('houseFlowC')
    expect(partly.swaps[0]?.says).toBe(
      'New rail lowers the measured rooms by 20 K to 55 °C, then held by Bath itself.',
    )
    expect(saysOf(partly.why)).toContain(
      'Best: New rail lowers the measured rooms by 20 K to 55 °C, then held by Bath itself. Rooms that cannot be judged are left out, so this is not yet the whole house.',
    )
  })

  it('needs to know nothing of the emitters in a room that needs no heat', () => {
    const warm = room('Store', half, { staying: null, swaps: [swap('odd', 'notSurveyed', 500)] })
    const given = { ...warm, room: { ...warm.room, outsideC: 20 } }
    const told = flow([given])
    expect(told.before.rooms[0]).toMatchObject({ state: 'needsNoHeat' })
    expect(told.before).toMatchObject({ backed: true, reachable: true })
    expect(told.before.says).toBe('the house is in need of no heat.')
    expect(told.swaps.map(({ swapId }) => swapId)).toEqual(['odd'])
  })

  it('lists a swap in a room that is not judged, with the reason', () => {
    const told = flow([room('Bath', half, { swaps: [swap('rail', 'notSurveyed', 1000)] }), hall])
    expect(told.notJudged).toEqual([
      {
        swapId: 'rail',
        roomId: 'Bath',
        name: 'New rail',
        says: 'New rail is not judged: Bath is not judged as it is: nobody surveyed the output of what New rail takes the place of.',
      },
    ])
    expect(told.swaps).toEqual([])
    expect(told.after.rooms.map(({ state }) => state)).toEqual(['warm', 'warm'])
    expect(told).not.toHaveProperty('lowersK')
  })

  it('refuses a job without rooms, no drop, and figures that are none', () => {
    expect(refused(jobFlow({ rooms: [], spreadK: 10 }))).toEqual({
      code: 'invalid',
      message: 'The job has no rooms; give at least one.',
      path: 'rooms',
    })
    expect(refused(jobFlow({ rooms: [bath], spreadK: 0.009 }))).toEqual({
      code: 'invalid',
      message: 'The drop from flow to return must be at least 0.01 K; it was 0.009.',
      path: 'spreadK',
    })
    expect(jobFlow({ rooms: [bath], spreadK: 0.01 }).ok).toBe(true)
    expect(refused(jobFlow({ rooms: [bath], spreadK: Number.NaN })).path).toBe('spreadK')
    const wrong = room('Hall', half, { staying: [{ ratedW: -1, exponent: 1.3 }] })
    expect(refused(jobFlow({ rooms: [bath, wrong], spreadK: 10 })).path).toBe('rooms[1].emitters[0]')
  })
})

describe('what the house’s own rules now also tell', () => {
  it('the order of rooms: short ones by their share, warm ones by flow, then the rest', () => {
    const of = (state: 'warm' | 'short' | 'needsNoHeat' | 'rough', more: object) => ({
      roomIndex: 0,
      name: state,
      loadW: 100,
      says: '',
      state,
      ...more,
    })
    const rooms = [
      of('rough', {}),
      of('needsNoHeat', {}),
      of('warm', { flowC: 50 }),
      of('warm', { flowC: 60 }),
      of('short', { outputAtMaxW: 90 }),
      of('short', { outputAtMaxW: 10 }),
    ]
    expect(rooms.toSorted(worstFirst)).toEqual(rooms.toReversed())
  })

  it('swaps of a part of a house lower the measured rooms, not the house', () => {
    const input = {
      spreadK: 10,
      rooms: [{ name: 'Bath', loadW: half, roomC: 20, emitters: [rated(half)] }],
      candidates: [{ name: 'Rail', roomIndex: 0, remove: [0], add: [rated(1000)] }],
    }
    const part = answered(houseSwapEffects({ ...input, onlyPart: true }))
    expect(part.backed).toBe(false)
    expect(part.says).toContain(
      'Rooms that cannot be judged are left out, so this is not yet the whole house.',
    )
    const whole = answered(houseSwapEffects({ ...input, onlyPart: false }))
    expect(whole.backed).toBe(true)
    expect(whole.says).toBe('Best: Rail lowers the house by 20 K to 55 °C, then held by Bath itself.')
  })
})
