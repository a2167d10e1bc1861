import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { coverWithBreaks } from '../../src-main/engine/buying/split/supplier-split-packs.ts'
import { offeredLines } from '../../src-main/engine/buying/split/supplier-split-offers.ts'
import type { SplitInput } from '../../src-main/engine/buying/split/supplier-split-offers.ts'
import { costOfSplit, settledSplit } from '../../src-main/engine/buying/split/supplier-split-cost.ts'
import type { SplitSum } from '../../src-main/engine/buying/split/supplier-split-cost.ts'
import { chosenIn, splitModel } from '../../src-main/engine/buying/split/supplier-split-model.ts'
import { splitCase, splitWith } from '../../src-main/engine/buying/split/supplier-split.ts'
import type { Solve } from '../../src-main/engine/buying/split/supplier-split.ts'
import { takeFromVan } from '../../src-main/engine/buying/van-stock.ts'
import { solverInProcess } from '../highs-in-process.ts'

let solve: Solve
beforeAll(async () => {
  solve = await solverInProcess()
})

const whole = (min: number, max: number) => fc.integer({ min, max })
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined })

/** What n packs cost by the printed breaks: every pack at the lowest price that the number reaches. */
type Priced = {
  readonly holds: number
  readonly pence: number
  readonly breaks: readonly { readonly fromPacks: number; readonly packPence: number }[]
}
function costOfPacks({ pence, breaks }: Priced, count: number): number {
  const reached = breaks.filter((step) => step.fromPacks <= count).map((step) => step.packPence)
  return count * Math.min(pence, ...reached)
}

type Score = readonly [pence: number, leftover: number, packs: number]
const better = (a: Score, b: Score) => (a[0] - b[0] || a[1] - b[1] || a[2] - b[2]) < 0

/** The best cover by trying every number of every pack up to `most`. */
function bestByTrying(need: number, packs: readonly Priced[], most: number): Score {
  const [pack, ...others] = packs
  if (pack === undefined) return need <= 0 ? [0, 0 - need, 0] : [Infinity, Infinity, Infinity]
  return Array.from({ length: most + 1 }, (_, count): Score => {
    const [pence, leftover, many] = bestByTrying(need - count * pack.holds, others, most)
    return [pence + costOfPacks(pack, count), leftover, many + count]
  }).reduce((best, next) => (better(next, best) ? next : best))
}

describe('packs with price breaks', () => {
  const priced = fc.record({
    holds: whole(1, 6),
    pence: whole(1, 30),
    breaks: fc.array(fc.record({ fromPacks: whole(2, 8), packPence: whole(0, 30) }), { maxLength: 2 }),
  })

  it('are the best of all that cover the need, by trying every number of every pack', () => {
    fc.assert(
      fc.property(whole(1, 12), fc.array(priced, { minLength: 1, maxLength: 3 }), (need, packs) => {
        const named = packs.map((pack, index) => ({ ...pack, code: `C${index}` }))
        const bought = coverWithBreaks(need, named)
        if (!bought.ok) throw new Error(bought.problems[0]?.message)
        const many = bought.value.packs.reduce((sum, { count }) => sum + count, 0)
        // No best cover holds more of a pack than its highest break (8) or what the need takes (12).
        expect([bought.value.pence, bought.value.leftover, many]).toEqual(bestByTrying(need, packs, 12))
        for (const { code, count, packPence } of bought.value.packs) {
          const pack = packs[Number(code.slice(1))]
          expect(count * packPence).toBe(pack === undefined ? null : costOfPacks(pack, count))
        }
      }),
      { numRuns: 300 },
    )
  })

  it('come out the same whatever order the packs are given in', () => {
    fc.assert(
      fc.property(whole(1, 40), fc.array(priced, { minLength: 1, maxLength: 4 }), (need, packs) => {
        const named = packs.map((pack, index) => ({ ...pack, code: `C${index}` }))
        expect(coverWithBreaks(need, named.toReversed())).toEqual(coverWithBreaks(need, named))
      }),
    )
  })
})

