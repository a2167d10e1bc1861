import { describe, expect, it } from 'vitest'
import { allocate } from '../../src-main/engine/money/allocate.ts'
import { mulDiv } from '../../src-main/engine/money/mul-div.ts'
import type { RoundingRule } from '../../src-main/engine/money/mul-div.ts'
import { taxTotals } from '../../src-main/engine/money/tax-totals.ts'
import type { TaxInput } from '../../src-main/engine/money/tax-totals.ts'

// Java SE 8 to 17 API, java.math.RoundingMode, summary table of rounding operations (one digit).
const rules: readonly RoundingRule[] = ['up', 'down', 'half-up', 'half-down', 'half-even']
const table: readonly (readonly [tenths: number, ...rounded: readonly number[]])[] = [
  [55, 6, 5, 6, 5, 6],
  [25, 3, 2, 3, 2, 2],
  [16, 2, 1, 2, 2, 2],
  [11, 2, 1, 1, 1, 1],
  [10, 1, 1, 1, 1, 1],
  [-10, -1, -1, -1, -1, -1],
  [-11, -2, -1, -1, -1, -1],
  [-16, -2, -1, -2, -2, -2],
  [-25, -3, -2, -3, -2, -2],
  [-55, -6, -5, -6, -5, -6],
]
const roundings = table.flatMap(([tenths, ...rounded]) =>
  rules.map((rule, column) => ({ tenths, rule, expected: rounded[column] as number })),
)

describe('rounding', () => {
  it.each(roundings)('rounds $tenths tenths $rule to $expected', ({ tenths, rule, expected }) => {
    expect(mulDiv(tenths, 1, 10, rule)).toBe(expected)
  })
})

const standard = { rateKey: 'standard', rateName: 'Standard', basisPoints: 2500 }
const reduced = { rateKey: 'reduced', rateName: 'Reduced', basisPoints: 1200 }
const byDocument = { rounding: 'document', rule: 'half-up' } as const

describe('tax by EN 16931 (BR-CO-13 to BR-CO-17), examples of the ConnectingEurope artefacts', () => {
  it('taxes 12.12 at 25 % with 3.03 (sample-discount-price.xml)', () => {
    const netPence = mulDiv(1212, 100, 100, 'half-up')
    expect(
      taxTotals({ lines: [{ netPence, rateKey: 'standard' }], rates: [standard], ...byDocument }),
    ).toEqual({
      netPence: 1212,
      taxes: [{ ...standard, netPence: 1212, taxPence: 303 }],
      grossPence: 1515,
    })
  })

  it('taxes 1500 at 25 % and 2500 at 12 % to 4675 gross (ubl-tc434-example4.xml)', () => {
    const lines = [
      { netPence: 100_000, rateKey: 'standard' },
      { netPence: 50_000, rateKey: 'standard' },
      { netPence: 250_000, rateKey: 'reduced' },
    ]
    expect(taxTotals({ lines, rates: [standard, reduced], ...byDocument })).toEqual({
      netPence: 400_000,
      taxes: [
        { ...standard, netPence: 150_000, taxPence: 37_500 },
        { ...reduced, netPence: 250_000, taxPence: 30_000 },
      ],
      grossPence: 467_500,
    })
  })

  it('taxes 147.00 at 21 % with 30.87 (ubl-tc434-example9.xml)', () => {
    const rates = [{ rateKey: 'btw', rateName: 'BTW', basisPoints: 2100 }]
    const totals = taxTotals({ lines: [{ netPence: 3 * 4900, rateKey: 'btw' }], rates, ...byDocument })
    expect([totals.netPence, totals.taxes[0]?.taxPence, totals.grossPence]).toEqual([14_700, 3087, 17_787])
  })

  it('taxes a charge on the document with its own rate: 900 at 25 %, 800 at 10 %, 2005 gross (ubl-tc434-example3.xml)', () => {
    const rates = [standard, { rateKey: 'low', rateName: 'Low', basisPoints: 1000 }]
    const lines = [
      { netPence: 80_000, rateKey: 'standard' },
      { netPence: 80_000, rateKey: 'low' },
      { netPence: 10_000, rateKey: 'standard' },
    ]
    const totals = taxTotals({ lines, rates, ...byDocument })
    expect(totals.taxes.map((tax) => [tax.netPence, tax.taxPence])).toEqual([[90_000, 22_500], [80_000, 8000]]) // prettier-ignore
    expect([totals.netPence, totals.grossPence]).toEqual([170_000, 200_500])
  })

  it('gives reverse charge at rate 0 no tax (BR-AE-05, BR-AE-09)', () => {
    const rates = [{ rateKey: 'reverse', rateName: 'Reverse charge', basisPoints: 0 }]
    const totals = taxTotals({ lines: [{ netPence: 12_345, rateKey: 'reverse' }], rates, ...byDocument })
    expect([totals.taxes[0]?.taxPence, totals.grossPence]).toEqual([0, 12_345])
  })
})

