import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestFill } from '../../src-main/engine/buying/best-fill.ts'
import { cheapestPlan } from '../../src-main/engine/buying/cheapest-plan.ts'
import { cutPipe, cutPipeWithin } from '../../src-main/engine/buying/cut-pipe.ts'
import type { CutInput } from '../../src-main/engine/buying/cut-pipe.ts'
import { planOf, worthOf } from '../../src-main/engine/buying/cutting.ts'
import type { CutBar, Cutting } from '../../src-main/engine/buying/cutting.ts'
import { fillBox } from '../../src-main/engine/buying/fill-box.ts'
import { fillTable } from '../../src-main/engine/buying/fill-table.ts'
import { relaxedPlan } from '../../src-main/engine/buying/relaxed-plan.ts'
import type { BarLimits } from '../../src-main/engine/buying/relaxed-plan.ts'

/** What the cheapest plan within limits costs, by laying each piece in turn on every bar that is open and on every new one. */
function leastByTrying({ sizes, counts, stock }: Cutting, most: readonly number[]): number {
  const pieces = sizes.flatMap((size, place) => Array.from({ length: counts[place] ?? 0 }, () => size))
  let best = Infinity
  const lay = (index: number, free: readonly number[], left: readonly number[], cost: number): void => {
    if (cost >= best) return
    const size = pieces[index]
    if (size === undefined) {
      best = cost
      return
    }
    for (const [bar, room] of free.entries())
      if (room >= size && free.indexOf(room) === bar) lay(index + 1, free.with(bar, room - size), left, cost)
    for (const [place, bar] of stock.entries()) {
      const spare = left[place] ?? 0
      if (bar.room < size || spare < 1) continue
      lay(index + 1, [...free, bar.room - size], left.with(place, spare - 1), cost + bar.cost)
    }
  }
  lay(0, [], most, 0)
  return best
}

const small = fc
  .record({
    sizes: fc.uniqueArray(fc.integer({ min: 3, max: 30 }), { minLength: 1, maxLength: 5 }),
    many: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 5, maxLength: 5 }),
    stock: fc.array(
      fc.record({ room: fc.integer({ min: 30, max: 60 }), cost: fc.integer({ min: 1, max: 90 }) }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ sizes, many, stock }): Cutting => ({
    sizes: sizes.toSorted((a, b) => b - a),
    counts: sizes.map((_, place) => Math.min(many[place] ?? 1, place > 2 ? 1 : 3)),
    stock,
  }))

const everyBar = (cutting: Cutting) =>
  cutting.stock.map(() => cutting.counts.reduce((sum, count) => sum + count, 0))

function expectWhole(cutting: Cutting, bars: readonly CutBar[]): void {
  for (const { stock, taken } of bars)
    expect(worthOf(taken, cutting.sizes)).toBeLessThanOrEqual(cutting.stock[stock]?.room ?? 0)
  const cut = cutting.sizes.map((_, place) => bars.reduce((sum, bar) => sum + (bar.taken[place] ?? 0), 0))
  expect(cut).toEqual(cutting.counts)
}

describe('the cheapest plan', () => {
  it('is the same by branch and price alone as by trying every way, and says so', () => {
    fc.assert(
      fc.property(small, (cutting) => {
        const { plan, bound } = cheapestPlan(cutting, { steps: 0, programs: 400 })
        const least = leastByTrying(cutting, everyBar(cutting))
        expectWhole(cutting, plan.bars)
        expect(planOf(cutting, plan.bars).cost).toBe(plan.cost)
        expect([plan.cost, bound]).toEqual([least, least])
      }),
      { numRuns: 250 },
    )
  })

  it('never claims more than is so, however soon it stops', () => {
    fc.assert(
      fc.property(small, fc.integer({ min: 0, max: 4 }), (cutting, programs) => {
        const { plan, bound } = cheapestPlan(cutting, { steps: 0, programs })
        const least = leastByTrying(cutting, everyBar(cutting))
        expectWhole(cutting, plan.bars)
        expect(bound).toBeLessThanOrEqual(least)
        expect(plan.cost).toBeGreaterThanOrEqual(least)
      }),
      { numRuns: 250 },
    )
  })
})

