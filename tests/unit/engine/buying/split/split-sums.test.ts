import { describe, expect, it } from 'vitest'
import {
  allFrom,
  cheapestByLine,
  costOfSplit,
  orderCost,
  plainSplits,
  settledSplit,
  sharesOf,
} from '../../../../../src-main/engine/buying/split/supplier-split-cost.ts'
import type { SplitSum, Terms } from '../../../../../src-main/engine/buying/split/supplier-split-cost.ts'
import { chosenIn, splitModel } from '../../../../../src-main/engine/buying/split/supplier-split-model.ts'

const moor: Terms = { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 600 }
const town: Terms = { supplierId: 'town', name: 'Town Counter', carriagePence: 500 }
const line = (lineId: string, pence: Readonly<Record<string, number>>) => ({
  lineId,
  from: Object.entries(pence).map(([supplierId, asked]) => ({ supplierId, pence: asked })),
})
const plan = (assigned: Readonly<Record<string, string>>) => new Map(Object.entries(assigned))

describe('one order', () => {
  it.each([
    [999, 600],
    [1000, 0],
    [1001, 0],
  ])('of goods for %i comes with carriage of %i, free from 1000', (goods, carriagePence) => {
    expect(orderCost({ ...moor, carriageFreeFromPence: 1000 }, goods).carriagePence).toBe(carriagePence)
  })

  it('is never free of carriage where nothing makes it free', () => {
    expect(orderCost(moor, 1_000_000)).toEqual({
      supplierId: 'moor',
      goodsPence: 1_000_000,
      carriagePence: 600,
      reachesMinimum: true,
    })
  })

  it.each([
    [1999, false],
    [2000, true],
    [2001, true],
  ])('of goods for %i reaches a minimum of 2000: %s', (goods, reaches) => {
    expect(orderCost({ ...moor, minimumOrderPence: 2000 }, goods).reachesMinimum).toBe(reaches)
  })
})

describe('the cost of a split', () => {
  const pair = {
    supplierId: 'moor+town',
    pence: 300,
    shares: [
      { supplierId: 'moor', pence: 100 },
      { supplierId: 'town', pence: 200 },
    ],
  }
  const sum: SplitSum = {
    lines: [
      line('a', { moor: 400, town: 350 }),
      { lineId: 'b', from: [{ supplierId: 'moor', pence: 310 }, pair] },
    ],
    suppliers: [moor, town],
  }

  it('adds each share to its own order: 350 and 200 from Town, 100 from Moor, both carriages', () => {
    expect(costOfSplit(sum, plan({ a: 'town', b: 'moor+town' }))).toEqual({
      orders: [
        { supplierId: 'moor', goodsPence: 100, carriagePence: 600, reachesMinimum: true },
        { supplierId: 'town', goodsPence: 550, carriagePence: 500, reachesMinimum: true },
      ],
      totalPence: 1750,
      allowed: true,
    })
  })

  it('has no order from a supplier that nothing is bought from', () => {
    expect(costOfSplit(sum, plan({ a: 'moor', b: 'moor' }))).toMatchObject({
      orders: [{ supplierId: 'moor', goodsPence: 710 }],
      totalPence: 1310,
    })
  })

  it('is not allowed where a line is bought from nobody, or from one who has it not', () => {
    expect(costOfSplit(sum, plan({ a: 'town' }))).toMatchObject({ totalPence: 850, allowed: false })
    expect(costOfSplit(sum, plan({ a: 'town', b: 'town' })).allowed).toBe(false)
  })

  it('is not allowed where one order of two stays under its minimum', () => {
    const strict = { ...sum, suppliers: [moor, { ...town, minimumOrderPence: 351 }] }
    expect(costOfSplit(strict, plan({ a: 'town', b: 'moor' })).allowed).toBe(false)
    expect(costOfSplit(strict, plan({ a: 'town', b: 'moor+town' })).allowed).toBe(true)
  })

  it('gives the shares without what else is known of them', () => {
    const known = { ...pair, shares: pair.shares.map((share) => ({ ...share, packs: [], leftover: 0 })) }
    expect(sharesOf(known)).toEqual(pair.shares)
    expect(sharesOf({ ...pair, shares: undefined })).toEqual([{ supplierId: 'moor+town', pence: 300 }])
  })

  it('takes each line from the cheapest; of equals one before two, then the first by id', () => {
    const equal = { ...pair, supplierId: 'abbey+moor', pence: 5 }
    const of = (...from: SplitSum['lines'][number]['from']) =>
      cheapestByLine({ lines: [{ lineId: 'a', from }], suppliers: [] }).get('a')
    const from = (supplierId: string, pence: number) => ({ supplierId, pence })
    expect(of(from('moor', 6), from('town', 5))).toBe('town')
    expect(of(from('town', 5), from('moor', 5))).toBe('moor')
    expect(of(from('moor', 5), from('town', 5))).toBe('moor')
    expect(of(equal, from('town', 5))).toBe('town')
    expect(of(from('town', 5), equal)).toBe('town')
    expect(of()).toBeUndefined()
  })

  it('gives every line to one supplier', () => {
    expect(allFrom(sum, 'town')).toEqual(plan({ a: 'town', b: 'town' }))
  })

  it('is plain from each who has all, and from the cheapest of each line', () => {
    expect(plainSplits(sum)).toEqual([plan({ a: 'moor', b: 'moor' }), plan({ a: 'town', b: 'moor+town' })])
  })
})

