import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { offeredLines } from '../../src-main/engine/buying/split/supplier-split-offers.ts'
import { costOfSplit } from '../../src-main/engine/buying/split/supplier-split-cost.ts'
import type { SplitSum, Terms } from '../../src-main/engine/buying/split/supplier-split-cost.ts'
import { chosenIn, splitModel } from '../../src-main/engine/buying/split/supplier-split-model.ts'
import { splitCase, splitWith } from '../../src-main/engine/buying/split/supplier-split.ts'
import type { Solve } from '../../src-main/engine/buying/split/supplier-split.ts'
import { solverInProcess } from '../highs-in-process.ts'

let solve: Solve
beforeAll(async () => {
  solve = await solverInProcess()
})

/** The split of a sum, each line one pack of its price, by the way that a request goes. */
async function splitOf({ lines, suppliers }: SplitSum) {
  const offered = offeredLines({
    suppliers,
    lines: lines.map(({ lineId }) => ({ lineId, itemId: lineId, need: 1, unit: 'each' as const })),
    offers: lines.flatMap(({ lineId, from }) =>
      from.map(({ supplierId, pence }) => ({
        lineId,
        supplierId,
        packs: [{ code: 'one', holds: 1, pence }],
      })),
    ),
  })
  if (!offered.ok) throw new Error(offered.problems[0]?.message)
  const answer = await splitWith(splitCase(offered.value, suppliers), solve)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

const bringer = (supplierId: string, carriagePence: number): Terms => ({
  supplierId,
  name: supplierId,
  carriagePence,
})

describe('facility location: a warehouse is a supplier, its opening cost the carriage, a customer a line', () => {
  type Located = {
    readonly opening: readonly number[]
    readonly optimum: number
    readonly serving: readonly (readonly number[])[]
  }
  // OR-Library (J. E. Beasley), uncapacitated warehouse location, file cap71: 16 warehouses, 50 customers; the optimum 932615.750 is
  // the one that its file uncapopt prints. Data and optimum seen in public transcriptions. Costs have four decimals, so the
  // penny here is a ten-thousandth.
  const cap71 = JSON.parse(
    readFileSync(new URL('./data/or-library-cap71.json', import.meta.url), 'utf8'),
  ) as Located
  const inTenThousandths = (cost: number) => Math.round(cost * 10_000)

  it('finds the optimum 932615.750 of OR-Library cap71, to the last ten-thousandth', async () => {
    const answer = await splitOf({
      suppliers: cap71.opening.map((cost, place) => bringer(`w${place}`, inTenThousandths(cost))),
      lines: cap71.serving.map((costs, customer) => ({
        lineId: `c${customer}`,
        from: costs.map((cost, place) => ({ supplierId: `w${place}`, pence: inTenThousandths(cost) })),
      })),
    })
    expect(cap71.optimum).toBe(932615.75)
    expect(answer.totalPence / 10_000).toBe(932615.75)
    expect(answer.proved).toBe(true)
  })
})

describe('set cover: a set is a supplier with a carriage of 1, its members are lines that it gives for nothing', () => {
  // The usual example that misleads the greedy way: {1..7} and {8..14} cover 1..14, greedy begins with eight members and needs
  // three sets. Constructed; the optimum 2 is plain, for no set holds all fourteen.
  const sets = [
    [1, 2, 3, 4, 5, 6, 7],
    [8, 9, 10, 11, 12, 13, 14],
    [1, 8],
    [2, 3, 9, 10],
    [4, 5, 6, 7, 11, 12, 13, 14],
  ]

  it('covers 1 to 14 with two sets, where the greedy way takes three', async () => {
    const answer = await splitOf({
      suppliers: sets.map((_, place) => bringer(`set${place}`, 1)),
      lines: Array.from({ length: 14 }, (_, index) => ({
        lineId: `m${index + 1}`,
        from: sets.flatMap((set, place) =>
          set.includes(index + 1) ? [{ supplierId: `set${place}`, pence: 0 }] : [],
        ),
      })),
    })
    expect(answer.totalPence).toBe(2)
    expect(answer.orders.map(({ supplierId }) => supplierId)).toEqual(['set0', 'set1'])
  })
})

describe('knapsack: the minimum order of the dear supplier is what the sack leaves behind', () => {
  /**
   * The dear supplier asks k w for each thing, the cheap one k w - p. Things bought cheap are in the sack; the dear one's minimum k (W -
   * room), W all weights, keeps the sack within its room. So the least cost is k W less the greatest profit.
   */
  type Sack = {
    readonly room: number
    readonly weights: readonly number[]
    readonly profits: readonly number[]
  }
  const k = 10
  const sumOf = ({ room, weights, profits }: Sack): SplitSum => ({
    suppliers: [
      bringer('cheap', 0),
      { ...bringer('dear', 0), minimumOrderPence: k * (weights.reduce((all, w) => all + w, 0) - room) },
    ],
    lines: [
      { lineId: 'dear-only', from: [{ supplierId: 'dear', pence: 0 }] },
      ...weights.map((weight, place) => ({
        lineId: `thing-${place + 1}`,
        from: [
          { supplierId: 'cheap', pence: k * weight - (profits[place] ?? 0) },
          { supplierId: 'dear', pence: k * weight },
        ],
      })),
    ],
  })

  // J. Burkardt's knapsack data sets P01 and P02, seen in a public transcription.
  const p01: Sack = {
    room: 165,
    weights: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82],
    profits: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72],
  }
  const p02: Sack = { room: 26, weights: [12, 7, 11, 8, 9], profits: [24, 13, 23, 15, 16] }

  it.each([
    { name: 'P01', sack: p01, profit: 309, things: [1, 2, 3, 4, 6] },
    { name: 'P02', sack: p02, profit: 51, things: [2, 3, 4] },
  ])('finds the profit $profit of $name with the things $things', async ({ sack, profit, things }) => {
    const answer = await splitOf(sumOf(sack))
    const all = k * sack.weights.reduce((sum, weight) => sum + weight, 0)
    expect(all - answer.totalPence).toBe(profit)
    const cheap = answer.orders.find(({ supplierId }) => supplierId === 'cheap')
    expect(cheap?.lines.map(({ lineId }) => Number(lineId.slice(6))).toSorted((a, b) => a - b)).toEqual(
      things,
    )
    expect(answer.proved).toBe(true)
  })

  it('is the same when the solver is asked directly', async () => {
    const sum = sumOf(p02)
    const solved = await solve(splitModel(sum))
    if (solved.kind !== 'found') throw new Error(solved.kind)
    expect(costOfSplit(sum, chosenIn(sum, solved.valueOf)).totalPence).toBe(470 - 51)
  })
})
