import { describe, expect, it } from 'vitest'
import { barTotals } from '../../../../src-main/engine/buying/bar-totals.ts'
import { branchedPlan } from '../../../../src-main/engine/buying/branched-plan.ts'
import { coveringProgram } from '../../../../src-main/engine/buying/covering-program.ts'
import type { Column } from '../../../../src-main/engine/buying/covering-program.ts'
import type { CutBar, Cutting } from '../../../../src-main/engine/buying/cutting.ts'
import { fillBox } from '../../../../src-main/engine/buying/fill-box.ts'
import { relaxedPlan } from '../../../../src-main/engine/buying/relaxed-plan.ts'

const job = (
  sizes: readonly number[],
  counts: readonly number[],
  ...stock: readonly (readonly [room: number, cost: number])[]
): Cutting => ({ sizes, counts, stock: stock.map(([room, cost]) => ({ room, cost })) })

describe('the cheapest mix that meets all needs', () => {
  const column = (cost: number, ...met: readonly (readonly [row: number, meets: number])[]): Column => ({
    cost,
    rows: met.map(([row]) => row),
    meets: met.map(([, meets]) => meets),
  })
  /** How often each is used, and what one more of each need would cost. */
  const solved = (needs: readonly number[], ...columns: readonly Column[]) => {
    const { uses, prices } = coveringProgram(needs, 100)(columns)
    const near = (value: number) => Number(value.toFixed(6))
    return [columns.map((one) => near(uses.get(one) ?? 0)), prices.map(near)]
  }

  it('uses each column as often as its need asks: twos for four, ones for two', () => {
    expect(solved([4, 2], column(1, [0, 2]), column(1, [1, 1]))).toEqual([
      [2, 2],
      [0.5, 1],
    ])
  })

  it('takes what meets two needs at once where that is cheaper: two at 1.5, and one at 1', () => {
    const both = column(1.5, [0, 1], [1, 1])
    expect(solved([3, 2], column(1, [0, 1]), column(1, [1, 1]), both)).toEqual([
      [1, 0, 2],
      [1, 0.5],
    ])
    expect(solved([3, 2], column(1, [0, 1]), column(1, [1, 1]), { ...both, cost: 2.1 })).toEqual([
      [3, 2, 0],
      [1, 1],
    ])
  })

  it('leaves dear what nothing meets', () => {
    expect(solved([2])).toEqual([[], [100]])
    expect(solved([2, 1], column(1, [0, 1]))).toEqual([[2], [1, 100]])
  })

  it('keeps to a ceiling: one at 1, and the other two at 2', () => {
    expect(solved([3, -1], column(1, [0, 1], [1, -1]), column(2, [0, 1]))).toEqual([
      [1, 2],
      [2, 1],
    ])
    expect(solved([3, -5], column(1, [0, 1], [1, -1]), column(2, [0, 1]))).toEqual([
      [3, 0],
      [1, 0],
    ])
  })

  it('asks nothing for a need of nothing', () => {
    expect(solved([0], column(1, [0, 1]))).toEqual([[0], [0]])
  })

  it('goes on from the mix that it had when more columns come', () => {
    const dear = column(2, [0, 1])
    const cheap = column(1, [0, 1])
    const program = coveringProgram([3], 100)
    expect(program([dear]).prices).toEqual([2])
    const { uses, prices } = program([dear, cheap])
    expect([uses.get(dear), uses.get(cheap), prices]).toEqual([undefined, 3, [1]])
  })
})

describe('bars in parts', () => {
  const bound = (cutting: Cutting, least: readonly number[], most: readonly number[], goal = 999) =>
    relaxedPlan({ cutting, limits: { least, most }, pool: new Map(), goal })

  it('cost at least their share: three of 5 in tens at 20 are one and a half', () => {
    const { bound: found, ways } = bound(job([5], [3], [10, 20]), [0], [9])
    expect(found).toBeCloseTo(30, 6)
    expect(ways.map(({ bar }) => bar)).toEqual([{ stock: 0, taken: [2] }])
    expect(ways[0]?.uses).toBeCloseTo(1.5, 6)
  })

  it('are of the cheapest length, as long as there are enough of it', () => {
    const cutting = job([5], [3], [10, 20], [5, 9])
    expect(bound(cutting, [0, 0], [9, 9]).bound).toBeCloseTo(27, 6)
    // One five at 9, and two pieces from one ten.
    expect(bound(cutting, [0, 0], [9, 1]).bound).toBeCloseTo(29, 6)
    expect(bound(cutting, [0, 0], [9, 0]).bound).toBeCloseTo(30, 6)
  })

  it('are no fewer than the limits ask', () => {
    expect(bound(job([5], [3], [10, 20]), [2], [9]).bound).toBeCloseTo(40, 6)
  })

  it('pass any goal where there are too few', () => {
    expect(bound(job([5], [3], [10, 20]), [0], [1], 60).bound).toBeGreaterThan(60)
  })

  it('are never above what whole bars cost', () => {
    const { bound: found } = bound(job([6, 4], [2, 2], [10, 10]), [0], [9])
    expect(found).toBeCloseTo(20, 6)
    expect(found).toBeLessThanOrEqual(20)
  })

  it('put the fillings that they found into the pool', () => {
    const pool = new Map<string, CutBar>()
    relaxedPlan({
      cutting: job([5], [3], [10, 20]),
      limits: { least: [0], most: [9] },
      pool,
      goal: 999,
    })
    expect(pool.get('0:2')).toEqual({ stock: 0, taken: [2] })
  })
})

