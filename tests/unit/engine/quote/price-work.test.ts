import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Job, Override } from '../../../../src-main/domain/job.ts'
import type { QuoteLine } from '../../../../src-main/domain/quote.ts'
import {
  overridePriceProblems,
  overridePrices,
  ownPrices,
} from '../../../../src-main/engine/quote/override-prices.ts'
import { pricedWork, waivedGap } from '../../../../src-main/engine/quote/price-work.ts'
import { answered, refused } from '../../../answered.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { figures, lineOf } from './work-for-tests.ts'

const lineAt = (lineId: string, netPence: number): QuoteLine => ({
  lineId,
  section: 'labour',
  name: lineId,
  quantity: 1,
  unit: 'min',
  netPence,
  rateKey: 'standard',
  shared: true,
  swapIds: [],
  generic: false,
  why: given(lineId, netPence, 'pence'),
})
/** Two lines of 10.03, and a tenth of 20.06 for the unforeseen, 2.01: 22.07 in all, and no driving. */
const base = [lineAt('labour-1', 1003), lineAt('labour-2', 1003)]
const site = { addressLines: ['1 Example Row'] }
const usual = { taxTreatment: 'usual', rounding: 'document' } as const
const work = (pricing?: Job['pricing'], more: Partial<Job> = {}) => ({
  job: bedroomJob({ site, ...(pricing === undefined ? {} : { pricing }), ...more }),
  base: () => base,
  own: new Map<string, Override>(),
  figures,
})
const price = (pricing?: Job['pricing'], more: Partial<Job> = {}) => answered(pricedWork(work(pricing, more)))

describe('tax of the work', () => {
  it('is rounded half up once where nobody says otherwise: a fifth of 22.07 is 4.414, 4.41', () => {
    const { lines, totals, why } = price()
    expect(lines.map(({ netPence }) => netPence)).toEqual([1003, 1003, 201])
    expect(lines[0]).toBe(base[0])
    expect(lines[0]).not.toHaveProperty('taxPence')
    // A quarter of 26.48 is put down.
    expect(totals).toMatchObject({ netPence: 2207, grossPence: 2648, depositPence: 662 })
    expect(totals).not.toHaveProperty('rounding')
    expect(totals).not.toHaveProperty('rule')
    expect(totals).not.toHaveProperty('reverseChargePence')
    expect(why.from[1]?.says).toBe('VAT, standard rate: its lines x the rate, rounded half up once.')
  })

  it('is the same where the job says so, and then it is told', () => {
    expect(price(usual).totals).toMatchObject({ grossPence: 2648, rounding: 'document', rule: 'half-up' })
  })

  it('follows the rule of the job: up is 4.42', () => {
    const { totals, why } = price({ ...usual, rule: 'up' })
    expect(totals).toMatchObject({ grossPence: 2649, rounding: 'document', rule: 'up' })
    expect(why.from[1]?.says).toBe('VAT, standard rate: its lines x the rate, rounded up once.')
  })

  it('by line is shown on each: 2.01, 2.01 and 0.40 are 4.42', () => {
    const { lines, totals, why } = price({ ...usual, rounding: 'line' })
    expect(lines.map(({ taxPence }) => taxPence)).toEqual([201, 201, 40])
    expect(totals).toMatchObject({ grossPence: 2649, rounding: 'line', rule: 'half-up' })
    expect(why.from[1]?.says).toBe('VAT, standard rate: its lines x the rate, each line rounded half up.')
    const up = price({ ...usual, rounding: 'line', rule: 'up' })
    expect(up.lines.map(({ taxPence }) => taxPence)).toEqual([201, 201, 41])
  })

  it('is the customer’s under reverse charge, and in no total', () => {
    const { lines, totals } = price({ ...usual, taxTreatment: 'reverseCharge' })
    expect(lines.map(({ rateKey }) => rateKey)).toEqual(['reverseCharge', 'reverseCharge', 'reverseCharge'])
    expect(totals).toMatchObject({ grossPence: 2207, reverseChargePence: 441, depositPence: 552 })
  })

  it('of an option goes by the rule of the job: a fifth of 3.33 is 0.666', () => {
    const options = [{ optionId: 'x', name: 'X', netPence: 333, chosen: false }]
    expect(price(undefined, { options }).options[0]?.taxPence).toBe(67)
    expect(price({ ...usual, rule: 'down' }, { options }).options[0]?.taxPence).toBe(66)
  })
})

