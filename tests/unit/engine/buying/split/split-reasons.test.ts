import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../../../src-main/domain/derivation.ts'
import { splitAnswer } from '../../../../../src-main/engine/buying/split/supplier-split-answer.ts'
import type { Terms } from '../../../../../src-main/engine/buying/split/supplier-split-cost.ts'
import type { OfferedLine } from '../../../../../src-main/engine/buying/split/supplier-split-offers.ts'
import {
  splitCase,
  splitFrom,
  splitWith,
} from '../../../../../src-main/engine/buying/split/supplier-split.ts'
import type { Solved } from '../../../../../src-main/engine/buying/split/supplier-split.ts'
import { answered, refused } from '../../../../answered.ts'

const moor: Terms = { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 600 }
const town: Terms = {
  supplierId: 'town',
  name: 'Town Counter',
  carriagePence: 500,
  carriageFreeFromPence: 3000,
  minimumOrderPence: 250,
}
const asked = (supplierId: string, pence: number): Derivation => given(`${supplierId} asks`, pence, 'pence')
const line = (
  lineId: string,
  pence: Readonly<Record<string, number>>,
  more: Partial<OfferedLine> = {},
): OfferedLine => ({
  lineId,
  itemId: `${lineId}-item`,
  need: 1,
  unit: 'each',
  fromVan: 0,
  toBuy: 1,
  from: Object.entries(pence).map(([supplierId, cost]) => ({
    supplierId,
    packs: [],
    pence: cost,
    leftover: 0,
    why: asked(supplierId, cost),
  })),
  ...more,
})
const chose = (...names: readonly string[]): Solved => ({
  kind: 'found',
  proved: true,
  valueOf: (name) => (names.includes(name) ? 1 : 0),
})
const pence = (says: string, value: number, from: readonly Derivation[]) =>
  because(says, value, { unit: 'pence', from })

describe('the reason of a split', () => {
  it('names each order, its goods with what others ask, its carriage and terms, and the van', () => {
    const lines = [
      line('a', { moor: 400, town: 300 }, { name: 'Tape' }),
      line('b', { town: 1000 }),
      line('c', {}, { itemId: 'clip', need: 5, fromVan: 5, toBuy: 0, unit: 'm' }),
    ]
    const answer = answered(splitFrom(splitCase(lines, [town, moor]), chose('x0_1', 'x1_1')))
    // All from Town: 1300 + 500. Tape from Moor: 400 + 600 and 1000 + 500 are 2500.
    expect(answer.totalPence).toBe(1800)
    const says = 'The cheapest split there is: every other was searched or ruled out.'
    expect(answer.why).toEqual(
      pence(`Goods and carriage of all orders. ${says}`, 1800, [
        pence('Order from Town Counter', 1800, [
          pence('Goods', 1300, [
            pence('Tape', 300, [
              asked('town', 300),
              pence('The same from Moor Supplies', 400, [asked('moor', 400)]),
            ]),
            pence('b-item', 1000, [asked('town', 1000)]),
          ]),
          pence('Carriage', 500, [
            given('Carriage asked', 500, 'pence'),
            given('Free of carriage from', 3000, 'pence'),
            given('Minimum order', 250, 'pence'),
          ]),
        ]),
        because('clip from the van', 5, { unit: 'm', from: [given('Needed', 5, 'm')] }),
      ]),
    )
  })

  it('names a way over two suppliers by both, and each share with its own supplier', () => {
    const shares = [
      { supplierId: 'moor', packs: [], pence: 100, leftover: 0 },
      { supplierId: 'town', packs: [], pence: 260, leftover: 2 },
    ]
    const pair = {
      supplierId: 'moor+town',
      packs: [],
      pence: 360,
      leftover: 2,
      shares,
      why: asked('both', 360),
    }
    const one = line('a', { town: 400 })
    const terms = [
      { ...moor, carriagePence: 0 },
      { ...town, carriagePence: 0 },
    ]
    const answer = answered(splitFrom(splitCase([{ ...one, from: [...one.from, pair] }], terms), null))
    expect(answer.orders.map(({ name, lines, goodsPence }) => [name, lines, goodsPence])).toEqual([
      ['Moor Supplies', [{ lineId: 'a', itemId: 'a-item', packs: [], leftover: 0, pence: 100 }], 100],
      ['Town Counter', [{ lineId: 'a', itemId: 'a-item', packs: [], leftover: 2, pence: 260 }], 260],
    ])
    const same = pence('The same from Town Counter', 400, [asked('town', 400)])
    expect(answer.why.from.map((order) => order.from[0]?.from)).toEqual([
      [pence('a-item', 100, [asked('both', 360), same])],
      [pence('a-item', 260, [asked('both', 360), same])],
    ])
    expect(answer.why.from[0]?.from[1]).toEqual(pence('Carriage', 0, [given('Carriage asked', 0, 'pence')]))
    const single = splitCase([{ ...one, from: [...one.from, pair] }], terms)
    const other = splitAnswer(single, new Map([['a', 'town']]), { proved: true, searched: true })
    expect(other.why.from[0]?.from[0]?.from[0]?.from[1]).toEqual(
      pence('The same from Moor Supplies and Town Counter', 360, [asked('both', 360)]),
    )
  })
})

