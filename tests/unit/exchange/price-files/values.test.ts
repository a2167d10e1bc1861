import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  packInWords,
  readPackHolds,
  readPricePer,
} from '../../../../src-main/exchange/price-files/values/pack-in-words.ts'
import { isExact, packPence } from '../../../../src-main/exchange/price-files/values/pack-price.ts'
import { dayOrderOf, readDay } from '../../../../src-main/exchange/price-files/values/written-day.ts'
import { asNumber, readNumber } from '../../../../src-main/exchange/price-files/values/written-number.ts'
import { readPrice } from '../../../../src-main/exchange/price-files/values/written-price.ts'

const number = (text: string, decimal: 'point' | 'comma') => {
  const read = readNumber(text, decimal)
  return read === null ? null : asNumber(read)
}

describe('a number as it is written', () => {
  it.each([
    ['12.5', 12.5],
    ['1,234.50', 1234.5],
    ['1 234.50', 1234.5],
    ['1\u00A0234.50', 1234.5],
    ['1\u202F234\u202F567', 1_234_567],
    ["1'234.50", 1234.5],
    ['1,234', 1234],
    ['.5', 0.5],
    ['7.', 7],
    ['007', 7],
  ])('%s with a decimal point is %d', (text, value) => {
    expect(number(text, 'point')).toBe(value)
  })

  it.each([
    ['12,5', 12.5],
    ['1.234,50', 1234.5],
    ['1.234', 1234],
    ['1 234,50', 1234.5],
    ['1\u2009234,50', 1234.5],
  ])('%s with a decimal comma is %d', (text, value) => {
    expect(number(text, 'comma')).toBe(value)
  })

  it.each([
    '',
    '.',
    '12,50',
    '1,23,456',
    '1.2.3',
    '1,234 567',
    '12 34',
    'abc',
    '1e3',
    '-1',
    '1234567890123456',
  ])('"%s" is none where the point marks decimals', (text) => {
    expect(readNumber(text, 'point')).toBeNull()
  })

  it('keeps how many decimals were written', () => {
    expect(readNumber('1.2300', 'point')).toEqual({ digits: 12_300, decimals: 4 })
  })
})

describe('a price as it is written', () => {
  it.each([
    ['£1,234.50 /100', 'point', 1234.5, 100],
    ['£4.10 per 100', 'point', 4.1, 100],
    ['12.00/1,000', 'point', 12, 1000],
    ['1.234,50', 'comma', 1234.5, undefined],
    ['12.5', 'point', 12.5, undefined],
    ['€ 3,-', 'comma', 3, undefined],
    ['£3.-', 'point', 3, undefined],
    ['1\u00A0234,50', 'comma', 1234.5, undefined],
    ['GBP 9.99', 'point', 9.99, undefined],
    ['9.99 GBP', 'point', 9.99, undefined],
    ['£2.50 each', 'point', 2.5, 1],
    ['2.50/ea', 'point', 2.5, 1],
    ['£7.20/m', 'point', 7.2, 1],
    ['45p', 'point', 0.45, undefined],
    ['£ 1,234', 'point', 1234, undefined],
  ] as const)('"%s" (decimal %s) is %d', (text, decimal, value, per) => {
    const read = readPrice(text, decimal)
    if (typeof read === 'string') throw new Error(read)
    expect(asNumber(read.amount)).toBe(value)
    expect(read.per).toBe(per)
  })

  it('says which foreign sign it carries', () => {
    expect(readPrice('€ 3,-', 'comma')).toMatchObject({ foreign: '€' })
    expect(readPrice('£3', 'comma')).not.toHaveProperty('foreign')
    expect(readPrice('GBP 3', 'comma')).not.toHaveProperty('foreign')
  })

  it.each(['-1.00', '£-1.00', '(1.00)', '1.00-', '−1.00'])('"%s" is refused as below nought', (text) => {
    expect(readPrice(text, 'point')).toBe(`The price "${text}" is below nought.`)
  })

  it.each(['POA', 'call', '#N/A', '£', '1.2.3'])('"%s" is refused as no amount', (text) => {
    expect(readPrice(text, 'point')).toBe(`The price "${text}" is not an amount of money.`)
  })

  it('written with the other mark is refused by the name of the mark', () => {
    expect(readPrice('£12,50', 'point')).toContain('not written with a decimal point')
    expect(readPrice('1.23', 'comma')).toContain('not written with a decimal comma')
  })
})

