import { describe, expect, it } from 'vitest'
import { cutPipe, cutPipeWithin } from '../../../../src-main/engine/buying/cut-pipe.ts'
import type { CutInput } from '../../../../src-main/engine/buying/cut-pipe.ts'

const threeMetres = { id: '3m', lengthMm: 3000, pence: 900 }
const twoMetres = { id: '2m', lengthMm: 2000, pence: 700 }
const piece = (id: string, lengthMm: number, count = 1) => ({ id, lengthMm, count })

function cut(input: CutInput) {
  const answer = cutPipe(input)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

function refusal(input: CutInput) {
  const answer = cutPipe(input)
  return answer.ok ? undefined : answer.problems[0]
}

describe('cutPipe', () => {
  it('cuts pieces that fill a bar with the cuts between them', () => {
    // 1000 + 998 + 998 + 2 x 2 mm of saw = 3000: two cuts make three pieces.
    const list = cut({ pieces: [piece('a', 1000), piece('b', 998, 2)], stock: [threeMetres], kerfMm: 2 })
    expect(list).toMatchObject({ barsUsed: 1, pence: 900 })
    expect(list.bars[0]?.offcutMm).toBe(0)
  })

  it('needs a second bar when the saw takes one millimetre too much', () => {
    expect(cut({ pieces: [piece('a', 1000, 3)], stock: [threeMetres], kerfMm: 1 }).barsUsed).toBe(2)
  })

  it('takes the last cut from the offcut, and no more than there is', () => {
    expect(cut({ pieces: [piece('a', 1000)], stock: [threeMetres], kerfMm: 3 }).bars[0]?.offcutMm).toBe(1997)
    expect(cut({ pieces: [piece('a', 2999)], stock: [threeMetres], kerfMm: 3 }).bars[0]?.offcutMm).toBe(0)
  })

  it('chooses the stock that costs least, not that which wastes least', () => {
    const list = cut({
      pieces: [piece('a', 1900)],
      stock: [{ ...twoMetres, pence: 950 }, threeMetres],
      kerfMm: 2,
    })
    expect(list.bars.map((bar) => bar.stockId)).toEqual(['3m'])
  })

  it('uses the fewest bars among equal costs', () => {
    const stock = [{ id: '1m', lengthMm: 1000, pence: 300 }, { id: '3m', lengthMm: 3000, pence: 900 }] // prettier-ignore
    expect(cut({ pieces: [piece('a', 1000, 3)], stock, kerfMm: 0 }).barsUsed).toBe(1)
  })

  it('finds the two bars that laying the longest first misses', () => {
    // By hand: 6 + 3 + 2 and 5 + 4 + 2 fill two bars of 11; longest first gives 6 + 5, 4 + 3 + 2 + 2.
    const pieces = [piece('6', 6), piece('5', 5), piece('4', 4), piece('3', 3), piece('2', 2, 2)]
    expect(cut({ pieces, stock: [{ id: 'bar', lengthMm: 11, pence: 1 }], kerfMm: 0 }).barsUsed).toBe(2)
  })

  it('takes stock that costs nothing first', () => {
    const offcut = { id: 'van', lengthMm: 1200, pence: 0 }
    const list = cut({
      pieces: [piece('a', 1100), piece('b', 1500)],
      stock: [threeMetres, offcut],
      kerfMm: 2,
    })
    expect(list.pence).toBe(900)
  })

  it('cuts lengths with fractions of a millimetre exactly', () => {
    const list = cut({
      pieces: [piece('a', 0.1), piece('b', 0.2)],
      stock: [{ id: 'bar', lengthMm: 0.3, pence: 1 }],
      kerfMm: 0,
    })
    expect(list.barsUsed).toBe(1)
  })

  it('gives the same list twice', () => {
    const input = {
      pieces: [piece('a', 740, 5), piece('b', 1210, 4), piece('c', 333, 6)],
      stock: [threeMetres, twoMetres],
      kerfMm: 2,
    }
    expect(cut(input)).toEqual(cut(input))
  })

  it('says with which numbers it was worked', () => {
    const { why } = cut({ pieces: [piece('a', 740, 2)], stock: [threeMetres], kerfMm: 2 })
    expect(
      why.from.flatMap((step) => (step.from.length > 0 ? step.from : [step])).map((leaf) => leaf.value),
    ).toEqual([3000, 900, 2, 740, 2])
  })

  it('says that nothing is cheaper where that is proven', () => {
    const list = cut({ pieces: [piece('a', 1000, 3)], stock: [threeMetres], kerfMm: 1 })
    expect([list.proved, list.leastPence, list.pence]).toEqual([true, 1800, 1800])
    expect(list.says).toBe('No other way to cut costs less, and none at that cost takes fewer lengths.')
    expect(list.why.says).toBe('The cheapest way to cut the pieces, then the fewest lengths')
  })

  describe('without the work that a proof takes', () => {
    // 12000 mm and saw: neither four lengths of 3 m nor a mix with 2.5 m divides without waste, so that the bound lies below.
    const awkward = {
      pieces: [piece('a', 1010, 4), piece('b', 830, 4), piece('c', 670, 4), piece('d', 490, 4)],
      stock: [threeMetres, { id: '25', lengthMm: 2500, pence: 790 }],
      kerfMm: 2,
    }

    it('gives a plan, the least that any could cost, and says that it is not proven', () => {
      const answer = cutPipeWithin(awkward, { steps: 0, programs: 0 })
      if (!answer.ok) throw new Error(answer.problems[0]?.message)
      const { proved, pence, leastPence, says, why } = answer.value
      expect(proved).toBe(false)
      expect(leastPence).toBeLessThan(pence)
      expect(says).toBe(
        `The cheapest way found; one that costs up to ${pence - leastPence}p less was not ruled out.`,
      )
      expect(why.says).toBe(
        'The cheapest way to cut the pieces that was found; a cheaper one was not ruled out',
      )
      expect(why.from[0]).toMatchObject({
        says: 'No way to cut them costs less than this',
        value: leastPence,
      })
      const full = cut(awkward)
      expect(full.proved).toBe(true)
      expect(full.pence).toBeGreaterThanOrEqual(leastPence)
      expect(full.pence).toBeLessThanOrEqual(pence)
    })
  })

  it('refuses a piece longer than every stock length', () => {
    const input = { pieces: [piece('a', 500), piece('b', 3001)], stock: [threeMetres, twoMetres], kerfMm: 2 }
    expect(refusal(input)).toMatchObject({ code: 'impossible', path: 'pieces[1].lengthMm' })
  })

  it.each([
    ['no pieces', { pieces: [], stock: [threeMetres], kerfMm: 2 }, 'pieces'],
    ['no stock', { pieces: [piece('a', 1)], stock: [], kerfMm: 2 }, 'stock'],
    [
      'a saw cut that is no number',
      { pieces: [piece('a', 1)], stock: [threeMetres], kerfMm: Number.NaN },
      'kerfMm',
    ],
    [
      'a piece of no length',
      { pieces: [piece('a', 0)], stock: [threeMetres], kerfMm: 2 },
      'pieces[0].lengthMm',
    ],
    ['half a piece', { pieces: [piece('a', 1, 0.5)], stock: [threeMetres], kerfMm: 2 }, 'pieces[0].count'],
    [
      'more pieces than a job has',
      { pieces: [piece('a', 1, 2001)], stock: [threeMetres], kerfMm: 2 },
      'pieces',
    ],
    ['stock twice', { pieces: [piece('a', 1)], stock: [threeMetres, threeMetres], kerfMm: 2 }, 'stock[1].id'],
    [
      'a price with a fraction',
      { pieces: [piece('a', 1)], stock: [{ ...twoMetres, pence: 0.5 }], kerfMm: 2 },
      'stock[0].pence',
    ],
  ])('refuses %s', (_, input, path) => {
    expect(refusal(input)).toMatchObject({ code: 'invalid', path })
  })
})
