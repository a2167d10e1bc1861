import { describe, expect, it } from 'vitest'
import { barTotals } from '../../../../src-main/engine/buying/bar-totals.ts'
import { bestFill } from '../../../../src-main/engine/buying/best-fill.ts'
import { planOf, worthOf } from '../../../../src-main/engine/buying/cutting.ts'
import { fillTable } from '../../../../src-main/engine/buying/fill-table.ts'

describe('totals that bars can come to', () => {
  // Bars of 9 for 5 and of 5 for 3, up to 10: 0 buys 0, 3 buys 5, 5 buys 9, 6 buys 10, 8 buys 14, 9 buys 15, 10 buys 18.
  const totals = () =>
    barTotals(
      [
        { room: 9, cost: 5 },
        { room: 5, cost: 3 },
      ],
      10,
    )

  it.each([
    [0, 0, 0],
    [0, 1, 3],
    [1, 0, 3],
    [3, 5, 3],
    [4, 5, 5],
    [0, 10, 6],
    [0, 11, 8],
    [6, 10, 6],
    [7, 10, 8],
    [9, 15, 9],
    [0, 18, 10],
    [0, 19, 10],
    [11, 0, 10],
  ])('from %i on, with room for %i: %i', (cost, room, least) => {
    expect(totals().atLeast(cost, room)).toBe(least)
  })

  it.each([
    [0, 0, -1],
    [1, 0, 0],
    [3, 0, 0],
    [4, 5, 3],
    [8, 10, 6],
    [8, 11, -1],
    [9, 11, 8],
    [11, 18, 10],
  ])('below %i, with room for %i: %i', (cost, room, most) => {
    expect(totals().below(cost, room)).toBe(most)
  })

  it.each([
    [-1, -1],
    [0, 0],
    [2, 0],
    [3, 5],
    [5, 9],
    [7, 10],
    [8, 14],
    [99, 18],
  ])('%i buys room for %i', (cost, room) => {
    expect(totals().roomFor(cost)).toBe(room)
  })

  it('never buys less for more: a dear short bar does not hide a cheap long one', () => {
    const odd = barTotals(
      [
        { room: 9, cost: 2 },
        { room: 1, cost: 3 },
      ],
      3,
    )
    expect([odd.roomFor(2), odd.roomFor(3)]).toEqual([9, 9])
    expect(odd.atLeast(3, 2)).toBe(3)
  })

  it('counts every whole number where there are too many', () => {
    const many = barTotals([{ room: 1, cost: 1 }], 60_000)
    expect([many.atLeast(7, 99), many.below(7, 99)]).toEqual([7, 6])
    expect(many.roomFor(7)).toBe(Number.MAX_SAFE_INTEGER)
    const few = barTotals([{ room: 1, cost: 1 }], 40_000)
    expect([few.atLeast(7, 99), few.below(7, 99), few.roomFor(7)]).toEqual([99, -1, 7])
  })
})

describe('the most valuable pieces in a bar', () => {
  const pieces = { sizes: [6, 5, 4], values: [7, 5, 4], counts: [1, 1, 1] }
  /** By hand: in 9 go 5 + 4; in 10 go 6 + 4, worth 11; in 11 go 6 + 5, worth 12; in 15 all, worth 16. */
  const byHand: readonly (readonly [number, number, readonly number[]])[] = [
    [3, 0, [0, 0, 0]],
    [4, 4, [0, 0, 1]],
    [9, 9, [0, 1, 1]],
    [10, 11, [1, 0, 1]],
    [11, 12, [1, 1, 0]],
    [14, 12, [1, 1, 0]],
    [15, 16, [1, 1, 1]],
    [99, 16, [1, 1, 1]],
  ]

  it.each(byHand)('of %i are worth %i', (room, value, taken) => {
    expect(bestFill({ ...pieces, room })).toEqual({ taken, value, atMost: value })
  })

  it('are the same from one table for all bars', () => {
    const fills = fillTable({ ...pieces, rooms: byHand.map(([room]) => room) })
    expect(fills.map(({ value, taken }) => [value, taken])).toEqual(
      byHand.map(([, value, taken]) => [value, taken]),
    )
    for (const { value, atMost } of fills) expect(atMost).toBeCloseTo(value, 6)
  })

  it('are as many of one as there are, and none that are worth nothing or are not there', () => {
    const many = { sizes: [6, 5, 4], values: [7, 0, 4], counts: [3, 9, 0] }
    expect(bestFill({ ...many, room: 17 }).taken).toEqual([2, 0, 0])
    expect(bestFill({ ...many, room: 30 }).taken).toEqual([3, 0, 0])
    expect(fillTable({ ...many, rooms: [17, 30] }).map(({ taken }) => taken)).toEqual([
      [2, 0, 0],
      [3, 0, 0],
    ])
  })

  it('are found in lots of one, two and the rest: seven of three in 22', () => {
    const seven = { sizes: [3], values: [2], counts: [7] }
    expect(fillTable({ ...seven, rooms: [0, 2, 3, 9, 20, 21, 22, 99] }).map(({ taken }) => taken[0])).toEqual(
      [0, 0, 1, 3, 6, 7, 7, 7],
    )
  })

  it('are found where the best for its length does not come first', () => {
    // Ten: 6 + 4 fill it and are worth 10; the 7 alone, worth 8.4, is the best for its length.
    const late = { sizes: [7, 6, 4], values: [8.4, 6, 4], counts: [1, 1, 1], room: 10 }
    expect(bestFill(late).taken).toEqual([0, 1, 1])
    expect(bestFill(late).value).toBe(10)
  })

  it('are none where there are no pieces', () => {
    expect(bestFill({ sizes: [], values: [], counts: [], room: 9 })).toEqual({
      taken: [],
      value: 0,
      atMost: 0,
    })
    expect(fillTable({ sizes: [], values: [], counts: [], rooms: [] })).toEqual([])
  })
})

describe('bars as a plan', () => {
  it('cost what they cost together, and pieces are worth so much together', () => {
    const cutting = {
      sizes: [5],
      counts: [2],
      stock: [
        { room: 9, cost: 10 },
        { room: 5, cost: 7 },
      ],
    }
    const bars = [0, 1, 1].map((stock) => ({ stock, taken: [1] }))
    expect(planOf(cutting, bars)).toEqual({ cost: 24, bars })
    expect(planOf(cutting, [])).toEqual({ cost: 0, bars: [] })
    expect(worthOf([2, 0, 3], [5, 9, 1])).toBe(13)
  })
})
