import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coverPacks } from '../../src-main/engine/buying/cover-packs.ts'
import type { Pack } from '../../src-main/engine/buying/cover-packs.ts'
import { cutPipe } from '../../src-main/engine/buying/cut-pipe.ts'
import type { CutInput } from '../../src-main/engine/buying/cut-pipe.ts'
import { bestFill } from '../../src-main/engine/buying/best-fill.ts'

type Score = readonly [pence: number, leftover: number, packs: number]

const better = (a: Score, b: Score) => {
  const place = a.findIndex((value, index) => value !== b[index])
  return place >= 0 && (a[place] as number) < (b[place] as number)
}

/** The best cover by trying every number of every pack, in whole hundredths of a unit. */
function bestByTrying(need: number, packs: readonly { holds: number; pence: number }[]): Score {
  const [pack, ...others] = packs
  if (pack === undefined) return need <= 0 ? [0, 0 - need, 0] : [Infinity, Infinity, Infinity]
  const most = Math.max(0, Math.ceil(need / pack.holds))
  return Array.from({ length: most + 1 }, (_, count): Score => {
    const [pence, leftover, many] = bestByTrying(need - count * pack.holds, others)
    return [pence + count * pack.pence, leftover, many + count]
  }).reduce((best, next) => (better(next, best) ? next : best))
}

