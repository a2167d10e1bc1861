import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../../../src-main/domain/derivation.ts'
import { offeredLines } from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import type { SplitInput } from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import { splitModel } from '../../../../../src-main/engine/buying/split/supplier-split-model.ts'
import { splitCase, splitFrom } from '../../../../../src-main/engine/buying/split/supplier-split.ts'
import type { SplitCase, Solved } from '../../../../../src-main/engine/buying/split/supplier-split.ts'

const one = (code: string, pence: number) => [{ code, holds: 1, pence }]

/**
 * Two valves and a roll. Town: valve 1000, roll 300, carriage 500, free from 3000. Moor: valve 900, roll 400, carriage 600.
 * Town alone: 2000 + 300 + 500 = 2800. Moor alone: 1800 + 400 + 600 = 2800. Valves from Moor, roll from Town: 1800 + 300 + 1100 = 3200.
 */
const twoValves: SplitInput = {
  lines: [
    { lineId: 'valves', itemId: 'valve', need: 2, unit: 'each' },
    { lineId: 'tape', itemId: 'roll', need: 1, unit: 'each' },
  ],
  offers: [
    { lineId: 'valves', supplierId: 'town', packs: one('V1', 1000) },
    { lineId: 'tape', supplierId: 'town', packs: one('R1', 300) },
    { lineId: 'valves', supplierId: 'moor', packs: one('MV', 900) },
    { lineId: 'tape', supplierId: 'moor', packs: one('MR', 400) },
  ],
  suppliers: [
    { supplierId: 'town', name: 'Town Counter', carriagePence: 500, carriageFreeFromPence: 3000 },
    { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 600 },
  ],
}

function ready(input: SplitInput): SplitCase {
  const lines = offeredLines(input)
  if (!lines.ok) throw new Error(lines.problems[0]?.message)
  return splitCase(lines.value, input.suppliers)
}

/** What a solver would say that chose these names. */
const chose = (names: readonly string[], proved = true): Solved => ({
  kind: 'found',
  proved,
  valueOf: (name) => (names.includes(name) ? 1 : 0),
})

