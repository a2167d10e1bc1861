import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { given } from '../../src-main/domain/derivation.ts'
import type { Part } from '../../src-main/domain/item.ts'
import type { SupplierPrice } from '../../src-main/domain/price.ts'
import { offeredLines } from '../../src-main/engine/buying/split/supplier-split-offers.ts'
import { splitCase, splitWith } from '../../src-main/engine/buying/split/supplier-split.ts'
import type { Solve } from '../../src-main/engine/buying/split/supplier-split.ts'
import { buyAfterVan } from '../../src-main/engine/takeoff/buying/after-van.ts'
import { buyBars } from '../../src-main/engine/takeoff/buying/buy-bars.ts'
import { resolveNeeds } from '../../src-main/engine/takeoff/buying/share-packs.ts'
import { cheapestPurchase } from '../../src-main/engine/takeoff/purchase.ts'
import { shelfOf } from '../../src-main/engine/takeoff/shelf.ts'
import { solverInProcess } from '../highs-in-process.ts'

let solve: Solve
beforeAll(async () => {
  solve = await solverInProcess()
})

const whole = (min: number, max: number) => fc.integer({ min, max })
const breaks = fc.array(fc.record({ fromPacks: whole(2, 6), packPence: whole(1, 60) }), { maxLength: 2 })
const asked = fc.record({
  supplierId: fc.constantFrom('s0', 's1', 's2'),
  packHolds: whole(1, 6),
  packPence: whole(1, 60),
  breaks,
})
type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never

const priced = (itemId: string, list: readonly Asked[]): readonly SupplierPrice[] =>
  list.map((one, place) => ({ ...one, itemId, code: `c${place}`, validFrom: '2026-01-01' }))

/** So many packs, each at the lowest price that their number reaches. */
const costOf = ({ packPence, breaks: steps }: Pick<Asked, 'packPence' | 'breaks'>, count: number) =>
  count *
  Math.min(packPence, ...steps.filter((step) => step.fromPacks <= count).map((step) => step.packPence))

/** Every way to take up to `most` of each pack: which suppliers it is from, what it holds and what it costs. */
function waysOf(list: readonly Asked[], most: number) {
  type Taken = { readonly suppliers: readonly string[]; readonly holds: number; readonly pence: number }
  return list.reduce<readonly Taken[]>(
    (ways, pack) =>
      ways.flatMap(({ suppliers, holds, pence }) =>
        Array.from({ length: most + 1 }, (_, count) => ({
          suppliers: count === 0 ? suppliers : [...new Set([...suppliers, pack.supplierId])],
          holds: holds + count * pack.packHolds,
          pence: pence + costOf(pack, count),
        })),
      ),
    [{ suppliers: [], holds: 0, pence: 0 }],
  )
}

const wants = (need: number) => ({
  lineId: 'l',
  itemId: 'i',
  name: 'I',
  unit: 'each' as const,
  need,
  kerfMm: 2,
})
const pricesOnly = (prices: readonly SupplierPrice[]) => shelfOf({ items: [], suppliers: [], prices })

describe('one item from one supplier', () => {
  it('costs the least of all numbers of all packs of any one supplier, breaks counted', () => {
    fc.assert(
      fc.property(whole(1, 8), fc.array(asked, { minLength: 1, maxLength: 4 }), (need, list) => {
        const bought = cheapestPurchase(wants(need), pricesOnly(priced('i', list)))
        if (!bought.ok) throw new Error(bought.problems[0]?.message)
        const { costPence, packs, leftover } = bought.value
        // No cheapest cover holds more of a pack than its highest break (6) or what the need takes (8).
        const least = waysOf(list, 8)
          .filter(({ suppliers, holds }) => holds >= need && suppliers.length === 1)
          .reduce((low, { pence }) => Math.min(low, pence), Infinity)
        expect(costPence).toBe(least)
        expect(packs.reduce((sum, { count, packPence }) => sum + count * packPence, 0)).toBe(costPence)
        expect(packs.reduce((sum, { count, holds }) => sum + count * holds, 0)).toBe(need + leftover)
      }),
      { numRuns: 200 },
    )
  })
})