describe('the verdict on a split', () => {
  const ready = splitCase([line('a', { moor: 400 })], [moor])
  const says = (proved: boolean, searched: boolean) =>
    splitAnswer(ready, new Map([['a', 'moor']]), { proved, searched }).says

  it('says whether it is proved, and how', () => {
    expect(says(true, true)).toBe('The cheapest split there is: every other was searched or ruled out.')
    expect(says(true, false)).toBe(
      'The cheapest split there is: nothing can cost less than each line at its cheapest without carriage, or there was no choice.',
    )
    const best = 'The best found within the time limit; it is not proved that no other split is cheaper.'
    expect([says(false, true), says(false, false)]).toEqual([best, best])
  })

  it('says it of a plan that needed no search', () => {
    expect(answered(splitFrom(ready, null)).says).toBe(says(true, false))
    expect(answered(splitFrom(ready, null)).proved).toBe(true)
  })

  it('is that of a search whose own plan is the best', () => {
    const choice = splitCase([line('a', { moor: 400, town: 800 })], [moor, town])
    const found = answered(splitFrom(choice, chose('x0_0')))
    expect([found.proved, found.says, found.totalPence]).toEqual([true, says(true, true), 1000])
    const late = answered(splitFrom(choice, { kind: 'outOfTime' }))
    expect([late.proved, late.says, late.totalPence]).toEqual([false, says(false, true), 1000])
    const unproved = answered(splitFrom(choice, { ...chose('x0_0'), proved: false } as Solved))
    expect(unproved.proved).toBe(false)
  })

  it('is asked of a solver only where it is not settled', async () => {
    const asks: string[] = []
    const solve = (model: string) => {
      asks.push(model)
      return Promise.resolve(chose('x0_0'))
    }
    expect(answered(await splitWith(ready, solve)).totalPence).toBe(1000)
    expect(asks).toEqual([])
    const choice = splitCase([line('a', { moor: 400, town: 800 })], [moor, town])
    expect(answered(await splitWith(choice, solve)).totalPence).toBe(1000)
    expect(asks.map((model) => model.split('\n')[0])).toEqual(['Minimize'])
  })
})

describe('an order laid out', () => {
  const order = (carriage: Partial<Terms>, cost = 1200) =>
    answered(splitFrom(splitCase([line('a', { moor: cost })], [{ ...moor, ...carriage }]), null)).orders[0]

  it('says how much is short of free carriage, where there is any to save', () => {
    expect(order({ carriageFreeFromPence: 3000 })?.shortOfFreePence).toBe(1800)
    expect(order({ carriageFreeFromPence: 1200 })).not.toHaveProperty('shortOfFreePence')
    expect(order({ carriagePence: 0, carriageFreeFromPence: 3000 })).not.toHaveProperty('shortOfFreePence')
    expect(order({})).toEqual({
      supplierId: 'moor',
      name: 'Moor Supplies',
      lines: [{ lineId: 'a', itemId: 'a-item', packs: [], leftover: 0, pence: 1200 }],
      goodsPence: 1200,
      carriagePence: 600,
      totalPence: 1800,
    })
  })
})

describe('what the sums leave out', () => {
  const lines = [
    line('a', { moor: 400 }),
    line('b', {}, { gap: 'A flue is bought elsewhere.' }),
    line('c', {}),
    line('d', {}, { fromVan: 1, toBuy: 0 }),
  ]

  it('is told line by line: why it is a gap, or that the van has it', () => {
    const answer = answered(splitFrom(splitCase(lines, [moor]), null))
    expect(answer.gaps).toEqual([
      { lineId: 'b', itemId: 'b-item', says: 'A flue is bought elsewhere.' },
      { lineId: 'c', itemId: 'c-item', says: 'No supplier offers c-item.' },
    ])
    expect(answer.fromVan).toEqual([{ lineId: 'd', itemId: 'd-item', quantity: 1 }])
    expect([answer.goodsPence, answer.carriagePence, answer.totalPence]).toEqual([400, 600, 1000])
  })
})

