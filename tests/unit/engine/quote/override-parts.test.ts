import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Part } from '../../../../src-main/domain/item.ts'
import type { Override } from '../../../../src-main/domain/job.ts'
import type { Problem } from '../../../../src-main/domain/outcome.ts'
import type { Purchase } from '../../../../src-main/domain/quote.ts'
import type { TakeOffLine } from '../../../../src-main/domain/take-off.ts'
import { overrideParts } from '../../../../src-main/engine/quote/override-parts.ts'
import { answered } from '../../../answered.ts'
import { asks, pipe, shelfWith, tail } from '../takeoff/parts-for-tests.ts'
import { boughtAs, figures, lineOf } from './work-for-tests.ts'

const vent = (itemId: string, generic = false): Part =>
  ({ itemId, name: `Vent ${itemId}`, generic, kind: 'vent', spec: {} }) as unknown as Part
const shelf = shelfWith(
  [vent('plain', true), vent('grand'), vent('rare'), tail('long', 40), pipe],
  [asks('plain', 100), asks('grand', 150), asks('long', 80), asks('pipe', 900, { packHolds: 3 })],
)
const lines: readonly TakeOffLine[] = [
  lineOf('vent', { itemId: 'plain', name: 'Vent plain' }),
  lineOf('panel', { itemKind: 'emitter', itemId: 'panel' }),
  lineOf('blank', { itemKind: 'blank', gap: 'None here.' }),
  lineOf('pipe', {
    itemKind: 'pipe',
    unit: 'm',
    quantity: 2,
    pieces: [{ id: 'left', lengthMm: 2000, count: 1 }],
  }),
  lineOf('shelf', { itemKind: 'sundry' }),
]
const purchases: readonly Purchase[] = [
  boughtAs('part-1', 300, { itemId: 'plain' }),
  boughtAs('part-2', 9000, { itemId: 'panel' }),
  boughtAs('part-4', 900, { itemId: 'pipe', unit: 'm', need: 2 }),
  boughtAs('part-5', 700, { oneOff: true }),
]
const change = (...overrides: readonly Override[]) =>
  overrideParts(
    {
      takeOff: { lines, fromBox: [], cautions: [], tools: [], why: given('Rules', 1) },
      purchases,
      boxUses: [],
    },
    overrides,
    { shelf, figures },
  )
const problemsOf = (...overrides: readonly Override[]): readonly Problem[] => {
  const answer = change(...overrides)
  return answer.ok ? [] : answer.problems
}
const reason = 'Agreed'

describe('a part changed by hand', () => {
  it('of another quantity is bought anew: 5 at 1.00 each', () => {
    const parts = answered(change({ lineKey: 'vent', quantity: 5, reason }))
    expect(parts.takeOff.lines[0]).toEqual({
      ...lines[0],
      quantity: 5,
      was: { name: 'Vent plain', quantity: 3 },
      why: because('Changed by hand: 5 instead of 3. Reason: Agreed', 5, {
        unit: 'each',
        from: [given('It was Vent plain', 3, 'each'), given('Why vent', 3, 'each')],
        source: 'changed by hand',
      }),
    })
    expect(parts.takeOff.lines.slice(1)).toEqual(lines.slice(1))
    expect(parts.purchases.map(({ lineId }) => lineId)).toEqual(['part-1', 'part-2', 'part-4', 'part-5'])
    expect(parts.purchases[0]).toMatchObject({ itemId: 'plain', need: 5, costPence: 500, name: 'Vent plain' })
    expect(parts.purchases.slice(1)).toEqual(purchases.slice(1))
  })
  it('that is another item is bought as that: 3 at 1.50 each, and is generic where that is', () => {
    const parts = answered(change({ lineKey: 'vent', itemId: 'grand', reason }))
    expect(parts.takeOff.lines[0]).toMatchObject({
      itemId: 'grand',
      name: 'Vent grand',
      quantity: 3,
      generic: false,
      was: { name: 'Vent plain', quantity: 3 },
    })
    expect(parts.takeOff.lines[0]?.why.says).toBe(
      'Changed by hand: Vent grand instead of Vent plain. Reason: Agreed',
    )
    expect(parts.takeOff.lines[0]?.why.value).toBe(3)
    expect(parts.purchases[0]).toMatchObject({ itemId: 'grand', need: 3, costPence: 450, name: 'Vent grand' })
  })
  it('in both is told of both', () => {
    const [line] = answered(change({ lineKey: 'vent', itemId: 'grand', quantity: 1, reason })).takeOff.lines
    expect(line?.why.says).toBe(
      'Changed by hand: 1 instead of 3, Vent grand instead of Vent plain. Reason: Agreed',
    )
  })
  it('fills a gap with an item, and its own place in the purchases', () => {
    const parts = answered(change({ lineKey: 'blank', itemId: 'long', reason }))
    expect(parts.takeOff.lines[2]).not.toHaveProperty('gap')
    expect(parts.takeOff.lines[2]).toMatchObject({ itemId: 'long', name: 'Tail 40 mm' })
    expect(parts.purchases.map(({ lineId }) => lineId)).toEqual([
      'part-1',
      'part-2',
      'part-3',
      'part-4',
      'part-5',
    ])
    expect(parts.purchases[2]).toMatchObject({ costPence: 240 })
  })
  it('leaves a gap a gap, of the new quantity', () => {
    const parts = answered(change({ lineKey: 'blank', quantity: 9, reason }))
    expect(parts.takeOff.lines[2]).toMatchObject({ gap: 'None here.', quantity: 9, was: { quantity: 3 } })
    expect(parts.purchases).toEqual(purchases)
  })
  it('of pipe is bought by the metre, without its pieces, unless only the item changed', () => {
    const metres = answered(change({ lineKey: 'pipe', quantity: 4, reason }))
    expect(metres.takeOff.lines[3]).not.toHaveProperty('pieces')
    expect(metres.purchases[2]).toMatchObject({ need: 4, costPence: 1800 })
    expect(metres.purchases[2]).not.toHaveProperty('bars')
    const same = answered(change({ lineKey: 'pipe', itemId: 'pipe', reason }))
    expect(same.takeOff.lines[3]?.pieces).toEqual(lines[3]?.pieces)
    expect(same.purchases[2]?.bars).toHaveLength(1)
  })
  it('in its price alone is left to the prices', () => {
    const parts = answered(
      change({ lineKey: 'vent', netPence: 1, reason }, { lineKey: 'travel', netPence: 1, reason }),
    )
    expect([parts.takeOff.lines, parts.purchases]).toEqual([lines, purchases])
  })
})

