import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { TaxCategory } from '../../../src-main/domain/pricing.ts'
import { moneyTotals } from '../../../src-main/engine/money/money-totals.ts'
import { roundedHow } from '../../../src-main/engine/money/tax-rates.ts'
import { taxOfLines, taxTenthsOn } from '../../../src-main/engine/money/tax-totals.ts'
import { answered, refused } from '../../answered.ts'
import { defaultFigures } from '../../figures-for-tests.ts'

const figures = defaultFigures('2026-11-25')

// HMRC VATREC12010 (gov.uk) on Notice 700 17.5: the total VAT of an invoice may be rounded down to a whole penny; lines may be
// rounded down to one tenth of a penny or to the nearest 1p or 0.5p, and never down to whole pence.
describe('tax of lines to a tenth of a penny', () => {
  it('drops what is under a tenth, for a charge and for its refund', () => {
    // 103 x 5 % = 5.15, 5.1; 104 x 17.5 % = 18.2 exactly; 1 x 5 % = 0.05, 0.0.
    expect([taxTenthsOn(103, 500), taxTenthsOn(104, 1750), taxTenthsOn(1, 500)]).toEqual([51, 182, 0])
    expect(taxTenthsOn(-103, 500)).toBe(-51)
  })

  it('adds the tenths and rounds the sum once, by hand', () => {
    // Three times 103 at 5 %: 3 x 5.1 = 15.3, 15 down and 16 up; by document 309 x 5 % = 15.45. Ten times: 51.0 against 51.5, 52.
    const ten = Array.from({ length: 10 }, () => 103)
    expect(taxOfLines([103, 103, 103], 500, { rounding: 'lineTenths', rule: 'down' })).toBe(15)
    expect(taxOfLines([103, 103, 103], 500, { rounding: 'lineTenths', rule: 'up' })).toBe(16)
    expect(taxOfLines(ten, 500, { rounding: 'lineTenths', rule: 'half-up' })).toBe(51)
    expect(taxOfLines(ten, 500, { rounding: 'document', rule: 'half-up' })).toBe(52)
    expect(taxOfLines(ten, 500, { rounding: 'line', rule: 'half-up' })).toBe(50)
  })

  it('may be rounded down to whole pence as a total, unlike each line', () => {
    const lines = [{ netPence: 104, category: 'standard' as const }, { netPence: 104, category: 'standard' as const }] // prettier-ignore
    // 2 x 20.8 = 41.6.
    const totals = answered(moneyTotals({ lines, rounding: 'lineTenths', rule: 'down' }, figures))
    expect([totals.taxes[0]?.taxPence, totals.grossPence]).toEqual([41, 249])
    expect(refused(moneyTotals({ lines, rounding: 'line', rule: 'down' }, figures)).path).toBe('rule')
    expect(roundedHow('lineTenths', 'down')).toBe(
      'each line rounded down to a tenth of a penny and their sum down',
    )
  })

  it('agrees with decimal.js and with any order of lines', () => {
    const line = fc.record({
      netPence: fc.integer({ min: -1_000_000, max: 1_000_000 }),
      category: fc.constantFrom<TaxCategory>('standard', 'reduced', 'zero', 'exempt', 'reverseCharge'),
    })
    const percentOf: Readonly<Record<string, number>> = { standard: 20, reduced: 5 }
    fc.assert(
      fc.property(fc.array(line, { maxLength: 20 }), (lines) => {
        const how = { rounding: 'lineTenths', rule: 'half-up' } as const
        const totals = answered(moneyTotals({ lines, ...how }, figures))
        const taxes = Object.entries(percentOf).map(([category, percent]) =>
          lines
            .filter((one) => one.category === category)
            .reduce(
              (sum, one) =>
                sum.add(
                  new Decimal(one.netPence).mul(percent).div(100).toDecimalPlaces(1, Decimal.ROUND_DOWN),
                ),
              new Decimal(0),
            )
            .toDecimalPlaces(0, Decimal.ROUND_HALF_UP)
            .toNumber(),
        )
        const net = lines.reduce((sum, one) => sum + one.netPence, 0)
        expect(totals.grossPence).toBe(net + taxes.reduce((sum, tax) => sum + tax, 0))
        const turned = answered(moneyTotals({ lines: lines.toReversed(), ...how }, figures))
        expect([turned.grossPence, turned.taxes]).toEqual([totals.grossPence, totals.taxes])
      }),
    )
  })
})