/** Small sums with every term that a supplier may set, tight enough that free carriage and minima matter. */
const smallSum: fc.Arbitrary<SplitSum> = fc
  .record({
    table: fc.array(fc.array(maybe(whole(0, 40)), { minLength: 3, maxLength: 3 }), {
      minLength: 1,
      maxLength: 5,
    }),
    terms: fc.array(
      fc.record({
        carriagePence: whole(0, 25),
        carriageFreeFromPence: maybe(whole(0, 90)),
        minimumOrderPence: maybe(whole(0, 60)),
      }),
      { minLength: 3, maxLength: 3 },
    ),
  })
  .map(({ table, terms }) => ({
    suppliers: terms.map((one, index) => ({ ...one, supplierId: `s${index}`, name: `Supplier ${index}` })),
    lines: table
      .map((row, line) => ({
        lineId: `line-${line}`,
        from: row.flatMap((pence, index) =>
          pence === undefined ? [] : [{ supplierId: `s${index}`, pence }],
        ),
      }))
      .filter(({ from }) => from.length > 0),
  }))

/** The least total by trying every assignment of every line; null when none is allowed. */
function leastByTrying(sum: SplitSum): number | null {
  const plans = sum.lines.reduce<readonly (readonly (readonly [string, string, number])[])[]>(
    (sofar, { lineId, from }) =>
      sofar.flatMap((plan) =>
        from.map(({ supplierId, pence }) => [...plan, [lineId, supplierId, pence] as const]),
      ),
    [[]],
  )
  const totals = plans.flatMap((plan) => {
    const goods = Map.groupBy(plan, ([, supplierId]) => supplierId)
    let total = 0
    for (const { supplierId, carriagePence, carriageFreeFromPence, minimumOrderPence } of sum.suppliers) {
      const bought = goods.get(supplierId)
      if (bought === undefined) continue
      const value = bought.reduce((all, [, , pence]) => all + pence, 0)
      if (value < (minimumOrderPence ?? 0)) return []
      total += value + (value >= (carriageFreeFromPence ?? Infinity) ? 0 : carriagePence)
    }
    return [total]
  })
  return totals.length === 0 ? null : Math.min(...totals)
}

/** The sum as an input of the request: each line one pack of its price. */
function asInput({ lines, suppliers }: SplitSum): SplitInput {
  return {
    suppliers,
    lines: lines.map(({ lineId }) => ({ lineId, itemId: `item-${lineId}`, need: 1, unit: 'each' })),
    offers: lines.flatMap(({ lineId, from }) =>
      from.map(({ supplierId, pence }) => ({
        lineId,
        supplierId,
        packs: [{ code: 'one', holds: 1, pence }],
      })),
    ),
  }
}

async function split(input: SplitInput) {
  const lines = offeredLines(input)
  if (!lines.ok) throw new Error(lines.problems[0]?.message)
  return splitWith(splitCase(lines.value, input.suppliers), solve)
}

