import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import type { TaxCategory } from '../../../../src-main/domain/pricing.ts'
import { allocate } from '../../../../src-main/engine/money/allocate.ts'
import {
  accountedForPence,
  moneyTotals,
  unlawfulRounding,
} from '../../../../src-main/engine/money/money-totals.ts'
import { mulDiv } from '../../../../src-main/engine/money/mul-div.ts'
import type { RoundingRule } from '../../../../src-main/engine/money/mul-div.ts'
import {
  marginBasisPoints,
  markedUpPence,
  pricedByMarginPence,
  sharePence,
} from '../../../../src-main/engine/money/price.ts'
import {
  reverseCharged,
  roundedHow,
  taxRate,
  taxRateWhy,
  taxSettingOf,
  taxWhy,
} from '../../../../src-main/engine/money/tax-rates.ts'
import { taxOfLines, taxOn, taxTenthsOn, taxTotals } from '../../../../src-main/engine/money/tax-totals.ts'
import { answered, refused } from '../../../answered.ts'

/** Rates that are all different, so that each setting is known by its value. */
const rates: Readonly<Record<string, number>> = {
  'tax.standardBasisPoints': 2000,
  'tax.reducedBasisPoints': 500,
  'tax.zeroBasisPoints': 0,
  'tax.energySavingBasisPoints': 300,
}
const figures: Figures = {
  settings: Object.fromEntries(
    Object.entries(rates).map(([id, value]) => [
      id,
      { says: id, value, unit: 'BasisPoints', source: 'HMRC' },
    ]),
  ),
  tasks: {},
  fixings: [],
}
const ofRate = (id: string) => given(id, rates[id] ?? Number.NaN, 'BasisPoints', 'HMRC')

describe('the rate of each category of tax', () => {
  // Reverse charge bears nothing here and its own rate with the customer: EN 16931-1 BR-AE-05.
  it.each<[TaxCategory, string, string | null, number, number | undefined]>([
    ['standard', 'VAT, standard rate', 'tax.standardBasisPoints', 2000, undefined],
    ['reduced', 'VAT, reduced rate', 'tax.reducedBasisPoints', 500, undefined],
    ['zero', 'VAT, zero rate', 'tax.zeroBasisPoints', 0, undefined],
    ['energySaving', 'VAT, energy-saving materials', 'tax.energySavingBasisPoints', 300, undefined],
    ['exempt', 'Exempt from VAT', null, 0, undefined],
    ['reverseCharge', 'VAT, reverse charge', 'tax.standardBasisPoints', 0, 2000],
    ['reverseChargeReduced', 'VAT, reverse charge at the reduced rate', 'tax.reducedBasisPoints', 0, 500],
  ])('%s is %s', (category, rateName, setting, basisPoints, customerBasisPoints) => {
    const theirs = customerBasisPoints === undefined ? {} : { customerBasisPoints }
    expect(taxRate(category, figures)).toEqual({ rateKey: category, rateName, basisPoints, ...theirs })
    expect(taxSettingOf(category)).toBe(setting)
    expect(taxRateWhy(category, figures)).toEqual(
      setting === null
        ? given('Exempt from VAT', 0, 'BasisPoints', 'the category chosen for the line')
        : ofRate(setting),
    )
  })

  it('is turned to the reduced reverse charge for all that bears tax but the standard rate', () => {
    expect(reverseCharged('standard', figures)).toBe('reverseCharge')
    expect(reverseCharged('energySaving', figures)).toBe('reverseChargeReduced')
    expect(reverseCharged('zero', figures)).toBe('zero')
  })
})

describe('why tax is what it is', () => {
  const net = (pence: number) => given('Net at this rate', pence, 'pence')

  it('is its lines and the rate, rounded as is said', () => {
    const tax = { rateKey: 'reduced', rateName: 'VAT, reduced rate', netPence: 1010, taxPence: 51 }
    expect(taxWhy(tax, figures, 'rounded half up once')).toEqual(
      because('VAT, reduced rate: its lines x the rate, rounded half up once.', 51, {
        unit: 'pence',
        from: [net(1010), ofRate('tax.reducedBasisPoints')],
      }),
    )
  })

  it('is none under reverse charge, with what the customer pays behind it', () => {
    const tax = {
      rateKey: 'reverseCharge',
      rateName: 'VAT, reverse charge',
      netPence: 1000,
      taxPence: 0,
      toAccountFor: { pence: 200 },
    }
    expect(taxWhy(tax, figures, 'rounded down once')).toEqual(
      because('VAT, reverse charge: none is charged; the customer accounts for it.', 0, {
        unit: 'pence',
        source: 'HMRC VATREVCON37100',
        from: [
          because('What the customer pays to HMRC: its lines x the rate, rounded down once.', 200, {
            unit: 'pence',
            from: [net(1000), ofRate('tax.standardBasisPoints')],
          }),
        ],
      }),
    )
  })

  it('says where and how it was rounded', () => {
    expect(roundedHow('document', 'half-up')).toBe('rounded half up once')
    expect(roundedHow('line', 'half-even')).toBe('each line rounded half even')
    expect(roundedHow('lineTenths', 'down')).toBe(
      'each line rounded down to a tenth of a penny and their sum down',
    )
  })
})

