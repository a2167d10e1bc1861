import { describe, expect, it } from 'vitest'
import type { SplitAnswer } from '../../../../src-main/engine/buying/split/supplier-split-answer.ts'
import { linesToSplit, purchasesOfSplit } from '../../../../src-main/engine/takeoff/buying/split-purchases.ts'
import { boughtAs } from '../quote/work-for-tests.ts'
import { asks, shelfWith } from './parts-for-tests.ts'

const shelf = shelfWith(
  [],
  [
    asks('clip', 100, { packHolds: 5 }),
    asks('clip', 30, { packHolds: 1, supplierId: 'moor', code: 'one' }),
    asks('pipe', 1200, { packHolds: 3 }),
    asks('pipe', 500, { packHolds: 1, supplierId: 'moor', code: 'short' }),
  ],
)
const pieces = [{ id: 'drop', lengthMm: 1400, count: 2 }]
const clip = boughtAs('part-1', 300, { itemId: 'clip', name: 'Clip', need: 12 })
const more = boughtAs('part-2', 100, { itemId: 'clip', name: 'Clip', need: 3 })
const pipe = boughtAs('part-3', 1200, { itemId: 'pipe', name: 'Pipe', unit: 'm', need: 2.8, pieces })
const shelfBoard = boughtAs('part-4', 4550, { name: 'Window shelf', oneOff: true })
const key = boughtAs('part-5', 60, { itemId: 'key', name: 'Key', need: 1 })
const all = [clip, more, pipe, shelfBoard, key]

describe('what a job buys, laid out to be split over suppliers', () => {
  // The van gives four of the twelve clips and the one key, so 8 + 3 = 11 clips are bought.
  const van = {
    fromVan: [
      { lineId: 'part-1', itemId: 'clip', name: 'Clip', unit: 'each' as const, quantity: 4 },
      { lineId: 'part-5', itemId: 'key', name: 'Key', unit: 'each' as const, quantity: 1 },
    ],
    purchases: [{ ...clip, need: 8 }, more, pipe, shelfBoard],
  }
  const split = () => linesToSplit(all, van, { shelf, kerfMm: 2 })
  const line = (lineId: string) => split().lines.find((one) => one.lineId === lineId)

  it('a thing bought by hand is a gap, with its price in words', () => {
    expect(line('part-4')).toMatchObject({
      from: [],
      fromVan: 0,
      gap: 'Window shelf is bought elsewhere, by hand, for £45.50. It is in none of the sums here.',
    })
  })
  it('what the van has whole is bought from nobody', () => {
    expect(line('part-5')).toEqual({
      lineId: 'part-5',
      itemId: 'key',
      name: 'Key',
      unit: 'each',
      need: 1,
      fromVan: 1,
      toBuy: 0,
      from: [],
    })
  })
  it('pipe is bought by the lengths that its cut list needs: one of 3 m, and none of 1 m holds a piece of 1.4 m', () => {
    expect(line('part-3')).toMatchObject({ need: 2.8, fromVan: 0, toBuy: 2.8 })
    expect(line('part-3')?.from).toHaveLength(1)
    expect(line('part-3')?.from[0]).toMatchObject({ supplierId: 'town', pence: 1200 })
    expect(line('part-3')).not.toHaveProperty('gap')
    expect([...split().bars.keys()]).toEqual(['part-3 town'])
    expect(
      split()
        .bars.get('part-3 town')
        ?.map(({ cuts }) => cuts.length),
    ).toEqual([2])
  })
  it('lines of one item are bought together: eleven clips are three packs of five, 3.00, or eleven at 30 p, 3.30', () => {
    const first = line('part-1')
    expect(first).toMatchObject({ need: 12, fromVan: 4, toBuy: 11, lineIds: ['part-1', 'part-2'] })
    const alone = (supplierId: string) => first?.from.find((way) => way.supplierId === supplierId)?.pence
    expect([alone('town'), alone('moor')]).toEqual([300, 330])
  })
})

describe('the purchases that a split stands for', () => {
  const bars = new Map([['part-3 town', [{ stockId: 'pipe-code', cuts: [], offcutMm: 196 }]]])
  const pack = (code: string, holds: number, count: number, packPence: number) => ({
    code,
    holds,
    count,
    packPence,
  })
  const orders = [
    {
      supplierId: 'town',
      name: 'Town Counter',
      lines: [
        { lineId: 'part-3', packs: [pack('pipe-code', 3, 1, 1200)], leftover: 0.2, pence: 1200 },
        {
          lineId: 'part-1',
          packs: [pack('ONE', 1, 1, 30), pack('FIVE', 5, 2, 100)],
          leftover: 0,
          pence: 230,
        },
        { lineId: 'gone', packs: [], leftover: 0, pence: 0 },
      ],
    },
    {
      supplierId: 'moor',
      name: 'Moor Supplies',
      lines: [{ lineId: 'part-1', packs: [pack('one', 1, 2, 30)], leftover: 1, pence: 60 }],
    },
  ] as unknown as SplitAnswer['orders']
  const bought = () => purchasesOfSplit({ orders }, [clip, pipe, shelfBoard], bars)

  it('come in the order of the list, each from its supplier, with what is bought elsewhere', () => {
    expect(bought().map(({ lineId, supplierName, costPence }) => [lineId, supplierName, costPence])).toEqual([
      ['part-1', 'Town Counter', 230],
      ['part-1', 'Moor Supplies', 60],
      ['part-3', 'Town Counter', 1200],
      ['part-4', 'Town Counter', 4550],
    ])
    expect(bought()[1]?.supplierId).toBe('moor')
    expect(bought()[3]).toEqual(shelfBoard)
  })
  it('of a line from two suppliers each has its own share of the need: 1 + 2 x 5, and 2 less the one left over', () => {
    expect(
      bought()
        .slice(0, 2)
        .map(({ need, leftover }) => [need, leftover]),
    ).toEqual([
      [11, 0],
      [1, 1],
    ])
    expect(bought()[0]?.packs.map(({ holds }) => holds)).toEqual([5, 1])
  })
  it('of pipe keep how it is cut at that supplier', () => {
    expect(bought()[2]).toMatchObject({ need: 2.8, leftover: 0.2, bars: bars.get('part-3 town') })
    expect(bought()[0]).not.toHaveProperty('bars')
  })
})
