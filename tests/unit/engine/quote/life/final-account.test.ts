import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { given } from '../../../../../src-main/domain/derivation.ts'
import type { AfterJob, Variation } from '../../../../../src-main/domain/follow-up/after-job.ts'
import type { Figures } from '../../../../../src-main/domain/figures.ts'
import type { TaxCategory, TaxRounding } from '../../../../../src-main/domain/pricing.ts'
import type { Quote, QuoteLine } from '../../../../../src-main/domain/quote.ts'
import { moneyTotals } from '../../../../../src-main/engine/money/money-totals.ts'
import { finalAccount } from '../../../../../src-main/engine/quote/life/final-account.ts'
import { answered, refused } from '../../../../answered.ts'

// Rates: HMRC, VAT rates on different goods and services: standard 20 %, reduced 5 %.
const rate = (value: number) => ({ says: 'Rate', unit: 'BasisPoints', value, source: 'HMRC' })
const figures: Figures = {
  settings: {
    'tax.standardBasisPoints': rate(2000),
    'tax.reducedBasisPoints': rate(500),
    'tax.zeroBasisPoints': rate(0),
    'tax.energySavingBasisPoints': rate(0),
  },
  tasks: {},
  fixings: [],
}

type Lines = readonly (readonly [netPence: number, rateKey: TaxCategory])[]
type How = { readonly rounding?: TaxRounding; readonly rule?: 'half-up' | 'half-down' | 'down' }

function quoteOf(priced: Lines, { rounding, rule }: How = {}): Pick<Quote, 'lines' | 'labour' | 'totals'> {
  const lines = priced.map(([netPence, rateKey], at): QuoteLine => ({
    lineId: `line-${at}`,
    section: 'parts',
    name: 'A part',
    quantity: 1,
    unit: 'each',
    netPence,
    rateKey,
    shared: false,
    swapIds: [],
    generic: false,
    why: given('Price', netPence, 'pence'),
  }))
  const how = { rounding: rounding ?? 'document', rule: rule ?? 'half-up' } as const
  const sums = moneyTotals(
    { lines: priced.map(([netPence, category]) => ({ netPence, category })), ...how },
    figures,
  )
  const netPence = priced.reduce((sum, [net]) => sum + net, 0)
  const grossPence = sums.ok ? sums.value.grossPence : 0
  return {
    lines,
    labour: {
      expectedMin: 300,
      sdMin: 20,
      p50Min: 300,
      p80Min: 317,
      tasks: [],
      why: given('Labour', 300, 'min'),
    },
    totals: {
      netPence,
      grossPence,
      taxes: sums.ok ? sums.value.taxes : [],
      depositPence: 0,
      ...(rounding === undefined ? {} : { rounding }),
      ...(rule === undefined ? {} : { rule }),
    },
  }
}

const varied = (netPence: number, rateKey: TaxCategory = 'standard', variationId = 'v-1'): Variation => ({
  variationId,
  onDay: '2026-03-05',
  what: `Variation ${variationId}`,
  agreed: 'spoken',
  said: 'Go on then',
  netPence,
  rateKey,
})
const after = (changes: Partial<AfterJob> = {}): AfterJob => ({
  tasks: [],
  parts: [],
  variations: [],
  ...changes,
})
const account = (quote: ReturnType<typeof quoteOf>, changes: Partial<AfterJob> = {}) =>
  answered(finalAccount(quote, after(changes), figures))

