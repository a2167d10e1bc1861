import { describe, expect, it } from 'vitest'
import { given } from '../../../../../src-main/domain/derivation.ts'
import { mixedWays } from '../../../../../src-main/engine/buying/split/mixed-ways.ts'
import { offeredLines } from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import type { SplitInput } from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import { splitCase, splitFrom } from '../../../../../src-main/engine/buying/split/supplier-split.ts'

/** Town sells bags of ten at 5.00, Moor single ones at 0.60. Twelve: two bags 10.00; twelve singles 7.20; a bag and two 6.20. */
const bags = [{ code: 'C', holds: 10, pence: 500 }]
const singles = [{ code: 'C', holds: 1, pence: 60 }]
const town = { supplierId: 'town', pence: 1000, offered: bags }
const moor = { supplierId: 'moor', pence: 720, offered: singles }

describe('a line from two suppliers', () => {
  it('is a bag from one and two singles from the other: 6.20', () => {
    const [way, ...others] = mixedWays(12, [town, moor])
    expect(others).toEqual([])
    expect(way).toMatchObject({ supplierId: 'moor+town', pence: 620, leftover: 0 })
    expect(way?.shares).toEqual([
      {
        supplierId: 'moor',
        packs: [{ code: 'C', holds: 1, count: 2, packPence: 60 }],
        pence: 120,
        leftover: 0,
      },
      {
        supplierId: 'town',
        packs: [{ code: 'C', holds: 10, count: 1, packPence: 500 }],
        pence: 500,
        leftover: 0,
      },
    ])
    expect(way?.why.from.map(({ says }) => says)).toEqual([
      'Needed',
      'Packs of moor/C',
      'Packs of town/C',
      'Left over',
    ])
  })

  it('is no way where either alone costs no more', () => {
    // Ten: one bag is 500. Nine singles are 540, and a bag is 500 again.
    expect(
      mixedWays(10, [
        { ...town, pence: 500 },
        { ...moor, pence: 600 },
      ]),
    ).toEqual([])
    expect(mixedWays(12, [town, { ...moor, pence: 620 }])).toEqual([])
    expect(mixedWays(12, [town, { ...moor, pence: 621 }])).toHaveLength(1)
    expect(mixedWays(12, [town])).toEqual([])
  })

  it('has what is left over with the second', () => {
    const fours = [{ code: 'F', holds: 4, pence: 130 }]
    // Thirteen: a bag at 3.00 and a box of four at 1.30 are 4.30 with one over; four boxes are 5.20.
    const [way] = mixedWays(13, [
      { ...town, pence: 800, offered: [{ code: 'C', holds: 10, pence: 300 }] },
      { supplierId: 'abbey', pence: 520, offered: fours },
    ])
    expect(way?.pence).toBe(430)
    expect(way?.shares?.map(({ supplierId, leftover }) => [supplierId, leftover])).toEqual([
      ['abbey', 0],
      ['town', 1],
    ])
  })

  it('is tried for the six who are cheapest alone', () => {
    const dear = (place: number) => ({ ...moor, supplierId: `m${place}`, pence: 720 + place })
    const six = Array.from({ length: 6 }, (_, place) => dear(place))
    const withTown = (others: typeof six) =>
      mixedWays(12, [...others, town]).filter(({ supplierId }) => supplierId.includes('town'))
    expect(withTown(six)).toEqual([])
    expect(withTown(six.slice(1))).toHaveLength(5)
  })
})

const split: SplitInput = {
  lines: [
    { lineId: 'b', itemId: 'clip', need: 4, unit: 'each' },
    { lineId: 'a', itemId: 'clip', need: 8, unit: 'each' },
  ],
  offers: [
    { lineId: 'a', supplierId: 'town', packs: bags },
    { lineId: 'b', supplierId: 'town', packs: bags },
    { lineId: 'b', supplierId: 'moor', packs: singles },
  ],
  suppliers: [
    { supplierId: 'town', name: 'Town Counter', carriagePence: 0 },
    { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 0 },
  ],
}

