import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bulkPence, risesBasisPoints } from '../../src-main/engine/buying/bulk-price.ts'
import type { BulkChange } from '../../src-main/engine/buying/bulk-price.ts'
import { answered } from '../answered.ts'

const Exact = Decimal.clone({ precision: 60 })
const price = fc.integer({ min: 0, max: 9_000_000 })
const change: fc.Arbitrary<BulkChange['change']> = fc.oneof(
  fc.record({
    kind: fc.constant('percent' as const),
    basisPoints: fc.integer({ min: -10_000, max: 90_000 }),
  }),
  fc.record({
    kind: fc.constant('amount' as const),
    pence: fc.integer({ min: -10_000_000, max: 10_000_000 }),
  }),
)
const rounding = fc.record({
  toPence: fc.constantFrom<BulkChange['rounding']['toPence']>(1, 5, 10, 50, 100),
  rule: fc.constantFrom<BulkChange['rounding']['rule']>('nearest', 'up', 'down'),
})
const bulk: fc.Arbitrary<BulkChange> = fc.record({ change, rounding })
const after = (pence: number, how: BulkChange) => answered(bulkPence(pence, how))

/** The price before rounding, by decimal.js. */
function unrounded(pence: number, { change: wanted }: BulkChange): Decimal {
  const raw =
    wanted.kind === 'percent'
      ? new Exact(pence).mul(10_000 + wanted.basisPoints).div(10_000)
      : new Exact(pence).add(wanted.pence)
  return Decimal.max(raw, 0)
}

const judge = { nearest: Decimal.ROUND_HALF_UP, up: Decimal.ROUND_UP, down: Decimal.ROUND_DOWN } as const

describe('a bulk change of prices', () => {
  it('agrees with decimal.js, rounded once', () => {
    fc.assert(
      fc.property(price, bulk, (pence, how) => {
        const { toPence, rule } = how.rounding
        const wanted = unrounded(pence, how).div(toPence).toDecimalPlaces(0, judge[rule]).mul(toPence)
        expect(after(pence, how)).toBe(wanted.toNumber())
      }),
      { numRuns: 2000 },
    )
  })

  it('gives a whole multiple of its step, never below nothing', () => {
    fc.assert(
      fc.property(price, bulk, (pence, how) => {
        const given = after(pence, how)
        expect(given % how.rounding.toPence).toBe(0)
        expect(given).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('never makes the dearer of two prices the cheaper', () => {
    fc.assert(
      fc.property(price, price, bulk, (one, other, how) => {
        const [less, more] = one < other ? [one, other] : [other, one]
        expect(after(less, how)).toBeLessThanOrEqual(after(more, how))
      }),
      { numRuns: 1000 },
    )
  })

  it('gives no less for a bigger change', () => {
    const shares = fc.tuple(fc.integer({ min: -10_000, max: 90_000 }), fc.integer({ min: 0, max: 5000 }))
    fc.assert(
      fc.property(price, shares, rounding, (pence, [basisPoints, more], how) => {
        const by = (share: number) =>
          after(pence, { change: { kind: 'percent', basisPoints: share }, rounding: how })
        expect(by(basisPoints)).toBeLessThanOrEqual(by(basisPoints + more))
      }),
    )
  })

  it('lies within a step of the exact price, above it when rounded up and below it when rounded down', () => {
    fc.assert(
      fc.property(price, bulk, (pence, how) => {
        const off = new Exact(after(pence, how)).sub(unrounded(pence, how)).toNumber()
        const { toPence, rule } = how.rounding
        const [least, most] = {
          nearest: [-toPence / 2, toPence / 2],
          up: [0, toPence],
          down: [-toPence, 0],
        }[rule] as [number, number]
        expect(off).toBeGreaterThanOrEqual(least)
        expect(off).toBeLessThanOrEqual(most)
      }),
    )
  })

  it('rounded again to the same step is the same', () => {
    fc.assert(
      fc.property(price, bulk, (pence, how) => {
        const once = after(pence, how)
        const again = { change: { kind: 'amount', pence: 0 }, rounding: how.rounding } as const
        expect(after(once, again)).toBe(once)
      }),
    )
  })
})

describe('a rise', () => {
  it('agrees with decimal.js, and has the sign of the change', () => {
    fc.assert(
      fc.property(
        price.filter((pence) => pence > 0),
        price,
        (was, will) => {
          const share = new Exact(will - was).mul(10_000).div(was).toDecimalPlaces(0, Decimal.ROUND_HALF_UP)
          expect(risesBasisPoints(was, will)).toBe(share.toNumber() + 0)
        },
      ),
      { numRuns: 1000 },
    )
  })
})
