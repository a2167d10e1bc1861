import { describe, expect, it } from 'vitest'
import type { Purchase } from '../../../../src-main/domain/quote.ts'
import { mergePurchases } from '../../../../src-main/engine/takeoff/buying/merge-purchases.ts'
import type { Shelf } from '../../../../src-main/engine/takeoff/shelf.ts'
import { cheapestPurchase } from '../../../../src-main/engine/takeoff/purchase.ts'
import { asks, shelfWith } from './parts-for-tests.ts'

const kerfMm = 2

function buying(shelf: Shelf, itemId: string, need: number, pieces?: Purchase['pieces']): Purchase {
  const unit = pieces === undefined ? ('each' as const) : ('m' as const)
  const wanted = { lineId: `line-${itemId}`, itemId, name: `The ${itemId}`, unit, need, kerfMm }
  const answer = cheapestPurchase(pieces === undefined ? wanted : { ...wanted, pieces }, shelf)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

/** Jobs called A, B, … bought together. */
function merged(shelf: Shelf, jobs: readonly (readonly Purchase[])[]) {
  const labelled = jobs.map((purchases, at) => ({ label: 'ABC'[at] ?? '', purchases }))
  return mergePurchases(labelled, { shelf, kerfMm })
}

const inShort = ({ lineId, supplierId, need, costPence, packs }: Purchase) => ({
  lineId,
  supplierId,
  need,
  costPence,
  packs: packs.map(({ count, holds }) => `${count} x ${holds}`),
})

describe('what several jobs buy together', () => {
  it('fills one pack for two jobs that would each have bought one', () => {
    const shelf = shelfWith([], [asks('clip', 100, { packHolds: 10 })])
    const { purchases, missing } = merged(shelf, [[buying(shelf, 'clip', 4)], [buying(shelf, 'clip', 5)]])
    expect(purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'town', need: 9, costPence: 100, packs: ['1 x 10'] },
    ])
    expect(purchases[0]).toMatchObject({ leftover: 1, name: 'The clip', unit: 'each' })
    expect(missing).toEqual([])
  })

  it('sums decimal needs exactly, so that 0.1 and 0.2 need no second pack of 0.3', () => {
    const shelf = shelfWith([], [asks('seal', 100, { packHolds: 0.3 })])
    const { purchases } = merged(shelf, [[buying(shelf, 'seal', 0.1)], [buying(shelf, 'seal', 0.2)]])
    expect(purchases.map(({ need, costPence }) => [need, costPence])).toEqual([[0.3, 100]])
  })

  it('cuts the pieces of both from the same lengths, and says whose each is', () => {
    const shelf = shelfWith([], [asks('pipe', 1200, { packHolds: 3 })])
    const piece = (lengthMm: number) => [{ id: 'left side', lengthMm, count: 1 }]
    const jobs = [[buying(shelf, 'pipe', 1.4, piece(1400))], [buying(shelf, 'pipe', 1.5, piece(1500))]]
    const { purchases } = merged(shelf, jobs)
    expect(purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'town', need: 2.9, costPence: 1200, packs: ['1 x 3'] },
    ])
    expect(purchases[0]?.pieces?.map(({ id }) => id)).toEqual(['A: left side', 'B: left side'])
    const ids = purchases[0]?.bars?.flatMap(({ cuts }) => cuts.map(({ id, lengthMm }) => `${id} ${lengthMm}`))
    expect(ids?.toSorted()).toEqual(['1, A: left side 1400', '2, B: left side 1500'])
    // Two saw cuts of 2 mm: one between the pieces, one before the rest.
    expect(purchases[0]?.bars?.map(({ offcutMm }) => offcutMm)).toEqual([96])
  })

  it('stays with two suppliers where one for all would be dearer', () => {
    const shelf = shelfWith(
      [],
      [asks('plug', 10), asks('plug', 50, { supplierId: 'moor', packHolds: 10, code: 'M' })],
    )
    const jobs = [[buying(shelf, 'plug', 1)], [buying(shelf, 'plug', 10)], [buying(shelf, 'plug', 1)]]
    // All from moor: two packs, 100. All from town: 120. One of ten from moor and two singles from town: 70.
    expect(merged(shelf, jobs).purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'town', need: 2, costPence: 20, packs: ['2 x 1'] },
      { lineId: 'part-2', supplierId: 'moor', need: 10, costPence: 50, packs: ['1 x 10'] },
    ])
  })

  it('takes all from one supplier where that costs the same', () => {
    const shelf = shelfWith(
      [],
      [asks('plug', 50), asks('plug', 50, { supplierId: 'moor', packHolds: 2, code: 'M' })],
    )
    const { purchases } = merged(shelf, [[buying(shelf, 'plug', 2)], [buying(shelf, 'plug', 2)]])
    expect(purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'moor', need: 4, costPence: 100, packs: ['2 x 2'] },
    ])
  })

  it('reckons at the prices in force, not at those of the day the jobs were priced', () => {
    const then = shelfWith([], [asks('clip', 100, { packHolds: 10 })])
    const now = shelfWith([], [asks('clip', 300, { packHolds: 10 })])
    expect(merged(now, [[buying(then, 'clip', 4)]]).purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'town', need: 4, costPence: 300, packs: ['1 x 10'] },
    ])
  })

  it('is not misled by what buying came to before from other suppliers', () => {
    const prices = [asks('plug', 10), asks('plug', 50, { supplierId: 'moor', packHolds: 10, code: 'M' })]
    const shelf: Shelf = { ...shelfWith([], prices), bought: new Map() }
    const jobs = [[buying(shelf, 'plug', 1)], [buying(shelf, 'plug', 10)], [buying(shelf, 'plug', 1)]]
    expect(merged(shelf, jobs).purchases.map(({ costPence }) => costPence)).toEqual([20, 50])
  })

  it('buys pipe that one job cuts and another takes by the metre each in its own way, short of neither', () => {
    const shelf = shelfWith([], [asks('pipe', 1200, { packHolds: 3 })])
    const cut = buying(shelf, 'pipe', 2.9, [{ id: 'run', lengthMm: 2900, count: 1 }])
    const byMetre = { ...buying(shelf, 'pipe', 5), unit: 'm' as const }
    expect(merged(shelf, [[cut], [byMetre]]).purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'town', need: 2.9, costPence: 1200, packs: ['1 x 3'] },
      { lineId: 'part-2', supplierId: 'town', need: 5, costPence: 2400, packs: ['2 x 3'] },
    ])
    const none = { ...byMetre, pieces: [] }
    expect(merged(shelf, [[byMetre], [none]]).purchases.map(inShort)).toEqual([
      { lineId: 'part-1', supplierId: 'town', need: 10, costPence: 4800, packs: ['4 x 3'] },
    ])
  })

  it('leaves a thing that was named and priced by hand to its job', () => {
    const shelf = shelfWith([], [asks('clip', 100)])
    const oneOff = { ...buying(shelf, 'clip', 2), oneOff: true as const }
    const { purchases } = merged(shelf, [[oneOff], [oneOff, buying(shelf, 'clip', 1)]])
    expect(purchases.map(({ lineId, need, oneOff: own }) => [lineId, need, own])).toEqual([
      ['1-line-clip', 2, true],
      ['2-line-clip', 2, true],
      ['part-1', 1, undefined],
    ])
  })

  it('names what nobody sells any more, with the reason, and buys the rest', () => {
    const then = shelfWith([], [asks('clip', 100), asks('plug', 100)])
    const now = shelfWith([], [asks('clip', 100)])
    const job = [buying(then, 'plug', 2), buying(then, 'clip', 2)]
    const { purchases, missing } = merged(now, [job, job])
    expect(missing).toEqual([{ name: 'The plug', says: 'Nobody asks a price today for The plug.' }])
    expect(purchases.map(({ itemId, need }) => [itemId, need])).toEqual([['clip', 4]])
  })

  it('is nothing for no jobs', () => {
    expect(merged(shelfWith([], []), [])).toEqual({ purchases: [], missing: [] })
  })
})