describe('just so many bars', () => {
  const filled = (cutting: Cutting, most: readonly number[], goal: number, programs = 99) =>
    fillBox({
      cutting,
      most,
      goal,
      pool: new Map(),
      relaxed: { bound: 0, ways: [] },
      budget: { programs },
    })

  it('hold all pieces, or it is certain that they do not', () => {
    expect(filled(job([6, 5], [1, 1], [11, 1]), [1], 1)).toEqual({
      bars: [{ stock: 0, taken: [1, 1] }],
      complete: true,
    })
    expect(filled(job([6], [2], [11, 1]), [1], 9)).toEqual({ bars: null, complete: true })
    expect(filled(job([6], [2], [11, 1]), [2], 2)).toEqual({
      bars: [
        { stock: 0, taken: [1] },
        { stock: 0, taken: [1] },
      ],
      complete: true,
    })
  })

  it('cost no more than the goal', () => {
    expect(filled(job([6], [2], [11, 3]), [2], 5).bars).toBeNull()
    expect(filled(job([6], [2], [11, 3]), [2], 6).bars).toHaveLength(2)
    expect(filled(job([6], [1], [11, 3]), [1], 2)).toEqual({ bars: null, complete: true })
  })

  it('are each of their own length', () => {
    expect(filled(job([6, 5], [1, 1], [6, 1], [5, 1]), [1, 1], 2).bars).toEqual([
      { stock: 0, taken: [1, 0] },
      { stock: 1, taken: [0, 1] },
    ])
    expect(filled(job([6, 5], [1, 1], [6, 1], [5, 1]), [0, 2], 2).bars).toBeNull()
  })

  it('are found where filling the first bar best would waste too much: 6 + 4 and 5 + 5, not 6 alone', () => {
    const { bars } = filled(job([6, 5, 4], [1, 2, 1], [10, 1]), [2], 2)
    expect(bars).toEqual([
      { stock: 0, taken: [1, 0, 1] },
      { stock: 0, taken: [0, 2, 0] },
    ])
  })

  it('are filled best first, or as the linear program would: 6 + 5 and 4, or 6 + 4 and 5', () => {
    const input = {
      cutting: job([6, 5, 4], [1, 1, 1], [11, 1]),
      most: [2],
      goal: 2,
      pool: new Map<string, CutBar>(),
      budget: { programs: 99 },
    }
    const taken = (ways: readonly { readonly bar: CutBar; readonly uses: number }[]) =>
      fillBox({ ...input, relaxed: { bound: 0, ways } }).bars?.map((bar) => bar.taken)
    expect(taken([])).toEqual([
      [1, 1, 0],
      [0, 0, 1],
    ])
    expect(taken([{ bar: { stock: 0, taken: [1, 0, 1] }, uses: 0.5 }])).toEqual([
      [1, 0, 1],
      [0, 1, 0],
    ])
    expect(input.budget.programs).toBe(97)
  })

  it('are left an open question when the work runs out', () => {
    expect(filled(job([6], [2], [11, 1]), [2], 2, 0)).toEqual({ bars: null, complete: false })
    // One bar that holds all needs no program.
    expect(filled(job([5], [2], [11, 1]), [1], 1, 0)).toEqual({
      bars: [{ stock: 0, taken: [2] }],
      complete: true,
    })
  })
})

describe('branch and price', () => {
  // Three of 5: a ten at 9 and a five at 5 are 14; two tens are 18.
  const cutting = job([5], [3], [10, 9], [5, 5])
  const first = { cost: 18, bars: [0, 0].map((stock) => ({ stock, taken: [2] })) }
  const branched = (programs: number) =>
    branchedPlan({ cutting, first, totals: barTotals(cutting.stock, first.cost), programs })

  it('finds the cheaper plan and proves it', () => {
    const { plan, bound } = branched(50)
    expect([plan.cost, bound]).toEqual([14, 14])
    expect(plan.bars.map(({ stock }) => stock).toSorted()).toEqual([0, 1])
  })

  it('gives the plan that it had, and what none can cost less than, when the work runs out', () => {
    // In parts one and a half tens are 13.5, and no sum of nines and fives from there on is less than 14.
    expect(branched(1)).toEqual({ plan: first, bound: 14 })
  })

  it('proves the plan that it was given where nothing beats it', () => {
    const best = { cost: 14, bars: [] }
    expect(
      branchedPlan({ cutting, first: best, totals: barTotals(cutting.stock, 14), programs: 50 }),
    ).toEqual({ plan: best, bound: 14 })
  })
})
