import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { coverPacks } from '../../../../src-main/engine/buying/cover-packs.ts'
import type { Pack } from '../../../../src-main/engine/buying/cover-packs.ts'
import { cutPipe } from '../../../../src-main/engine/buying/cut-pipe.ts'
import type { CutInput } from '../../../../src-main/engine/buying/cut-pipe.ts'
import { takeFromVan } from '../../../../src-main/engine/buying/van-stock.ts'
import { answered, refused } from '../../../answered.ts'

const pack = (id: string, holds: number, pence: number): Pack => ({ id, holds, pence })
const none = {
  code: 'invalid',
  message: 'There are no packs to choose from; give at least one.',
  path: 'packs',
}

describe('packs that cover a need', () => {
  it('give their reason: the need, and of each pack how many, what it holds and what it costs', () => {
    const packs = [pack('five', 5, 900), pack('two', 2, 400), pack('one', 1, 300)]
    const of = (id: string, [count, holds, pence]: readonly [number, number, number]) =>
      because(`Packs taken of ${id}`, count, {
        from: [given(`One ${id} holds`, holds), given(`One ${id} costs`, pence, 'pence')],
      })
    // 5 + 2 = 13.00; 5 + 1 + 1 = 15.00; 2 x 4 = 16.00.
    expect(answered(coverPacks({ need: 7, packs })).why).toEqual(
      because('The cheapest packs that cover the need, then the least left over, then the fewest', 1300, {
        unit: 'pence',
        from: [given('Needed', 7), of('five', [1, 5, 900]), of('two', [1, 2, 400]), of('one', [0, 1, 300])],
      }),
    )
  })

  it.each([0, 0.0000004, 1_000_001, Number.NaN])('refuse a need of %s in words', (need) => {
    expect(refused(coverPacks({ need, packs: [pack('a', 1, 1)] }))).toEqual({
      code: 'invalid',
      message: `The need must be from a millionth of a unit to 1000000; it was ${need}.`,
      path: 'need',
    })
  })

  it('take the least and the most that a need and a pack may be', () => {
    expect(answered(coverPacks({ need: 0.000001, packs: [pack('a', 0.000001, 1)] })).pence).toBe(1)
    expect(answered(coverPacks({ need: 1_000_000, packs: [pack('a', 1_000_000, 1)] })).pence).toBe(1)
  })

  it.each([0, 1_000_001, -1])('refuse a pack that holds %s in words', (holds) => {
    expect(refused(coverPacks({ need: 1, packs: [pack('a', 1, 1), pack('b', holds, 1)] }))).toEqual({
      code: 'invalid',
      message: `Pack b must hold from a millionth of a unit to 1000000; it holds ${holds}.`,
      path: 'packs[1].holds',
    })
  })

  it.each([-1, 0.5, 100_000_000_001])('refuse a pack that costs %s in words', (pence) => {
    expect(refused(coverPacks({ need: 1, packs: [pack('a', 1, pence)] }))).toEqual({
      code: 'invalid',
      message: `Pack a must cost whole pence, 0 or more; it costs ${pence}.`,
      path: 'packs[0].pence',
    })
  })

  it('may cost a thousand million pounds, and no penny more', () => {
    const half = pack('a', 1, 50_000_000_000)
    expect(answered(coverPacks({ need: 1, packs: [pack('a', 1, 100_000_000_000)] })).pence).toBe(
      100_000_000_000,
    )
    expect(answered(coverPacks({ need: 2, packs: [half] })).pence).toBe(100_000_000_000)
    expect(refused(coverPacks({ need: 2, packs: [{ ...half, pence: 50_000_000_001 }] }))).toEqual({
      code: 'invalid',
      message: 'So many packs cost more than 1000000000 pounds; check the need and the prices.',
      path: 'need',
    })
  })

  it('refuse none, and one twice, in words', () => {
    expect(refused(coverPacks({ need: 1, packs: [] }))).toEqual(none)
    expect(refused(coverPacks({ need: 1, packs: [pack('a', 1, 1), pack('a', 2, 1)] }))).toEqual({
      code: 'invalid',
      message: 'Pack a is there twice; give each pack its own id.',
      path: 'packs[1].id',
    })
  })

  it('refuse sizes too fine beside the need in words', () => {
    const fine = [pack('a', 999.999999, 100_000), pack('b', 999.999998, 99_999), pack('c', 0.000003, 1)]
    expect(refused(coverPacks({ need: 1_000_000, packs: fine }))).toEqual({
      code: 'impossible',
      message:
        "The packs' sizes are too fine beside a need of 1000000 to find the cheapest cover for certain; give pack sizes that are rounder, or a smaller need.",
      path: 'packs',
    })
  })
})