describe('a split that needs no search', () => {
  const settled = (lines: SplitSum['lines'], suppliers: readonly Terms[]) =>
    settledSplit({ lines, suppliers })
  const free = (terms: Terms): Terms => ({ ...terms, carriagePence: 0 })

  it('is the one that costs no more than its lines at their cheapest', () => {
    const lines = [line('a', { moor: 400, town: 350 }), line('b', { moor: 300, town: 320 })]
    expect(settled(lines, [free(moor), free(town)])).toEqual(plan({ a: 'town', b: 'moor' }))
    expect(settled(lines, [moor, free(town)])).toBeNull()
  })

  it('is one supplier for all, before the cheapest of each line at the same cost', () => {
    const lines = [line('a', { moor: 350, town: 350 }), line('b', { moor: 320, town: 320 })]
    expect(settled(lines, [free(moor), free(town)])).toEqual(plan({ a: 'moor', b: 'moor' }))
    expect(settled(lines, [moor, free(town)])).toEqual(plan({ a: 'town', b: 'town' }))
  })

  it('is whatever has to be, where each line has one supplier, carriage or not', () => {
    const lines = [line('a', { moor: 400 }), line('b', { town: 320 })]
    expect(settled(lines, [moor, town])).toEqual(plan({ a: 'moor', b: 'town' }))
  })

  it('is none where a single line has a choice and carriage is asked', () => {
    expect(settled([line('a', { moor: 400 }), line('b', { moor: 1, town: 320 })], [moor, town])).toBeNull()
  })

  it('is none where what has to be stays under a minimum', () => {
    expect(settled([line('a', { moor: 400 })], [{ ...moor, minimumOrderPence: 401 }])).toBeNull()
  })

  it('is to buy nothing where there is nothing to buy', () => {
    expect(settled([], [])).toEqual(new Map())
  })
})

describe('the program for a solver, written out by hand', () => {
  // Two suppliers and one line: 0.2/2 an order and 0.2/(2 x 1) a place decide between equals; half a penny less is the same limit.
  const sum: SplitSum = {
    lines: [
      {
        lineId: 'a',
        from: [
          { supplierId: 'moor', pence: 5 },
          {
            supplierId: 'moor+town',
            pence: 6,
            shares: [
              { supplierId: 'moor', pence: 2 },
              { supplierId: 'town', pence: 4 },
            ],
          },
          { supplierId: 'town', pence: 7 },
        ],
      },
    ],
    suppliers: [
      { ...moor, carriageFreeFromPence: 1000 },
      { ...town, minimumOrderPence: 300 },
    ],
  }
  const written = `Minimize
 cost: + 5 x0_0
 + 6.050000000 x0_0_1
 + 7.100000000 x0_1
 + 600.100000000 y0
 + 500.100000000 y1
 - 600 f0
 - 500 f1
Subject To
 r0: + 1 x0_0
 + 1 x0_0_1
 + 1 x0_1 = 1
 r1: x0_0 - y0 <= 0
 r2: x0_0_1 - y0 <= 0
 r3: x0_0_1 - y1 <= 0
 r4: x0_1 - y1 <= 0
 r5: f0 - y0 <= 0
 r6: + 5 x0_0
 + 2 x0_0_1
 - 999.500000000 f0 >= 0
 r7: f1 - y1 <= 0
 r8: f1 <= 0
 r9: + 4 x0_0_1
 + 7 x0_1
 - 299.500000000 y1 >= 0
Binaries
 x0_0
 x0_0_1
 x0_1
 y0
 f0
 y1
 f1
End
`

  it('says each cost, each order and each limit', () => {
    expect(splitModel(sum)).toBe(written)
  })

  it('asks no less than nothing where goods are free of carriage from the first penny', () => {
    const first = { ...sum, suppliers: [{ ...moor, carriageFreeFromPence: 0 }, town] }
    expect(splitModel(first)).toContain(' + 2 x0_0_1\n + 0 f0 >= 0\n')
  })

  it('divides the small part of the objective by suppliers and lines', () => {
    // Two lines: 0.2 / (2 x 2) = 0.05 for the second place.
    const second = { lineId: 'b', from: [{ supplierId: 'town', pence: 9 }] }
    const model = splitModel({ ...sum, lines: [...sum.lines, second] })
    expect(model).toContain(' + 7.050000000 x0_1\n + 9.050000000 x1_1\n')
    expect(splitModel({ lines: [], suppliers: [moor] })).toContain(' cost: + 600.200000000 y0\n - 600 f0\n')
  })

  it('is read back: each line by the way whose value is over a half', () => {
    const way = (name: string, value = 1) => chosenIn(sum, (one) => (one === name ? value : 0))
    expect(way('x0_0')).toEqual(plan({ a: 'moor' }))
    expect(way('x0_0_1')).toEqual(plan({ a: 'moor+town' }))
    expect(way('x0_1', 0.51)).toEqual(plan({ a: 'town' }))
    expect(way('x0_1', 0.5)).toEqual(new Map())
  })
})
