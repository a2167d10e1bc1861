import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cheapestPlan } from '../../../src-main/engine/buying/cheapest-plan.ts'
import { cutPipe } from '../../../src-main/engine/buying/cut-pipe.ts'
import type { CutList } from '../../../src-main/engine/buying/cut-pipe.ts'

const triplets = JSON.parse(
  readFileSync(new URL('../data/or-library-t501-first-120.json', import.meta.url), 'utf8'),
) as { readonly room: number; readonly sizes: readonly number[] }

function cut(
  lengths: readonly (readonly [lengthMm: number, count: number])[],
  stock: readonly (readonly [lengthMm: number, pence: number])[],
  kerfMm: number,
): CutList {
  const answer = cutPipe({
    pieces: lengths.map(([lengthMm, count]) => ({ id: `p${lengthMm}`, lengthMm, count })),
    stock: stock.map(([lengthMm, pence]) => ({ id: `s${lengthMm}`, lengthMm, pence })),
    kerfMm,
  })
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

describe('a cut list of 120 pieces', () => {
  // OR-Library, file binpack8 (Falkenauer's triplets), t501_00: its sizes stand in threes that fill a bin of 100.0 exactly, so
  // the first 120 fill 40 and no fewer: they add up to 40 bins. Public transcription with one size a line.
  it('fills 40 bars of the triplets without a millimetre left, and says that it is proven', () => {
    const { room, sizes } = triplets
    expect(sizes).toHaveLength(120)
    expect(sizes.reduce((sum, size) => sum + size)).toBe(40 * room)
    const counts = [...Map.groupBy(sizes, (size) => size)].map(([size, same]) => [size, same.length] as const)
    const list = cut(counts, [[room, 1]], 0)
    expect([list.barsUsed, list.proved, list.leastPence]).toEqual([40, true, 40])
    expect(list.bars.every((bar) => bar.offcutMm === 0)).toBe(true)
  })

  // The same pieces by branch and price alone: no search bar after bar.
  it('fills the first 60 of them by branch and price alone', () => {
    const groups = [...Map.groupBy(triplets.sizes.slice(0, 60), (size) => size)].toSorted(([a], [b]) => b - a)
    const cutting = {
      sizes: groups.map(([size]) => size),
      counts: groups.map(([, same]) => same.length),
      stock: [{ room: triplets.room, cost: 1 }],
    }
    const { plan, bound } = cheapestPlan(cutting, { steps: 0, programs: 500 })
    expect([plan.cost, bound]).toEqual([20, 20])
  })
})

describe('the rule of the saw, by hand', () => {
  // n pieces of a bar need n - 1 cuts between them: 4 x 748 + 3 x 2.667 > 3000, 4 x 748 + 3 x 2 = 2998.
  it('counts a cut between two pieces and none after the last that fits', () => {
    expect(cut([[748, 4]], [[3000, 900]], 2).barsUsed).toBe(1)
    expect(cut([[748, 4]], [[3000, 900]], 2.7).barsUsed).toBe(2)
  })

  // 998 + 1 + 2001 = 3000 and 999 + 1 + 2000 = 3000: two bars with no offcut; with 2 mm of saw neither pair fits.
  it('needs as many bars as pieces when each pair is a millimetre too long', () => {
    const pairs = [[2001, 1], [2000, 1], [999, 1], [998, 1]] as const // prettier-ignore
    expect(cut(pairs, [[3000, 900]], 1).barsUsed).toBe(2)
    expect(cut(pairs, [[3000, 900]], 2).barsUsed).toBe(3)
  })
})

describe('several stock lengths, by hand', () => {
  // 3 x 1900 in lengths of 2 m at 8.00 are 24.00; in 6 m at 19.50 (3 x 1900 + 2 x 3 = 5706) they are 19.50; a fourth piece goes
  // on a 2 m length: 27.50, against 39.00 for two of 6 m and 32.00 for four of 2 m.
  it('mixes a long length and a short one where that is cheapest', () => {
    const stock = [[2000, 800], [6000, 1950]] as const // prettier-ignore
    expect(cut([[1900, 3]], stock, 3).pence).toBe(1950)
    const four = cut([[1900, 4]], stock, 3)
    expect([four.pence, four.barsUsed, four.proved]).toEqual([2750, 2, true])
  })
})