describe('cutting pipe', () => {
  const three = { id: '3m', lengthMm: 3000, pence: 900 }
  const two = { id: '2m', lengthMm: 2000, pence: 700 }
  const piece = (id: string, lengthMm: number, count = 1) => ({ id, lengthMm, count })
  const plain: CutInput = { pieces: [piece('a', 1000)], stock: [three], kerfMm: 2 }
  const cut = (over: Partial<CutInput>) => answered(cutPipe({ ...plain, ...over }))
  const problem = (over: Partial<CutInput>) => refused(cutPipe({ ...plain, ...over }))

  it('gives its reason: the lengths taken, the pieces, and the saw', () => {
    // 2900 fills a length of three metres alone; 1900 is cheaper from two metres.
    const { why, bars } = cut({ pieces: [piece('a', 1900), piece('b', 2900, 2)], stock: [three, two] })
    expect(why).toEqual(
      because('The cheapest way to cut the pieces, then the fewest lengths', 2500, {
        unit: 'pence',
        from: [
          because('Lengths taken of 3m', 2, {
            from: [given('3m is long', 3000, 'mm'), given('3m costs', 900, 'pence')],
          }),
          because('Lengths taken of 2m', 1, {
            from: [given('2m is long', 2000, 'mm'), given('2m costs', 700, 'pence')],
          }),
          because('Piece a', 1, { from: [given('How many', 1), given('How long', 1900, 'mm')] }),
          because('Piece b', 2, { from: [given('How many', 2), given('How long', 2900, 'mm')] }),
          given('What the saw takes at each cut', 2, 'mm'),
        ],
      }),
    )
    expect(bars).toEqual([
      { stockId: '3m', cuts: [{ id: 'b', lengthMm: 2900 }], offcutMm: 98 },
      { stockId: '3m', cuts: [{ id: 'b', lengthMm: 2900 }], offcutMm: 98 },
      { stockId: '2m', cuts: [{ id: 'a', lengthMm: 1900 }], offcutMm: 98 },
    ])
  })

  it('lays the length with the longest piece first, and the longest piece first in it', () => {
    // 2600 and 500 are too long for three metres, so that the 500 goes beside the 2000.
    const { bars } = cut({ pieces: [piece('c', 500), piece('a', 2000), piece('b', 2600)] })
    expect(bars.map(({ cuts }) => cuts.map(({ id }) => id))).toEqual([['b'], ['a', 'c']])
  })

  it('tells two pieces of one length apart, in the order in which they were given', () => {
    const { bars } = cut({ pieces: [piece('b', 1000), piece('a', 1000, 2)], kerfMm: 0 })
    expect(bars.map(({ cuts }) => cuts.map(({ id }) => id))).toEqual([['b', 'a', 'a']])
  })

  it.each([
    [{ pieces: [] }, 'There are no pieces to cut; give at least one.', 'pieces'],
    [{ stock: [] }, 'There are no stock lengths; give at least one.', 'stock'],
    [{ kerfMm: -1 }, 'The saw cut must be 0 to 50 mm wide; it was -1.', 'kerfMm'],
    [{ kerfMm: 51 }, 'The saw cut must be 0 to 50 mm wide; it was 51.', 'kerfMm'],
    [
      { pieces: [piece('a', 0)] },
      'a must be more than 0 and up to 20000 mm long; it was 0.',
      'pieces[0].lengthMm',
    ],
    [
      { stock: [three, { ...two, lengthMm: 20_001 }] },
      '2m must be more than 0 and up to 20000 mm long; it was 20001.',
      'stock[1].lengthMm',
    ],
    [{ pieces: [piece('a', 9, 0)] }, 'How many of a must be 1 or more; it was 0.', 'pieces[0].count'],
    [{ pieces: [piece('a', 9, 1.5)] }, 'How many of a must be 1 or more; it was 1.5.', 'pieces[0].count'],
    [{ stock: [three, three] }, '3m is there twice; give each its own id.', 'stock[1].id'],
    [
      { stock: [{ ...three, pence: 0.5 }] },
      'Stock length 3m must cost whole pence from 0 to 100000000; it costs 0.5.',
      'stock[0].pence',
    ],
    [
      { stock: [{ ...three, pence: -1 }] },
      'Stock length 3m must cost whole pence from 0 to 100000000; it costs -1.',
      'stock[0].pence',
    ],
    [
      { stock: [{ ...three, pence: 100_000_001 }] },
      'Stock length 3m must cost whole pence from 0 to 100000000; it costs 100000001.',
      'stock[0].pence',
    ],
    [
      { pieces: [piece('a', 9, 1500), piece('b', 9, 501)] },
      'A cut list takes up to 2000 pieces; this one has 2001. Split it.',
      'pieces',
    ],
  ])('refuses %j in words', (over, message, path) => {
    expect(problem(over)).toEqual({ code: 'invalid', message, path })
  })

  it('refuses a piece that is longer than every length in words', () => {
    expect(problem({ pieces: [piece('a', 9), piece('b', 3001)], stock: [two, three] })).toEqual({
      code: 'impossible',
      message:
        'Piece b is 3001 mm, longer than the longest stock length of 3000 mm; join it or stock longer.',
      path: 'pieces[1].lengthMm',
    })
  })

  it('takes what is just within: a whole length, the longest there is, a saw of nothing and of 50 mm', () => {
    expect(cut({ pieces: [piece('a', 3000)] }).bars[0]?.offcutMm).toBe(0)
    expect(cut({ stock: [{ ...three, lengthMm: 20_000, pence: 100_000_000 }] }).pence).toBe(100_000_000)
    expect(cut({ kerfMm: 0 }).bars[0]?.offcutMm).toBe(2000)
    expect(cut({ kerfMm: 50 }).bars[0]?.offcutMm).toBe(1950)
    expect(cut({ pieces: [piece('a', 3000, 2000)] }).barsUsed).toBe(2000)
  })
})

describe('what the van gives', () => {
  const line = (lineId: string, need: number, itemId = 'clip') => ({ lineId, itemId, need })

  it('is nothing of what it has not, and leaves the need as it was', () => {
    expect(takeFromVan([line('a', 0.1 + 0.2)], [{ itemId: 'tape', quantity: 5 }])).toEqual([
      { ...line('a', 0.1 + 0.2), fromVan: 0, toBuy: 0.1 + 0.2 },
    ])
  })

  it('is no more than is needed, and the rest stays for the next', () => {
    expect(takeFromVan([line('a', 2), line('b', 2)], [{ itemId: 'clip', quantity: 3 }])).toEqual([
      { ...line('a', 2), fromVan: 2, toBuy: 0 },
      { ...line('b', 2), fromVan: 1, toBuy: 1 },
    ])
  })
})