/** Exact half-up rounding with whole numbers of any size, written down apart from the code under test. */
function oracle(amount: bigint, decimals: number, holds: bigint, per: bigint): bigint {
  const over = 10n ** BigInt(decimals) * per
  const top = amount * 100n * holds
  return top / over + ((top % over) * 2n >= over ? 1n : 0n)
}

describe("a pack's price", () => {
  const amount = (text: string) => readNumber(text, 'point') ?? { digits: -1, decimals: 0 }

  it.each([
    // price, for how many units, pack holds, whole pence worked out by hand
    ['1234.50', 100, '10', 12_345],
    ['4.10', 100, '100', 410],
    ['4.10', 1000, '100', 41],
    ['0.0345', 1, '100', 345],
    ['12.50', 100, '1', 13],
    ['12.49', 100, '1', 12],
    ['1.005', null, '1', 101],
    ['1.004', null, '7', 100],
    ['2.00', 1, '3.5', 700],
    ['0.1', 3, '1', 3],
    ['0.5', 100, '1', 1],
  ] as const)('%s for %s units, %s in the pack, is %d pence', (price, per, holds, pence) => {
    expect(packPence({ amount: amount(price), per, holds: amount(holds) })).toBe(pence)
  })

  it('is exact when no rounding was needed, and only then', () => {
    const exact = (price: string, per: number | null, holds: string) =>
      isExact({ amount: amount(price), per, holds: amount(holds) })
    expect(exact('0.0345', 1, '100')).toBe(true)
    expect(exact('1.230', null, '1')).toBe(true)
    expect(exact('1.23', null, '1')).toBe(true)
    expect(exact('1.234', null, '1')).toBe(false)
    expect(exact('12.50', 100, '1')).toBe(false)
  })

  it('is what whole numbers of any size come to', () => {
    const digits = fc.integer({ min: 0, max: 999_999_999_999_999 })
    const pack = fc.integer({ min: 1, max: 100_000 })
    fc.assert(
      fc.property(digits, fc.integer({ min: 0, max: 9 }), pack, pack, (figures, decimals, holds, per) => {
        const exact = oracle(BigInt(figures), decimals, BigInt(holds), BigInt(per))
        const most = BigInt(Number.MAX_SAFE_INTEGER)
        const read = packPence({
          amount: { digits: figures, decimals },
          per,
          holds: { digits: holds, decimals: 0 },
        })
        expect(BigInt(read)).toBe(exact > most ? most : exact)
      }),
    )
    fc.assert(
      fc.property(digits, fc.integer({ min: 0, max: 15 }), (figures, decimals) => {
        const exact = oracle(BigInt(figures), decimals, 1n, 1n)
        const most = BigInt(Number.MAX_SAFE_INTEGER)
        const read = packPence({
          amount: { digits: figures, decimals },
          per: null,
          holds: { digits: 9, decimals: 0 },
        })
        expect(BigInt(read)).toBe(exact > most ? most : exact)
      }),
    )
  })
})

const inWords = (text: string) => {
  const found = packInWords(text)
  return found === null ? null : asNumber(found)
}

describe('a pack size in the words of a description', () => {
  it.each([
    ['Wall plug brown pk 100', 100],
    ['Wall plug PK100', 100],
    ['Clip (pack of 50)', 50],
    ['Clip box of 1,000', 1000],
    ['Olive bag/25', 25],
    ['Screw 4 x 50 /100', 100],
    ['Nail clip x 100', 100],
    ['Washer 100 per box', 100],
    ['Washer 100/bag', 100],
    ['Insert 10pk', 10],
    ['Copper tube 15 mm 3m', 3],
    ['Copper tube 15mm x 3m', 3],
    ['Barrier pipe 25 metres', 25],
    ['Tape 12.5 m', 12.5],
    ['Clip pk 10, 10 per pack', 10],
  ])('"%s" holds %d', (text, holds) => {
    expect(inWords(text)).toBe(holds)
  })

  it.each([
    'Screw 4 x 50',
    'Screw 4.0mm x 100',
    'Elbow 15 mm',
    'Reducer 22/15',
    'Bend 1/2',
    'Tube 15mm x 3m pk 10',
    'Tube 10 x 3m',
    'Towel rail 500 x 1200',
    'Boxed valve 15',
    'Radiator K2 600 x 1000',
    'Pump 25/60 130mm',
    'Insulation 9 m2',
    'Bag 25 kg',
    'Tub 500 ml',
    'Pack of 0',
    '',
  ])('"%s" says nothing certain', (text) => {
    expect(inWords(text)).toBeNull()
  })
})

