import { describe, expect, it } from 'vitest'
import { refuse } from '../../../../src-main/domain/outcome.ts'
import { cheapestFirst } from '../../../../src-main/engine/choose/cheapest-first.ts'
import { emitterStock } from '../../../../src-main/engine/choose/emitter-stock.ts'
import { screenEmitters } from '../../../../src-main/engine/choose/screen-emitters.ts'
import type { Screen } from '../../../../src-main/engine/choose/screen-emitters.ts'
import { tellChoices } from '../../../../src-main/engine/choose/tell-choices.ts'
import type { Told } from '../../../../src-main/engine/choose/tell-choices.ts'
import { trialPrices } from '../../../../src-main/engine/choose/trial-prices.ts'
import { wallLimits } from '../../../../src-main/engine/choose/wall-limits.ts'
import { accept } from '../../../../src-main/domain/outcome.ts'
import { answered } from '../../../answered.ts'
import { panel, priceOf, trialForTests } from './trial-for-tests.ts'

/** At 75/65 in a room at 20 a panel gives what it is rated at: the need is 500 W, 100 W of it come from elsewhere. */
const at = { flowC: 75, returnC: 65, roomC: 20 }
const emitters = [
  panel('cheap', { ratedW: 500 }),
  panel('same', { ratedW: 450 }),
  panel('dear', { ratedW: 600 }),
  panel('dearest', { ratedW: 600 }),
  panel('weak', { ratedW: 390 }),
  panel('weaker', { ratedW: 300 }),
  panel('unpriced', { ratedW: 200 }),
  panel('broken', {
    ratedW: 800,
    brackets: [{ name: 'one', upper: true, holes: [{ acrossMm: 0, upMm: 9 }] }],
  }),
]
const prices = [
  priceOf('cheap', 10_000),
  priceOf('same', 10_000),
  priceOf('dear', 11_000),
  priceOf('dearest', 12_000),
  priceOf('weak', 1),
  priceOf('weaker', 1),
  priceOf('broken', 1),
]
const trial = trialForTests({ emitters, prices })
/** Emitter as sold, screws, leak check, four holes and hanging, in pence. */
const fittedFor = (packPence: number) => packPence * 1.2 + 150 + 1200 + 1200 + 500

type Asked = { readonly most: number; readonly mostTold: number; readonly about?: string }

/** The broken one fails when it is bounded, or when it is worked up. */
function told({ most, mostTold, about }: Asked, failsLate = false): Told {
  const stock = emitterStock(trial.shelf)
  const limits = answered(wallLimits({ wall: trial.wall, ...trial.swap }, trial.figures))
  const screen: Screen = { limits, at, needW: 500, othersW: 100, share: 1, want: {} }
  const screened = screenEmitters(stock, screen)
  const problem = refuse('impossible', 'Its bracket is bent.')
  const failed = failsLate || problem.ok ? [] : [{ at: 7, problems: problem.problems }]
  const places = Uint32Array.from(failsLate ? [0, 1, 2, 3, 7] : [0, 1, 2, 3])
  const leastPence = Float64Array.from(places, (place) => (place === 7 ? 1 : 12_000.5 + place))
  const { costOf } = trialPrices(trial)
  const work = (index: number) => {
    const place = places[index] ?? 0
    const emitter = emitters[place]
    if (emitter === undefined || place === 7) return problem
    const fitted = costOf(emitter)
    return fitted.ok ? accept({ emitter, givesW: screened.givesW[place] ?? 0, fitted: fitted.value }) : fitted
  }
  const closer = (index: number) => leastPence[index] ?? 0
  const cheapest = cheapestFirst(leastPence, { closer, work }, { most, mostWorked: 100 })
  const bounds = { places, leastPence, closer, failed }
  return tellChoices({ stock, screened, screen, bounds, cheapest, trial, most, mostTold, about })
}

