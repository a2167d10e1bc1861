import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../../src-main/domain/derivation.ts'
import { mixedWays, wayAlone } from '../../../../../src-main/engine/buying/split/mixed-ways.ts'
import {
  choiceCount,
  levelChoices,
  priceAtCount,
  priceLevels,
} from '../../../../../src-main/engine/buying/split/price-ladder.ts'
import {
  boughtTogether,
  offeredLines,
} from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import type { SplitInput } from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import { coverWithBreaks } from '../../../../../src-main/engine/buying/split/supplier-split-packs.ts'
import type { OfferedPack } from '../../../../../src-main/engine/buying/split/supplier-split-packs.ts'
import { answered, refused } from '../../../../answered.ts'

const ten = { fromPacks: 10, packPence: 50 }
const clip = (...breaks: readonly { fromPacks: number; packPence: number }[]): OfferedPack => ({
  code: 'CLIP',
  holds: 1,
  pence: 60,
  breaks,
})

describe('the ladder of a price', () => {
  it('goes down only, by the number taken', () => {
    expect(priceLevels(60, undefined)).toEqual([{ fromPacks: 0, pence: 60 }])
    expect(priceLevels(60, [{ fromPacks: 20, packPence: 40 }, ten])).toEqual([
      { fromPacks: 0, pence: 60 },
      { fromPacks: 10, pence: 50 },
      { fromPacks: 20, pence: 40 },
    ])
  })

  it('leaves out a break that lowers nothing: as dear, dearer, or dearer than the one before', () => {
    expect(priceLevels(60, [{ fromPacks: 10, packPence: 60 }])).toHaveLength(1)
    expect(priceLevels(60, [ten, { fromPacks: 20, packPence: 50 }])).toHaveLength(2)
    expect(priceLevels(60, [ten, { fromPacks: 20, packPence: 51 }])).toHaveLength(2)
  })

  it('takes the lower of two breaks at one number', () => {
    const lower = [{ fromPacks: 10, pence: 45 }]
    expect(priceLevels(60, [ten, { fromPacks: 10, packPence: 45 }]).slice(1)).toEqual(lower)
    expect(priceLevels(60, [{ fromPacks: 10, packPence: 45 }, ten]).slice(1)).toEqual(lower)
  })

  it('is read at a number: just under, at and over a break', () => {
    const levels = priceLevels(60, [ten])
    expect([0, 9, 10, 11].map((count) => priceAtCount(levels, count))).toEqual([60, 60, 50, 50])
    expect(priceAtCount([], 3)).toBe(0)
  })

  it('is combined with others in every way', () => {
    const two = priceLevels(60, [ten])
    const one = priceLevels(9, undefined)
    expect([choiceCount([two, one, two]), choiceCount([])]).toEqual([4, 1])
    expect(levelChoices([two, two]).map((levels) => levels.map(({ pence }) => pence))).toEqual([
      [60, 60],
      [60, 50],
      [50, 60],
      [50, 50],
    ])
  })
})

