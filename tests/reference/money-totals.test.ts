import { describe, expect, it } from 'vitest'
import { moneyTotals } from '../../src-main/engine/money/money-totals.ts'
import type { MoneyInput } from '../../src-main/engine/money/money-totals.ts'
import { taxOn } from '../../src-main/engine/money/tax-totals.ts'
import { discountLines } from '../../src-main/engine/quote/discount-lines.ts'
import type { Desk } from '../../src-main/desk/desk.ts'
import { figuresInForce } from '../../src-main/desk/figures-in-force.ts'
import { given } from '../../src-main/domain/derivation.ts'
import type { Figures } from '../../src-main/domain/figures.ts'
import { reverseChargeWording } from '../../src-main/domain/pricing.ts'
import type { TaxCategory } from '../../src-main/domain/pricing.ts'
import type { QuoteLine } from '../../src-main/domain/quote.ts'
import { answered, refused } from '../answered.ts'
import { defaultFigures } from '../figures-for-tests.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const british = defaultFigures('2026-11-25')

/** Figures with the rates of the country that an example comes from. */
function rates(standard: number, reduced = 0): Figures {
  const rate = (value: number) => ({ says: 'Rate', value, unit: 'BasisPoints', source: 'the example' })
  return {
    ...british,
    settings: {
      ...british.settings,
      'tax.standardBasisPoints': rate(standard),
      'tax.reducedBasisPoints': rate(reduced),
    },
  }
}

type Line = readonly [netPence: number, category: TaxCategory]
const totalsOf = (
  lines: readonly Line[],
  figures: Figures,
  how: Pick<MoneyInput, 'rounding' | 'rule'> = { rounding: 'document', rule: 'half-up' },
) => answered(moneyTotals({ lines: lines.map(([netPence, category]) => ({ netPence, category })), ...how }, figures)) // prettier-ignore
const taxesOf = (totals: ReturnType<typeof totalsOf>) => totals.taxes.map(({ netPence, taxPence }) => [netPence, taxPence]) // prettier-ignore

// ConnectingEurope/eInvoicing-EN16931, ubl/examples. An allowance is a line below nothing, a charge one above.
describe('the examples of the EN 16931 artefacts', () => {
  it('sample-discount-price.xml: 100 x 0.1212 at 25 % is 12.12, 3.03 and 15.15', () => {
    const totals = totalsOf([[1212, 'standard']], rates(2500))
    expect([...taxesOf(totals), totals.grossPence]).toEqual([[1212, 303], 1515])
  })

  it('ubl-tc434-example2.xml: 1460.50 at 25 % is 365.13, 1.00 at 15 % is 0.15, -25.00 exempt, 1801.78 in all', () => {
    const lines: readonly Line[] = [
      [127_300, 'standard'],
      [18_750, 'standard'],
      [-10_000, 'standard'],
      [10_000, 'standard'],
      [-396, 'reduced'],
      [496, 'reduced'],
      [-2500, 'exempt'],
    ]
    const totals = totalsOf(lines, rates(2500, 1500))
    expect(taxesOf(totals)).toEqual([[146_050, 36_513], [100, 15], [-2500, 0]]) // prettier-ignore
    expect([totals.netPence, totals.grossPence]).toEqual([143_650, 180_178])
    // BR-CO-16: 1000.00 paid before, 801.78 due.
    expect(totals.grossPence - 100_000).toBe(80_178)
  })

  it('ubl-tc434-example3.xml: 800 and a charge of 100 at 25 %, 800 at 10 %: 225, 80 and 2005', () => {
    const lines: readonly Line[] = [[80_000, 'standard'], [10_000, 'standard'], [80_000, 'reduced']] // prettier-ignore
    const totals = totalsOf(lines, rates(2500, 1000))
    expect([...taxesOf(totals), totals.grossPence]).toEqual([[90_000, 22_500], [80_000, 8000], 200_500]) // prettier-ignore
  })

  it('ubl-tc434-example4.xml and example5.xml: 1500 at 25 %, 2500 at 12 %, 150 off and 150 on: 375, 300 and 4675', () => {
    const lines: readonly Line[] = [
      [100_000, 'standard'],
      [50_000, 'standard'],
      [250_000, 'reduced'],
    ]
    const allowanceAndCharge: readonly Line[] = [[-15_000, 'standard'], [15_000, 'standard']] // prettier-ignore
    for (const all of [lines, [...lines, ...allowanceAndCharge]]) {
      const totals = totalsOf(all, rates(2500, 1200))
      expect(taxesOf(totals)).toEqual([[150_000, 37_500], [250_000, 30_000]]) // prettier-ignore
      expect(totals.grossPence).toBe(467_500)
    }
  })

  it('ubl-tc434-example9.xml: 3 x 49.00 at 21 % is 147.00, 30.87 and 177.87', () => {
    const totals = totalsOf([[14_700, 'standard']], rates(2100))
    expect([...taxesOf(totals), totals.grossPence]).toEqual([[14_700, 3087], 17_787])
  })

  it('guide-example1.xml: 183.23 at 6 % is 10.99, 46.37 at 21 % is 9.74, 250.33 in all', () => {
    const totals = totalsOf([[18_323, 'reduced'], [4637, 'standard']], rates(2100, 600)) // prettier-ignore
    expect(taxesOf(totals)).toEqual([[4637, 974], [18_323, 1099]]) // prettier-ignore
    expect([totals.netPence, totals.grossPence]).toEqual([22_960, 25_033])
  })

  it('ubl-tc434-example5.xml: an allowance of 10 % of 1500.00 is 150.00', () => {
    const why = given('Work', 150_000, 'pence')
    const work: QuoteLine = {
      lineId: 'labour-1',
      section: 'labour',
      name: 'Work',
      quantity: 1,
      unit: 'sum',
      netPence: 150_000,
      rateKey: 'standard',
      shared: true,
      swapIds: [],
      generic: false,
      why,
    }
    const off = answered(discountLines([work], [{ kind: 'percent', name: 'Loyal customer', basisPoints: 1000 }])) // prettier-ignore
    expect(off.map(({ netPence, rateKey }) => [netPence, rateKey])).toEqual([[-15_000, 'standard']])
  })
})