describe('what a search tells', () => {
  it('shows those that are wanted with rank, heat to spare, price and reasons', () => {
    const { ranked } = told({ most: 2, mostTold: 10 })
    expect(ranked.map(({ emitter, rank, fittedPence }) => [emitter.itemId, rank, fittedPence])).toEqual([
      ['cheap', 1, fittedFor(10_000)],
      ['same', 2, fittedFor(10_000)],
    ])
    expect(ranked[0]?.givesW).toBeCloseTo(500, 9)
    expect(ranked.map(({ spareW }) => spareW)).toEqual([100, 50])
    expect(ranked[0]?.emitterPence).toBe(12_000)
    expect(ranked[0]?.why.says).toBe('Panel cheap: gives 500 W at 75/65.')
    expect(ranked[0]?.why.value).toBe(fittedFor(10_000))
    expect(ranked[0]?.why.from.map(({ value }) => value)).toEqual([expect.closeTo(500, 6), fittedFor(10_000)])
  })

  it('says why one stands before another of the same price, and nothing where the prices differ or none comes after', () => {
    const { ranked } = told({ most: 3, mostTold: 10 })
    expect(ranked.map(({ tie }) => tie)).toEqual([
      'The same price as Panel same; it stands before it because it gives 50 W more.',
      undefined,
      undefined,
    ])
    expect('tie' in (ranked[2] ?? {})).toBe(false)
  })

  it('tells the dearer by their least price in whole pence, the lowest first, as many as are wanted', () => {
    const { dearer, counted } = told({ most: 1, mostTold: 10 })
    expect(dearer.length).toBe(3)
    expect(dearer.map(({ leastPence }) => leastPence)).toEqual(
      dearer.map(({ leastPence }) => leastPence).toSorted((a, b) => a - b),
    )
    expect(dearer.every(({ leastPence }) => Number.isInteger(leastPence))).toBe(true)
    expect(counted.dearer).toBe(3)
    const one = told({ most: 1, mostTold: 1 })
    expect(one.dearer).toEqual(dearer.slice(0, 1))
    expect(one.counted.dearer).toBe(3)
  })

  it('tells of one that was worked up what it costs, and of one that was not its least price, rounded down', () => {
    const { dearer } = told({ most: 1, mostTold: 10 })
    const known = new Map(dearer.map(({ itemId, leastPence }) => [itemId, leastPence]))
    // Least prices are 12000.5 to 12003.5 and the first costs 15050, so all four were worked up.
    expect([...known]).toEqual([
      ['same', fittedFor(10_000)],
      ['dear', fittedFor(11_000)],
      ['dearest', fittedFor(12_000)],
    ])
    const none = told({ most: 0, mostTold: 10 })
    expect(none.ranked).toEqual([])
    expect(none.dearer.length + none.ranked.length).toBe(4)
  })

  it('tells the refused by how many reasons they have, then by their heat, each with its reasons', () => {
    const { refused, counted } = told({ most: 1, mostTold: 10 })
    expect(refused.map(({ itemId, reasons }) => [itemId, ...reasons.map(({ says }) => says)])).toEqual([
      ['broken', 'Its bracket is bent.'],
      ['weak', '10 W short at 75/65'],
      ['weaker', '100 W short at 75/65'],
      ['unpriced', '200 W short at 75/65', 'nobody asks a price for it today'],
    ])
    expect(counted).toEqual({
      heat: 3,
      wall: 0,
      obstacle: 0,
      wanted: 0,
      price: 1,
      listing: 1,
      dearer: 3,
      refused: 4,
    })
    expect(told({ most: 1, mostTold: 2 }).refused).toEqual(refused.slice(0, 2))
  })

  it('counts one that fails only when it is worked up among the refused as well', () => {
    const late = told({ most: 1, mostTold: 10 }, true)
    const early = told({ most: 1, mostTold: 10 })
    expect(late.counted).toEqual(early.counted)
    expect(late.refused).toEqual(early.refused)
    expect(late.ranked).toEqual(early.ranked)
  })

  it('names each by its id, name, sizes and heat', () => {
    const [weak] = told({ most: 1, mostTold: 10 }).refused.slice(1)
    expect(weak).toEqual({
      itemId: 'weak',
      name: 'Panel weak',
      widthMm: 1000,
      heightMm: 600,
      generic: true,
      givesW: expect.closeTo(390, 9) as number,
      reasons: [{ about: 'heat', says: '10 W short at 75/65' }],
    })
  })

  it.each([
    ['cheap', 'ranked', []],
    ['dear', 'dearer', []],
    ['weak', 'refused', ['10 W short at 75/65']],
    ['broken', 'refused', ['Its bracket is bent.']],
  ])('tells how the one that was asked about stands: %s is %s', (about, stands, says) => {
    for (const mostTold of [0, 10]) {
      const { asked } = told({ most: 2, mostTold, about })
      expect([asked?.itemId, asked?.stands, asked?.reasons.map((one) => one.says)]).toEqual([
        about,
        stands,
        says,
      ])
    }
  })

  it('tells of nobody in particular when nobody was asked about, or there is none of that name', () => {
    expect('asked' in told({ most: 2, mostTold: 10 })).toBe(false)
    expect('asked' in told({ most: 2, mostTold: 10, about: 'nobody' })).toBe(false)
  })
})