describe('packs with price breaks', () => {
  it('give their reason: the need, the packs of each code at their price, and what is over', () => {
    expect(answered(coverWithBreaks(9, [clip(ten)])).why).toEqual(
      because('The cheapest whole packs that cover the need, price breaks counted', 500, {
        unit: 'pence',
        from: [
          given('Needed', 9),
          because('Packs of CLIP', 500, {
            unit: 'pence',
            from: [given('Packs taken', 10), given('One holds', 1), given('One costs', 50, 'pence')],
          }),
          given('Left over', 1),
        ],
      }),
    )
  })

  it('are found whatever the order: by code, then the larger, then the cheaper', () => {
    const b = { code: 'B', holds: 1, pence: 60 }
    const a = { code: 'A', holds: 10, pence: 500 }
    const small = { code: 'A', holds: 2, pence: 115 }
    const codes = (packs: readonly OfferedPack[]) =>
      answered(coverWithBreaks(13, packs)).packs.map(({ code, holds, count }) => [code, holds, count])
    // Thirteen: a ten at 500, a two at 115 and a one at 60 are 675; with three ones 680; with two twos 730.
    const wanted = [
      ['A', 10, 1],
      ['A', 2, 1],
      ['B', 1, 1],
    ]
    expect(codes([b, small, a])).toEqual(wanted)
    expect(codes([a, small, b])).toEqual(wanted)
  })

  it('are the cheaper of two of one code that hold the same', () => {
    const dear = { code: 'A', holds: 1, pence: 60 }
    const cheap = { code: 'A', holds: 1, pence: 50 }
    const wanted = [{ code: 'A', holds: 1, count: 3, packPence: 50 }]
    expect(answered(coverWithBreaks(3, [dear, cheap])).packs).toEqual(wanted)
    expect(answered(coverWithBreaks(3, [cheap, dear])).packs).toEqual(wanted)
  })

  it('are the least left over at the same cost, then the fewest', () => {
    const packs = [
      { code: 'A', holds: 8, pence: 80 },
      { code: 'B', holds: 7, pence: 80 },
    ]
    expect(answered(coverWithBreaks(7, packs))).toMatchObject({ pence: 80, leftover: 0 })
    // Twenty: two tens or one twenty at the break price of nothing less: 100 each way.
    const same = [
      { code: 'A', holds: 10, pence: 60, breaks: [{ fromPacks: 2, packPence: 50 }] },
      { code: 'B', holds: 20, pence: 100 },
    ]
    expect(answered(coverWithBreaks(20, same)).packs.map(({ code, count }) => [code, count])).toEqual([
      ['B', 1],
    ])
  })

  it('stay at the lower number where the break just meets it: ten are 500, nine are 540, eight 480', () => {
    const bought = (need: number) => {
      const { pence, leftover, packs } = answered(coverWithBreaks(need, [clip(ten)]))
      return [pence, leftover, packs[0]?.packPence]
    }
    expect(bought(8)).toEqual([480, 0, 60])
    expect(bought(9)).toEqual([500, 1, 50])
    expect(bought(10)).toEqual([500, 0, 50])
    expect(bought(11)).toEqual([550, 0, 50])
  })

  it('refuse a break in words, by its pack and place', () => {
    const wrong = { fromPacks: 1, packPence: 10 }
    expect(refused(coverWithBreaks(5, [clip(), clip(ten, wrong)]))).toEqual({
      code: 'invalid',
      message:
        'A price break of pack CLIP must be whole pence, 0 or more, from a whole number of packs, 2 or more.',
      path: 'packs[1].breaks[1]',
    })
  })

  it('take a break from two packs, and one that costs nothing', () => {
    const free = clip({ fromPacks: 2, packPence: 0 })
    expect(answered(coverWithBreaks(1, [free]))).toMatchObject({ pence: 0, leftover: 1 })
  })

  it('refuse more than 4096 ways, and try 4096', () => {
    const steps = (many: number) =>
      Array.from({ length: many }, (_, place) => ({ fromPacks: place + 2, packPence: 50 - place }))
    const packs = (...many: readonly number[]) =>
      many.map((count, place) => ({ ...clip(...steps(count)), code: `P${place}` }))
    // 16 x 16 x 16 ways are 4096.
    expect(coverWithBreaks(1, packs(15, 15, 15)).ok).toBe(true)
    expect(refused(coverWithBreaks(1, packs(15, 15, 16)))).toEqual({
      code: 'impossible',
      message:
        'These packs have so many price breaks that more than 4096 ways would have to be tried; give fewer breaks.',
      path: 'packs',
    })
  })

  it('refuse no packs, a wrong pack by its code, and a wrong need, each in words', () => {
    expect(refused(coverWithBreaks(5, []))).toEqual({
      code: 'invalid',
      message: 'There are no packs to choose from; give at least one.',
      path: 'packs',
    })
    const packs = [
      { code: 'Z', holds: 1, pence: 5 },
      { code: 'A', holds: 0, pence: 5 },
    ]
    expect(refused(coverWithBreaks(5, packs))).toEqual({
      code: 'invalid',
      message: 'Pack A must hold from a millionth of a unit to 1000000; it holds 0.',
      path: 'packs',
    })
    expect(refused(coverWithBreaks(0, [clip()]))).toEqual({
      code: 'invalid',
      message: 'The need must be from a millionth of a unit to 1000000; it was 0.',
      path: 'need',
    })
  })
})