describe('the final account', () => {
  it('is the quote, where nothing was agreed since', () => {
    // By hand: 20 % of 1000.00 is 200.00; 5 % of 50.00 is 2.50.
    const is = account(
      quoteOf([
        [100_000, 'standard'],
        [5_000, 'reduced'],
      ]),
    )
    expect(is).toMatchObject({
      quoteNetPence: 105_000,
      quoteGrossPence: 125_250,
      variationsNetPence: 0,
      netPence: 105_000,
      grossPence: 125_250,
      paidPence: 0,
      toPayPence: 125_250,
      variations: [],
    })
  })

  it('taxes each variation at its own rate, together with the quote’s lines at that rate', () => {
    // By hand: standard 100.03 + 20.02 = 120.05, 20 % is 24.01; reduced 50.00 + 10.10 = 60.10, 5 % is 3.005, half up 3.01.
    const is = account(
      quoteOf([
        [10_003, 'standard'],
        [5_000, 'reduced'],
      ]),
      {
        variations: [varied(2_002), varied(1_010, 'reduced', 'v-2')],
      },
    )
    expect(is.taxes.map(({ rateKey, netPence, taxPence }) => [rateKey, netPence, taxPence])).toEqual([
      ['standard', 12_005, 2_401],
      ['reduced', 6_010, 301],
    ])
    expect(is).toMatchObject({ variationsNetPence: 3_012, netPence: 18_015, grossPence: 20_717 })
    expect(is.variations).toEqual([
      {
        variationId: 'v-1',
        what: 'Variation v-1',
        onDay: '2026-03-05',
        netPence: 2_002,
        rateKey: 'standard',
      },
      { variationId: 'v-2', what: 'Variation v-2', onDay: '2026-03-05', netPence: 1_010, rateKey: 'reduced' },
    ])
  })

  it('adds a rate that the quote had not', () => {
    const is = account(quoteOf([[10_000, 'standard']]), { variations: [varied(3_000, 'exempt')] })
    expect(is.taxes.map(({ rateKey, taxPence }) => [rateKey, taxPence])).toEqual([
      ['standard', 2_000],
      ['exempt', 0],
    ])
    expect(is.grossPence).toBe(15_000)
  })

  it('leaves the tax under reverse charge to the customer, for the variations too', () => {
    // By hand: 20 % of 120.00 is 24.00, which is in no total.
    const is = account(quoteOf([[10_000, 'reverseCharge']]), { variations: [varied(2_000, 'reverseCharge')] })
    expect(is.taxes).toMatchObject([
      { netPence: 12_000, taxPence: 0, basisPoints: 0, toAccountFor: { basisPoints: 2000, pence: 2_400 } },
    ])
    expect([is.netPence, is.grossPence, is.toPayPence]).toEqual([12_000, 12_000, 12_000])
  })

  it('takes off what fell away, and its tax', () => {
    // By hand: 100.00 - 15.01 = 84.99; 20 % is 16.998, half up 17.00; together 101.99.
    const is = account(quoteOf([[10_000, 'standard']]), { variations: [varied(-1_501)] })
    expect(is).toMatchObject({ variationsNetPence: -1_501, netPence: 8_499, grossPence: 10_199 })
  })

  it.each([
    // By hand: 20 % of 1.03 is 0.206 and of 1.04 is 0.208: by line 21 + 21; of 2.07 at once 0.414, which is 41.
    ['document', 'half-up', 41],
    ['line', 'half-up', 42],
    // Down to a tenth of a penny by line: 20.6 + 20.8 = 41.4, to a whole penny 41.
    ['lineTenths', 'half-up', 41],
    ['document', 'down', 41],
  ] as const)('rounds %s, %s, as the quote did', (rounding, rule, taxPence) => {
    const is = account(quoteOf([[103, 'standard']], { rounding, rule }), { variations: [varied(104)] })
    expect(is.taxes[0]?.taxPence).toBe(taxPence)
    expect(is.grossPence).toBe(207 + taxPence)
  })

  it('rounds halves as the quote did: 5 % of 0.10 is half a penny', () => {
    const tax = (how: How) => account(quoteOf([[10, 'reduced']], how)).taxes[0]?.taxPence
    expect([tax({}), tax({ rule: 'half-up' }), tax({ rule: 'half-down' })]).toEqual([1, 1, 0])
  })

  it('is left to pay less what is paid, and less than nothing where too much was', () => {
    const quote = quoteOf([[10_000, 'standard']])
    expect(account(quote, { paidPence: 4_000 })).toMatchObject({ paidPence: 4_000, toPayPence: 8_000 })
    expect(account(quote, { paidPence: 12_000 }).toPayPence).toBe(0)
    expect(account(quote, { paidPence: 12_500 }).toPayPence).toBe(-500)
  })

  it('refuses a way of rounding that the tax office does not allow', () => {
    const quote = quoteOf([[10_000, 'standard']], { rounding: 'line', rule: 'down' })
    expect(refused(finalAccount(quote, after(), figures))).toMatchObject({ code: 'invalid', path: 'rule' })
  })
})