describe('one supplier for all of it', () => {
  const alone = (lines: readonly OfferedLine[], terms: Terms) =>
    splitAnswer(splitCase(lines, [terms, { ...moor, supplierId: 'sea', name: 'Sea' }]), new Map(), {
      proved: false,
      searched: true,
    }).oneSupplier.find(({ supplierId }) => supplierId === terms.supplierId)
  const six = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id) => line(id, { sea: 5 }))

  it('names five of what is missing, and counts the rest', () => {
    expect(alone(six, moor)?.cannot).toBe(
      'Moor Supplies does not offer a-item, b-item, c-item, d-item, e-item and 2 more.',
    )
    expect(alone(six.slice(0, 5), moor)).toEqual({
      supplierId: 'moor',
      name: 'Moor Supplies',
      cannot: 'Moor Supplies does not offer a-item, b-item, c-item, d-item, e-item.',
    })
  })

  it('is told where the order would be under the minimum, to the penny', () => {
    const strict = { ...moor, minimumOrderPence: 1205 }
    expect(alone([line('a', { moor: 1204 })], strict)).toEqual({
      supplierId: 'moor',
      name: 'Moor Supplies',
      goodsPence: 1204,
      cannot: "The order of £12.04 is under Moor Supplies's minimum of £12.05.",
    })
    expect(alone([line('a', { moor: 1205 })], strict)).toEqual({
      supplierId: 'moor',
      name: 'Moor Supplies',
      goodsPence: 1205,
      carriagePence: 600,
      totalPence: 1805,
    })
  })

  it('costs nothing where nothing is bought, whatever the minimum', () => {
    expect(alone([], { ...moor, minimumOrderPence: 900 })).toEqual({
      supplierId: 'moor',
      name: 'Moor Supplies',
      goodsPence: 0,
      carriagePence: 0,
      totalPence: 0,
    })
  })
})

describe('no split at all', () => {
  const strict = (terms: Terms): Terms => ({ ...terms, minimumOrderPence: 9000 })

  it('names every supplier with a minimum, and says what can be done', () => {
    const lines = [line('a', { moor: 400, sea: 1 }), line('b', { town: 300 })]
    const sea = { ...moor, supplierId: 'sea', name: 'Sea', minimumOrderPence: 0 }
    const ready = splitCase(lines, [strict(moor), strict(town), sea])
    expect(refused(splitFrom(ready, { kind: 'impossible' }))).toEqual({
      code: 'impossible',
      message:
        "However the lines are split, some order stays under its supplier's minimum (Moor Supplies, Town Counter).",
      path: 'suppliers',
      next: 'Add what the van needs anyway to the order, fetch the goods from a supplier without a minimum, or ask for the minimum to be waived.',
    })
  })

  it('says that the time ran out before any was found', () => {
    const ready = splitCase([line('a', { moor: 400, town: 1 })], [strict(moor), strict(town)])
    expect(refused(splitFrom(ready, { kind: 'outOfTime' }))).toEqual({
      code: 'refused',
      message:
        'No split over the suppliers was found within the time limit, and none that is plain to see meets every minimum order.',
      path: 'lines',
      next: 'Ask for fewer lines at a time, or leave a supplier out.',
    })
  })
})

describe('a split made ready', () => {
  it('has lines, ways and suppliers by their ids, and only the suppliers who have something', () => {
    const sea = { ...moor, supplierId: 'sea', name: 'Sea' }
    const ready = splitCase([line('b', { town: 1, moor: 2 }), line('a', { town: 3 })], [town, sea, moor])
    expect(ready.lines.map(({ lineId }) => lineId)).toEqual(['a', 'b'])
    expect(ready.suppliers).toEqual([moor, sea, town])
    expect(ready.sum).toEqual({
      lines: [
        { lineId: 'a', from: [{ supplierId: 'town', pence: 3 }] },
        {
          lineId: 'b',
          from: [
            { supplierId: 'moor', pence: 2 },
            { supplierId: 'town', pence: 1 },
          ],
        },
      ],
      suppliers: [moor, town],
    })
  })
})