describe('a line from two suppliers', () => {
  const bags = [{ code: 'C', holds: 10, pence: 500 }]
  const singles = [{ code: 'C', holds: 1, pence: 60 }]

  it('is named in the order of their ids, however they come', () => {
    const town = { supplierId: 'town', pence: 1000, offered: bags }
    const moor = { supplierId: 'moor', pence: 720, offered: singles }
    for (const alone of [
      [town, moor],
      [moor, town],
    ]) {
      expect(mixedWays(12, alone).map(({ supplierId, pence }) => [supplierId, pence])).toEqual([
        ['moor+town', 620],
      ])
    }
  })

  it('is named so too where the second by id is the cheaper alone', () => {
    const town = { supplierId: 'town', pence: 720, offered: singles }
    const moor = { supplierId: 'moor', pence: 1000, offered: bags }
    for (const alone of [
      [town, moor],
      [moor, town],
    ]) {
      expect(mixedWays(12, alone).map(({ supplierId }) => supplierId)).toEqual(['moor+town'])
    }
  })

  it('tries of equals the first six by id', () => {
    // Seven who all come to 720 alone; the bag belongs to the last by id in the first case, to the first in the second.
    const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g']
    const withBagAt = (bagAt: string, order: readonly string[]) =>
      mixedWays(
        12,
        order.map((supplierId) => ({
          supplierId,
          pence: 720,
          offered: supplierId === bagAt ? bags : singles,
        })),
      ).map(({ supplierId }) => supplierId)
    expect(withBagAt('g', names)).toEqual([])
    expect(withBagAt('g', names.toReversed())).toEqual([])
    expect(withBagAt('a', names.toReversed())).toEqual(['a+b', 'a+c', 'a+d', 'a+e', 'a+f'])
  })

  it('is none where the packs cannot be settled', () => {
    const breaks = Array.from({ length: 70 }, (_, place) => ({
      fromPacks: place + 2,
      packPence: 100 - place,
    }))
    const many = (supplierId: string) => ({
      supplierId,
      pence: 1000,
      offered: [{ code: 'C', holds: 1, pence: 200, breaks }],
    })
    expect(mixedWays(3, [many('a'), many('b')])).toEqual([])
  })

  it('is without its offers once it is bought from one', () => {
    const why = given('x', 5)
    expect(wayAlone({ supplierId: 's', packs: [], pence: 5, leftover: 1, why, offered: bags })).toEqual({
      supplierId: 's',
      packs: [],
      pence: 5,
      leftover: 1,
      why,
    })
  })
})

describe('lines that are offered', () => {
  const one = (pence: number) => [{ code: 'C', holds: 1, pence }]
  const input: SplitInput = {
    lines: [{ lineId: 'a', itemId: 'clip', need: 2, unit: 'each' }],
    offers: [{ lineId: 'a', supplierId: 'town', packs: one(10) }],
    suppliers: [{ supplierId: 'town', name: 'Town Counter', carriagePence: 0 }],
  }
  const problem = (over: Partial<SplitInput>) => refused(offeredLines({ ...input, ...over }))

  it('buy nothing of what the van has, and ask nobody', () => {
    expect(answered(offeredLines({ ...input, vanStock: [{ itemId: 'clip', quantity: 2 }] }))).toEqual([
      { lineId: 'a', itemId: 'clip', need: 2, unit: 'each', fromVan: 2, toBuy: 0, from: [] },
    ])
  })

  it('are bought under the first of their ids, where there are several and somebody has them', () => {
    const line = (lineId: string) => ({
      lineId,
      itemId: 'clip',
      need: 2,
      unit: 'each' as const,
      fromVan: 0,
      toBuy: 2,
    })
    const way = { supplierId: 's', packs: [], pence: 5, leftover: 0, why: given('x', 5) }
    expect(boughtTogether([line('a'), line('b')], [way], 4)).toEqual([
      { ...line('a'), toBuy: 4, from: [way], lineIds: ['a', 'b'] },
      { ...line('b'), toBuy: 0, from: [] },
    ])
    expect(boughtTogether([line('a')], [way], 2)).toEqual([{ ...line('a'), from: [way] }])
    expect(boughtTogether([line('a'), line('b')], [], 4)).toEqual([
      { ...line('a'), from: [] },
      { ...line('b'), from: [] },
    ])
  })

  it('are refused in words, by their place', () => {
    const [line] = input.lines
    const [offer] = input.offers
    const [supplier] = input.suppliers
    if (line === undefined || offer === undefined || supplier === undefined) throw new Error('empty')
    expect(problem({ lines: [line, line] })).toEqual({
      code: 'invalid',
      message: 'The line a is there twice; give each line its own id.',
      path: 'lines[1].lineId',
    })
    expect(problem({ suppliers: [supplier, supplier] })).toEqual({
      code: 'invalid',
      message: 'The supplier town is there twice; give each supplier its own id.',
      path: 'suppliers[1].supplierId',
    })
    expect(problem({ offers: [offer, offer] })).toEqual({
      code: 'invalid',
      message:
        'There are two offers for a from town; put all packs of one supplier for one line into one offer.',
      path: 'offers[1]',
    })
    expect(problem({ offers: [offer, { ...offer, lineId: 'sink' }] })).toEqual({
      code: 'invalid',
      message: 'There is no line called sink here.',
      path: 'offers[1].lineId',
    })
    expect(problem({ offers: [offer, { ...offer, supplierId: 'sea' }] })).toEqual({
      code: 'invalid',
      message: 'There is no supplier called sea here.',
      path: 'offers[1].supplierId',
    })
  })
})
