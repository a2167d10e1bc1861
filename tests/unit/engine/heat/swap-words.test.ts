import { describe, expect, it } from 'vitest'
import { placeOf, swapped } from '../../../../src-main/engine/heat/house-swap-candidate.ts'
import type { SwapCandidate } from '../../../../src-main/engine/heat/house-swap-candidate.ts'
import { houseSwapEffects } from '../../../../src-main/engine/heat/house-swap-effects.ts'
import type {
  HouseSwapEffectsInput,
  SwapEffect,
} from '../../../../src-main/engine/heat/house-swap-effects.ts'
import { ranked } from '../../../../src-main/engine/heat/house-swap-rank.ts'
import { answered, refused } from '../../../answered.ts'
import { readOut } from '../../../why-for-tests.ts'

/** An emitter rated 1000 W at a flow and a return 10 K below it, in a room of 20 °C: it gives 1000 W from that flow. */
const from = (flowC: number) => ({
  ratedW: 1000,
  exponent: 1.3,
  rating: { flowC, returnC: flowC - 10, roomC: 20 },
})
const room = (name: string, flowC: number, loadW = 1000) => ({
  name,
  loadW,
  roomC: 20,
  emitters: [from(flowC)],
})
const swap = (name: string, roomName: string, flowC: number): SwapCandidate => ({
  name,
  roomName,
  remove: [0],
  add: [from(flowC)],
})
const effects = (
  input: Pick<HouseSwapEffectsInput, 'rooms' | 'candidates'> & Partial<HouseSwapEffectsInput>,
) => answered(houseSwapEffects({ spreadK: 10, ...input }))
const guess = { ...room('Den', 50), rough: true }
const rooms = [room('Bath', 60), room('Hall', 50)]