describe('a change that cannot be made is refused with where and why', () => {
  it.each<readonly [string, Override, Problem]>([
    [
      'an item that is not there',
      { lineKey: 'vent', itemId: 'none', reason },
      {
        code: 'not-found',
        path: 'job.overrides[0].itemId',
        message: 'The catalogue has no part none in use; catalogue.search finds those that it has.',
      },
    ],
    [
      'an item that is counted in another unit',
      { lineKey: 'vent', itemId: 'pipe', reason },
      {
        code: 'invalid',
        path: 'job.overrides[0].itemId',
        message: 'Copper pipe 15 mm is counted in m and this line in each; choose one counted alike.',
      },
    ],
    [
      'an emitter in place of another',
      { lineKey: 'panel', itemId: 'plain', reason },
      {
        code: 'invalid',
        path: 'job.overrides[0].itemId',
        message: 'An emitter is changed in its swap, for the room must be reckoned again; not on its line.',
      },
    ],
    [
      'a thing that is bought elsewhere',
      { lineKey: 'shelf', quantity: 2, reason },
      {
        code: 'invalid',
        path: 'job.overrides[0].lineKey',
        message: 'The shelf is bought elsewhere at a price by hand; change what it was filled with.',
      },
    ],
    [
      'a line that is not there',
      { lineKey: 'roof', quantity: 2, reason },
      {
        code: 'invalid',
        path: 'job.overrides[0].lineKey',
        message: 'The parts list has no line roof to change; takeoff.job names its lines.',
      },
    ],
    [
      'no change at all',
      { lineKey: 'vent', reason },
      {
        code: 'invalid',
        path: 'job.overrides[0]',
        message: 'The override of vent changes nothing; give it a quantity, an item or a price.',
      },
    ],
  ])('%s', (_, override, problem) => {
    expect(problemsOf(override)).toEqual([problem])
  })
  it('one line changed twice', () => {
    expect(
      problemsOf({ lineKey: 'vent', quantity: 5, reason }, { lineKey: 'vent', itemId: 'grand', reason }),
    ).toEqual([
      {
        code: 'invalid',
        path: 'job.overrides[1].lineKey',
        message: 'vent is overridden twice; put both changes in one override.',
      },
    ])
  })
  it('a quantity that nobody sells, by its own place', () => {
    const [problem] = problemsOf({ lineKey: 'panel', quantity: 2, reason })
    expect(problem?.path).toBe('job.overrides[0].quantity')
  })
  it('an item that nobody sells, by its own place among the changes', () => {
    const fine = { lineKey: 'blank', quantity: 1, reason }
    expect(problemsOf(fine, { lineKey: 'vent', itemId: 'rare', quantity: 2, reason })).toEqual([
      {
        code: 'gap',
        path: 'job.overrides[1].itemId',
        message: 'Nobody asks a price today for Vent rare.',
      },
    ])
  })
  it('every fault at once, in the order of the lines and then of the changes', () => {
    const wrong = [
      { lineKey: 'roof', quantity: 1, reason },
      { lineKey: 'panel', itemId: 'plain', reason },
      { lineKey: 'vent', itemId: 'none', reason },
    ]
    expect(problemsOf(...wrong).map(({ path }) => path)).toEqual([
      'job.overrides[2].itemId',
      'job.overrides[1].itemId',
      'job.overrides[0].lineKey',
    ])
  })
})
