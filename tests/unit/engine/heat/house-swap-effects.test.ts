import { describe, expect, it } from 'vitest'
import { houseSwapEffects as request } from '../../../../src-main/contract/heating/house.ts'
import { houseFlow } from '../../../../src-main/engine/heat/house-flow.ts'
import { houseSwapEffects } from '../../../../src-main/engine/heat/house-swap-effects.ts'
import { answered, refused } from '../../../answered.ts'

const radiator = (ratedW: number) => ({ ratedW, exponent: 1.3 })
const asked = (name: string, loadW: number, ratedW: number) => ({
  name,
  loadW,
  roomC: 20,
  emitters: [radiator(ratedW)],
})
const rooms = [asked('Lounge', 950, 1000), asked('Kitchen', 700, 1000), asked('Bedroom', 400, 1000)]
const bigger = (name: string, roomName: string, ratedW = 3000) => ({
  name,
  roomName,
  remove: [0],
  add: [radiator(ratedW)],
})
const effects = (candidates: readonly ReturnType<typeof bigger>[], house = rooms) =>
  answered(houseSwapEffects({ rooms: house, spreadK: 10, candidates }))

describe('swaps are ranked by how far each lowers the house', () => {
  it('with the worst room’s swap first, down to the next room', () => {
    const answer = effects([bigger('In the bedroom', 'Bedroom'), bigger('In the lounge', 'Lounge')])
    expect(answer.ranked.map(({ name, rank }) => [name, rank])).toEqual([
      ['In the lounge', 1],
      ['In the bedroom', 2],
    ])
    const changed = [asked('Lounge', 950, 3000), ...rooms.slice(1)]
    const then = answered(houseFlow({ rooms: changed, spreadK: 10 })).flowC
    expect(answer.ranked[0]?.after).toMatchObject({ flowC: then, worstRoom: 'Kitchen', roomsShort: 0 })
    expect(answer.ranked[0]?.lowersK).toBeCloseTo((answer.before.flowC ?? NaN) - (then ?? NaN), 6)
    expect(answer.ranked[1]).toMatchObject({ lowersK: 0, roomName: 'Bedroom', candidateIndex: 0 })
    expect(answer.says).toMatch(/^Best: In the lounge lowers the house by /)
    expect(request.output.safeParse(answer).success).toBe(true)
  })

  it('and says why two come to the same: another room holds the house', () => {
    const answer = effects([bigger('Bedroom rail', 'Bedroom'), bigger('Kitchen rail', 'Kitchen')])
    expect(answer.ranked.map(({ rank }) => rank)).toEqual([1, 1])
    const [first, second] = answer.ranked
    expect(first?.tie?.with).toEqual([second?.name])
    expect(first?.tie?.says).toMatch(/^Lounge holds the house at .* none of them is in it/)
    expect(first?.name).toBe('Bedroom rail') // 400 W of 3000 is warm at a lower flow than 700 W of 3000
    expect(answer.says).toMatch(/^No swap here lowers the house: Lounge holds it/)
  })

  it('two swaps in the worst room tie once the next room holds the house', () => {
    const answer = effects([bigger('Big', 'Lounge', 3000), bigger('Vast', 'Lounge', 6000)])
    expect(answer.ranked.map(({ name, rank }) => [name, rank])).toEqual([
      ['Vast', 1],
      ['Big', 1],
    ])
    expect(answer.ranked[0]?.tie?.says).toMatch(/^Kitchen holds the house/)
  })

  it('counts ranks past a tie: 1, 2, 2', () => {
    const all = [bigger('B', 'Bedroom'), bigger('K', 'Kitchen'), bigger('L', 'Lounge')]
    expect(effects(all).ranked.map(({ rank }) => rank)).toEqual([1, 2, 2])
  })

  it('puts what makes every room warm before what leaves one short, and fewer watts short before more', () => {
    const cold = [asked('Lounge', 2000, 1000), asked('Kitchen', 700, 1000)]
    const all = [
      bigger('Nothing for it', 'Kitchen'),
      bigger('Almost', 'Lounge', 1900),
      bigger('Enough', 'Lounge', 2500),
    ]
    const answer = effects(all, cold)
    expect(answer.before).toMatchObject({ reachable: false, roomsShort: 1, worstRoom: 'Lounge' })
    expect(answer.ranked.map(({ name }) => name)).toEqual(['Enough', 'Almost', 'Nothing for it'])
    expect(answer.ranked[0]?.says).toMatch(/makes every room warm, where one room was short/)
    expect(answer.ranked[0]).not.toHaveProperty('lowersK')
    expect(answer.ranked[1]?.after.shortW).toBeCloseTo(100, 6)
  })

  it('shows a swap that makes things worse', () => {
    const answer = effects([bigger('Small rail', 'Bedroom', 410)])
    expect(answer.ranked[0]?.lowersK).toBeLessThan(0)
    expect(answer.ranked[0]?.says).toContain('raises the house by')
  })

  it('adds beside what stays, and takes away what goes', () => {
    const candidates = [
      { name: 'Second', roomIndex: 0, remove: [], add: [radiator(1000)] },
      { name: 'Gone', roomIndex: 0, remove: [0], add: [] },
    ]
    const { ranked } = answered(houseSwapEffects({ rooms, spreadK: 10, candidates }))
    expect(ranked.map(({ name }) => name)).toEqual(['Second', 'Gone'])
    expect(ranked[1]?.after).toMatchObject({ reachable: false, roomsShort: 1, shortW: 950 })
  })

  it('does not judge a swap in a room that is only guessed, and backs nothing then', () => {
    const house = [...rooms, { ...asked('Den', 500, 600), rough: true }]
    const answer = effects([bigger('In the den', 'Den'), bigger('In the lounge', 'Lounge')], house)
    expect(answer.backed).toBe(false)
    expect(answer.ranked.map(({ name }) => name)).toEqual(['In the lounge'])
    expect(answer.notJudged[0]).toMatchObject({ candidateIndex: 0, name: 'In the den', roomName: 'Den' })
    expect(answer.says).toContain('not yet the whole house')
    expect(answer.ranked[0]?.says).toContain('lowers the measured rooms by')
  })

  it('refuses a room or an emitter that is not there, a name of two rooms, and an emitter twice', () => {
    const wrong = (candidate: object, house: readonly (typeof rooms)[number][] = rooms) => {
      const one = { name: 'Swap', remove: [], add: [radiator(1)], ...candidate }
      return refused(houseSwapEffects({ rooms: house, spreadK: 10, candidates: [one] })).path
    }
    expect(wrong({ roomIndex: 3 })).toBe('candidates[0].roomIndex')
    expect(wrong({})).toBe('candidates[0].roomIndex')
    expect(wrong({ roomName: 'Attic' })).toBe('candidates[0].roomName')
    expect(wrong({ roomName: 'Lounge', roomIndex: 1 })).toBe('candidates[0].roomName')
    expect(wrong({ roomName: 'Hall' }, [asked('Hall', 1, 1), asked('Hall', 1, 1)])).toBe(
      'candidates[0].roomName',
    )
    expect(wrong({ roomIndex: 0, remove: [1] })).toBe('candidates[0].remove[0]')
    expect(wrong({ roomIndex: 0, remove: [0, 0] })).toBe('candidates[0].remove[1]')
    expect(wrong({ roomIndex: 0, add: [radiator(-5)] })).toBe('candidates[0].add')
  })
})