describe('a box of limits', () => {
  const boxed = fc
    .tuple(
      small,
      fc.array(fc.tuple(fc.integer({ min: 0, max: 1 }), fc.integer({ min: 0, max: 3 })), {
        minLength: 3,
        maxLength: 3,
      }),
    ) // prettier-ignore
    .map(([cutting, ends]): readonly [Cutting, BarLimits] => {
      const within = ends.slice(0, cutting.stock.length)
      return [
        cutting,
        { least: within.map(([least]) => least), most: within.map(([least, more]) => least + more) },
      ]
    })

  /** With a floor, bars may stand empty: the least over all numbers of bars within the limits, each bar paid for. */
  const leastWithin = (cutting: Cutting, { least, most }: BarLimits): number => {
    const numbers = least.reduce<readonly (readonly number[])[]>(
      (so, bars, place) =>
        so.flatMap((some) =>
          Array.from({ length: (most[place] ?? 0) - bars + 1 }, (_, more) => [...some, bars + more]),
        ),
      [[]],
    )
    const paid = numbers.filter((bars) => leastByTrying(cutting, bars) < Infinity)
    return Math.min(...paid.map((bars) => worthOf(bars, cutting.stock.map(({ cost }) => cost)))) // prettier-ignore
  }

  it('has a bound that no plan within it passes, and one above 0 when there is a plan', () => {
    fc.assert(
      fc.property(boxed, ([cutting, limits]) => {
        const { bound } = relaxedPlan({ cutting, limits, pool: new Map(), goal: 1e6 })
        expect(bound).toBeGreaterThan(0)
        expect(bound).toBeLessThanOrEqual(leastWithin(cutting, limits) + 1e-6)
      }),
      { numRuns: 200 },
    )
  })

  it('is filled when it can be, and only then', () => {
    fc.assert(
      fc.property(boxed, ([cutting, { most }]) => {
        const pool = new Map<string, CutBar>()
        const goal = 1e6
        const limits = { least: most.map(() => 0), most }
        const relaxed = relaxedPlan({ cutting, limits, pool, goal })
        const filled = fillBox({ cutting, most, goal, pool, relaxed, budget: { programs: 5_000 } })
        expect(filled.complete).toBe(true)
        expect(filled.bars !== null).toBe(leastByTrying(cutting, most) < Infinity)
        if (filled.bars === null) return
        expectWhole(cutting, filled.bars)
        for (const [place, bars] of most.entries())
          expect(filled.bars.filter((bar) => bar.stock === place).length).toBeLessThanOrEqual(bars)
      }),
      { numRuns: 200 },
    )
  })
})

describe('the table of fillings', () => {
  const items = fc.array(
    fc.record({
      size: fc.integer({ min: 1, max: 20 }),
      value: fc.integer({ min: 0, max: 20 }),
      count: fc.integer({ min: 0, max: 6 }),
    }),
    { minLength: 1, maxLength: 7 },
  )

  it('fills every bar as well as a search of that bar, and with what there is', () => {
    fc.assert(
      fc.property(items, fc.array(fc.integer({ min: 0, max: 80 }), { maxLength: 3 }), (list, rooms) => {
        const sizes = list.map(({ size }) => size)
        const values = list.map(({ value }) => value)
        const counts = list.map(({ count }) => count)
        for (const [index, fill] of fillTable({ sizes, values, counts, rooms }).entries()) {
          const room = rooms[index] ?? 0
          expect(fill.value).toBe(bestFill({ sizes, values, counts, room }).value)
          expect(worthOf(fill.taken, values)).toBe(fill.value)
          expect(worthOf(fill.taken, sizes)).toBeLessThanOrEqual(room)
          expect(fill.taken.every((many, place) => many <= (counts[place] ?? 0))).toBe(true)
          expect(fill.atMost).toBeGreaterThanOrEqual(fill.value)
        }
      }),
    )
  })
})

describe('the cut list', () => {
  const list = fc.record({
    pieces: fc.array(fc.record({ lengthMm: fc.integer({ min: 150, max: 2900 }), count: fc.integer({ min: 1, max: 4 }) }), { minLength: 1, maxLength: 12 }), // prettier-ignore
    kerfMm: fc.constantFrom(0, 2, 3),
  })
  const stock = [{ id: '3m', lengthMm: 3000, pence: 1149 }, { id: '2m', lengthMm: 2000, pence: 829 }] // prettier-ignore

  it('costs the same whatever the order of pieces, and is proven', () => {
    fc.assert(
      fc.property(list, ({ pieces, kerfMm }) => {
        const named = pieces.map((piece, index) => ({ ...piece, id: `p${index}` }))
        const costOf = (input: CutInput) => {
          const answer = cutPipe(input)
          if (!answer.ok) throw new Error(answer.problems[0]?.message)
          expect(answer.value.proved).toBe(true)
          expect(answer.value.leastPence).toBe(answer.value.pence)
          return [answer.value.pence, answer.value.barsUsed]
        }
        expect(costOf({ pieces: named.toReversed(), stock, kerfMm })).toEqual(costOf({ pieces: named, stock, kerfMm })) // prettier-ignore
      }),
      { numRuns: 40 },
    )
  })

  it('with less work costs no less than it says it might, and that is no more than the proven cost', () => {
    fc.assert(
      fc.property(list, ({ pieces, kerfMm }) => {
        const named = pieces.map((piece, index) => ({ ...piece, id: `p${index}` }))
        const full = cutPipe({ pieces: named, stock, kerfMm })
        const quick = cutPipeWithin({ pieces: named, stock, kerfMm }, { steps: 0, programs: 0 })
        if (!full.ok || !quick.ok) throw new Error('refused')
        expect(quick.value.leastPence).toBeLessThanOrEqual(full.value.pence)
        expect(quick.value.pence).toBeGreaterThanOrEqual(full.value.pence)
        expect(quick.value.proved).toBe(
          quick.value.says === 'No other way to cut costs less, and none at that cost takes fewer lengths.',
        )
      }),
      { numRuns: 40 },
    )
  })
})
