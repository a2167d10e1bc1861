import { describe, expect, it } from 'vitest'
import { buyBars } from '../../../../src-main/engine/takeoff/buying/buy-bars.ts'
import { cheapestPurchase, packOffered, poundsOf } from '../../../../src-main/engine/takeoff/purchase.ts'
import type { SupplierPrice } from '../../../../src-main/domain/price.ts'
import { asks, shelfWith } from './parts-for-tests.ts'

function bought(need: number, prices: readonly SupplierPrice[]) {
  const wanted = { lineId: 'l', itemId: 'clip', name: 'Clip', unit: 'each' as const, need, kerfMm: 2 }
  const answer = cheapestPurchase(wanted, shelfWith([], prices))
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}
const clip = (fromPacks: number, packPence: number, more: Partial<SupplierPrice> = {}) =>
  asks('clip', 60, { breaks: [{ fromPacks, packPence }], ...more })

describe('buying one item', () => {
  it('takes a tenth where ten at 50 (500) cost less than nine at 60 (540)', () => {
    const { costPence, packs, leftover, why } = bought(9, [clip(10, 50)])
    expect([costPence, leftover]).toEqual([500, 1])
    expect(packs).toEqual([{ code: 'clip-code', holds: 1, count: 10, packPence: 50 }])
    expect(why).toEqual({
      says: 'Whole packs, the cheapest that cover the need.',
      value: 500,
      unit: 'pence',
      from: [
        { says: 'Needed', value: 9, unit: 'each', from: [] },
        { says: '10 packs of 1, each £0.50, code clip-code.', value: 500, unit: 'pence', from: [] },
        { says: 'Left over', value: 1, unit: 'each', from: [] },
      ],
    })
  })

  it('does not where eight at 60 (480) cost less than ten at 50', () => {
    expect(bought(8, [clip(10, 50)])).toMatchObject({ costPence: 480, leftover: 0 })
  })

  it('goes to the supplier whose break makes it cheapest: 500 from Town, 9 x 55 = 495 from Moor', () => {
    const moor = asks('clip', 55, { supplierId: 'moor', code: 'M' })
    expect(bought(9, [clip(10, 50), moor])).toMatchObject({ supplierName: 'Moor Supplies', costPence: 495 })
    expect(bought(10, [clip(10, 50), moor])).toMatchObject({ supplierName: 'Town Counter', costPence: 500 })
  })

  it('takes the first supplier by id of two that ask the same', () => {
    const moor = asks('clip', 60, { supplierId: 'moor' })
    expect(bought(2, [clip(10, 50), moor]).supplierId).toBe('moor')
    expect(bought(2, [moor, clip(10, 50)]).supplierId).toBe('moor')
  })

  it('lists the larger packs first', () => {
    const packs = [asks('clip', 60, { code: 'A' }), asks('clip', 400, { code: 'B', packHolds: 10 })]
    expect(bought(12, packs).packs.map(({ code, count }) => [code, count])).toEqual([
      ['B', 1],
      ['A', 2],
    ])
  })

  it('is refused where nobody asks a price, and where a price can not be used', () => {
    const wanted = { lineId: 'l', itemId: 'clip', name: 'Clip', unit: 'each' as const, need: 1, kerfMm: 2 }
    const none = cheapestPurchase(wanted, shelfWith([], []))
    expect(none.ok ? null : none.problems[0]).toEqual({
      code: 'gap',
      message: 'Nobody asks a price today for Clip.',
    })
    const wrong = cheapestPurchase(wanted, shelfWith([], [clip(1, 50)]))
    expect(wrong.ok ? null : wrong.problems[0]?.message).toContain('A price break of pack clip-code must be')
  })
})

describe('buying pipe', () => {
  const nine = [{ id: 'run', lengthMm: 2000, count: 9 }]
  const three = { code: 'T', holds: 3, pence: 600 }

  function cut(stock: Parameters<typeof buyBars>[0]['stock'], pieces = nine) {
    const answer = buyBars({ pieces, kerfMm: 2, stock })
    if (!answer.ok) throw new Error(answer.problems[0]?.message)
    return answer.value
  }

  it('takes a tenth length where ten at 5.00 cost less than nine at 6.00, and cuts nine', () => {
    const { packs, bars } = cut([{ ...three, breaks: [{ fromPacks: 10, packPence: 500 }] }])
    expect(packs).toEqual([{ code: 'T', holds: 3, count: 10, packPence: 500 }])
    expect(bars).toHaveLength(9)
    expect(bars[0]).toEqual({ stockId: 'T', cuts: [{ id: '1, run', lengthMm: 2000 }], offcutMm: 998 })
  })

  it('does not where nine at 6.00 (54.00) cost less than ten at 5.41 (54.10)', () => {
    const { packs } = cut([{ ...three, breaks: [{ fromPacks: 10, packPence: 541 }] }])
    expect(packs).toEqual([{ code: 'T', holds: 3, count: 9, packPence: 600 }])
  })

  it('leaves 3 m for 2 m lengths where their break makes them cheaper: 9 x 3.00 against 9 x 6.00', () => {
    const two = { code: 'W', holds: 2, pence: 650, breaks: [{ fromPacks: 8, packPence: 300 }] }
    const { packs } = cut([three, two])
    expect(packs).toEqual([{ code: 'W', holds: 2, count: 9, packPence: 300 }])
  })

  it('is refused where a piece is longer than every length, and with too many breaks', () => {
    const long = buyBars({ pieces: [{ id: 'a', lengthMm: 3100, count: 1 }], kerfMm: 2, stock: [three] })
    expect(long.ok ? null : long.problems[0]?.message).toContain('3100')
    const breaks = Array.from({ length: 16 }, (_, step) => ({ fromPacks: step + 2, packPence: 500 - step }))
    const many = buyBars({
      pieces: nine,
      kerfMm: 2,
      stock: [three, three].map((one) => ({ ...one, breaks })),
    })
    expect(many.ok ? null : many.problems[0]).toEqual({
      code: 'impossible',
      message:
        'This pipe has so many price breaks that more than 256 ways would have to be tried; give fewer breaks.',
      path: 'stock',
    })
    const fewer = [
      { ...three, code: 'S', breaks: breaks.slice(0, 15) },
      { ...three, breaks: breaks.slice(0, 15) },
    ]
    expect(buyBars({ pieces: nine, kerfMm: 2, stock: fewer }).ok).toBe(true)
  })
})

