import { describe, expect, it } from 'vitest'
import { coverPacks } from '../../../../src-main/engine/buying/cover-packs.ts'
import type { Pack } from '../../../../src-main/engine/buying/cover-packs.ts'

const pack = (id: string, holds: number, pence: number): Pack => ({ id, holds, pence })

function cover(need: number, packs: readonly Pack[]) {
  const answer = coverPacks({ need, packs })
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  const { picks, pence, leftover } = answer.value
  return { picks, pence, leftover }
}

function refusal(need: number, packs: readonly Pack[]) {
  const answer = coverPacks({ need, packs })
  return answer.ok ? undefined : answer.problems[0]
}

describe('coverPacks', () => {
  it('mixes packs when that is cheaper than either alone', () => {
    // By hand: 5 + 2 = 13.00, 5 + 5 = 18.00, 2 x 4 = 16.00.
    expect(cover(7, [pack('five', 5, 900), pack('two', 2, 400)])).toEqual({
      picks: [{ id: 'five', count: 1 }, { id: 'two', count: 1 }],
      pence: 1300,
      leftover: 0,
    }) // prettier-ignore
  })

  it('takes a larger pack than needed when it is cheaper', () => {
    expect(cover(3, [pack('one', 1, 100), pack('ten', 10, 250)])).toMatchObject({ pence: 250, leftover: 7 })
  })

  it('leaves the least over among equal costs', () => {
    expect(cover(7, [pack('eight', 8, 500), pack('ten', 10, 500)])).toMatchObject({
      picks: [{ id: 'eight' }],
      leftover: 1,
    })
  })

  it('opens the fewest packs among equal costs and leftovers', () => {
    expect(cover(6, [pack('one', 1, 10), pack('three', 3, 30), pack('six', 6, 60)]).picks).toEqual([
      { id: 'six', count: 1 },
    ])
  })

  it('prefers more of the larger packs among what is left equal', () => {
    const even = [pack('5', 5, 50), pack('7', 7, 70), pack('3', 3, 30)]
    expect(cover(10, even).picks).toEqual([{ id: '7', count: 1 }, { id: '3', count: 1 }]) // prettier-ignore
  })

  it('adds fractions exactly', () => {
    expect(cover(0.1 + 0.2, [pack('a', 0.1, 10)])).toEqual({
      picks: [{ id: 'a', count: 3 }],
      pence: 30,
      leftover: 0,
    })
    expect(cover(0.82, [pack('roll', 12, 99)]).leftover).toBe(11.18)
  })

  it('covers 100000 with packs of 1', () => {
    expect(cover(100_000, [pack('one', 1, 7)])).toEqual({
      picks: [{ id: 'one', count: 100_000 }],
      pence: 700_000,
      leftover: 0,
    })
  })

  it('covers a million with packs of awkward sizes', () => {
    const { pence, leftover, picks } = cover(1_000_000, [
      pack('a', 997, 991),
      pack('b', 89, 97),
      pack('c', 13, 15),
    ])
    const held = { a: 997, b: 89, c: 13 } as Readonly<Record<string, number>>
    expect(picks.reduce((sum, { id, count }) => sum + count * (held[id] ?? 0), 0) - 1_000_000).toBe(leftover)
    // No cover can be cheaper than all of it at the best rate.
    expect(pence).toBeGreaterThanOrEqual(Math.ceil((1_000_000 * 991) / 997))
  })

  it('takes packs that cost nothing, and no more than are needed', () => {
    expect(cover(10, [pack('free', 4, 0), pack('bought', 10, 100)])).toEqual({
      picks: [{ id: 'free', count: 3 }],
      pence: 0,
      leftover: 2,
    })
  })

  it('takes the best of two packs that cost nothing', () => {
    expect(cover(10, [pack('four', 4, 0), pack('six', 6, 0)])).toMatchObject({
      picks: [{ id: 'six', count: 1 }, { id: 'four', count: 1 }],
      leftover: 0,
    }) // prettier-ignore
  })

  it('says with which numbers it was worked', () => {
    const answer = coverPacks({ need: 7, packs: [pack('five', 5, 900)] })
    const leaves = answer.ok
      ? answer.value.why.from.flatMap((step) => (step.from.length > 0 ? step.from : [step]))
      : []
    expect(leaves.map((leaf) => leaf.value)).toEqual([7, 5, 900])
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-9, 2_000_000])('refuses a need of %s', (need) => {
    expect(refusal(need, [pack('a', 1, 1)])).toMatchObject({ code: 'invalid', path: 'need' })
  })

  it('refuses a pack that holds nothing, one without whole pence, one twice, and none at all', () => {
    expect(refusal(1, [pack('a', 1, 1), pack('b', 0, 1)])).toMatchObject({
      code: 'invalid',
      path: 'packs[1].holds',
    })
    expect(refusal(1, [pack('a', 1, 1.5)])).toMatchObject({ code: 'invalid', path: 'packs[0].pence' })
    expect(refusal(1, [pack('a', 1, 1), pack('a', 2, 1)])).toMatchObject({
      code: 'invalid',
      path: 'packs[1].id',
    })
    expect(refusal(1, [])).toMatchObject({ code: 'invalid', path: 'packs' })
  })

  it('refuses sizes too fine beside the need rather than search for ever', () => {
    const fine = [pack('a', 999.999999, 100_000), pack('b', 999.999998, 99_999), pack('c', 0.000003, 1)]
    expect(refusal(1_000_000, fine)).toMatchObject({ code: 'impossible', path: 'packs' })
  })

  it('refuses a total that is past all money', () => {
    expect(refusal(1_000_000, [pack('a', 0.001, 1_000_000_00)])).toMatchObject({
      code: 'invalid',
      path: 'need',
    })
  })
})