describe('totals of money', () => {
  it('give their reason: line by line, and tax by tax', () => {
    const lines = [
      { netPence: 1000, category: 'standard' as const },
      { netPence: 500, category: 'reduced' as const },
      { netPence: -100, category: 'standard' as const },
    ]
    // 900 x 20 % = 180; 500 x 5 % = 25.
    const totals = answered(moneyTotals({ lines, rounding: 'document', rule: 'half-up' }, figures))
    expect(totals).toMatchObject({ netPence: 1400, grossPence: 1605, reverseChargePence: 0, wording: [] })
    expect(totals.why).toEqual(
      because('Net and tax.', 1605, {
        unit: 'pence',
        from: [
          because('The lines added up.', 1400, {
            unit: 'pence',
            from: [
              given('Line 1', 1000, 'pence'),
              given('Line 2', 500, 'pence'),
              given('Line 3', -100, 'pence'),
            ],
          }),
          because('VAT, standard rate: its lines x the rate, rounded half up once.', 180, {
            unit: 'pence',
            from: [given('Net at this rate', 900, 'pence'), ofRate('tax.standardBasisPoints')],
          }),
          because('VAT, reduced rate: its lines x the rate, rounded half up once.', 25, {
            unit: 'pence',
            from: [given('Net at this rate', 500, 'pence'), ofRate('tax.reducedBasisPoints')],
          }),
        ],
      }),
    )
  })

  it('ask for the words of reverse charge where one line of several is reversed', () => {
    const lines = [
      { netPence: 1000, category: 'zero' as const },
      { netPence: 500, category: 'reverseCharge' as const },
    ]
    const totals = answered(moneyTotals({ lines, rounding: 'document', rule: 'half-up' }, figures))
    expect(totals.wording).toEqual(['Reverse charge: customer to pay the VAT to HMRC'])
    expect(totals.reverseChargePence).toBe(100)
    expect(accountedForPence({ taxes: [] })).toBe(0)
  })

  it('refuse only lines rounded down, in words', () => {
    const message =
      'Tax may not be rounded down line by line; round each line to the nearest penny (half-up), or round the document down once.'
    expect(refused(moneyTotals({ lines: [], rounding: 'line', rule: 'down' }, figures))).toEqual({
      code: 'invalid',
      message,
      path: 'rule',
    })
    expect(unlawfulRounding('line', 'down')).toBe(message)
    expect(unlawfulRounding('line', 'half-up')).toBeNull()
    expect(unlawfulRounding('document', 'down')).toBeNull()
    expect(unlawfulRounding('lineTenths', 'down')).toBeNull()
  })
})

describe('tax on lines', () => {
  it('is rounded by line, by document or by tenths: three lines of 1.04 at 17.5 %', () => {
    // By line 18.2 is 18, three times 54. By document 312 x 17.5 % = 54.6, which is 55. By tenths 3 x 18.2 = 54.6.
    const nets = [104, 104, 104]
    expect(taxOfLines(nets, 1750, { rounding: 'line', rule: 'half-up' })).toBe(54)
    expect(taxOfLines(nets, 1750, { rounding: 'document', rule: 'half-up' })).toBe(55)
    expect(taxOfLines(nets, 1750, { rounding: 'lineTenths', rule: 'half-up' })).toBe(55)
    expect(taxOfLines(nets, 1750, { rounding: 'lineTenths', rule: 'down' })).toBe(54)
    // Each line of 0.57 at 17.5 % is 9.975, of which 9.9 counts: three are 29.7, and 29.925 of the document.
    expect(taxOfLines([57, 57, 57], 1750, { rounding: 'lineTenths', rule: 'half-up' })).toBe(30)
    expect([taxTenthsOn(57, 1750), taxTenthsOn(-57, 1750)]).toEqual([99, -99])
    expect([taxOn(57, 1750, 'up'), taxOn(57, 1750, 'down')]).toEqual([10, 9])
  })

  it('is of each rate alone, and what the customer accounts for is in no total', () => {
    const taxed = taxTotals({
      lines: [
        { netPence: 1000, rateKey: 'a' },
        { netPence: 300, rateKey: 'b' },
        { netPence: 200, rateKey: 'a' },
      ],
      rates: [
        { rateKey: 'b', rateName: 'B', basisPoints: 0, customerBasisPoints: 1000 },
        { rateKey: 'a', rateName: 'A', basisPoints: 500 },
        { rateKey: 'c', rateName: 'C', basisPoints: 900 },
      ],
      rounding: 'document',
      rule: 'half-up',
    })
    expect(taxed).toEqual({
      netPence: 1500,
      taxes: [
        {
          rateKey: 'b',
          rateName: 'B',
          basisPoints: 0,
          netPence: 300,
          taxPence: 0,
          toAccountFor: { basisPoints: 1000, pence: 30 },
        },
        { rateKey: 'a', rateName: 'A', basisPoints: 500, netPence: 1200, taxPence: 60 },
      ],
      grossPence: 1560,
    })
  })
})

