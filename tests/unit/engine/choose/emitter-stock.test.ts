import { describe, expect, it } from 'vitest'
import type { Emitter } from '../../../../src-main/domain/item.ts'
import type { SupplierPrice } from '../../../../src-main/domain/price.ts'
import { emitterStock } from '../../../../src-main/engine/choose/emitter-stock.ts'
import { makeUpOf } from '../../../../src-main/engine/choose/make-up.ts'
import { panel, priceOf } from './trial-for-tests.ts'

const stockOf = (emitters: readonly Emitter[], prices: readonly SupplierPrice[] = []) =>
  emitterStock({
    emitters: new Map(emitters.map((emitter) => [emitter.itemId, emitter])),
    prices: Map.groupBy(prices, ({ itemId }) => itemId),
  })

const tapping = (at: Emitter['tappings'][number]['at'], holds: 'valve' | 'vent') =>
  ({ at, thread: 'G1/2', holds }) as const

describe('a stock of emitters in columns', () => {
  const one = panel('one', { ratedW: 900, exponent: 1.25, dryKg: 12 })
  const two = panel('two', {
    ratedW: 700,
    dryKg: 30,
    widthMm: 500,
    heightMm: 1200,
    pipeCentresMm: 450,
    form: { kind: 'towelRail', curve: 'curved', rungs: 20 },
    finish: 'chrome',
    brackets: [],
    rating: { flowC: 90, returnC: 70, roomC: 20 },
    tappings: [tapping('bottomLeft', 'valve'), tapping('topRight', 'vent')],
  })
  const stock = stockOf(
    [one, panel('old', { retired: true }), two],
    [priceOf('one', 9000), priceOf('one', 8000, { supplierId: 'other' }), priceOf('old', 1)],
  )

  it('leaves out those that are sold no more, and keeps the order of the rest', () => {
    expect(stock.emitters).toEqual([one, two])
  })

  it('has the figures of each, its lowest price, less than nothing where nobody asks one', () => {
    expect([...stock.ratedW]).toEqual([900, 700])
    expect([...stock.exponent]).toEqual([1.25, 1.3])
    expect([...stock.dryKg]).toEqual([12, 30])
    expect([...stock.packPence]).toEqual([8000, -1])
    expect([...stock.hasHoles]).toEqual([1, 0])
  })

  it('lists the ratings, shapes, styles, make-ups and reaches that occur', () => {
    expect(stock.ratings).toEqual([undefined, { flowC: 90, returnC: 70, roomC: 20 }])
    // Front of the emitter: 40 off the wall and 60 deep. Valves: nobody listed them, so both; bottom left alone.
    expect(stock.shapes).toEqual([
      { widthMm: 1000, heightMm: 600, pipeCentresMm: 1070, valveSides: 3, frontMm: 100, curved: false },
      { widthMm: 500, heightMm: 1200, pipeCentresMm: 450, valveSides: 1, frontMm: 100, curved: true },
    ])
    expect(stock.styles).toEqual([
      { kind: 'panel', finish: 'white' },
      { kind: 'towelRail', finish: 'chrome' },
    ])
    expect(stock.makeUps).toEqual([makeUpOf(one), makeUpOf(two)])
    expect(stock.reaches).toEqual([one, two])
    for (const places of [stock.ratingAt, stock.shapeAt, stock.styleAt, stock.makeUpAt, stock.reachAt]) {
      expect([...places]).toEqual([0, 1])
    }
  })

  it('of no emitters has no columns', () => {
    const { emitters, ratings, shapes, ratedW } = stockOf([])
    expect([emitters, ratings, shapes, [...ratedW]]).toEqual([[], [], [], []])
  })
})

describe('what emitters have alike stands once', () => {
  type Column = 'ratingAt' | 'shapeAt' | 'styleAt' | 'makeUpAt' | 'reachAt'
  const columns: readonly Column[] = ['ratingAt', 'shapeAt', 'styleAt', 'makeUpAt', 'reachAt']
  const [firstBracket] = panel('a').brackets
  if (firstBracket === undefined) throw new Error('A panel has brackets')
  const rows: readonly (readonly [string, Partial<Emitter>, readonly Column[]])[] = [
    ['nothing but its name', { name: 'Another' }, []],
    ['its heat, its mass and its exponent', { ratedW: 1, exponent: 1.1, dryKg: 99 }, []],
    ['its test temperatures', { rating: { flowC: 75, returnC: 65, roomC: 21 } }, ['ratingAt']],
    ['its width', { widthMm: 999 }, ['shapeAt']],
    ['its width, so that its valves hang under it', { widthMm: 1100 }, ['shapeAt', 'reachAt']],
    ['its height', { heightMm: 601 }, ['shapeAt']],
    ['its pipe centres', { pipeCentresMm: 1060 }, ['shapeAt', 'reachAt']],
    ['how far its connections are off the wall', { connectionOffWallMm: 71 }, ['reachAt']],
    ['its depth', { depthMm: 61 }, ['shapeAt']],
    ['its depth and its gap the other way', { depthMm: 61, wallGapMm: 39 }, []],
    ['its finish', { finish: 'black' }, ['styleAt', 'makeUpAt']],
    ['its panel', { form: { kind: 'panel', panel: 'double' } }, []],
    ['its kind', { form: { kind: 'column', columns: 2, sections: 4 } }, ['styleAt', 'makeUpAt']],
    [
      'how it curves',
      { form: { kind: 'towelRail', curve: 'curved', rungs: 4 } },
      ['shapeAt', 'styleAt', 'makeUpAt'],
    ],
    ['which side its valve is on', { tappings: [tapping('bottomRight', 'valve')] }, ['shapeAt', 'makeUpAt']],
    ['what its tapping holds', { tappings: [tapping('topLeft', 'vent')] }, ['makeUpAt']],
    ['how many brackets it has', { brackets: [firstBracket] }, ['makeUpAt']],
    [
      'where its holes are, but not how many',
      { brackets: panel('a').brackets.map((one) => ({ ...one, holes: one.holes.toReversed() })) },
      [],
    ],
    ['what lies in its box', { box: [{ kind: 'vent', spec: {}, count: 1 }] }, ['makeUpAt']],
  ]

  it.each(rows)('two that differ in %s', (_what, changes, apart) => {
    const stock = stockOf([panel('a'), panel('b', changes), panel('c')])
    for (const column of columns) {
      expect([column, ...stock[column]]).toEqual([column, 0, apart.includes(column) ? 1 : 0, 0])
    }
  })

  it('to the letter, or by sharing the very lists', () => {
    const shared = panel('a', { tappings: [tapping('bottomLeft', 'valve')] })
    const others = [
      { ...shared, itemId: 'b' },
      { ...shared, itemId: 'c', tappings: [] },
      { ...shared, itemId: 'd', box: [{ kind: 'vent' as const, spec: {}, count: 1 }] },
      { ...shared, itemId: 'e' },
    ]
    const { makeUpAt, shapeAt, shapes } = stockOf([shared, ...others])
    expect([...makeUpAt]).toEqual([0, 0, 1, 2, 0])
    expect([...shapeAt].map((at) => shapes[at]?.valveSides)).toEqual([1, 1, 3, 1, 1])
  })
})