const hundredths = (most: number) => fc.integer({ min: 1, max: most })
const packList = fc
  .array(fc.record({ holds: hundredths(20), pence: fc.integer({ min: 0, max: 30 }) }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((packs) => packs.map((pack, index) => ({ ...pack, id: `pack${index}` })))

describe('packs', () => {
  it('are the best of all that cover the need, by trying every number of every pack', () => {
    fc.assert(
      fc.property(hundredths(36), packList, (need, packs) => {
        const fine = packs.map((pack) => ({ ...pack, holds: pack.holds / 100 }))
        const cover = coverPacks({ need: need / 100, packs: fine })
        if (!cover.ok) throw new Error(cover.problems[0]?.message)
        const { pence, leftover, picks } = cover.value
        const many = picks.reduce((sum, pick) => sum + pick.count, 0)
        expect([pence, Math.round(leftover * 100), many]).toEqual(bestByTrying(need, packs))
      }),
      { numRuns: 300 },
    )
  })

  it('are never short, cost what they say and leave what they say, whatever the size', () => {
    const pack = fc.record({ holds: hundredths(100_000), pence: fc.integer({ min: 0, max: 5000 }) })
    const packs = fc.array(pack, { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), packs, (need, list) => {
        const named: readonly Pack[] = list.map((one, index) => ({
          ...one,
          id: `p${index}`,
          holds: one.holds / 100,
        }))
        const cover = coverPacks({ need: need / 100, packs: named })
        if (!cover.ok) {
          expect(cover.problems[0]?.code).toBe('impossible')
          return
        }
        const taken = cover.value.picks.map(({ id, count }) => ({ count, pack: list[Number(id.slice(1))] }))
        const held = taken.reduce((sum, { count, pack: one }) => sum + count * (one?.holds ?? 0), 0)
        expect(held).toBeGreaterThanOrEqual(need)
        expect(Math.round(cover.value.leftover * 100)).toBe(held - need)
        expect(cover.value.pence).toBe(
          taken.reduce((sum, { count, pack: one }) => sum + count * (one?.pence ?? 0), 0),
        )
      }),
      { numRuns: 60 },
    )
  })

  it('are the same whatever the order of the list', () => {
    fc.assert(
      fc.property(hundredths(500), packList, (need, packs) => {
        const known = new Set(packs.map((pack) => `${pack.holds} ${pack.pence}`))
        fc.pre(known.size === packs.length)
        const sorted = (answer: ReturnType<typeof coverPacks>) => (answer.ok ? answer.value.picks : [])
        const backwards = coverPacks({ need, packs: packs.toReversed() })
        expect(sorted(backwards)).toEqual(sorted(coverPacks({ need, packs })))
      }),
    )
  })
})

type Cost = readonly [pence: number, bars: number]

/** The least money, then bars, by putting each piece in turn on every open bar and on every new one. */
function cheapestByTrying({ pieces, stock, kerfMm }: CutInput): Cost {
  const lengths = pieces.flatMap(({ lengthMm, count }) => Array.from({ length: count }, () => lengthMm))
  let best: Cost = [Infinity, Infinity]
  const place = (index: number, free: readonly number[], pence: number): void => {
    if (pence > best[0] || (pence === best[0] && free.length >= best[1])) return
    const length = lengths[index]
    if (length === undefined) {
      best = [pence, free.length]
      return
    }
    free.forEach((room, bar) => {
      if (room >= length + kerfMm) place(index + 1, free.with(bar, room - length - kerfMm), pence)
    })
    for (const { lengthMm, pence: price } of stock) {
      if (lengthMm >= length) place(index + 1, [...free, lengthMm - length], pence + price)
    }
  }
  place(0, [], 0)
  return best
}

const cutting = fc
  .record({
    lengths: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 7 }),
    stock: fc.array(
      fc.record({ lengthMm: fc.integer({ min: 20, max: 100 }), pence: fc.integer({ min: 0, max: 40 }) }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    kerfMm: fc.integer({ min: 0, max: 5 }),
  })
  .map(({ lengths, stock, kerfMm }): CutInput => {
    const longest = Math.max(...stock.map((bar) => bar.lengthMm))
    return {
      pieces: lengths.map((length, index) => ({
        id: `p${index}`,
        lengthMm: Math.min(length, longest),
        count: 1,
      })),
      stock: stock.map((bar, index) => ({ ...bar, id: `s${index}` })),
      kerfMm,
    }
  })

describe('the cut list', () => {
  it('is the cheapest, then of the fewest bars, by trying every way', () => {
    fc.assert(
      fc.property(cutting, (input) => {
        const answer = cutPipe(input)
        if (!answer.ok) throw new Error(answer.problems[0]?.message)
        expect([answer.value.pence, answer.value.barsUsed]).toEqual(cheapestByTrying(input))
      }),
      { numRuns: 300 },
    )
  })

  it('cuts every piece once, never two from one place, and leaves what it says', () => {
    const many = fc.record({
      pieces: fc.array(
        fc.record({
          lengthMm: fc.integer({ min: 500, max: 20_000 }).map((tenths) => tenths / 10),
          count: fc.integer({ min: 1, max: 4 }),
        }),
        { minLength: 1, maxLength: 8 },
      ),
      kerfMm: fc.constantFrom(0, 1.5, 2, 3),
    })
    const stock = [
      { id: '3m', lengthMm: 3000, pence: 1149 },
      { id: '2m', lengthMm: 2000, pence: 829 },
    ]
    fc.assert(
      fc.property(many, ({ pieces, kerfMm }) => {
        const named = pieces.map((piece, index) => ({ ...piece, id: `p${index}` }))
        const answer = cutPipe({ pieces: named, stock, kerfMm })
        if (!answer.ok) {
          expect(answer.problems[0]?.code).toBe('impossible')
          return
        }
        const cuts = answer.value.bars.flatMap((bar) => bar.cuts)
        for (const { id, lengthMm, count } of named) {
          expect(cuts.filter((cut) => cut.id === id && cut.lengthMm === lengthMm)).toHaveLength(count)
        }
        expect(cuts).toHaveLength(named.reduce((sum, piece) => sum + piece.count, 0))
        for (const { stockId, cuts: here, offcutMm } of answer.value.bars) {
          const length = stock.find((bar) => bar.id === stockId)?.lengthMm ?? 0
          const pieces10 = here.reduce((sum, cut) => sum + Math.round(cut.lengthMm * 10), 0)
          const room10 = length * 10 - pieces10 - kerfMm * 10 * (here.length - 1)
          expect(room10).toBeGreaterThanOrEqual(0)
          expect(Math.round(offcutMm * 10)).toBe(Math.max(0, room10 - kerfMm * 10))
        }
      }),
      { numRuns: 60 },
    )
  })
})

describe('a filling', () => {
  it('is worth the most of all, by trying every one', () => {
    const item = fc.record({
      size: fc.integer({ min: 1, max: 20 }),
      value: fc.integer({ min: 0, max: 20 }),
      count: fc.integer({ min: 0, max: 3 }),
    })
    const byTrying = (
      items: readonly { size: number; value: number; count: number }[],
      room: number,
    ): number => {
      const [first, ...rest] = items
      if (first === undefined) return 0
      const most = Math.min(first.count, Math.floor(room / first.size))
      return Math.max(
        ...Array.from(
          { length: most + 1 },
          (_, many) => many * first.value + byTrying(rest, room - many * first.size),
        ),
      )
    }
    fc.assert(
      fc.property(fc.array(item, { maxLength: 6 }), fc.integer({ min: 0, max: 60 }), (items, room) => {
        const fill = bestFill({
          sizes: items.map(({ size }) => size),
          values: items.map(({ value }) => value),
          counts: items.map(({ count }) => count),
          room,
        })
        expect(fill.value).toBe(byTrying(items, room))
        expect(fill.atMost).toBe(fill.value)
      }),
    )
  })
})