describe('a whole number times a fraction', () => {
  const of = (a: number, n: number, d: number) =>
    (['half-up', 'half-down', 'half-even', 'up', 'down'] satisfies RoundingRule[]).map((rule) =>
      mulDiv(a, n, d, rule),
    )

  it.each([
    ['a half above an even number', 5, 1, 2, [3, 2, 2, 3, 2]],
    ['a half above an odd number', 7, 1, 2, [4, 3, 4, 4, 3]],
    ['less than a half', 7, 1, 3, [2, 2, 2, 3, 2]],
    ['more than a half', 8, 1, 3, [3, 3, 3, 3, 2]],
    ['nothing over', 9, 1, 3, [3, 3, 3, 3, 3]],
    ['a half below nothing', -5, 1, 2, [-3, -2, -2, -3, -2]],
    ['a fraction below nothing', 5, -1, 2, [-3, -2, -2, -3, -2]],
    ['a divisor below nothing', 7, 1, -2, [-4, -3, -4, -4, -3]],
    ['two below nothing', -7, -1, 2, [4, 3, 4, 4, 3]],
    ['nothing at all', 0, 5, 3, [0, 0, 0, 0, 0]],
  ] as const)('is rounded by its rule: %s', (_, a, n, d, wanted) => {
    expect(of(a, n, d)).toEqual(wanted)
  })

  it('throws in words', () => {
    expect(() => mulDiv(0.5, 1, 1, 'up')).toThrow('0.5 is not a whole number that can be held exactly')
    expect(() => mulDiv(1, 0.5, 1, 'up')).toThrow('0.5 is not a whole number that can be held exactly')
    expect(() => mulDiv(1, 1, 0.5, 'up')).toThrow('0.5 is not a whole number that can be held exactly')
    expect(() => mulDiv(1, 1, 0, 'up')).toThrow('mulDiv cannot divide by 0')
    expect(() => mulDiv(Number.MAX_SAFE_INTEGER, 2, 1, 'up')).toThrow(
      '9007199254740991 × 2 / 1 is too large to be held exactly',
    )
    expect(mulDiv(Number.MAX_SAFE_INTEGER, 1, 1, 'up')).toBe(Number.MAX_SAFE_INTEGER)
  })
})

describe('prices to the penny', () => {
  it('are marked up, down to nothing at -100 %', () => {
    expect([markedUpPence(1001, 5000), markedUpPence(1000, -10_000), markedUpPence(1000, 0)]).toEqual([
      1502, 0, 1000,
    ])
  })

  it('have a margin of less than the whole', () => {
    expect([pricedByMarginPence(1, 9999), pricedByMarginPence(800, 0)]).toEqual([10_000, 800])
    expect(() => pricedByMarginPence(1, 10_000)).toThrow('No price has a margin of 10000 basis points')
    expect([marginBasisPoints(1000, 1000), marginBasisPoints(0, 1000)]).toEqual([0, 10_000])
  })

  it('are shared in hundredths of a percent', () => {
    expect([sharePence(10_000, 1), sharePence(4999, 1), sharePence(5000, 1)]).toEqual([1, 0, 1])
  })
})

describe('money shared out by weights', () => {
  it('gives the spare pennies to the largest remainders, of equals to the earlier', () => {
    // 10 by 1, 2, 4: 1.43, 2.86, 5.71; two pennies are left, for the second and the third.
    expect(allocate(10, [1, 2, 4])).toEqual([1, 3, 6])
    expect(allocate(10, [4, 2, 1])).toEqual([6, 3, 1])
    expect(allocate(5, [1, 1, 1])).toEqual([2, 2, 1])
    expect(allocate(7, [0, 1, 0])).toEqual([0, 7, 0])
  })

  it('gives no minus before a nought, and nothing of nothing', () => {
    expect(allocate(-1, [1, 1]).map((share) => Object.is(share, -0))).toEqual([false, false])
    expect([allocate(0, [3, 5]), allocate(-3, [0, 0])]).toEqual([
      [0, 0],
      [-2, -1],
    ])
  })

  it('throws in words', () => {
    expect(() => allocate(0.5, [1])).toThrow('0.5 is not whole pence')
    expect(() => allocate(1, [2, -1])).toThrow('A weight must be a whole number, 0 or more, not -1')
    expect(() => allocate(1, [0.5])).toThrow('A weight must be a whole number, 0 or more, not 0.5')
    expect(() => allocate(1, [])).toThrow('There is nobody to share 1 with')
  })
})