describe('pipe of one length with price breaks', () => {
  it('costs the least of all numbers of lengths that hold the pieces', () => {
    fc.assert(
      fc.property(
        whole(1, 60),
        breaks,
        fc.array(whole(400, 2900), { minLength: 1, maxLength: 7 }),
        (pence, steps, cuts) => {
          const pieces = cuts.map((lengthMm, place) => ({ id: `p${place}`, lengthMm, count: 1 }))
          const bought = buyBars({
            pieces,
            kerfMm: 2,
            stock: [{ code: 'T', holds: 3, pence, breaks: steps }],
          })
          if (!bought.ok) throw new Error(bought.problems[0]?.message)
          const fewest = fewestLengths(
            cuts.toSorted((a, b) => b - a),
            [],
          )
          const least = Math.min(
            ...Array.from({ length: 14 - fewest }, (_, more) =>
              costOf({ packPence: pence, breaks: steps }, fewest + more),
            ),
          )
          const [pack] = bought.value.packs
          expect((pack?.count ?? 0) * (pack?.packPence ?? 0)).toBe(least)
          expect(bought.value.bars).toHaveLength(fewest)
          expect(bought.value.bars.flatMap((bar) => bar.cuts)).toHaveLength(cuts.length)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('in the van leaves the fewest lengths to buy', () => {
    fc.assert(
      fc.property(
        whole(0, 5),
        fc.array(whole(400, 2900), { minLength: 1, maxLength: 7 }),
        (lengths, cuts) => {
          const shelf = pricesOnly([
            {
              itemId: 'i',
              supplierId: 's',
              code: 'T',
              packHolds: 3,
              packPence: 100,
              validFrom: '2026-01-01',
            },
          ])
          const pieces = cuts.map((lengthMm, place) => ({ id: `p${place}`, lengthMm, count: 1 }))
          const need = cuts.reduce((sum, cut) => sum + cut, 0) / 1000
          const bought = cheapestPurchase({ ...wants(need), unit: 'm', pieces }, shelf)
          if (!bought.ok) throw new Error(bought.problems[0]?.message)
          const stock = [{ itemId: 'i', quantity: lengths * 3 }]
          const after = buyAfterVan([bought.value], stock, { shelf, kerfMm: 2 })
          if (!after.ok) throw new Error(after.problems[0]?.message)
          const fewest = fewestLengths(
            cuts.toSorted((a, b) => b - a),
            [],
          )
          const { fromVan, purchases } = after.value
          expect(purchases.reduce((sum, { costPence }) => sum + costPence, 0)).toBe(
            100 * Math.max(0, fewest - lengths),
          )
          expect(fromVan.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(3 * Math.min(lengths, fewest))
          const cut = [...fromVan, ...purchases].flatMap(({ bars = [] }) => bars).flatMap((bar) => bar.cuts)
          expect(cut.map(({ lengthMm }) => lengthMm).toSorted()).toEqual(cuts.toSorted())
        },
      ),
      { numRuns: 200 },
    )
  })
})

/** The fewest lengths of 3 m for these pieces, by trying every place of every piece; 2 mm go with each cut. */
function fewestLengths(pieces: readonly number[], open: readonly number[]): number {
  const [piece, ...rest] = pieces
  if (piece === undefined) return open.length
  const added = open.flatMap((left, place) =>
    left >= piece ? [fewestLengths(rest, open.with(place, left - piece - 2))] : [],
  )
  return Math.min(...added, fewestLengths(rest, [...open, 3000 - piece - 2]))
}

describe('lines that come to the same item', () => {
  const tail = (itemId: string, lengthMm: number): Part => ({
    itemId,
    name: itemId,
    generic: false,
    kind: 'tail',
    spec: { thread: 'G1/2', lengthMm },
  })
  const items = [tail('t20', 20), tail('t40', 40), tail('t60', 60)]
  const prices = fc.tuple(...items.map(() => fc.array(asked, { maxLength: 2 })))
  const needs = fc.uniqueArray(fc.record({ atLeast: whole(1, 70), quantity: whole(1, 6) }), {
    selector: ({ atLeast }) => atLeast,
    maxLength: 4,
  })

  it('lose no quantity, cost no more than line by line, and are preferred items wherever those will do', () => {
    fc.assert(
      fc.property(needs, prices, fc.subarray(['t20', 't40', 't60']), (wanted, lists, favourites) => {
        const shelf = shelfOf({
          items,
          suppliers: [],
          favourites,
          prices: lists.flatMap((list, place) => priced(items[place]?.itemId ?? '', list)),
        })
        const merged = wanted.map(({ atLeast, quantity }) => ({
          lineKey: `tail ${atLeast}`,
          kind: 'tail' as const,
          spec: { lengthMm: { atLeast } },
          quantity,
          unit: 'each' as const,
          shared: false,
          swapIds: ['a'],
          why: given('Wanted', quantity),
        }))
        const together = resolveNeeds(merged, shelf, 2)
        const apart = merged.flatMap((need) => resolveNeeds([need], shelf, 2))
        const total = (lines: typeof together) =>
          lines.reduce((sum, { purchase }) => sum + (purchase?.costPence ?? 0), 0)
        const many = (lines: typeof together) => lines.reduce((sum, { line }) => sum + line.quantity, 0)
        expect(many(together)).toBe(many(apart))
        expect(total(together)).toBeLessThanOrEqual(total(apart))
        for (const { line } of apart) {
          const liked = line.gap === undefined && favourites.includes(line.itemId ?? '')
          const matches = items.filter(
            ({ itemId }) =>
              favourites.includes(itemId) &&
              Number(itemId.slice(1)) >= (line.spec['lengthMm'] as { atLeast: number }).atLeast &&
              (shelf.prices.get(itemId) ?? []).length > 0,
          )
          expect(liked).toBe(matches.length > 0)
        }
      }),
      { numRuns: 300 },
    )
  })
})

describe('the split of lines that share packs', () => {
  const line = fc.record({ itemId: fc.constantFrom('i', 'j'), need: whole(1, 4) })
  const packs = fc.array(asked, { minLength: 1, maxLength: 3 })

  it('costs the least of all numbers of all packs of one supplier or two for each item, with carriage', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(line, { minLength: 1, maxLength: 3 }),
        fc.record({ i: packs, j: packs }),
        fc.tuple(whole(0, 40), whole(0, 40), whole(0, 40)),
        async (lines, sold, carriage) => {
          const named = lines.map((one, place) => ({ ...one, lineId: `l${place}`, unit: 'each' as const }))
          const suppliers = carriage.map((carriagePence, place) => ({
            supplierId: `s${place}`,
            name: `Supplier ${place}`,
            carriagePence,
          }))
          const offers = named.flatMap(({ lineId, itemId }) =>
            [...Map.groupBy(sold[itemId], ({ supplierId }) => supplierId)].map(([supplierId, list]) => ({
              lineId,
              supplierId,
              packs: list.map((pack, place) => ({
                code: `c${place}`,
                holds: pack.packHolds,
                pence: pack.packPence,
                breaks: pack.breaks,
              })),
            })),
          )
          const ready = offeredLines({ lines: named, offers, suppliers })
          if (!ready.ok) throw new Error(ready.problems[0]?.message)
          const answer = await splitWith(splitCase(ready.value, suppliers), solve)
          if (!answer.ok) throw new Error(answer.problems[0]?.message)
          const needs = Map.groupBy(named, ({ itemId }) => itemId)
          const perItem = [...needs].map(([itemId, group]) => {
            const need = group.reduce((sum, one) => sum + one.need, 0)
            return waysOf(sold[itemId], 12).filter(
              ({ suppliers: from, holds }) => holds >= need && from.length <= 2,
            )
          })
          expect(answer.value.totalPence).toBe(leastOf(perItem, carriage))
          expect(answer.value.proved).toBe(true)
          for (const [itemId, group] of needs) {
            const need = group.reduce((sum, one) => sum + one.need, 0)
            const brought = answer.value.orders.flatMap((order) =>
              order.lines.filter((one) => one.itemId === itemId),
            )
            const held = brought
              .flatMap((one) => one.packs)
              .reduce((sum, { holds, count }) => sum + holds * count, 0)
            expect(held - brought.reduce((sum, { leftover }) => sum + leftover, 0)).toBe(need)
          }
        },
      ),
      { numRuns: 60 },
    )
  })
})

type Ways = ReturnType<typeof waysOf>

/** The cheapest way of each item for each set of suppliers, put together in every way, carriage once for each supplier used. */
function leastOf(items: readonly Ways[], carriage: readonly number[]): number {
  const bySet = items.map((ways) => {
    const best = new Map<string, number>()
    for (const { suppliers, pence } of ways) {
      const set = suppliers.toSorted().join(' ')
      best.set(set, Math.min(best.get(set) ?? Infinity, pence))
    }
    return [...best]
  })
  const plans = bySet.reduce<readonly (readonly [string, number])[]>(
    (sofar, sets) =>
      sofar.flatMap(([used, sum]) => sets.map(([set, pence]) => [`${used} ${set}`, sum + pence] as const)),
    [['', 0]],
  )
  return Math.min(
    ...plans.map(
      ([used, sum]) =>
        sum + carriage.reduce((all, pence, place) => (used.includes(`s${place}`) ? all + pence : all), 0),
    ),
  )
}
