import { describe, expect, it } from 'vitest'
import type { Emitter } from '../../../../src-main/domain/item.ts'
import type { SupplierPrice } from '../../../../src-main/domain/price.ts'
import type { Pipe, Wall } from '../../../../src-main/domain/wall.ts'
import { boundPrices } from '../../../../src-main/engine/choose/bound-prices.ts'
import { emitterStock } from '../../../../src-main/engine/choose/emitter-stock.ts'
import type { Trial } from '../../../../src-main/engine/choose/fitted-cost.ts'
import { trialPrices } from '../../../../src-main/engine/choose/trial-prices.ts'
import { wallLimits } from '../../../../src-main/engine/choose/wall-limits.ts'
import { answered } from '../../../answered.ts'
import { panel, priceOf, trialForTests } from './trial-for-tests.ts'

function boundsOf(trial: Trial, suitable?: readonly number[]) {
  const stock = emitterStock(trial.shelf)
  const { wall, swap, figures } = trial
  const limits = answered(wallLimits({ wall, ...swap }, figures))
  const all = suitable ?? stock.emitters.map((_, at) => at)
  return boundPrices({ stock, suitable: all }, trial, { limits, prices: trialPrices(trial) })
}

const light = panel('light')
const heavy = panel('heavy', { dryKg: 26 })
const liftable = panel('liftable', { dryKg: 25 })
const bare = panel('bare', { brackets: [] })
const emitters: readonly Emitter[] = [light, bare, heavy, liftable]
const prices: readonly SupplierPrice[] = emitters.map(({ itemId }, at) => priceOf(itemId, 10_000 + at))
const trial = trialForTests({ emitters, prices })

describe('the least that emitters cost fitted', () => {
  /** A penny less for rounding the emitter, and one for rounding the rest: screws 1.50, leak check 12, holes 4 x 3, hanging 5 min. */
  const beside = 150 + 1200 + 1200 + 500 - 2

  it('is what each is sold for, a pack of screws and the work: of a heavy one two people hang it', () => {
    const { leastPence, places } = answered(boundsOf(trial))
    expect([...places]).toEqual([0, 2, 3])
    expect(leastPence[0]).toBeCloseTo(10_000 * 1.2 + beside, 9)
    expect(leastPence[1]).toBeCloseTo(10_002 * 1.2 + beside + 500, 9)
    expect(leastPence[2]).toBeCloseTo(10_003 * 1.2 + beside, 9)
  })

  it('is never more than it costs indeed, and within two pence of it but for 25 kg, which may take two people', () => {
    const { leastPence, places } = answered(boundsOf(trial))
    const { costOf } = trialPrices(trial)
    for (const [index, at] of places.entries()) {
      const emitter = emitters[at] ?? light
      const { fittedPence } = answered(costOf(emitter))
      expect(leastPence[index]).toBeLessThanOrEqual(fittedPence)
      if (emitter !== liftable) expect(leastPence[index]).toBeGreaterThan(fittedPence - 2.5)
    }
  })

  it('by margin is the price through what is left of it: 100.00 / (1 - 0.2) = 125.00', () => {
    const { figures } = trial
    const margin = figures.settings['money.marginEmitterBasisPoints']
    if (margin === undefined) throw new Error('The margin is a figure')
    const settings = { ...figures.settings, 'money.marginEmitterBasisPoints': { ...margin, value: 2000 } }
    const { leastPence } = answered(boundsOf({ ...trial, figures: { ...figures, settings } }, [0]))
    expect(leastPence[0]).toBeCloseTo(12_500 + beside, 9)
  })

  it('puts apart those that cannot be set out, with what is wrong, and asks only for those that suit', () => {
    const { failed, places } = answered(boundsOf(trial, [1, 3]))
    expect([...places]).toEqual([3])
    expect(failed.map(({ at }) => at)).toEqual([1])
    expect(failed[0]?.problems).toEqual(refusalOf(bare))
  })

  it('is refused altogether on a wall for which there is no fixing', () => {
    const hollow = trialForTests({ emitters, prices, wall: { build: 'hollowBlock' } })
    const refused = boundsOf(hollow)
    expect(refused.ok ? [] : refused.problems.map(({ code, path }) => [code, path])).toEqual([
      ['gap', 'wall.build'],
    ])
  })

  it('takes the cheaper way to fix it: screws for a board at 3.00 where those for plugs come to 6.00', () => {
    const dear = trialForTests({ emitters: [light], prices, tenScrewsPence: 400 })
    const { leastPence } = answered(boundsOf(dear))
    expect(leastPence[0]).toBeCloseTo(10_000 * 1.2 + beside - 150 + 300, 9)
  })

  it('takes twice as long for holes through tile, which a board costs less than; not where a part alone is tiled', () => {
    const least = (wall: Partial<Wall>) =>
      answered(boundsOf(trialForTests({ emitters: [light], prices, wall }))).leastPence[0]
    // Through tile 4 x 6 min and 1.50 of screws, or a board: 4 x 3 min and 3.00 of screws.
    expect(least({ finish: 'tile' })).toBeCloseTo(10_000 * 1.2 + beside - 150 + 300, 9)
    expect(least({ finish: 'tile', tiledToMm: 300 })).toBeCloseTo(10_000 * 1.2 + beside, 9)
  })
})

function refusalOf(emitter: Emitter) {
  const cost = trialPrices(trial).costOf(emitter)
  return cost.ok ? [] : cost.problems
}

describe('a closer least price', () => {
  const pipe = (side: Pipe['side'], xMm: number): Pipe => {
    return { side, xMm, from: 'floor', material: 'copper', outsideMm: 15, carries: 'unknown' }
  }
  const withPipes = (leftMm: number, rightMm: number) =>
    trialForTests({ emitters: [light, heavy], prices, pipes: [pipe('left', leftMm), pipe('right', rightMm)] })
  /** The middle is at 1600 and the pipe centres are 1070 apart, so the valves come to 1065 and 2135. */
  const closerAt = (leftMm: number, rightMm: number, index = 0) => {
    const { closer, leastPence } = answered(boundsOf(withPipes(leftMm, rightMm)))
    return closer(index) - (leastPence[index] ?? 0)
  }

  it('is no closer where no pipe is surveyed, or each meets its valve', () => {
    const { closer, leastPence } = answered(boundsOf(trial))
    expect(closer(0)).toBe(leastPence[0])
    expect(closerAt(1065, 2135)).toBe(0)
    expect(closerAt(1068, 2132)).toBe(0)
  })

  it('has the four minutes that easing a pipe across takes, a penny less for rounding', () => {
    expect(closerAt(1085, 2135)).toBeCloseTo(400 - 1, 9)
    expect(closerAt(1065, 2115)).toBeCloseTo(400 - 1, 9)
    expect(closerAt(1085, 2115)).toBeCloseTo(800 - 1, 9)
  })

  it('is asked of each by its place among those that suit', () => {
    expect(closerAt(1085, 2115, 1)).toBeCloseTo(800 - 1, 9)
    const { closer, leastPence, places } = answered(boundsOf(withPipes(1085, 2115), [1]))
    expect([...places]).toEqual([1])
    expect(closer(0) - (leastPence[0] ?? 0)).toBeCloseTo(800 - 1, 9)
  })
})