describe('what a swap does, in words', () => {
  it('lowers the house, held then by another room or by its own', () => {
    const answer = effects({ rooms, candidates: [swap('Rail', 'Bath', 40), swap('Panel', 'Bath', 55)] })
    expect(answer.ranked.map(({ says }) => says)).toEqual([
      'Rail lowers the house by 10 K to 50 °C, then held by Hall.',
      'Panel lowers the house by 5 K to 55 °C, then held by Bath itself.',
    ])
    expect(answer.ranked[0]).toMatchObject({
      rank: 1,
      roomBeforeC: 60,
      roomAfterC: 40,
      lowersK: 10,
      roomIndex: 0,
    })
    expect(answer.says).toBe('Best: Rail lowers the house by 10 K to 50 °C, then held by Hall.')
    expect(readOut(answer.why).filter((line) => !line.startsWith('    '))).toEqual([
      'Best: Rail lowers the house by 10 K to 50 °C, then held by Hall.: 10 K (EN 442-2)',
      '  Rooms as they are: 60',
      '  Rail lowers the house by 10 K to 50 °C, then held by Hall.: 10 K',
      '  Panel lowers the house by 5 K to 55 °C, then held by Bath itself.: 5 K',
    ])
    expect(answer.why.from[0]?.from.map(({ says }) => says)).toEqual([
      'Bath is warm from a flow of 60 °C.',
      'Hall is warm from a flow of 50 °C.',
    ])
    expect(answer.why.from[1]?.from.map(({ says }) => says)).toEqual(['Bath is warm from a flow of 40 °C.'])
  })

  it('leaves it where it is, or raises it', () => {
    const still = effects({ rooms, candidates: [swap('Rail', 'Hall', 40)] })
    expect(still.ranked[0]?.says).toBe('Rail leaves the house at 60 °C, held by Bath.')
    expect(still.says).toBe('No swap here lowers the house: Bath holds it at 60 °C.')
    const worse = effects({ rooms, candidates: [swap('Rail', 'Hall', 65)] })
    expect(worse.ranked[0]?.says).toBe('Rail raises the house by 5 K to 65 °C, then held by Hall itself.')
    expect(worse.says).toBe('No swap here lowers the house: Bath holds it at 60 °C.')
  })

  it('makes every room warm, or leaves some short', () => {
    const cold = [room('Bath', 75, 1200), room('Hall', 50)]
    const answer = effects({
      rooms: cold,
      candidates: [
        { name: 'Two', roomName: 'Bath', remove: [], add: [from(75)] },
        swap('Rail', 'Hall', 40),
        { name: 'Gone', roomName: 'Hall', remove: [0], add: [] },
      ],
    })
    const [best, same, worst] = answer.ranked
    expect(best?.says).toMatch(
      /^Two makes every room warm, where one room was short: from a flow of [\d.]+ °C, held by Bath itself\.$/,
    )
    expect(same?.says).toBe('Rail leaves one room short at the highest flow; the worst is Bath.')
    expect(worst?.says).toBe('Gone leaves 2 rooms short at the highest flow; the worst is Hall.')
    expect(answer.says).toBe(`Best: ${best?.says}`)
    expect([answer.why.value, answer.why.unit]).toEqual(['Two', undefined])
    expect(answer.why.from.map(({ value, unit }) => [value, unit])).toEqual([
      [1, undefined],
      [best?.after.flowC, undefined],
      [1, undefined],
      [2, undefined],
    ])
    const both = effects({
      rooms: [...cold, room('Store', 75, 1100)],
      candidates: [{ name: 'Two', roomName: 'Bath', remove: [], add: [from(75)] }],
    })
    expect(both.ranked[0]?.says).toBe('Two leaves one room short at the highest flow; the worst is Store.')
  })

  it('is said of the measured rooms where others are guessed or cannot be judged', () => {
    const guessed = effects({
      rooms: [...rooms, guess],
      candidates: [swap('Rail', 'Den', 40), swap('Panel', 'Bath', 40)],
    })
    expect(guessed.notJudged).toEqual([
      {
        candidateIndex: 0,
        name: 'Rail',
        roomName: 'Den',
        says: 'Rail is not judged: Den needs 1000 W only by a guess, which cannot back a flow temperature: measure it element by element.',
      },
    ])
    expect(guessed.says).toBe(
      'Best: Panel lowers the measured rooms by 10 K to 50 °C, then held by Hall. Rooms that are only guessed are left out, so this is not yet the whole house.',
    )
    const part = effects({ rooms, candidates: [swap('Rail', 'Hall', 40)], onlyPart: true })
    expect(part.backed).toBe(false)
    expect(part.says).toBe(
      'No swap here lowers the measured rooms: Bath holds it at 60 °C. Rooms that cannot be judged are left out, so this is not yet the whole house.',
    )
    const warm = effects({
      rooms: [room('Bath', 75, 1200)],
      candidates: [{ name: 'Two', roomName: 'Bath', remove: [], add: [from(75)] }],
      onlyPart: true,
    })
    expect(warm.ranked[0]?.says).toMatch(
      /^Two makes every room that was judged warm, where one room was short/,
    )
  })

  it('of no swap at all says so', () => {
    const none = effects({ rooms, candidates: [] })
    expect(none).toMatchObject({ says: 'No swap could be judged.', backed: true })
    expect([none.why.value, none.why.unit]).toEqual(['none', undefined])
    const guessed = effects({ rooms: [guess], candidates: [swap('Rail', 'Den', 40)] })
    expect(guessed.says).toBe(
      'No swap could be judged. Rooms that are only guessed are left out, so this is not yet the whole house.',
    )
  })

  it('of rooms that need nothing says that too', () => {
    const idle = { ...room('Hall', 50), loadW: 0 }
    const answer = effects({
      rooms: [idle],
      candidates: [swap('Rail', 'Hall', 40), swap('Panel', 'Hall', 45)],
    })
    expect(answer.ranked[0]?.says).toBe('Rail: no room that was judged needs heat.')
    expect(answer.ranked[0]?.tie?.says).toBe(
      'No room that was judged needs heat after any of them; they stand in the order of what they do for their own rooms.',
    )
  })
})

describe('swaps that come to the same say why', () => {
  const order = 'they stand in the order of what they do for their own rooms.'
  const effect = (
    name: string,
    roomName: string,
    after: Partial<SwapEffect['after']>,
    roomAfterC?: number,
  ): SwapEffect => ({
    candidateIndex: 0,
    name,
    roomIndex: 0,
    roomName,
    after: { reachable: true, roomsShort: 0, shortW: 0, ...after },
    ...(roomAfterC === undefined ? {} : { roomAfterC }),
    says: name,
    why: { says: name, value: 0, from: [] },
  })
  const held = { flowC: 60, worstRoom: 'Bath' }
  const tied = (...all: readonly SwapEffect[]) =>
    ranked(all).map(({ name, rank, tie }) => [name, rank, tie?.says])

  it('another room holds the house', () => {
    const says = `Bath holds the house at 60 °C whichever is done, and none of them is in it; ${order}`
    expect(tied(effect('A', 'Hall', held, 50), effect('B', 'Den', held, 45))).toEqual([
      ['B', 1, says],
      ['A', 1, says],
    ])
    const told = ranked([effect('A', 'Hall', held), effect('B', 'Den', held)], 'the measured rooms')
    expect(told[0]?.tie).toEqual({ with: ['B'], says: says.replace('the house', 'the measured rooms') })
  })

  it('one of them is in that room, or different rooms hold it', () => {
    expect(tied(effect('A', 'Bath', held), effect('B', 'Den', held))[0]?.[2]).toBe(
      `Bath holds the house at 60 °C after each of them; ${order}`,
    )
    expect(tied(effect('A', 'Bath', held), effect('B', 'Den', { ...held, worstRoom: 'Hall' }))[0]?.[2]).toBe(
      `They come to the same tenth of a degree, 60 °C, held by different rooms; ${order}`,
    )
  })

  it('the same rooms stay short by the same watts', () => {
    const short = (name: string, roomsShort: number, shortW: number) =>
      effect(name, 'Hall', { reachable: false, roomsShort, shortW, worstRoom: 'Bath' })
    expect(tied(short('A', 2, 10), short('B', 1, 300.4), short('C', 1, 299.6), short('D', 1, 299.4))).toEqual(
      [
        ['D', 1, undefined],
        ['B', 2, `They leave the same rooms and watts short; ${order}`],
        ['C', 2, `They leave the same rooms and watts short; ${order}`],
        ['A', 4, undefined],
      ],
    )
    expect(tied(short('A', 1, 1), effect('B', 'Hall', held)).map(([name]) => name)).toEqual(['B', 'A'])
  })

  it('a room still short stands behind those that are warm', () => {
    expect(tied(effect('A', 'Hall', held), effect('B', 'Den', held, 70)).map(([name]) => name)).toEqual([
      'B',
      'A',
    ])
  })
})

