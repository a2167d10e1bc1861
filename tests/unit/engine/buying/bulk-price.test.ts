import { describe, expect, it } from 'vitest'
import { bulkInWords, bulkPence, risesBasisPoints } from '../../../../src-main/engine/buying/bulk-price.ts'
import type { BulkChange } from '../../../../src-main/engine/buying/bulk-price.ts'
import { answered, refused } from '../../../answered.ts'

type Step = BulkChange['rounding']['toPence']
type Rule = BulkChange['rounding']['rule']

const percent = (basisPoints: number, toPence: Step = 1, rule: Rule = 'nearest'): BulkChange => ({
  change: { kind: 'percent', basisPoints },
  rounding: { toPence, rule },
})
const amount = (pence: number, toPence: Step = 1, rule: Rule = 'nearest'): BulkChange => ({
  change: { kind: 'amount', pence },
  rounding: { toPence, rule },
})
const after = (pence: number, bulk: BulkChange) => answered(bulkPence(pence, bulk))

// Each value was worked by hand: 1999 + 3.5 % = 2068.965, and so on.
describe('a bulk change by a percentage', () => {
  it('rounds once, from the exact figure, to the step and the way that was asked for', () => {
    expect(after(1999, percent(350))).toBe(2069)
    expect(after(1999, percent(350, 1, 'down'))).toBe(2068)
    expect(after(1999, percent(350, 5))).toBe(2070)
    expect(after(1999, percent(350, 5, 'down'))).toBe(2065)
    expect(after(1999, percent(350, 10, 'up'))).toBe(2070)
    expect(after(1999, percent(350, 50))).toBe(2050)
    expect(after(1999, percent(350, 50, 'up'))).toBe(2100)
    expect(after(1999, percent(350, 100))).toBe(2100)
    expect(after(1999, percent(350, 100, 'down'))).toBe(2000)
  })

  it('sends an exact half up', () => {
    // 250 + 1 % = 252.5; 245 + 0 % lies half way between 240 and 250.
    expect(after(250, percent(100))).toBe(253)
    expect(after(245, percent(0, 10))).toBe(250)
    expect(after(244, percent(0, 10))).toBe(240)
  })

  it('does not round to a penny first', () => {
    // 1244 x 1.0005 = 1244.622: nearer 1240; as 1245 pence it would have gone to 1250.
    expect(after(1244, percent(5, 10))).toBe(1240)
  })

  it('falls to nothing at 100 % off and never below', () => {
    expect(after(1999, percent(-10_000))).toBe(0)
    expect(after(1999, percent(-10_000, 100, 'up'))).toBe(0)
    expect(after(1999, percent(-20_000))).toBe(0)
    expect(after(1999, percent(-9_999))).toBe(0)
    expect(after(1999, percent(-9_999, 1, 'up'))).toBe(1)
  })

  it('leaves a price of nothing at nothing', () => {
    expect(after(0, percent(5000, 100, 'up'))).toBe(0)
  })
})

describe('a bulk change by an amount', () => {
  it('adds or takes off, then rounds', () => {
    expect(after(1999, amount(101))).toBe(2100)
    expect(after(1999, amount(-99))).toBe(1900)
    expect(after(1999, amount(3, 5))).toBe(2000)
    expect(after(1999, amount(4, 5, 'down'))).toBe(2000)
    expect(after(1999, amount(4, 5, 'up'))).toBe(2005)
  })

  it('never falls below nothing', () => {
    expect(after(1999, amount(-1999))).toBe(0)
    expect(after(1999, amount(-2000))).toBe(0)
    expect(after(1999, amount(-2000, 100, 'up'))).toBe(0)
  })
})

describe('a bulk change refuses', () => {
  it('a price above a million pounds, and takes one of just that', () => {
    expect(after(99_999_999, amount(1))).toBe(100_000_000)
    expect(after(50_000_000, percent(10_000))).toBe(100_000_000)
    expect(refused(bulkPence(99_999_999, amount(2)))).toEqual({
      code: 'impossible',
      message:
        'A price of £999999.99 would become £1000000.01, and no price may be above £1000000.00: change it by less.',
      path: 'change',
    })
  })

  it('one that only its rounding takes over', () => {
    expect(refused(bulkPence(99_999_999, amount(2, 100, 'up'))).code).toBe('impossible')
    expect(after(99_999_999, amount(0, 100, 'up'))).toBe(100_000_000)
  })
})

describe('how much a price rises', () => {
  it('is its share of what it was, in hundredths of a percent', () => {
    expect(risesBasisPoints(2000, 2050)).toBe(250)
    expect(risesBasisPoints(2000, 1950)).toBe(-250)
    expect(risesBasisPoints(300, 301)).toBe(33)
    expect(risesBasisPoints(300, 299)).toBe(-33)
    // 1 in 800 is 12.5 hundredths of a percent.
    expect(risesBasisPoints(800, 801)).toBe(13)
    expect(risesBasisPoints(800, 799)).toBe(-13)
    expect(risesBasisPoints(100, 0)).toBe(-10_000)
    expect(risesBasisPoints(100, 100)).toBe(0)
  })

  it('is nothing that can be said where the price was nothing', () => {
    expect(risesBasisPoints(0, 100)).toBeNull()
    expect(risesBasisPoints(0, 0)).toBeNull()
    expect(risesBasisPoints(1, 2)).toBe(10_000)
  })
})

describe('a bulk change in words', () => {
  it('says which way, how much, and to what', () => {
    expect(bulkInWords(percent(350, 5))).toBe('Up 3.5 %, to the nearest 5p')
    expect(bulkInWords(percent(-1000, 10, 'up'))).toBe('Down 10 %, rounded up to 10p')
    expect(bulkInWords(percent(1, 1, 'down'))).toBe('Up 0.01 %, rounded down to 1p')
    expect(bulkInWords(amount(150, 50))).toBe('Up £1.50, to the nearest 50p')
    expect(bulkInWords(amount(-5, 100, 'up'))).toBe('Down £0.05, rounded up to £1')
    expect(bulkInWords(percent(0, 5))).toBe('Rounded to the nearest 5p')
    expect(bulkInWords(amount(0, 10, 'down'))).toBe('Rounded down to 10p')
    expect(bulkInWords(amount(0, 100, 'up'))).toBe('Rounded up to £1')
  })
})