describe('the split over suppliers', () => {
  it('costs the least of all assignments, by trying every one, and says that it is proved', async () => {
    await fc.assert(
      fc.asyncProperty(smallSum, async (sum) => {
        const least = leastByTrying(sum)
        const answer = await split(asInput(sum))
        if (!answer.ok) {
          expect([answer.problems[0]?.code, least]).toEqual(['impossible', null])
          return
        }
        expect(answer.value.totalPence).toBe(least)
        expect(answer.value.proved).toBe(true)
      }),
      { numRuns: 150 },
    )
  })

  it('costs the least when the solver is asked even where no search is needed', async () => {
    await fc.assert(
      fc.asyncProperty(
        smallSum.filter((sum) => sum.lines.length > 0),
        async (sum) => {
          const least = leastByTrying(sum)
          const { suppliers } = splitCase([], sum.suppliers)
          const solved = await solve(splitModel({ ...sum, suppliers }))
          expect(solved.kind).toBe(least === null ? 'impossible' : 'found')
          if (solved.kind !== 'found') return
          const cost = costOfSplit(sum, chosenIn(sum, solved.valueOf))
          expect([cost.allowed, cost.totalPence]).toEqual([true, least])
        },
      ),
      { numRuns: 100 },
    )
  })

  it('is the least wherever it is settled without a search', () => {
    fc.assert(
      fc.property(smallSum, (sum) => {
        const settled = settledSplit(sum)
        if (settled !== null) expect(costOfSplit(sum, settled).totalPence).toBe(leastByTrying(sum))
      }),
      { numRuns: 1000 },
    )
  })

  it('is the same plan, asked twice and with lines, offers and suppliers in any order', async () => {
    await fc.assert(
      fc.asyncProperty(smallSum, async (sum) => {
        const input = asInput(sum)
        const turned = {
          ...input,
          lines: input.lines.toReversed(),
          offers: input.offers.toReversed(),
          suppliers: input.suppliers.toReversed(),
        }
        const once = await split(input)
        expect(await split(input)).toEqual(once)
        expect(await split(turned)).toEqual(once)
      }),
      { numRuns: 30 },
    )
  })

  it('is never dearer than one supplier alone, and its sums add up', async () => {
    await fc.assert(
      fc.asyncProperty(smallSum, async (sum) => {
        const answer = await split(asInput(sum))
        if (!answer.ok) return
        const { orders, oneSupplier, goodsPence, carriagePence, totalPence } = answer.value
        for (const one of oneSupplier) {
          expect(one.totalPence === undefined).toBe(one.cannot !== undefined)
          if (one.totalPence !== undefined) expect(totalPence).toBeLessThanOrEqual(one.totalPence)
        }
        expect(goodsPence + carriagePence).toBe(totalPence)
        expect(orders.reduce((all, order) => all + order.totalPence, 0)).toBe(totalPence)
        const lines = orders.flatMap((order) => order.lines)
        expect(lines.reduce((all, { pence }) => all + pence, 0)).toBe(goodsPence)
        expect(lines.map(({ lineId }) => lineId).toSorted()).toEqual(
          sum.lines.map(({ lineId }) => lineId).toSorted(),
        )
      }),
      { numRuns: 50 },
    )
  })
})

describe('van stock', () => {
  it('gives no more than it has, and what it gives and what is bought make up the need', () => {
    const wanted = fc.uniqueArray(
      fc.record({
        lineId: whole(0, 20).map((n) => `l${n}`),
        itemId: fc.constantFrom('a', 'b'),
        need: whole(1, 900),
      }),
      { selector: ({ lineId }) => lineId, maxLength: 6 },
    )
    const held = fc.array(fc.record({ itemId: fc.constantFrom('a', 'b', 'c'), quantity: whole(0, 900) }))
    fc.assert(
      fc.property(wanted, held, (wants, holds) => {
        const lines = wants.map((want) => ({ ...want, need: want.need / 100 }))
        const stock = holds.map((hold) => ({ ...hold, quantity: hold.quantity / 100 }))
        const taken = takeFromVan(lines, stock)
        for (const itemId of ['a', 'b']) {
          const from = taken.filter((line) => line.itemId === itemId)
          const given = from.reduce((all, { fromVan }) => all + fromVan, 0)
          const inVan = stock
            .filter((one) => one.itemId === itemId)
            .reduce((all, { quantity }) => all + quantity, 0)
          const need = from.reduce((all, line) => all + line.need, 0)
          expect(given).toBeCloseTo(Math.min(inVan, need), 6)
        }
        for (const { need, fromVan, toBuy } of taken) expect(fromVan + toBuy).toBeCloseTo(need, 6)
      }),
    )
  })
})