describe('a swap that cannot be', () => {
  const names = ['Bath', 'Hall', 'Hall']
  it.each([
    [{ roomIndex: 3 }, 'roomIndex', 'There is no room 3; places go from 0 to 2.'],
    [{ roomIndex: 0, roomName: 'Hall' }, 'roomName', 'Room 0 is Bath, not Hall; give one of the two.'],
    [{}, 'roomIndex', 'Say which room the swap is in: its place from 0, or its name.'],
    [{ roomName: 'Loft' }, 'roomName', 'There is no room called Loft: it should be Bath or Hall or Hall.'],
    [{ roomName: 'Hall' }, 'roomName', 'Two rooms are called Hall; give the place instead.'],
  ])('in %j', (place, path, message) => {
    expect(refused(placeOf({ name: 'Rail', remove: [], add: [], ...place }, names))).toEqual({
      code: 'invalid',
      path,
      message,
    })
  })

  it('names ten rooms and no more', () => {
    const many = Array.from({ length: 11 }, (_, nth) => `R${nth}`)
    expect(refused(placeOf({ name: 'Rail', roomName: 'X', remove: [], add: [] }, many)).message).toBe(
      'There is no room called X: it should be R0 or R1 or R2 or R3 or R4 or R5 or R6 or R7 or R8 or R9.',
    )
  })

  it('is found by place, by name or by both', () => {
    const place = (more: Partial<SwapCandidate>) =>
      answered(placeOf({ name: 'Rail', remove: [], add: [], ...more }, names))
    expect([
      place({ roomIndex: 2 }),
      place({ roomName: 'Bath' }),
      place({ roomIndex: 1, roomName: 'Hall' }),
    ]).toEqual([2, 0, 1])
  })

  it.each([
    [[0], [], 'remove[0]', 'There is no emitter 0 to remove: the room has no emitters.'],
    [
      [0, 2],
      [from(50), from(60)],
      'remove[1]',
      "There is no emitter 2 to remove: the room's emitters go from 0 to 1.",
    ],
    [[1, 1], [from(50), from(60)], 'remove[1]', 'Emitter 1 is removed twice; name it once.'],
  ])('removes %j', (remove, emitters, path, message) => {
    expect(refused(swapped({ name: 'Rail', remove, add: [] }, emitters))).toEqual({
      code: 'invalid',
      path,
      message,
    })
  })

  it('keeps the others in their order, and adds after them', () => {
    const stand = [from(40), from(50), from(60)]
    expect(answered(swapped({ name: 'Rail', remove: [1], add: [from(70)] }, stand))).toEqual([
      from(40),
      from(60),
      from(70),
    ])
  })

  it('is refused under its own place', () => {
    const add = [{ ratedW: 0, exponent: 1.3 }]
    const bad = {
      rooms,
      spreadK: 10,
      candidates: [swap('Rail', 'Bath', 40), { ...swap('Panel', 'Hall', 40), add }],
    }
    expect(refused(houseSwapEffects(bad))).toMatchObject({ path: 'candidates[1].add' })
    const nan = { ...bad, candidates: [swap('Rail', 'Bath', NaN)] }
    expect(refused(houseSwapEffects(nan)).path).toBe('candidates[0].add[0].rating.flowC')
    expect(refused(houseSwapEffects({ ...bad, rooms: [] })).path).toBe('rooms')
  })
})