describe('work that cannot be priced', () => {
  it('is refused before it is worked out where its rounding is not lawful', () => {
    const wrong = work({ ...usual, rounding: 'line', rule: 'down' })
    const never = () => {
      throw new Error('This was worked out')
    }
    expect(refused(pricedWork({ ...wrong, base: never }))).toEqual({
      code: 'invalid',
      message:
        'Tax may not be rounded down line by line; round each line to the nearest penny (half-up), or round the document down once.',
      path: 'job.pricing.rule',
    })
  })

  it('is refused with every fault: a category and a price of lines that are not there', () => {
    const overrides = [
      { lineKey: 'labour-1', netPence: 5, reason: 'Gift' },
      { lineKey: 'roof', netPence: 5, reason: 'None' },
    ]
    const wrong = work({ ...usual, lineCategories: { loft: 'zero' } }, { overrides })
    const answer = pricedWork({ ...wrong, own: ownPrices(overrides, []) })
    expect(answer.ok ? [] : answer.problems.map(({ path }) => path)).toEqual([
      'job.pricing.lineCategories.loft',
      'job.overrides[1].lineKey',
    ])
  })

  it('is refused where its discounts are, and where one kind is priced twice', () => {
    const discounts = [{ kind: 'amount', name: 'Big', pence: 2208 } as const]
    expect(refused(pricedWork(work({ ...usual, discounts }))).path).toBe('job.pricing.discounts[0]')
    const markUps = (['valve', 'valve'] as const).map((of) => ({ of, by: 'markUp' as const, basisPoints: 1 }))
    expect(refused(pricedWork(work({ ...usual, markUps }))).path).toBe('job.pricing.markUps[1].of')
  })
})

describe('a price by hand', () => {
  const overrides: readonly Override[] = [
    { lineKey: 'vent', netPence: 5, reason: 'Gift' },
    { lineKey: 'travel', netPence: 0, reason: 'Next door' },
    { lineKey: 'plug', quantity: 5, reason: 'Spare' },
  ]
  const own = () => ownPrices(overrides, [lineOf('panel'), lineOf('vent'), lineOf('plug')])

  it('is of a part by the key of its line, of all else by its id, and of what has a price', () => {
    expect([...own().keys()]).toEqual(['part-2', 'travel'])
    expect(own().get('part-2')).toBe(overrides[0])
  })

  it('keeps what was worked out, what it was before, and the reason; other lines stay as they are', () => {
    const changed = { ...lineAt('part-2', 900), was: { quantity: 4 } }
    const [part, other] = overridePrices([changed, lineAt('labour-1', 7)], own())
    expect(part).toEqual({
      ...changed,
      netPence: 5,
      was: { quantity: 4, netPence: 900 },
      why: because('Price set by hand. Reason: Gift', 5, {
        unit: 'pence',
        from: [given('It was', 900, 'pence'), changed.why],
        source: 'changed by hand',
      }),
    })
    expect(other).toEqual(lineAt('labour-1', 7))
    expect(overridePrices([lineAt('travel', 720)], own())[0]?.netPence).toBe(0)
  })

  it('stands before the allowance of it is worked out', () => {
    const overridden = [{ lineKey: 'labour-1', netPence: 1997, reason: 'Agreed' }]
    const { job, ...more } = work(undefined, { overrides: overridden })
    const { lines } = answered(pricedWork({ ...more, job, own: ownPrices(overridden, []) }))
    expect(lines.map(({ netPence }) => netPence)).toEqual([1997, 1003, 300])
  })

  it('of a line that is not there is refused by its place', () => {
    expect(overridePriceProblems(overrides, own(), ['part-2'])).toEqual([
      {
        code: 'invalid',
        message:
          'The quote has no priced line travel; name a part by the key of its line in takeoff.job, all else by its id in quote.build.',
        path: 'job.overrides[1].lineKey',
      },
    ])
    expect(overridePriceProblems(overrides, own(), ['part-2', 'travel'])).toEqual([])
  })
})

describe('a gap that the job lets stand', () => {
  const gap = { gapKey: 'vent', says: 'No vent.' }
  it('has the reason that was written, and none any more once that is gone', () => {
    const waived = { ...gap, waived: 'Kept' }
    expect(waivedGap(gap, [{ gapKey: 'vent', reason: 'Kept' }])).toEqual(waived)
    expect(waivedGap(waived, [{ gapKey: 'vent', reason: 'Not wanted' }]).waived).toBe('Not wanted')
    expect(waivedGap(waived, [{ gapKey: 'blank', reason: 'Kept' }])).toEqual(gap)
    expect(waivedGap(waived, [])).not.toHaveProperty('waived')
    expect(waivedGap(waived, undefined)).not.toHaveProperty('waived')
  })
})
