import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import type { Purchase } from '../../../../src-main/domain/quote.ts'
import { buyAfterVan } from '../../../../src-main/engine/takeoff/buying/after-van.ts'
import { cheapestPurchase } from '../../../../src-main/engine/takeoff/purchase.ts'
import { asks, shelfWith } from './parts-for-tests.ts'

const shelf = shelfWith(
  [],
  [
    asks('clip', 100, { packHolds: 5 }),
    asks('pipe', 1200, { packHolds: 3 }),
    asks('tube', 900, { packHolds: 2 }),
    asks('tube', 1200, { packHolds: 3 }),
  ],
)
const kerfMm = 2

function buying(itemId: string, need: number, pieces?: Purchase['pieces']): Purchase {
  const unit = pieces === undefined ? ('each' as const) : ('m' as const)
  const wanted = { lineId: `line-${itemId}`, itemId, name: itemId, unit, need, kerfMm }
  const answer = cheapestPurchase(pieces === undefined ? wanted : { ...wanted, pieces }, shelf)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

function after(purchases: readonly Purchase[], stock: Parameters<typeof buyAfterVan>[1]) {
  const answer = buyAfterVan(purchases, stock, { shelf, kerfMm })
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

/** Four pieces of 1.4 m: two to a length of 3 m. */
const four = [{ id: 'drop', lengthMm: 1400, count: 4 }]

describe('what the van has', () => {
  it('is taken before anything is bought: of twelve clips four are there, and eight take two packs', () => {
    const { fromVan, purchases } = after([buying('clip', 12)], [{ itemId: 'clip', quantity: 4 }])
    expect(fromVan).toEqual([
      { lineId: 'line-clip', itemId: 'clip', name: 'clip', unit: 'each', quantity: 4 },
    ])
    expect(purchases).toHaveLength(1)
    expect(purchases[0]).toMatchObject({ need: 8, leftover: 2, costPence: 200, lineId: 'line-clip' })
  })

  it('leaves nothing to buy where it has enough', () => {
    const { fromVan, purchases } = after([buying('clip', 12)], [{ itemId: 'clip', quantity: 12 }])
    expect([fromVan[0]?.quantity, purchases]).toEqual([12, []])
  })

  it('changes nothing where it has none of it', () => {
    const purchase = buying('clip', 12)
    expect(after([purchase], [{ itemId: 'other', quantity: 9 }])).toEqual({
      fromVan: [],
      purchases: [purchase],
    })
    expect(after([purchase], [{ itemId: 'clip', quantity: 0 }]).purchases).toEqual([purchase])
  })

  it('is never a thing that was named and priced by hand', () => {
    const oneOff = { ...buying('clip', 12), oneOff: true as const }
    expect(after([oneOff], [{ itemId: 'clip', quantity: 12 }])).toEqual({ fromVan: [], purchases: [oneOff] })
    const cut = { ...buying('pipe', 5.6, four), oneOff: true as const }
    expect(after([cut], [{ itemId: 'pipe', quantity: 9 }]).fromVan).toEqual([])
  })

  it('names no cuts of what is not cut', () => {
    const { fromVan } = after([buying('clip', 12)], [{ itemId: 'clip', quantity: 4 }])
    expect(fromVan[0]).not.toHaveProperty('bars')
  })

  it('is refused where its pipe cannot be cut, and where nobody sells the rest', () => {
    const broad = buyAfterVan([buying('pipe', 5.6, four)], [{ itemId: 'pipe', quantity: 5 }], {
      shelf,
      kerfMm: 51,
    })
    expect(broad.ok ? null : broad.problems[0]).toEqual({
      code: 'invalid',
      message: 'The saw cut must be 0 to 50 mm wide; it was 51.',
      path: 'vanStock.kerfMm',
    })
    const unsold = buyAfterVan([buying('clip', 12)], [{ itemId: 'clip', quantity: 4 }], {
      shelf: shelfWith([], []),
      kerfMm,
    })
    expect(unsold.ok ? null : unsold.problems[0]).toEqual({
      code: 'gap',
      message: 'Nobody asks a price today for clip.',
      path: 'vanStock',
    })
  })

  it('is refused where the rest can not be settled for certain', () => {
    const fine = shelfWith([], [asks('clip', 1, { packHolds: 1 }), asks('clip', 2, { packHolds: 1.999_999 })])
    const purchase = { ...buying('clip', 900_000), why: given('Given', 1) }
    const answer = buyAfterVan([purchase], [{ itemId: 'clip', quantity: 0.000_001 }], { shelf: fine, kerfMm })
    expect(answer.ok ? null : answer.problems[0]?.path).toMatch(/^vanStock/)
  })
})

describe('pipe in the van', () => {
  it('counts in whole lengths: 5 m are one length of 3 m, two drops are cut from it and two bought', () => {
    const { fromVan, purchases } = after([buying('pipe', 5.6, four)], [{ itemId: 'pipe', quantity: 5 }])
    expect(fromVan).toEqual([
      {
        lineId: 'line-pipe',
        itemId: 'pipe',
        name: 'pipe',
        unit: 'm',
        quantity: 3,
        bars: [
          {
            stockId: 'van',
            cuts: [
              { id: '1, drop', lengthMm: 1400 },
              { id: '1, drop', lengthMm: 1400 },
            ],
            offcutMm: 196,
          },
        ],
      },
    ])
    expect(purchases[0]).toMatchObject({
      need: 2.8,
      costPence: 1200,
      leftover: 0.2,
      pieces: [{ id: 'drop', lengthMm: 1400, count: 2 }],
    })
  })

  it('gives no more lengths than are wanted', () => {
    const { fromVan, purchases } = after([buying('pipe', 5.6, four)], [{ itemId: 'pipe', quantity: 300 }])
    expect([fromVan[0]?.quantity, fromVan[0]?.bars?.length, purchases]).toEqual([6, 2, []])
  })

  it('gives nothing when there is less than one length; the lengths of two entries add up', () => {
    const purchase = buying('pipe', 5.6, four)
    expect(after([purchase], [{ itemId: 'pipe', quantity: 2.999 }])).toEqual({
      fromVan: [],
      purchases: [purchase],
    })
    const two = [
      { itemId: 'pipe', quantity: 1 },
      { itemId: 'pipe', quantity: 2 },
    ]
    expect(after([purchase], two).fromVan[0]?.quantity).toBe(3)
  })

  it('uses the fullest lengths from the van, so that the rest takes the fewest', () => {
    const pieces = [
      { id: 'long', lengthMm: 2900, count: 1 },
      { id: 'short', lengthMm: 500, count: 1 },
    ]
    const { fromVan, purchases } = after([buying('pipe', 3.4, pieces)], [{ itemId: 'pipe', quantity: 3 }])
    expect(fromVan[0]?.bars?.map(({ cuts }) => cuts.map(({ id }) => id))).toEqual([['1, long']])
    expect(purchases[0]?.pieces).toEqual([{ id: 'short', lengthMm: 500, count: 1 }])
    expect(purchases[0]?.need).toBe(0.5)
  })

  it('sold in two lengths counts as the shorter, and a piece that is longer is bought', () => {
    const pieces = [
      { id: 'long', lengthMm: 2900, count: 1 },
      { id: 'just', lengthMm: 2000, count: 1 },
    ]
    const { fromVan, purchases } = after([buying('tube', 4.9, pieces)], [{ itemId: 'tube', quantity: 3 }])
    expect(fromVan[0]?.quantity).toBe(2)
    expect(fromVan[0]?.bars?.[0]?.cuts).toEqual([{ id: '2, just', lengthMm: 2000 }])
    expect(purchases[0]?.pieces).toEqual([{ id: 'long', lengthMm: 2900, count: 1 }])
    const onlyLong = [{ id: 'long', lengthMm: 2900, count: 1 }]
    expect(after([buying('tube', 2.9, onlyLong)], [{ itemId: 'tube', quantity: 30 }]).fromVan).toEqual([])
  })
})