describe('what was bought before', () => {
  const wanted = { lineId: 'l', itemId: 'clip', name: 'Clip', unit: 'each' as const, need: 3, kerfMm: 2 }
  const remembering = () => ({ ...shelfWith([], [asks('clip', 60)]), bought: new Map() })

  it('is bought the same again, for whatever line', () => {
    const shelf = remembering()
    const first = cheapestPurchase(wanted, shelf)
    const unpriced = { ...shelf, prices: new Map() }
    const again = cheapestPurchase({ ...wanted, lineId: 'm' }, unpriced)
    if (!first.ok || !again.ok) throw new Error('Both can be bought')
    expect(first.value).toMatchObject({ lineId: 'l', costPence: 180 })
    expect(again.value).toEqual({ ...first.value, lineId: 'm' })
    expect(again.value.why).toBe(first.value.why)
  })

  it('is bought anew in another quantity, of another item, cut otherwise, or where nothing is remembered', () => {
    const shelf = remembering()
    cheapestPurchase(wanted, shelf)
    const unpriced = { ...shelf, prices: new Map() }
    const pieces = [{ id: 'a', lengthMm: 9, count: 1 }]
    for (const other of [{ need: 4 }, { itemId: 'clop' }, { name: 'Clop' }, { pieces }, { kerfMm: 3 }]) {
      expect(cheapestPurchase({ ...wanted, ...other }, unpriced).ok).toBe(false)
    }
    const { bought: _bought, ...forgetting } = unpriced
    expect(cheapestPurchase(wanted, forgetting).ok).toBe(false)
  })

  it('is refused again where it was refused, though a price came since', () => {
    const shelf = { ...shelfWith([], []), bought: new Map() }
    const refusal = cheapestPurchase(wanted, shelf)
    expect(refusal.ok).toBe(false)
    const priced = { ...shelf, prices: shelfWith([], [asks('clip', 60)]).prices }
    expect(cheapestPurchase(wanted, priced)).toBe(refusal)
  })
})

describe('a purchase', () => {
  it('has no pieces where none were cut, and goes by the id of a supplier that nobody named', () => {
    const one = bought(1, [asks('clip', 60, { supplierId: 'sea' })])
    expect(one).not.toHaveProperty('pieces')
    expect(one).not.toHaveProperty('bars')
    expect(one.supplierName).toBe('sea')
  })

  it('says one pack and two packs, with the unit of what they hold', () => {
    const of = (unit: 'm' | 'm2' | 'ml' | 'L', need: number) => {
      const wanted = { lineId: 'l', itemId: 'clip', name: 'Clip', unit, need, kerfMm: 2 }
      const answer = cheapestPurchase(wanted, shelfWith([], [asks('clip', 1205, { packHolds: 5 })]))
      return answer.ok ? answer.value.why.from[1]?.says : null
    }
    expect(of('m', 5)).toBe('1 pack of 5 m, each £12.05, code clip-code.')
    expect(of('m2', 6)).toBe('2 packs of 5 m², each £12.05, code clip-code.')
    expect(of('ml', 6)).toBe('2 packs of 5 ml, each £12.05, code clip-code.')
    expect(of('L', 6)).toBe('2 packs of 5 L, each £12.05, code clip-code.')
  })

  it('leaves no crumb of a fraction over: 0.3 of three times 0.1', () => {
    const prices = [asks('clip', 5, { packHolds: 0.1 })]
    expect(bought(0.3, prices)).toMatchObject({ costPence: 15, leftover: 0 })
    expect(bought(0.25, prices)).toMatchObject({ costPence: 15, leftover: 0.05 })
  })

  it('is offered without breaks where there are none', () => {
    expect(packOffered({ code: 'A', packHolds: 5, packPence: 100 })).not.toHaveProperty('breaks')
    const breaks = [{ fromPacks: 2, packPence: 90 }]
    expect(packOffered({ code: 'A', packHolds: 5, packPence: 100, breaks })).toEqual({
      code: 'A',
      holds: 5,
      pence: 100,
      breaks,
    })
    expect([poundsOf(0), poundsOf(5), poundsOf(99), poundsOf(100), poundsOf(123_456)]).toEqual([
      '£0.00',
      '£0.05',
      '£0.99',
      '£1.00',
      '£1234.56',
    ])
  })
})
