import { describe, expect, it } from 'vitest'
import { fittedCost, trialFacts } from '../../../../src-main/engine/choose/fitted-cost.ts'
import { lineKeyOf, trialPrices } from '../../../../src-main/engine/choose/trial-prices.ts'
import { answered } from '../../../answered.ts'
import { panel, priceOf, trialForTests } from './trial-for-tests.ts'

const light = panel('light')
const heavy = panel('heavy', { dryKg: 40 })
const bare = panel('bare', { brackets: [] })
const wide = panel('wide', {
  brackets: [light.brackets, light.brackets, light.brackets].flat(),
})
const trial = trialForTests({
  emitters: [light, heavy, bare, wide],
  prices: [priceOf('light', 10_000), priceOf('heavy', 10_001), priceOf('wide', 20_000)],
})

describe('what one emitter after another costs in one swap', () => {
  it('is the emitter and a pack of screws as sold, and the work: 120.00 + 1.50 + (12 + 4 x 3 + 5) min at 1.00', () => {
    const { costOf } = trialPrices(trial)
    expect(answered(costOf(light)).fittedPence).toBe(12_000 + 150 + 2900)
  })

  it('has two people for a heavy one, and rounds what it is sold for: 100.01 x 1.2 = 120.012', () => {
    const { costOf } = trialPrices(trial)
    expect(answered(costOf(heavy)).fittedPence).toBe(12_001 + 150 + 3400)
  })

  it('buys another pack for twelve holes, and drills each: 240.00 + 2 x 1.50 + (12 + 12 x 3 + 5) min', () => {
    const { costOf } = trialPrices(trial)
    expect(answered(costOf(wide)).fittedPence).toBe(24_000 + 300 + 5300)
  })

  it('is the same whatever was asked before, and the same as worked up with its reasons', () => {
    const { costOf } = trialPrices(trial)
    for (const emitter of [light, heavy, wide, heavy, light]) {
      const { fittedPence, gaps } = answered(fittedCost(emitter, trial))
      const cost = answered(costOf(emitter))
      expect(cost.fittedPence).toBe(fittedPence)
      expect(cost.gaps.toSorted()).toEqual(gaps.toSorted())
    }
  })

  it('names what the catalogue cannot supply, and leaves it out of the price', () => {
    const { gaps, fittedPence } = answered(trialPrices(trial).costOf(panel('unknown')))
    expect(fittedPence).toBe(150 + 2900)
    expect(gaps).toContain('The catalogue has no wall plug (bit 6 mm, length 30 mm).')
    expect(gaps.some((gap) => gap.includes('screw'))).toBe(false)
  })

  it('refuses an emitter that cannot be set out', () => {
    expect(trialPrices(trial).costOf(bare)).toEqual(fittedCost(bare, trial))
    expect(trialPrices(trial).costOf(bare).ok).toBe(false)
  })

  it('counts packs by all the holes: five screws and ten are one pack, eleven are two', () => {
    const { costOf } = trialPrices(trial)
    const five = panel('five', { brackets: [{ name: 'all', upper: true, holes: holesOf(5) }] })
    const ten = panel('ten', { brackets: [{ name: 'all', upper: true, holes: holesOf(10) }] })
    const eleven = panel('eleven', { brackets: [{ name: 'all', upper: true, holes: holesOf(11) }] })
    const partsPence = [five, ten, eleven].map((one) => answered(costOf(one)).fittedPence)
    const work = (holes: number) => 1200 + 500 + holes * 300
    expect(partsPence).toEqual([150 + work(5), 150 + work(10), 300 + work(11)])
  })
})

const holesOf = (many: number) =>
  Array.from({ length: many }, (_, at) => ({ acrossMm: -300 + 60 * at, upMm: 500 }))

describe('the rules of one swap', () => {
  const { facts } = answered(trialFacts(light, trial))
  const prices = trialPrices(trial)

  it('need a plug and a screw for each hole, and of the holes alone nothing else', () => {
    const inHoles = prices
      .holeNeedsOf(facts)
      .map(({ kind, quantity, swapIds, shared }) => ({ kind, quantity, swapIds, shared }))
    const each = (kind: string) => ({ kind, quantity: 1, swapIds: ['swap-1'], shared: false })
    expect(inHoles).toHaveLength(8)
    expect(inHoles.filter(({ kind }) => kind === 'plug')).toEqual(Array(4).fill(each('plug')))
    expect(inHoles.filter(({ kind }) => kind === 'screw')).toEqual(Array(4).fill(each('screw')))
    const all = prices.needsOf(facts)
    expect(all.filter(({ kind }) => kind === 'screw')).toHaveLength(4)
    expect(all.filter(({ kind }) => kind === 'emitter')).toHaveLength(1)
    expect(all.find(({ kind }) => kind === 'testKit')).toMatchObject({ shared: true, quantity: 1 })
  })

  it('charge the work alone: (12 + 4 x 3 + 5) min at 60.00 an hour', () => {
    expect(answered(prices.workPence(facts))).toBe(2900)
    const [swap] = facts.swaps
    if (swap === undefined) throw new Error('There is a swap')
    const fewer = { ...facts, swaps: [{ ...swap, holes: swap.holes.slice(0, 1) }] }
    expect(answered(prices.workPence(fewer))).toBe(2000)
    expect(answered(prices.workPence(facts))).toBe(2900)
  })
})

it('the line of a need is named by its kind and what it must be', () => {
  const spec = { thread: 'G1/2', sealing: 'oRing' }
  expect(lineKeyOf({ kind: 'vent', spec })).toBe(lineKeyOf({ kind: 'vent', spec: { ...spec } }))
  expect(lineKeyOf({ kind: 'vent', spec })).not.toBe(lineKeyOf({ kind: 'blank', spec }))
  expect(lineKeyOf({ kind: 'blank', spec })).toMatch(/^blank /)
})
