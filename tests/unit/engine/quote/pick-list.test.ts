import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import type { Purchase } from '../../../../src-main/domain/quote.ts'
import type { SplitAnswer } from '../../../../src-main/engine/buying/split/supplier-split-answer.ts'
import { buildPickList } from '../../../../src-main/engine/quote/pick-list.ts'
import type { Buying } from '../../../../src-main/engine/quote/pick-list.ts'

const bought = (itemId: string, supplierId: string, supplierName: string): Purchase => ({
  lineId: itemId,
  itemId,
  name: `The ${itemId}`,
  supplierId,
  supplierName,
  unit: 'each',
  need: 7,
  packs: [
    { code: 'TEN', holds: 10, count: 1, packPence: 500 },
    { code: 'ONE', holds: 1, count: 2, packPence: 60 },
  ],
  leftover: 5,
  costPence: 620,
  why: given(`Why ${itemId}`, 620, 'pence'),
})
const purchases = [bought('rail', 'z', 'Abbey'), bought('clip', 'a', 'Town'), bought('plug', 'z', 'Abbey')]

function listOf(buying?: Buying) {
  const parts = {
    purchases,
    boxUses: [],
    takeOff: {
      lines: [{ itemId: 'clip', generic: true } as never, { itemId: 'plug', generic: false } as never],
      fromBox: [],
      cautions: [],
      tools: [],
      why: given('Rules', 1),
    },
  }
  const gaps = [
    { gapKey: 'a', says: 'No vent.' },
    { gapKey: 'b', says: 'No blank.', waived: 'the customer has one' },
  ]
  return buildPickList(
    parts,
    { gaps },
    {
      placed: [{ emitter: { itemId: 'rail', dryKg: 12.4 } } as never],
      facts: { rooms: [], swaps: [] } as never,
      figures: { settings: {} } as never,
      ...(buying === undefined ? {} : { buying }),
    },
  )
}

describe('the pick list', () => {
  it('is by supplier in the order of their names, a row for each pack, with mass and what is generic', () => {
    const { suppliers } = listOf()
    expect(
      suppliers.map(({ name, lines }) => [name, lines.map(({ itemId, code }) => `${itemId} ${code}`)]),
    ).toEqual([
      ['Abbey', ['rail TEN', 'rail ONE', 'plug TEN', 'plug ONE']],
      ['Town', ['clip TEN', 'clip ONE']],
    ])
    expect(suppliers[0]?.lines[1]).toEqual({
      itemId: 'rail',
      name: 'The rail',
      code: 'ONE',
      packs: 2,
      packHolds: 1,
      unit: 'each',
      need: 7,
      leftover: 5,
      generic: false,
      massKg: 12.4,
    })
    expect(suppliers[1]?.lines[0]).toMatchObject({ generic: true })
    expect(suppliers[1]?.lines[0]).not.toHaveProperty('massKg')
    expect(suppliers[0]?.lines[2]).toMatchObject({ generic: false })
  })

  it('says what is missing, and why something was left out', () => {
    expect(listOf().missing).toEqual(['No vent.', 'No blank. Left out because: the customer has one'])
  })

  it('leads to the reason of every purchase', () => {
    const { why } = listOf()
    expect(why).toMatchObject({ says: 'Whole packs for every line, by supplier.', value: 3, unit: 'lines' })
    expect(why.from).toEqual(purchases.map((one) => one.why))
  })

  it('lists what the van gives and how its pipe is cut, before what is cut from bought lengths', () => {
    const bars = [{ stockId: 'van', cuts: [{ id: 'a', lengthMm: 900 }], offcutMm: 98 }]
    const fromVan = [
      { lineId: 'p', itemId: 'pipe', name: 'Pipe', unit: 'm' as const, quantity: 3, bars },
      { lineId: 'c', itemId: 'clip', name: 'Clip', unit: 'each' as const, quantity: 4 },
    ]
    const cut = { ...bought('pipe', 'a', 'Town'), bars: [{ ...bars[0], stockId: 'TEN' } as never] }
    const list = listOf({ purchases: [cut], fromVan })
    expect(list.fromVan).toEqual([
      { itemId: 'pipe', name: 'Pipe', quantity: 3, unit: 'm' },
      { itemId: 'clip', name: 'Clip', quantity: 4, unit: 'each' },
    ])
    expect(list.pipeCuts.map(({ name, bars: all }) => [name, all[0]?.stockId])).toEqual([
      ['Pipe', 'van'],
      ['The pipe', 'TEN'],
    ])
    expect(list.why.from.map(({ says, value, unit }) => [says, value, unit])).toEqual([
      ['Pipe: in the van already, so not bought.', 3, 'm'],
      ['Clip: in the van already, so not bought.', 4, 'each'],
      ['Why pipe', 620, 'pence'],
    ])
  })

  it('of a split has the carriage of each order, and leads to the reason of the split', () => {
    const split = {
      orders: [
        { supplierId: 'z', goodsPence: 900, carriagePence: 100, shortOfFreePence: 50 },
        { supplierId: 'a', goodsPence: 340, carriagePence: 0 },
      ],
      goodsPence: 1240,
      carriagePence: 100,
      totalPence: 1340,
      proved: true,
      says: 'The cheapest.',
      oneSupplier: [],
      why: given('The split', 1340, 'pence'),
    } as unknown as SplitAnswer
    const list = listOf({ purchases, fromVan: [], split })
    expect(list.suppliers).toEqual([
      {
        supplierId: 'z',
        name: 'Abbey',
        lines: listOf().suppliers[0]?.lines,
        goodsPence: 900,
        carriagePence: 100,
        shortOfFreePence: 50,
      },
      {
        supplierId: 'a',
        name: 'Town',
        lines: listOf().suppliers[1]?.lines,
        goodsPence: 340,
        carriagePence: 0,
      },
    ])
    expect(list.split).toEqual({
      goodsPence: 1240,
      carriagePence: 100,
      totalPence: 1340,
      proved: true,
      says: 'The cheapest.',
      oneSupplier: [],
    })
    expect(list.why.from).toEqual([split.why])
    expect(list.fromVan).toBeUndefined()
  })
})