describe('tax on a British invoice', () => {
  const rate = (basisPoints: number) => [{ rateKey: 'vat', rateName: 'VAT', basisPoints }]
  const taxOf = (nets: readonly number[], basisPoints: number, how: Pick<TaxInput, 'rounding' | 'rule'>) =>
    taxTotals({
      lines: nets.map((netPence) => ({ netPence, rateKey: 'vat' })),
      rates: rate(basisPoints),
      ...how,
    }).taxes[0]?.taxPence

  // HMRC Notice 700 17.5 (VATREC12010): the total may be rounded down to a whole penny.
  it('may round the total down to a whole penny', () => {
    expect(taxOf([104, 104, 104], 2000, { rounding: 'document', rule: 'down' })).toBe(62)
  })

  // The same: lines go to the nearest penny, never down to whole pence.
  it('rounds by line to the nearest penny', () => {
    expect(taxOf([104, 104, 104], 2000, { rounding: 'line', rule: 'half-up' })).toBe(63)
  })

  // Rates: HMRC Notice 708/6 (standard 20 %, reduced 5 %, zero 0 %).
  it.each([
    [2000, 2000],
    [500, 500],
    [0, 0],
  ])('takes %i basis points of 100 pounds as %i pence', (basisPoints, taxPence) => {
    expect(taxOf([10_000], basisPoints, { rounding: 'document', rule: 'half-up' })).toBe(taxPence)
  })
})

describe('sharing by largest remainders', () => {
  it.each([
    // Largest remainder method, the Alabama paradox example of the encyclopaedia article (liquisearch.com copy).
    { total: 25, weights: [1500, 1500, 900, 500, 500, 200], shares: [7, 7, 4, 3, 3, 1] },
    { total: 26, weights: [1500, 1500, 900, 500, 500, 200], shares: [8, 8, 5, 2, 2, 1] },
    // For All Practical Purposes, 10th edition, exercise 14.44: house sizes 89, 90, 91.
    { total: 89, weights: [5_576_330, 1_387_342, 3_334_241, 7_512_860, 310_968], shares: [27, 7, 16, 37, 2] },
    { total: 90, weights: [5_576_330, 1_387_342, 3_334_241, 7_512_860, 310_968], shares: [28, 7, 17, 37, 1] },
    { total: 91, weights: [5_576_330, 1_387_342, 3_334_241, 7_512_860, 310_968], shares: [28, 7, 17, 38, 1] },
    // A university handout on Hamilton's apportionment (coursehero 6716897, problem 1), in units of 100000 people.
    { total: 25, weights: [63, 34, 14, 12, 10, 6], shares: [11, 6, 3, 2, 2, 1] },
    // Homework on Hamilton's method with 42 seats (solvely.ai 459845938).
    { total: 42, weights: [247_000, 185_000, 459_000, 400_000, 413_000], shares: [6, 5, 11, 10, 10] },
  ])('shares $total by $weights as $shares', ({ total, weights, shares }) => {
    expect(allocate(total, weights)).toEqual(shares)
  })
})