function offered(input: SplitInput) {
  const lines = offeredLines(input)
  if (!lines.ok) throw new Error(lines.problems[0]?.message)
  return lines.value
}
function answered(input: SplitInput) {
  const answer = splitFrom(splitCase(offered(input), input.suppliers), null)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

describe('lines of the same item', () => {
  it('share packs over swaps and suppliers: eight and four are a bag and two singles, 6.20', () => {
    const { totalPence, orders, gaps, why } = answered(split)
    expect([totalPence, gaps]).toEqual([620, []])
    expect(orders.map(({ supplierId, lines, goodsPence }) => [supplierId, lines, goodsPence])).toEqual([
      [
        'moor',
        [
          {
            lineId: 'a',
            itemId: 'clip',
            packs: [{ code: 'C', holds: 1, count: 2, packPence: 60 }],
            leftover: 0,
            pence: 120,
            lineIds: ['a', 'b'],
          },
        ],
        120,
      ],
      ['town', [expect.objectContaining({ pence: 500, lineIds: ['a', 'b'] })], 500],
    ])
    const [moorWhy] = why.from
    const line = moorWhy?.from[0]?.from[0]
    expect([line?.says, line?.value]).toEqual(['clip', 120])
    expect(line?.from.slice(1).map(({ says, value }) => [says, value])).toEqual([
      ['The same from Moor Supplies', 720],
      ['The same from Town Counter', 1000],
    ])
  })

  it('are bought after the van, and only those that still need something', () => {
    const inVan = { ...split, vanStock: [{ itemId: 'clip', quantity: 8 }] }
    const lines = offered(inVan)
    expect(lines.map(({ lineId, fromVan, toBuy, lineIds }) => [lineId, fromVan, toBuy, lineIds])).toEqual([
      ['b', 0, 4, undefined],
      ['a', 8, 0, undefined],
    ])
    expect(answered(inVan).totalPence).toBe(240)
  })

  it('are each a gap where nobody offers the item', () => {
    const { gaps } = answered({ ...split, offers: [] })
    expect(gaps.map(({ lineId }) => lineId)).toEqual(['a', 'b'])
  })

  it('name one pack once, though both lines offer it', () => {
    const [line] = offered(split).filter(({ lineId }) => lineId === 'a')
    expect(line?.toBuy).toBe(12)
    expect(line?.from.map(({ supplierId, pence }) => [supplierId, pence])).toEqual([
      ['town', 1000],
      ['moor', 720],
      ['moor+town', 620],
    ])
  })

  it('are named apart where a name has a comma in it', () => {
    const named = [
      { lineId: 'x', name: 'Clip, 15 mm' },
      { lineId: 'y', name: 'Pipe' },
    ].map((one) => ({
      ...one,
      itemId: one.lineId,
      need: 1,
      unit: 'each' as const,
      fromVan: 0,
      toBuy: 1,
      from: [{ supplierId: 'town', packs: [], pence: 5, leftover: 0, why: given('Given', 5) }],
    }))
    const answer = splitFrom(splitCase(named, split.suppliers), null)
    if (!answer.ok) throw new Error(answer.problems[0]?.message)
    expect(answer.value.oneSupplier[0]?.cannot).toBe('Moor Supplies does not offer Clip, 15 mm; Pipe.')
    const plain = splitFrom(
      splitCase(
        named.map((one) => ({ ...one, name: undefined })),
        split.suppliers,
      ),
      null,
    )
    expect(plain.ok ? plain.value.oneSupplier[0]?.cannot : null).toBe('Moor Supplies does not offer x, y.')
  })

  it('are refused in two units', () => {
    const [b, a] = split.lines
    if (a === undefined || b === undefined) throw new Error('There are two lines')
    const refused = offeredLines({ ...split, lines: [b, { ...a, unit: 'm' }] })
    expect(refused.ok ? null : refused.problems[0]).toEqual({
      code: 'invalid',
      message: 'The item clip is counted in each in one line and in m in another; give it one unit.',
      path: 'lines[1].unit',
    })
  })

  it('are refused by the first offer of the supplier whose packs are wrong', () => {
    const wrong = [{ code: 'X', holds: 1, pence: 1.5 }]
    const offers = [...split.offers.slice(0, 2), { lineId: 'b', supplierId: 'moor', packs: wrong }]
    const refused = offeredLines({ ...split, offers })
    expect(refused.ok ? null : refused.problems[0]?.path).toBe('offers[2].packs')
  })
})