function answerTo(input: SplitInput, solved: Solved | null) {
  const answer = splitFrom(ready(input), solved)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

const leaves = (why: Derivation): readonly Derivation[] =>
  why.from.length === 0 ? [why] : why.from.flatMap(leaves)

describe('a split worked out by hand', () => {
  it('keeps both lines with one supplier, where a second carriage would cost more than it saves', () => {
    // In the model lines and suppliers stand by id: tape 0, valves 1; moor 0, town 1.
    const answer = answerTo(twoValves, chose(['x0_0', 'x1_0', 'y0']))
    expect(answer.totalPence).toBe(2800)
    expect(answer.carriagePence).toBe(600)
    expect(answer.orders.map(({ name, totalPence }) => [name, totalPence])).toEqual([['Moor Supplies', 2800]])
    expect(answer.oneSupplier).toEqual([
      {
        supplierId: 'moor',
        name: 'Moor Supplies',
        goodsPence: 2200,
        carriagePence: 600,
        totalPence: 2800,
      },
      {
        supplierId: 'town',
        name: 'Town Counter',
        goodsPence: 2300,
        carriagePence: 500,
        totalPence: 2800,
      },
    ])
  })

  it('takes van stock first, and buys only the rest', () => {
    const answer = answerTo(
      { ...twoValves, vanStock: [{ itemId: 'valve', quantity: 1 }] },
      chose(['x0_1', 'x1_1', 'y1']),
    )
    expect(answer.fromVan).toEqual([{ lineId: 'valves', itemId: 'valve', quantity: 1 }])
    // 1000 + 300 + 500
    expect(answer.totalPence).toBe(1800)
    expect(answer.orders[0]?.shortOfFreePence).toBe(3000 - 1300)
  })

  it('buys nothing when the van has it all, and asks no solver', () => {
    const vanStock = [
      { itemId: 'valve', quantity: 5 },
      { itemId: 'roll', quantity: 1 },
    ]
    const answer = answerTo({ ...twoValves, vanStock }, null)
    expect([answer.totalPence, answer.orders, answer.gaps]).toEqual([0, [], []])
  })

  it('shows a line that nobody offers as a gap, and leaves it out of the sums', () => {
    const lines = [
      ...twoValves.lines,
      { lineId: 'vent', itemId: 'vent-half', need: 1, unit: 'each' as const },
    ]
    const answer = answerTo({ ...twoValves, lines }, chose(['x0_1', 'x1_1', 'y1']))
    expect(answer.gaps).toEqual([
      { lineId: 'vent', itemId: 'vent-half', says: 'No supplier offers vent-half.' },
    ])
    expect(answer.totalPence).toBe(2800)
  })

  it('is settled without a search where the cheapest lines come free of carriage', () => {
    const suppliers = twoValves.suppliers.map((supplier) => ({ ...supplier, carriagePence: 0 }))
    const answer = answerTo({ ...twoValves, suppliers }, null)
    expect(answer.totalPence).toBe(1800 + 300)
    expect(answer.orders.map(({ supplierId, goodsPence }) => [supplierId, goodsPence])).toEqual([
      ['moor', 1800],
      ['town', 300],
    ])
    expect(answer.proved).toBe(true)
  })

  it('leads, walked to its leaves, to every price, quantity and term', () => {
    const { why } = answerTo(twoValves, chose(['x0_1', 'x1_1', 'y1']))
    const values = leaves(why).map(({ value }) => value)
    expect(values).toEqual(expect.arrayContaining([1000, 900, 300, 400, 500, 3000, 2, 1]))
    expect(why.value).toBe(2800)
  })
})

describe('what one supplier alone would cost', () => {
  it('says what is missing, or that the order is under the minimum', () => {
    const suppliers = twoValves.suppliers.map((supplier) =>
      supplier.supplierId === 'moor' ? { ...supplier, minimumOrderPence: 2201 } : supplier,
    )
    const offers = twoValves.offers.filter(
      ({ lineId, supplierId }) => lineId !== 'tape' || supplierId === 'moor',
    )
    const lines = offeredLines({ ...twoValves, offers, suppliers })
    if (!lines.ok) throw new Error(lines.problems[0]?.message)
    const refused = splitFrom(splitCase(lines.value, suppliers), { kind: 'impossible' })
    expect(refused.ok ? null : refused.problems[0]).toMatchObject({
      code: 'impossible',
      message: "However the lines are split, some order stays under its supplier's minimum (Moor Supplies).",
    })
    const enough = answerTo({ ...twoValves, suppliers }, chose(['x0_1', 'x1_1', 'y1']))
    expect(enough.oneSupplier[0]?.cannot).toBe(
      "The order of £22.00 is under Moor Supplies's minimum of £22.01.",
    )
    const without = answerTo({ ...twoValves, offers }, chose(['x0_0', 'x1_0', 'y0']))
    expect(without.oneSupplier[1]?.cannot).toBe('Town Counter does not offer roll.')
  })
})

describe('the time limit', () => {
  it('is owned up to: best found, not proved', () => {
    const answer = answerTo(twoValves, chose(['x0_1', 'x1_0', 'y0', 'y1'], false))
    expect(answer.proved).toBe(false)
    expect(answer.says).toBe(
      'The best found within the time limit; it is not proved that no other split is cheaper.',
    )
    // The solver's 3200 is dearer than one supplier alone, which is taken instead.
    expect(answer.totalPence).toBe(2800)
  })

  it('leaves the cheapest single supplier where the solver found nothing', () => {
    const answer = answerTo(twoValves, { kind: 'outOfTime' })
    expect([answer.totalPence, answer.proved]).toEqual([2800, false])
  })

  it('refuses where nothing at all was found', () => {
    const suppliers = twoValves.suppliers.map((supplier) => ({ ...supplier, minimumOrderPence: 9000 }))
    const refused = splitFrom(ready({ ...twoValves, suppliers }), { kind: 'outOfTime' })
    expect(refused.ok ? null : refused.problems[0]?.code).toBe('refused')
  })
})

describe("the solver's word", () => {
  it('is not taken for a plan that leaves a line out or stays under a minimum', () => {
    const answer = answerTo(twoValves, chose(['x0_0', 'y0']))
    expect([answer.totalPence, answer.proved]).toEqual([2800, false])
  })

  it('is not taken for proof where a plain plan is cheaper', () => {
    const answer = answerTo(twoValves, chose(['x0_1', 'x1_0', 'y0', 'y1'], true))
    expect([answer.totalPence, answer.proved]).toEqual([2800, false])
  })

  it('is asked the same, letter for letter, whatever the order of lines, offers and suppliers', () => {
    const turned = {
      lines: twoValves.lines.toReversed(),
      offers: twoValves.offers.toReversed(),
      suppliers: twoValves.suppliers.toReversed(),
    }
    expect(splitModel(ready(turned).sum)).toBe(splitModel(ready(twoValves).sum))
  })

  it('is our own mistake to leave out where a search is needed', () => {
    expect(() => splitFrom(ready(twoValves), null)).toThrow('needs the solver')
  })
})

describe('an input that is wrong', () => {
  const problem = (input: SplitInput) => {
    const refused = offeredLines(input)
    return refused.ok ? null : refused.problems[0]
  }

  it('is refused with its place: ids given twice, and names that lead nowhere', () => {
    const [valves] = twoValves.lines
    const [offer] = twoValves.offers
    const [town] = twoValves.suppliers
    if (valves === undefined || offer === undefined || town === undefined) throw new Error('empty')
    expect(problem({ ...twoValves, lines: [...twoValves.lines, valves] })?.path).toBe('lines[2].lineId')
    expect(problem({ ...twoValves, suppliers: [...twoValves.suppliers, town] })?.path).toBe(
      'suppliers[2].supplierId',
    )
    expect(problem({ ...twoValves, offers: [...twoValves.offers, offer] })?.path).toBe('offers[4]')
    expect(problem({ ...twoValves, offers: [{ ...offer, lineId: 'sink' }] })?.message).toBe(
      'There is no line called sink here.',
    )
    expect(problem({ ...twoValves, offers: [{ ...offer, supplierId: 'sea' }] })?.path).toBe(
      'offers[0].supplierId',
    )
  })

  it('is refused with the pack that is at fault', () => {
    const [offer] = twoValves.offers
    if (offer === undefined) throw new Error('empty')
    const bad = { ...offer, packs: [{ code: 'V1', holds: 1, pence: 10.5 }] }
    expect(problem({ ...twoValves, offers: [bad] })).toMatchObject({
      code: 'invalid',
      message: 'Pack V1 must cost whole pence, 0 or more; it costs 10.5.',
      path: 'offers[0].packs',
    })
  })
})
