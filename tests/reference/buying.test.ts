import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { bestFill } from '../../src-main/engine/buying/best-fill.ts'
import { coverPacks } from '../../src-main/engine/buying/cover-packs.ts'
import { cutPipe } from '../../src-main/engine/buying/cut-pipe.ts'

type Instance = { readonly name: string; readonly fewest: number; readonly sizes: readonly number[] }
type InstanceFile = { readonly room: number; readonly instances: readonly Instance[] }

const uniform = JSON.parse(
  readFileSync(new URL('./data/or-library-u120.json', import.meta.url), 'utf8'),
) as InstanceFile

/** Bars used when every bar costs the same and the saw takes nothing: bin packing. */
function barsFor(lengths: readonly number[], room: number): number {
  const pieces = lengths.map((lengthMm, index) => ({ id: `p${index}`, lengthMm, count: 1 }))
  return barsOf(cutPipe({ pieces, stock: [{ id: 'bar', lengthMm: room, pence: 1 }], kerfMm: 0 }))
}

function barsForCounts(wanted: readonly (readonly [length: number, count: number])[], room: number): number {
  const pieces = wanted.map(([lengthMm, count]) => ({ id: `p${lengthMm}`, lengthMm, count }))
  return barsOf(cutPipe({ pieces, stock: [{ id: 'bar', lengthMm: room, pence: 1 }], kerfMm: 0 }))
}

function barsOf(answer: ReturnType<typeof cutPipe>): number {
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value.barsUsed
}

describe('one-dimensional packing', () => {
  // OR-Library, file binpack1 (Falkenauer's uniform class), which prints the best known number of bins; for these it is the
  // optimum (u120_00 to _04, _08, _10, _13, _14, _16, _19).
  it.each(uniform.instances)('packs OR-Library $name into $fewest bars of 150', ({ sizes, fewest }) => {
    expect(barsFor(sizes, uniform.room)).toBe(fewest)
  })

  it('packs OR-Library triplets t60_00 into 60/3 = 20 bars, without a millimetre left', () => {
    // OR-Library, triplets class: made so that the optimum is exactly n/3. Sizes from a public transcription in tenths.
    const sizes = [
      273, 263, 350, 366, 474, 472, 268, 269, 283, 466, 347, 261, 255, 273, 355, 262, 292, 259, 258, 430, 252,
      287, 299, 298, 419, 445, 495, 350, 439, 307, 320, 366, 363, 275, 395, 272, 254, 272, 303, 450, 251, 288,
      274, 269, 372, 473, 298, 444, 366, 414, 271, 275, 370, 252, 351, 410, 315, 361, 252, 357,
    ]
    expect(sizes.reduce((sum, size) => sum + size)).toBe(20 * 1000)
    expect(barsFor(sizes, 1000)).toBe(20)
  })

  it('packs Scholl N1C1W1_A into 25 bars of 100', () => {
    // Scholl and Klein, data set 1, N1C1W1_A: the sizes add up to 2434, so 25 is a bound, and it is reached.
    const sizes = [
      99, 99, 96, 96, 92, 92, 91, 88, 87, 86, 85, 76, 74, 72, 69, 67, 67, 62, 61, 56, 52, 51, 49, 46, 44, 42,
      40, 40, 33, 33, 30, 30, 29, 28, 28, 27, 25, 24, 23, 22, 21, 20, 17, 14, 13, 11, 10, 7, 7, 3,
    ]
    expect(sizes.reduce((sum, size) => sum + size)).toBe(2434)
    expect(barsFor(sizes, 100)).toBe(25)
  })

  it('cuts the paper-mill example of the encyclopaedia article on cutting stock from 73 rolls', () => {
    // Wikipedia, "Cutting stock problem": rolls of 5600 mm, 13 widths, total 407160 mm, optimum 73 rolls.
    const wanted: readonly (readonly [number, number])[] = [
      [1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20],
      [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20],
    ] // prettier-ignore
    expect(wanted.reduce((sum, [length, count]) => sum + length * count, 0)).toBe(407_160)
    expect(barsForCounts(wanted, 5600)).toBe(73)
  })

  it('cuts the column-generation example of Gilmore and Gomory’s method from 453 rolls', () => {
    // GAMS Model Library, cutstock (SEQ=294): raw width 100. Optimum 453 by scipy 1.17.1 milp over all 4-width patterns.
    expect(barsForCounts([[45, 97], [36, 610], [31, 395], [14, 211]], 100)).toBe(453) // prettier-ignore
  })
})

describe('filling one bar', () => {
  const ones = (count: number) => Array.from({ length: count }, () => 1)

  it('solves the knapsack P01: 309 with items 1, 2, 3, 4 and 6', () => {
    // J. Burkardt, KNAPSACK_01 data set, problem P01 (public transcription).
    const fill = bestFill({
      sizes: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82],
      values: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72],
      counts: ones(10),
      room: 165,
    })
    expect(fill).toEqual({ taken: [1, 1, 1, 1, 0, 1, 0, 0, 0, 0], value: 309, atMost: 309 })
  })

  it('solves the knapsack P02: 51 with items 2, 3 and 4', () => {
    // J. Burkardt, KNAPSACK_01 data set, problem P02 (public transcription).
    const fill = bestFill({
      sizes: [12, 7, 11, 8, 9],
      values: [24, 13, 23, 15, 16],
      counts: ones(5),
      room: 26,
    })
    expect(fill).toEqual({ taken: [0, 1, 1, 1, 0], value: 51, atMost: 51 })
  })
})

describe('covering a need with packs', () => {
  // The coin problem for 6, 9 and 20 (published widely; Picciotto): just these 22 numbers cannot be made exactly.
  const unreachable = [1, 2, 3, 4, 5, 7, 8, 10, 11, 13, 14, 16, 17, 19, 22, 23, 25, 28, 31, 34, 37, 43]
  const packs = [6, 9, 20].map((holds) => ({ id: `of${holds}`, holds, pence: holds }))
  const leftoverOf = (need: number) => {
    const cover = coverPacks({ need, packs })
    if (!cover.ok) throw new Error(cover.problems[0]?.message)
    return cover.value.leftover
  }

  it.each(unreachable)('cannot make exactly %i from packs of 6, 9 and 20', (need) => {
    expect(leftoverOf(need)).toBeGreaterThan(0)
  })

  it('makes every other number up to 200 exactly', () => {
    const missed = Array.from({ length: 200 }, (_, index) => index + 1).filter((need) => leftoverOf(need) > 0)
    expect(missed).toEqual(unreachable)
  })

  it('takes one 12 m roll of tape for 14 tails at 0.82 m, and two for 15', () => {
    // 12.5 wraps of 65.8 mm are 0.82 m (pi x 20.955 mm, CALC; wraps from memory): 12 / 0.82 = 14.6 tails.
    const roll = [{ id: 'roll', holds: 12, pence: 99 }]
    expect(coverPacks({ need: 14 * 0.82, packs: roll })).toMatchObject({
      value: { pence: 99, leftover: 0.52 },
    })
    expect(coverPacks({ need: 15 * 0.82, packs: roll })).toMatchObject({
      value: { pence: 198, leftover: 11.7 },
    })
  })
})