describe('the cells of pack and of what a price is for', () => {
  const holds = (text: string, decimal: 'point' | 'comma' = 'point') => {
    const read = readPackHolds(text, decimal)
    return read === null ? null : asNumber(read)
  }

  it('read figures, words and neither', () => {
    expect([holds('100'), holds('1,000'), holds('1.000', 'comma'), holds('2,5', 'comma')]).toEqual([
      100, 1000, 1000, 2.5,
    ])
    expect([holds(''), holds('each'), holds('EA'), holds('1 each')]).toEqual([1, 1, 1, 1])
    expect([holds('50 EA'), holds('3m'), holds('PK 100'), holds('Box of 20'), holds('100 per box')]).toEqual([
      50, 3, 100, 20, 100,
    ])
    expect([holds('some'), holds('10 x 100'), holds('-5')]).toEqual([null, null, null])
    expect(holds('0')).toBe(0)
  })

  it('tell a price for one, for many and for the pack apart', () => {
    expect(['100', 'per 100', '/100', '1,000', '100.00', '100 EA', 'hundred'].map(readPricePer)).toEqual([
      100, 100, 100, 1000, 100, 100, 100,
    ])
    expect(['each', 'EA', 'per metre', 'm', 'unit', '1'].map(readPricePer)).toEqual([1, 1, 1, 1, 1, 1])
    expect(['pack', 'PK', 'per box', 'coil'].map(readPricePer)).toEqual(['pack', 'pack', 'pack', 'pack'])
    expect(['0', 'C', 'often', ''].map(readPricePer)).toEqual([null, null, null, null])
  })
})

describe('a day as it is written', () => {
  it.each([
    ['31/01/2027', 'dayFirst', '2027-01-31'],
    ['1.2.27', 'dayFirst', '2027-02-01'],
    ['01/02/2027', 'monthFirst', '2027-01-02'],
    ['2027-02-01', 'dayFirst', '2027-02-01'],
    ['2027-02-01T00:00:00', 'monthFirst', '2027-02-01'],
    ['27/02/01', 'yearFirst', '2027-02-01'],
    ['20270201', 'dayFirst', '2027-02-01'],
    ['1 Feb 2027', 'dayFirst', '2027-02-01'],
    ['1st February 2027', 'monthFirst', '2027-02-01'],
    ['01-FEB-27', 'dayFirst', '2027-02-01'],
    ['February 1, 2027', 'dayFirst', '2027-02-01'],
    ['29/02/2028', 'dayFirst', '2028-02-29'],
    // Serial numbers: 39448 is 1 January 2008 (published help of a spreadsheet's DATE function); 45658 by counting on
    // 6210 days, of which five leap days, to 1 January 2025.
    ['39448', 'dayFirst', '2008-01-01'],
    ['45658', 'dayFirst', '2025-01-01'],
    ['45658.75', 'dayFirst', '2025-01-01'],
  ] as const)('"%s" read %s is %s', (text, order, day) => {
    expect(readDay(text, order)).toBe(day)
  })

  it.each(['31/02/2027', '29/02/2027', '00/01/2027', '13/13/2027', '60'])('"%s" is no day', (text) => {
    expect(readDay(text, 'dayFirst')).toEqual({
      fault: `"${text}" is not a day of the calendar, read day first.`,
    })
  })

  it.each(['1', '59', '61', '366', '01/01/1900', '01/01/1989', '2101-01-01'])(
    '"%s" is an absurd year',
    (text) => {
      expect(readDay(text, 'dayFirst')).toMatchObject({
        fault: expect.stringMatching(/is the year (19|21)\d\d/),
      })
    },
  )

  it.each(['soon', '1/2', '0', '2027', '12:30'])('"%s" is no day at all', (text) => {
    expect(readDay(text, 'dayFirst')).toHaveProperty('fault')
  })

  it('shows its order where it can be told', () => {
    expect(dayOrderOf(['01/02/2027', '31/01/2027'])).toBe('dayFirst')
    expect(dayOrderOf(['01/02/2027', '01/31/2027'])).toBe('monthFirst')
    expect(dayOrderOf(['2027-01-31'])).toBe('yearFirst')
    expect(dayOrderOf(['01/02/2027'])).toBe('dayFirst')
  })
})
