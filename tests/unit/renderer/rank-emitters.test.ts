import { describe, expect, it } from 'vitest'
import { rankEmitters } from '../../../src-renderer/screens/job/rank-emitters.ts'
import { emitterForTests } from './emitter-for-tests.ts'

const offered = (itemId: string, ratedW: number, fromPence: number | null) => ({
  emitter: emitterForTests({ itemId, ratedW }),
  fromPence,
})
const list = [
  offered('small', 300, 1000),
  offered('dear', 2000, 9000),
  offered('unpriced', 2000, null),
  offered('cheap', 1500, 5000),
  offered('smaller', 200, 500),
]
/** At its own rating temperatures an emitter gives what it is rated at (EN 442-2). */
const asRated = { flowC: 75, returnC: 65, roomC: 20 }
const names = (ranked: ReturnType<typeof rankEmitters>) => ranked.map(({ emitter }) => emitter.itemId)

describe('emitters to choose from', () => {
  it('stand with those that keep the room warm first, the cheapest first among them, then the nearest to enough', () => {
    expect(names(rankEmitters(list, asRated, 1000))).toEqual([
      'cheap',
      'dear',
      'unpriced',
      'small',
      'smaller',
    ])
  })
  it('give what they are rated at, at their rating', () => {
    expect(rankEmitters(list, asRated, 1000)[0]?.givesW).toBeCloseTo(1500, 6)
  })
  it('stay in their order while nobody knows what the room needs', () => {
    expect(names(rankEmitters(list, asRated, null))).toEqual(names(rankEmitters(list, null, null)))
  })
  it('give no figure at temperatures that cannot be', () => {
    expect(
      rankEmitters(list, { flowC: 20, returnC: 30, roomC: 20 }, 500).every(({ givesW }) => givesW === null),
    ).toBe(true)
  })
})
