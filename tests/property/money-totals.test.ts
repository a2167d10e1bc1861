import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { given } from '../../src-main/domain/derivation.ts'
import type { Discount, TaxCategory } from '../../src-main/domain/pricing.ts'
import { roundingRule, taxCategory } from '../../src-main/domain/pricing.ts'
import type { QuoteLine } from '../../src-main/domain/quote.ts'
import { moneyTotals } from '../../src-main/engine/money/money-totals.ts'
import { markedUpPence, pricedByMarginPence } from '../../src-main/engine/money/price.ts'
import { discountLines } from '../../src-main/engine/quote/discount-lines.ts'
import { answered } from '../answered.ts'
import { defaultFigures } from '../figures-for-tests.ts'

const figures = defaultFigures('2027-04-01')
const Exact = Decimal.clone({ precision: 80 })
/** decimal.js as the judge, halves away from nothing; + 0 turns its minus nought into nought. */
const nearest = (value: Decimal) => value.toDecimalPlaces(0, Decimal.ROUND_HALF_UP).toNumber() + 0
const percentOf: Readonly<Record<TaxCategory, number>> = {
  standard: 20,
  reduced: 5,
  zero: 0,
  energySaving: 5,
  exempt: 0,
  reverseCharge: 20,
  reverseChargeReduced: 5,
}

const category = fc.constantFrom(...taxCategory.options)
const lineOf = (least: number) =>
  fc.record({ netPence: fc.integer({ min: least, max: 100_000_000 }), category })
const anyLines = fc.array(lineOf(-100_000_000), { maxLength: 30 })
const charged = fc.array(lineOf(0), { maxLength: 30 })
const rounding = fc.constantFrom('line' as const, 'document' as const)
const rule = fc.constantFrom(...roundingRule.options)
type Ways = { readonly rounding: 'line' | 'document'; readonly rule: (typeof roundingRule.options)[number] }
const lawful = fc
  .record({ rounding, rule })
  .filter((how: Ways) => how.rounding !== 'line' || how.rule !== 'down')

const taxIn = (totals: { readonly netPence: number; readonly grossPence: number }) =>
  totals.grossPence - totals.netPence

describe('money.totals', () => {
  it('agrees with decimal.js for what is charged and for what the customer accounts for', () => {
    fc.assert(
      fc.property(anyLines, rounding, (lines, where) => {
        const totals = answered(moneyTotals({ lines, rounding: where, rule: 'half-up' }, figures))
        const due = (categories: readonly TaxCategory[]) =>
          categories.reduce((sum, one) => {
            const nets = lines.filter((line) => line.category === one).map((line) => line.netPence)
            const tax = (net: number) => nearest(new Exact(net).mul(percentOf[one]).div(100))
            const whole = nets.reduce((so, net) => so + net, 0)
            return sum + (where === 'document' ? tax(whole) : nets.reduce((so, net) => so + tax(net), 0))
          }, 0)
        expect(taxIn(totals)).toBe(due(['standard', 'reduced', 'energySaving']))
        expect(totals.reverseChargePence).toBe(due(['reverseCharge', 'reverseChargeReduced']))
        expect(totals.netPence).toBe(lines.reduce((sum, line) => sum + line.netPence, 0))
      }),
    )
  })

  it('gives the same for any order of lines', () => {
    fc.assert(
      fc.property(anyLines, lawful, fc.infiniteStream(fc.nat()), (lines, how, ranks) => {
        const shuffled = lines
          .map((line) => ({ line, rank: ranks.next().value as number }))
          .toSorted((a, b) => a.rank - b.rank)
          .map(({ line }) => line)
        const { why: _, ...first } = answered(moneyTotals({ lines, ...how }, figures))
        const { why: __, ...second } = answered(moneyTotals({ lines: shuffled, ...how }, figures))
        expect(second).toEqual(first)
      }),
    )
  })

  it('never takes tax off where nothing is taken off', () => {
    fc.assert(
      fc.property(charged, lawful, (lines, how) => {
        const totals = answered(moneyTotals({ lines, ...how }, figures))
        expect(totals.taxes.every((tax) => tax.taxPence >= 0)).toBe(true)
        expect(totals.reverseChargePence).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('differs by line and by document by half a penny a line at most', () => {
    fc.assert(
      fc.property(charged, (lines) => {
        const by = (where: 'line' | 'document') =>
          answered(moneyTotals({ lines, rounding: where, rule: 'half-up' }, figures)).taxes
        const byDocument = by('document')
        for (const [index, { rateKey, taxPence }] of by('line').entries()) {
          const count = lines.filter((line) => line.category === rateKey).length
          expect(Math.abs(taxPence - (byDocument[index]?.taxPence ?? 0))).toBeLessThanOrEqual(count / 2)
        }
      }),
    )
  })
})

describe('mark-up and margin', () => {
  it('agree with decimal.js', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 100_000_000 }),
        fc.integer({ min: 0, max: 9900 }),
        (cost, points) => {
          const share = new Exact(points).div(10_000)
          expect(pricedByMarginPence(cost, points)).toBe(
            nearest(new Exact(cost).div(new Exact(1).sub(share))),
          )
          expect(pricedByMarginPence(cost, points)).toBeGreaterThanOrEqual(markedUpPence(cost, points))
        },
      ),
    )
  })
})

describe('discounts', () => {
  const why = given('A line', 1, 'pence')
  const priced = fc
    .array(
      fc.record({
        section: fc.constantFrom('emitter', 'parts', 'labour', 'travel', 'other'),
        netPence: fc.integer({ min: 0, max: 1_000_000 }),
        rateKey: category,
      }),
      { minLength: 1, maxLength: 20 },
    )
    .map((list) =>
      list.map((one, index): QuoteLine => ({
        ...one,
        lineId: `line-${index}`,
        name: 'A line',
        quantity: 1,
        unit: 'sum',
        shared: true,
        swapIds: [],
        generic: false,
        why,
      })),
    )
  const of = fc.constantFrom('all' as const, 'parts' as const, 'labour' as const)
  const percent = fc.record({
    kind: fc.constant('percent' as const),
    name: fc.constant('Share'),
    basisPoints: fc.integer({ min: 1, max: 10_000 }),
    of,
  })
  const off = (lines: readonly QuoteLine[], discount: Discount) => answered(discountLines(lines, [discount]))

  it('a share is what decimal.js says, parted among rates so that none falls below nothing', () => {
    fc.assert(
      fc.property(priced, percent, (lines, discount) => {
        const sections = { all: ['emitter', 'parts', 'labour', 'travel', 'other'], parts: ['emitter', 'parts'], labour: ['labour'] }[discount.of] // prettier-ignore
        const under = lines.filter((line) => sections.includes(line.section))
        const base = under.reduce((sum, line) => sum + line.netPence, 0)
        const found = off(lines, discount)
        const sum = found.reduce((so, line) => so + line.netPence, 0)
        expect(sum).toBe(0 - nearest(new Exact(base).mul(discount.basisPoints).div(10_000)))
        for (const { rateKey, netPence } of found) {
          const before = under
            .filter((line) => line.rateKey === rateKey)
            .reduce((so, line) => so + line.netPence, 0)
          expect(netPence).toBeLessThan(0)
          expect(before + netPence).toBeGreaterThanOrEqual(0)
        }
      }),
    )
  })

  it('are the same for any order of lines', () => {
    fc.assert(
      fc.property(priced, percent, (lines, discount) => {
        expect(off(lines.toReversed(), discount)).toEqual(off(lines, discount))
      }),
    )
  })
})
