import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allocate } from '../../src-main/engine/money/allocate.ts'
import { mulDiv } from '../../src-main/engine/money/mul-div.ts'
import type { RoundingRule } from '../../src-main/engine/money/mul-div.ts'
import { markedUpPence, sharePence } from '../../src-main/engine/money/price.ts'
import { taxTotals } from '../../src-main/engine/money/tax-totals.ts'

const Exact = Decimal.clone({ precision: 80 })
const decimalRule: Readonly<Record<RoundingRule, Decimal.Rounding>> = {
  'half-up': Decimal.ROUND_HALF_UP,
  'half-down': Decimal.ROUND_HALF_DOWN,
  'half-even': Decimal.ROUND_HALF_EVEN,
  up: Decimal.ROUND_UP,
  down: Decimal.ROUND_DOWN,
}
const rule = fc.constantFrom<RoundingRule>('half-up', 'half-down', 'half-even', 'up', 'down')
const pence = fc.integer({ min: -1_000_000_000, max: 1_000_000_000 })
/** decimal.js as the judge; + 0 turns its minus nought into nought. */
const judged = (value: Decimal, how: RoundingRule) =>
  value.toDecimalPlaces(0, decimalRule[how]).toNumber() + 0

describe('mulDiv', () => {
  it('agrees with decimal.js for any whole numbers and any rule', () => {
    const divisor = fc.integer({ min: -20_000, max: 20_000 }).filter((d) => d !== 0)
    fc.assert(
      fc.property(pence, fc.integer({ min: -20_000, max: 20_000 }), divisor, rule, (a, n, d, how) => {
        expect(mulDiv(a, n, d, how)).toBe(judged(new Exact(a).mul(n).div(d), how))
      }),
      { numRuns: 2000 },
    )
  })

  it('agrees with decimal.js at exact halves, where the rules part', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), rule, (whole, how) => {
        expect(mulDiv(2 * whole + 1, 1, 2, how)).toBe(judged(new Exact(2 * whole + 1).div(2), how))
      }),
      { numRuns: 1000 },
    )
  })

  it('gives a refund the mirror of its charge', () => {
    fc.assert(
      fc.property(pence, fc.integer({ min: 0, max: 20_000 }), rule, (a, n, how) => {
        expect(mulDiv(-a, n, 10_000, how)).toBe(0 - mulDiv(a, n, 10_000, how))
      }),
    )
  })
})

describe('allocate', () => {
  const weights = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 30 })

  it('loses no penny, and no share is a penny or more from its due', () => {
    fc.assert(
      fc.property(pence, weights, (total, list) => {
        const shares = allocate(total, list)
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(total)
        const sum = list.reduce((so, weight) => so + weight, 0)
        list.forEach((weight, index) => {
          const due = sum === 0 ? new Exact(total).div(list.length) : new Exact(total).mul(weight).div(sum)
          expect(
            due
              .sub(shares[index] as number)
              .abs()
              .lt(1),
          ).toBe(true)
        })
      }),
    )
  })

  it('gives nothing to a weight of 0 beside others', () => {
    fc.assert(
      fc.property(pence, weights, (total, list) => {
        expect(allocate(total, [...list, 0, 1]).at(-2)).toBe(0)
      }),
    )
  })
})

describe('tax', () => {
  const rates = [
    { rateKey: 'standard', rateName: 'Standard', basisPoints: 2000 },
    { rateKey: 'reduced', rateName: 'Reduced', basisPoints: 500 },
    { rateKey: 'odd', rateName: 'Odd', basisPoints: 1733 },
  ]
  const line = fc.record({
    netPence: fc.integer({ min: -10_000_000, max: 10_000_000 }),
    rateKey: fc.constantFrom('standard', 'reduced', 'odd'),
  })

  it('agrees with decimal.js by line and by document, and net + tax = gross', () => {
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 20 }),
        fc.constantFrom('line' as const, 'document' as const),
        rule,
        (lines, rounding, how) => {
          const totals = taxTotals({ lines, rates, rounding, rule: how })
          for (const { rateKey, basisPoints, netPence, taxPence } of totals.taxes) {
            const nets = lines.filter((one) => one.rateKey === rateKey).map((one) => one.netPence)
            const tax = (net: number) => judged(new Exact(net).mul(basisPoints).div(10_000), how)
            const sum = nets.reduce((so, net) => so + net, 0)
            expect(netPence).toBe(sum)
            expect(taxPence).toBe(
              rounding === 'document' ? tax(sum) : nets.reduce((so, net) => so + tax(net), 0),
            )
          }
          const taxed = totals.taxes.reduce((so, tax) => so + tax.taxPence, 0)
          expect(totals.netPence).toBe(lines.reduce((so, one) => so + one.netPence, 0))
          expect(totals.grossPence).toBe(totals.netPence + taxed)
        },
      ),
    )
  })
})

describe('prices', () => {
  it('agree with decimal.js', () => {
    fc.assert(
      fc.property(pence, fc.integer({ min: 0, max: 100_000 }), (cost, points) => {
        const share = new Exact(cost).mul(points).div(10_000)
        expect(sharePence(cost, points)).toBe(judged(share, 'half-up'))
        expect(markedUpPence(cost, points)).toBe(judged(share.add(cost), 'half-up'))
      }),
    )
  })
})
