import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { given } from '../../../src-main/domain/derivation.ts'
import type { SupplierPrice } from '../../../src-main/domain/price.ts'
import type { Purchase } from '../../../src-main/domain/quote.ts'
import { mergePurchases } from '../../../src-main/engine/takeoff/buying/merge-purchases.ts'
import { cheapestPurchase } from '../../../src-main/engine/takeoff/purchase.ts'
import type { ToBuy } from '../../../src-main/engine/takeoff/purchase.ts'
import { shelfOf } from '../../../src-main/engine/takeoff/shelf.ts'

const whole = (min: number, max: number) => fc.integer({ min, max })
const items = ['clip', 'plug', 'pipe'] as const

const price = fc.record({
  itemId: fc.constantFrom(...items),
  supplierId: fc.constantFrom('s0', 's1', 's2'),
  packHolds: whole(1, 6),
  packPence: whole(1, 60),
  breaks: fc.array(fc.record({ fromPacks: whole(2, 6), packPence: whole(1, 60) }), { maxLength: 2 }),
})
const prices = fc
  .array(price, { minLength: 3, maxLength: 9 })
  .map((list): readonly SupplierPrice[] =>
    list.map((one, at) => ({ ...one, code: `c${at}`, validFrom: '2026-01-01' })),
  )

const loose = fc.record({ itemId: fc.constantFrom('clip', 'plug', 'pipe'), need: whole(1, 900) })
const cut = fc.array(fc.record({ id: fc.constant('run'), lengthMm: whole(100, 1000), count: whole(1, 3) }), {
  minLength: 1,
  maxLength: 3,
})
const job = fc.record({
  loose: fc.uniqueArray(loose, { maxLength: 2, selector: ({ itemId }) => itemId }),
  pieces: fc.option(cut, { nil: undefined }),
})
type Job = typeof job extends fc.Arbitrary<infer J> ? J : never
const jobs = fc.array(job, { minLength: 1, maxLength: 4 })

const kerfMm = 2
const millionths = (quantity: number) => Math.round(quantity * 1e6)
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0)

type Wanted = Omit<ToBuy, 'kerfMm'>

/** What a job needs; a hundredth of a unit is the finest. */
function needsOf({ loose: parts, pieces }: Job): readonly Wanted[] {
  const each = parts.map(({ itemId, need }, at) => ({
    lineId: `l${at}`,
    itemId,
    name: itemId,
    unit: 'm' as const,
    need: need / 100,
  }))
  if (pieces === undefined) return each
  const need = sum(pieces.map(({ lengthMm, count }) => lengthMm * count)) / 1000
  return [...each, { lineId: 'cut', itemId: 'pipe', name: 'pipe', unit: 'm', need, pieces }]
}

/** A job's line as it was bought on a day long past, at a price that no longer matters. */
const boughtLongAgo = (one: Wanted): Purchase => ({
  ...one,
  supplierId: 'gone',
  supplierName: 'Gone',
  packs: [],
  leftover: 0,
  costPence: 1,
  why: given('an old price', 1, 'pence'),
})

describe('what jobs buy together', () => {
  it('is never short of what they need, and never dearer than each alone at the same prices', () => {
    fc.assert(
      fc.property(prices, jobs, (asked, wanted) => {
        const shelf = shelfOf({ items: [], suppliers: [], prices: asked })
        const needs = wanted.map(needsOf)
        const labelled = needs.map((list, at) => ({ label: `J${at}`, purchases: list.map(boughtLongAgo) }))
        const { purchases, missing } = mergePurchases(labelled, { shelf, kerfMm })
        for (const itemId of items) {
          const mine = needs.flat().filter((one) => one.itemId === itemId)
          if (missing.some(({ name }) => name === itemId)) continue
          const bought = purchases.filter((one) => one.itemId === itemId)
          const held = bought.flatMap(({ packs }) => packs.map(({ count, holds }) => count * holds))
          expect(millionths(sum(held))).toBeGreaterThanOrEqual(millionths(sum(mine.map(({ need }) => need))))
          expect(millionths(sum(bought.map(({ need }) => need)))).toBe(
            millionths(sum(mine.map(({ need }) => need))),
          )
          const alone = mine.map((one) => cheapestPurchase({ ...one, kerfMm }, shelf))
          const costs = alone.map((one) => (one.ok ? one.value.costPence : Infinity))
          expect(sum(bought.map(({ costPence }) => costPence))).toBeLessThanOrEqual(sum(costs))
          const cuts = bought.flatMap(({ bars = [] }) =>
            bars.flatMap((bar) => bar.cuts.map(({ lengthMm }) => lengthMm)),
          )
          const pieces = mine.flatMap((one) => one.pieces ?? [])
          expect(cuts.toSorted((a, b) => a - b)).toEqual(
            pieces
              .flatMap(({ lengthMm, count }) => Array.from({ length: count }, () => lengthMm))
              .toSorted((a, b) => a - b),
          )
        }
      }),
      { numRuns: 300 },
    )
  })

  it('misses only what no supplier sells', () => {
    fc.assert(
      fc.property(prices, jobs, (asked, wanted) => {
        const shelf = shelfOf({ items: [], suppliers: [], prices: asked })
        const labelled = wanted.map((one, at) => ({
          label: `J${at}`,
          purchases: needsOf(one).map(boughtLongAgo),
        }))
        const { missing } = mergePurchases(labelled, { shelf, kerfMm })
        const sold = new Set(asked.map(({ itemId }) => itemId))
        for (const { name } of missing) expect(sold.has(name as (typeof items)[number])).toBe(false)
      }),
      { numRuns: 100 },
    )
  })
})
