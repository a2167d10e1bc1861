import { describe, expect, it } from 'vitest'
import { countsToCover, surelyBest, worthBuying } from '../../../../src-main/engine/buying/pack-table.ts'
import { commonStep, inMillionths } from '../../../../src-main/engine/buying/whole-units.ts'

/** Packs as [size, pence], each at its place in the list. */
const packs = (...list: readonly (readonly [number, number])[]) =>
  list.map(([size, pence], place) => ({ size, pence, place }))
const sizesOf = (list: readonly { readonly size: number }[]) => list.map(({ size }) => size)

describe('packs worth buying', () => {
  it('leave out a large one that small ones beat: ten at 10 are 100, the box of ten is 101', () => {
    expect(sizesOf(worthBuying(packs([1, 10], [10, 101])))).toEqual([1])
    expect(sizesOf(worthBuying(packs([1, 10], [10, 100])))).toEqual([10, 1])
  })

  it('count whole packs: eight take two boxes of five at 60, which is 120', () => {
    expect(sizesOf(worthBuying(packs([5, 60], [8, 120])))).toEqual([8, 5])
    expect(sizesOf(worthBuying(packs([5, 60], [8, 121])))).toEqual([5])
  })

  it('leave out a small one that a large one beats', () => {
    expect(sizesOf(worthBuying(packs([1, 60], [10, 59])))).toEqual([10])
    expect(sizesOf(worthBuying(packs([1, 60], [10, 60])))).toEqual([10, 1])
  })

  it('come the largest first, and of equals the first that was named', () => {
    expect(worthBuying(packs([3, 30], [7, 70], [3, 30], [5, 50])).map(({ place }) => place)).toEqual([
      1, 3, 0, 2,
    ])
    const turned = packs([3, 30], [3, 30]).toReversed()
    expect(worthBuying(turned).map(({ place }) => place)).toEqual([0, 1])
  })

  it('leave out the dearer of one size', () => {
    expect(worthBuying(packs([3, 31], [3, 30])).map(({ place }) => place)).toEqual([1])
  })
})

describe('how many of the best pack are surely taken', () => {
  const count = (need: number, list: ReturnType<typeof packs>) => surelyBest(need, list).count

  it('is the need less what all others could fill at most', () => {
    // Ones at 20 beside tens at 100: at most 10/1 - 1 = 9 of them, though their price would allow 1000/100 = 10.
    const list = packs([10, 100], [1, 20])
    expect([9, 10, 19, 20].map((need) => count(need, list))).toEqual([0, 1, 1, 2])
    expect(surelyBest(5, list).pack).toBe(list[0])
  })

  it('goes by what the others cost more: ones at 60 cost 500 more for ten, so at most 1000/500 = 2', () => {
    const list = packs([10, 100], [1, 60])
    expect([2, 3, 12, 13].map((need) => count(need, list))).toEqual([0, 1, 1, 2])
    expect([10, 11].map((need) => count(need, packs([10, 100], [9, 200])))).toEqual([1, 2])
  })

  it('at equal value lets only so many stand as larger ones do not replace: 10/5 - 1 = 1, and 10/2 - 1 = 4 of fours', () => {
    expect([5, 6, 15, 16].map((need) => count(need, packs([10, 100], [5, 50])))).toEqual([0, 1, 1, 2])
    expect([16, 17, 26, 27].map((need) => count(need, packs([10, 100], [4, 40])))).toEqual([0, 1, 1, 2])
  })

  it('adds up what several others could fill: 5 and 16', () => {
    const three = packs([10, 100], [5, 50], [4, 40])
    expect([31, 32].map((need) => count(need, three))).toEqual([1, 2])
    // And none, never less, where the others could fill far more than is needed.
    expect([1, 21].map((need) => count(need, three))).toEqual([0, 0])
  })

  it('takes the best value wherever it stands, of equals the first', () => {
    const later = packs([1, 20], [10, 100])
    expect(surelyBest(20, later)).toEqual({ pack: later[1], count: 2 })
    const even = packs([5, 50], [10, 100])
    expect(surelyBest(20, even).pack).toBe(even[0])
  })

  it('is all of them where there is no other', () => {
    expect([1, 10, 11].map((need) => count(need, packs([10, 100])))).toEqual([1, 1, 2])
  })
})

describe('how many of each pack cover a need', () => {
  it('cost the least: 5 + 2 at 13, not 2 x 4 at 16', () => {
    expect(countsToCover(7, packs([5, 9], [2, 4]))).toEqual([1, 1])
    expect(countsToCover(8, packs([5, 9], [2, 4]))).toEqual([0, 4])
    expect(countsToCover(5, packs([5, 9], [2, 4]))).toEqual([1, 0])
    expect(countsToCover(1, packs([5, 9], [2, 4]))).toEqual([0, 1])
  })

  it('are none for no need', () => {
    expect(countsToCover(0, packs([5, 9], [2, 4]))).toEqual([0, 0])
    expect(countsToCover(-3, packs([5, 9], [2, 4]))).toEqual([0, 0])
  })

  it('leave the least over at equal cost, whichever comes first', () => {
    expect(countsToCover(7, packs([8, 500], [10, 500]))).toEqual([1, 0])
    expect(countsToCover(7, packs([10, 500], [8, 500]))).toEqual([0, 1])
    expect(countsToCover(8, packs([10, 500], [8, 500]))).toEqual([0, 1])
  })

  it('are the fewest at equal cost with nothing over, whichever comes first', () => {
    expect(countsToCover(6, packs([6, 60], [3, 30], [1, 10]))).toEqual([1, 0, 0])
    expect(countsToCover(6, packs([1, 10], [3, 30], [6, 60]))).toEqual([0, 0, 1])
    expect(countsToCover(9, packs([1, 10], [3, 30], [6, 60]))).toEqual([0, 1, 1])
  })

  it('leave less over before they are fewer: three threes, not one ten, for nine at the same cost', () => {
    expect(countsToCover(9, packs([10, 90], [3, 30]))).toEqual([0, 3])
  })

  it('are of the first of two that are the same', () => {
    expect(countsToCover(5, packs([5, 50], [5, 50]))).toEqual([1, 0])
  })
})

describe('quantities in whole steps', () => {
  it('are millionths, to the nearest', () => {
    expect([0, 1, 0.82, 0.0000004, 0.0000005, -1.5].map(inMillionths)).toEqual([
      0, 1_000_000, 820_000, 0, 1, -1_500_000,
    ])
  })

  it('have a largest common step', () => {
    expect([commonStep([]), commonStep([7]), commonStep([12, 8]), commonStep([8, 12, 6])]).toEqual([
      0, 7, 4, 2,
    ])
    expect([commonStep([0, 5]), commonStep([7, 5])]).toEqual([5, 1])
  })
})
