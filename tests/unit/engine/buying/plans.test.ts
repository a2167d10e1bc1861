import { describe, expect, it } from 'vitest'
import { cheapestPlan, fullEffort } from '../../../../src-main/engine/buying/cheapest-plan.ts'
import type { Cutting } from '../../../../src-main/engine/buying/cutting.ts'
import { worthOf } from '../../../../src-main/engine/buying/cutting.ts'
import { filledPlan, quickPlan } from '../../../../src-main/engine/buying/first-plan.ts'
import { linearPlan, provenValues } from '../../../../src-main/engine/buying/piece-values.ts'

const job = (
  sizes: readonly number[],
  counts: readonly number[],
  ...stock: readonly (readonly [room: number, cost: number])[]
): Cutting => ({ sizes, counts, stock: stock.map(([room, cost]) => ({ room, cost })) })
const taken = ({ bars }: { readonly bars: readonly { readonly taken: readonly number[] }[] }) =>
  bars.map((bar) => bar.taken)

describe('a quick plan, each piece in the fullest bar that takes it', () => {
  it('lays the longest first', () => {
    expect(quickPlan(job([5, 4, 3], [1, 1, 1], [7, 1]))).toEqual({
      cost: 2,
      bars: [
        { stock: 0, taken: [1, 0, 0] },
        { stock: 0, taken: [0, 1, 1] },
      ],
    })
  })

  it('takes the bar with less left, of equals the first', () => {
    // 6 leaves 3 of 9, and 5 leaves 4: the 2 goes beside the 6.
    expect(taken(quickPlan(job([6, 5, 2], [1, 1, 1], [9, 1])))).toEqual([
      [1, 0, 1],
      [0, 1, 0],
    ])
    // 6 leaves 3, into which no 4 goes: it goes beside the 5.
    expect(taken(quickPlan(job([6, 5, 4], [1, 1, 1], [9, 1])))).toEqual([
      [1, 0, 0],
      [0, 1, 1],
    ])
    expect(taken(quickPlan(job([5, 2], [2, 1], [9, 1])))).toEqual([
      [1, 1],
      [1, 0],
    ])
  })

  it('tries each stock length first, and keeps the cheapest', () => {
    expect(quickPlan(job([5], [2], [10, 10], [5, 6]))).toEqual({ cost: 10, bars: [{ stock: 0, taken: [2] }] })
    expect(quickPlan(job([5], [2], [10, 13], [5, 6]))).toMatchObject({ cost: 12 })
    expect(quickPlan(job([5], [2], [10, 12], [5, 6])).bars).toHaveLength(1)
  })

  it('moves what was cut to the cheapest length that holds it', () => {
    expect(quickPlan(job([5], [1], [9, 10], [5, 6], [6, 6]))).toEqual({
      cost: 6,
      bars: [{ stock: 1, taken: [1] }],
    })
    expect(quickPlan(job([6], [1], [9, 10], [5, 6], [6, 6])).bars).toEqual([{ stock: 2, taken: [1] }])
  })

  it('opens another length for a piece that is too long for the one preferred', () => {
    expect(quickPlan(job([6, 3], [1, 1], [4, 1], [9, 5]))).toEqual({
      cost: 5,
      bars: [{ stock: 1, taken: [1, 1] }],
    })
  })
})

describe('a plan filled bar after bar', () => {
  it('puts beside the longest what fills the bar', () => {
    // 6 + 5 fill 11, and so do 4 + 3 + 2 + 2.
    expect(filledPlan(job([6, 5, 4, 3, 2], [1, 1, 1, 1, 2], [11, 1]), [6, 5, 4, 3, 2])).toEqual({
      cost: 2,
      bars: [
        { stock: 0, taken: [1, 1, 0, 0, 0] },
        { stock: 0, taken: [0, 0, 1, 1, 2] },
      ],
    })
  })

  it('takes the length that gives most for its money: 6 for 4 before 11 for 10', () => {
    expect(filledPlan(job([6, 5], [1, 1], [11, 10], [6, 4]), [6, 5])).toEqual({
      cost: 8,
      bars: [
        { stock: 1, taken: [1, 0] },
        { stock: 1, taken: [0, 1] },
      ],
    })
    expect(filledPlan(job([6, 5], [1, 1], [11, 7], [6, 4]), [6, 5])).toEqual({
      cost: 7,
      bars: [{ stock: 0, taken: [1, 1] }],
    })
  })
})

