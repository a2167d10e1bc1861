import { describe, expect, it } from 'vitest'
import { allocate } from '../../../../src-main/engine/money/allocate.ts'
import { mulDiv } from '../../../../src-main/engine/money/mul-div.ts'
import { marginBasisPoints, markedUpPence, sharePence } from '../../../../src-main/engine/money/price.ts'
import { taxTotals } from '../../../../src-main/engine/money/tax-totals.ts'

describe('mulDiv', () => {
  it('is exact past the reach of a floating product', () => {
    // 9007199254740991 x 9999 / 10000 = 9006298534815516.9009 (long multiplication)
    expect(mulDiv(Number.MAX_SAFE_INTEGER, 9999, 10_000, 'down')).toBe(9_006_298_534_815_516)
  })

  it('never gives a minus before a nought', () => {
    expect(Object.is(mulDiv(-1, 1, 3, 'half-up'), 0)).toBe(true)
  })

  it('throws for what is not whole, for a divisor of 0, and for what cannot be held', () => {
    expect(() => mulDiv(0.5, 1, 1, 'up')).toThrow('0.5 is not a whole number')
    expect(() => mulDiv(Number.NaN, 1, 1, 'up')).toThrow('NaN is not a whole number')
    expect(() => mulDiv(1, 1, 0, 'up')).toThrow('cannot divide by 0')
    expect(() => mulDiv(Number.MAX_SAFE_INTEGER, 2, 1, 'up')).toThrow('too large')
  })
})

describe('allocate', () => {
  it('gives the spare penny to the earlier of equals', () => {
    expect(allocate(101, [1, 1])).toEqual([51, 50])
  })

  it('shares a refund as its charge', () => {
    expect(allocate(-100, [1, 1, 1])).toEqual([-34, -33, -33])
  })

  it('shares equally when no weight weighs', () => {
    expect(allocate(5, [0, 0])).toEqual([3, 2])
  })

  it('throws for a negative weight, for parts of pence, and for money without takers', () => {
    expect(() => allocate(1, [-1])).toThrow('0 or more')
    expect(() => allocate(0.5, [1])).toThrow('whole pence')
    expect(() => allocate(1, [])).toThrow('nobody')
    expect(allocate(0, [])).toEqual([])
  })
})

describe('prices', () => {
  it('keep mark-up and margin apart: 25 % on cost is 20 % of the price', () => {
    expect(markedUpPence(800, 2500)).toBe(1000)
    expect(marginBasisPoints(800, 1000)).toBe(2000)
  })

  it('show a loss as a negative margin, and none where nothing is charged', () => {
    expect(marginBasisPoints(1200, 1000)).toBe(-2000)
    expect(marginBasisPoints(1200, 0)).toBeNull()
  })

  it('round a share to the nearest penny, halves up', () => {
    expect(sharePence(101, 5000)).toBe(51)
  })
})

describe('taxTotals', () => {
  const rates = [
    { rateKey: 'standard', rateName: 'Standard', basisPoints: 2000 },
    { rateKey: 'zero', rateName: 'Zero', basisPoints: 0 },
  ]

  it('lists only the rates that a line has, in the order of the rates', () => {
    const lines = [{ netPence: 1, rateKey: 'zero' }, { netPence: 5, rateKey: 'standard' }] // prettier-ignore
    const totals = taxTotals({ lines, rates, rounding: 'document', rule: 'half-up' })
    expect(totals.taxes.map((tax) => tax.rateKey)).toEqual(['standard', 'zero'])
    expect(taxTotals({ lines: [], rates, rounding: 'line', rule: 'down' })).toEqual({
      netPence: 0,
      taxes: [],
      grossPence: 0,
    })
  })

  it('takes the tax of a discount line off', () => {
    const lines = [{ netPence: 10_000, rateKey: 'standard' }, { netPence: -1000, rateKey: 'standard' }] // prettier-ignore
    expect(taxTotals({ lines, rates, rounding: 'document', rule: 'half-up' }).grossPence).toBe(10_800)
  })

  it('throws for a rate that is not there and for one that is there twice', () => {
    const lines = [{ netPence: 1, rateKey: 'lost' }]
    expect(() => taxTotals({ lines, rates, rounding: 'line', rule: 'up' })).toThrow('no tax rate called lost')
    expect(() => taxTotals({ lines: [], rates: [...rates, ...rates], rounding: 'line', rule: 'up' })).toThrow(
      'twice',
    )
  })
})