// EN16931-model.sch of the same artefacts.
describe('the rules of EN 16931', () => {
  const lines: readonly Line[] = [
    [12_345, 'standard'],
    [-345, 'standard'],
    [6789, 'reduced'],
    [1001, 'zero'],
    [999, 'exempt'],
    [55_555, 'reverseCharge'],
    [4443, 'reverseChargeReduced'],
  ]
  const totals = totalsOf(lines, british)

  it('BR-CO-10, BR-CO-13: the net is the sum of the lines, allowances below nothing', () => {
    expect(totals.netPence).toBe(12_345 - 345 + 6789 + 1001 + 999 + 55_555 + 4443)
  })

  it('BR-CO-14, BR-CO-15: the tax is the sum of the categories, the gross is net and tax', () => {
    expect(totals.grossPence - totals.netPence).toBe(2400 + 339)
  })

  it('BR-CO-17: each category is its base x its rate, to two decimals: 20 % of 120.00, 5 % of 67.89', () => {
    expect(taxesOf(totals).slice(0, 2)).toEqual([[12_000, 2400], [6789, 339]]) // prettier-ignore
  })

  it('BR-DEC: no amount has more than two decimals', () => {
    const amounts = [totals.netPence, totals.grossPence, totals.reverseChargePence, ...taxesOf(totals).flat()]
    expect(amounts.filter((pence) => !Number.isSafeInteger(pence))).toEqual([])
  })

  it('BR-Z-05, BR-Z-09, BR-E-05, BR-E-09: zero-rated and exempt lines bear rate 0 and tax 0', () => {
    const none = totals.taxes.filter((tax) => tax.rateKey === 'zero' || tax.rateKey === 'exempt')
    expect(none.map(({ basisPoints, taxPence }) => [basisPoints, taxPence])).toEqual([[0, 0], [0, 0]]) // prettier-ignore
  })

  it('BR-AE-05, BR-AE-08, BR-AE-09: reverse charge bears rate 0 on the sum of its lines, and tax 0', () => {
    const reversed = totals.taxes.filter((tax) => tax.toAccountFor !== undefined)
    expect(reversed.map(({ basisPoints, netPence, taxPence }) => [basisPoints, netPence, taxPence])).toEqual([
      [0, 55_555, 0],
      [0, 4443, 0],
    ])
  })

  it('BR-AE-10: reverse charge has its reason in words; without it there are none', () => {
    expect(totals.wording.join(' ')).toMatch(/reverse charge/i)
    expect(totalsOf([[1, 'standard']], british).wording).toEqual([])
  })
})

describe('reverse charge in building work', () => {
  // HMRC VATREVCON37100: accepted wordings; the amount is shown, but not in the tax that is charged.
  it('uses words that HMRC takes, and keeps the amount out of the tax', () => {
    expect(reverseChargeWording).toMatch(/reverse charge/i)
    expect(reverseChargeWording).toMatch(/customer to pay the VAT to HMRC/i)
    const totals = totalsOf([[100_000, 'reverseCharge']], british)
    expect([totals.reverseChargePence, totals.grossPence]).toEqual([20_000, 100_000])
  })
})

describe('rounding by HMRC', () => {
  const nets: readonly Line[] = [[104, 'standard'], [104, 'standard'], [104, 'standard']] // prettier-ignore

  // Notice 700 17.5 (VATREC12010): the total VAT may be rounded down to a whole penny: 62.4 is 62.
  it('lets the document be rounded down', () => {
    const totals = totalsOf(nets, british, { rounding: 'document', rule: 'down' })
    expect(taxesOf(totals)).toEqual([[312, 62]])
  })

  // The same: by line to the nearest penny: three times 20.8 is three times 21.
  it('lets each line be rounded to the nearest penny', () => {
    expect(taxesOf(totalsOf(nets, british, { rounding: 'line', rule: 'half-up' }))).toEqual([[312, 63]])
  })

  // The same: never down to whole pence by line.
  it('does not let each line be rounded down', () => {
    const input = { lines: [], rounding: 'line', rule: 'down' } as const
    expect(refused(moneyTotals(input, british)).path).toBe('rule')
  })

  // VAT Guide 6.10A, as quoted on accountantforums.com: at retailers tax is not rounded down, but up and down.
  it('rounds at retailers to the nearest penny: 0.5 up, 0.4 down', () => {
    expect([taxOn(102, 500, 'half-up'), taxOn(110, 500, 'half-up'), taxOn(108, 500, 'half-up')]).toEqual([5, 6, 5]) // prettier-ignore
  })
})

describe('energy-saving materials, HMRC Notice 708/6', () => {
  // Zero rate from 1 May 2023 to 31 March 2027, 5 % from 1 April 2027.
  it.each([
    ['2023-05-01', 10_000],
    ['2027-03-31', 10_000],
    ['2027-04-01', 10_500],
  ])('on %s 100.00 comes to %i pence', async (day, grossPence) => {
    const figures = answered(await figuresInForce(desk, day))
    expect(totalsOf([[10_000, 'energySaving']], figures).grossPence).toBe(grossPence)
  })
})