describe('for the firm alone', () => {
  it('sets minutes and parts beside what was reckoned', () => {
    const { internal } = account(quoteOf([[10_000, 'standard']]), {
      tasks: [
        { taskId: 'hang', name: 'Hang', count: 1, minutes: 50 },
        { taskId: 'fill', name: 'Fill', count: 1, minutes: 31.5 },
      ],
      parts: [
        { name: 'Tape', unit: 'm', planned: 0.3, used: 0.1 },
        { name: 'Plug', unit: 'each', planned: 4, used: 6 },
      ],
    })
    expect(internal).toEqual({
      quotedMin: 300,
      realMin: 81.5,
      parts: [
        // In decimals 0.3 - 0.1 is 0.2, which binary arithmetic alone does not give.
        { name: 'Tape', unit: 'm', planned: 0.3, used: 0.1, over: 0.2 },
        { name: 'Plug', unit: 'each', planned: 4, used: 6, over: -2 },
      ],
    })
  })
})

describe('its reason', () => {
  it('names the quote, each variation, the tax and what is paid', () => {
    const { why } = account(quoteOf([[10_000, 'standard']]), { variations: [varied(2_000)], paidPence: 400 })
    const [together, paid] = why.from
    expect(why).toMatchObject({
      says: 'What the job came to with tax, less what is paid',
      value: 14_000,
      unit: 'pence',
    })
    expect(paid).toEqual(given('Paid', 400, 'pence'))
    expect(together).toMatchObject({
      says: 'The accepted quote and the variations, taxed together',
      value: 14_400,
      unit: 'pence',
    })
    expect(together?.from.slice(0, 2)).toEqual([
      given('The accepted quote before tax', 10_000, 'pence'),
      given('Variation v-1', 2_000, 'pence'),
    ])
    expect(together?.from[2]).toMatchObject({ says: 'Net and tax.', value: 14_400 })
  })
})

describe('whatever was agreed', () => {
  const category = fc.constantFrom<TaxCategory>('standard', 'reduced', 'zero', 'exempt', 'reverseCharge')
  const priced = fc.tuple(fc.integer({ min: -50_000, max: 500_000 }), category)

  it('adds up to the penny, and comes to the quote again when every variation is undone', () => {
    fc.assert(
      fc.property(
        fc.array(priced, { minLength: 1, maxLength: 8 }),
        fc.array(priced, { maxLength: 6 }),
        fc.constantFrom<TaxRounding>('document', 'line', 'lineTenths'),
        fc.nat(200_000),
        (lines, more, rounding, paidPence) => {
          const quote = quoteOf(lines, { rounding })
          const variations = more.map(([net, key], at) => varied(net, key, `v-${at}`))
          const is = account(quote, { variations, paidPence })
          const net = [...lines, ...more].reduce((sum, [pence]) => sum + pence, 0)
          const tax = is.taxes.reduce((sum, one) => sum + one.taxPence, 0)
          expect(is.netPence).toBe(net)
          expect(is.taxes.reduce((sum, one) => sum + one.netPence, 0)).toBe(net)
          expect(is.grossPence).toBe(net + tax)
          expect(is.toPayPence).toBe(net + tax - paidPence)
          const undone = more.map(([pence, key], at) => varied(-pence, key, `u-${at}`))
          expect(account(quote, { variations: [...variations, ...undone] }).netPence).toBe(
            quote.totals.netPence,
          )
          expect(account(quote).grossPence).toBe(quote.totals.grossPence)
        },
      ),
    )
  })
})