describe('what a piece costs at least', () => {
  it('is its share of the bar that is cheapest for it: two of 5 in 11 for 8 are 4 each', () => {
    expect(linearPlan(job([5], [3], [11, 8]))).toEqual({
      values: [4],
      ways: [{ bar: { stock: 0, taken: [2] }, uses: 1.5 }],
    })
    expect(linearPlan(job([5], [3], [11, 8], [5, 3]))).toEqual({
      values: [3],
      ways: [{ bar: { stock: 1, taken: [1] }, uses: 3 }],
    })
    expect(linearPlan(job([5], [1], [11, 8])).values).toEqual([8])
  })

  it('is nothing for a size that has run out', () => {
    expect(linearPlan(job([5, 4], [3, 0], [11, 8]))).toEqual({
      values: [4, 0],
      ways: [{ bar: { stock: 0, taken: [2, 0] }, uses: 1.5 }],
    })
  })

  it('comes to two bars for two of 6 and two of 4 in 10', () => {
    const cutting = job([6, 4], [2, 2], [10, 10])
    const { values, ways } = linearPlan(cutting)
    expect(worthOf(cutting.counts, values)).toBeCloseTo(20, 6)
    const mixed = ways.find(({ bar }) => bar.taken.join() === '1,1')
    expect(mixed?.uses).toBeCloseTo(2, 6)
  })

  it('is proven as it is where no bar holds more than its cost, and brought down where one does', () => {
    const cutting = job([5, 4], [1, 1], [9, 8])
    // 2^50 / 16 = 2^46.
    const scale = 2 ** 46
    expect(provenValues(cutting, [4, 4], 16)).toEqual({ values: [4 * scale, 4 * scale], scale })
    const down = provenValues(cutting, [5, 5], 16)
    expect(down.scale).toBe(scale)
    expect(down.values.map((value) => (value / scale).toFixed(6))).toEqual(['4.000000', '4.000000'])
    expect(worthOf([1, 1], down.values)).toBeLessThanOrEqual(8 * scale)
    expect(down.values.every(Number.isInteger)).toBe(true)
    expect(provenValues(cutting, [4, 4], 0).scale).toBe(2 ** 50)
  })
})

describe('the cheapest plan', () => {
  it('is proven where pieces fill their bars', () => {
    const { plan, bound } = cheapestPlan(job([6, 5, 4, 3, 2], [1, 1, 1, 1, 2], [11, 1]), fullEffort)
    expect([plan.cost, bound, plan.bars.length]).toEqual([2, 2, 2])
  })

  it('goes by the money: four of 5 are two tens at 9, not four fives at 5', () => {
    expect(cheapestPlan(job([5], [4], [10, 9], [5, 5]), fullEffort)).toMatchObject({
      plan: { cost: 18 },
      bound: 18,
    })
    // Three of 5: a ten and a five are 14; two tens are 18; three fives 15.
    expect(cheapestPlan(job([5], [3], [10, 9], [5, 5]), fullEffort).plan.cost).toBe(14)
  })

  it('is found where the quick one misses it: 44, 33 and 22 twice, and 55 fill two of 110', () => {
    // 55 + 33 + 22 = 110 and 44 + 44 + 22 = 110; best fit lays 55 + 44 and then needs a third bar.
    const cutting = job([55, 44, 33, 22], [1, 2, 1, 2], [110, 1])
    expect(quickPlan(cutting).cost).toBe(3)
    const { plan, bound } = cheapestPlan(cutting, fullEffort)
    expect([plan.cost, bound]).toEqual([2, 2])
    const cut = [0, 1, 2, 3].map((place) => plan.bars.reduce((sum, bar) => sum + (bar.taken[place] ?? 0), 0))
    expect(cut).toEqual([1, 2, 1, 2])
  })
})
