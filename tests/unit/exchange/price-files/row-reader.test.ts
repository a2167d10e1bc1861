import { describe, expect, it } from 'vitest'
import type { ColumnMeaning, FileReading, ListRow } from '../../../../src-main/domain/price-list.ts'
import { groupKey, rowReaderOf } from '../../../../src-main/exchange/price-files/row-reader.ts'
import { answered } from '../../../answered.ts'
import { plainReading } from './read-for-tests.ts'

/** Reads one row, said cell by cell in the order of their meanings. */
function read(cells: readonly (readonly [ColumnMeaning, string])[], how: Partial<FileReading> = {}) {
  const notes: string[] = []
  const columns = cells.map(([meaning], at) => ({ at, meaning }))
  const reader = answered(rowReaderOf({ ...plainReading, columns, ...how }))
  const row = reader(
    cells.map(([, text]) => text),
    (says) => notes.push(says),
  )
  return { row, notes }
}
const priced = (
  price: string,
  more: readonly (readonly [ColumnMeaning, string])[] = [],
  how: Partial<FileReading> = {},
) => read([['code', 'A1'], ['price', price], ...more], how)
const taken = ({ row }: { readonly row: ListRow | string }): ListRow => {
  if (typeof row === 'string') throw new Error(row)
  return row
}
const penceAndHolds = (one: { readonly row: ListRow | string }) => [
  taken(one).packPence,
  taken(one).packHolds,
]

describe('what a pack costs', () => {
  it('is the price as it stands, unless something says that it is for units', () => {
    expect(penceAndHolds(priced('4.00', [['packHolds', '25']]))).toEqual([400, 25])
    expect(penceAndHolds(priced('4.00', [['packHolds', '25']], { pricePerUnit: true }))).toEqual([10_000, 25])
    expect(
      penceAndHolds(
        priced('4.00', [
          ['packHolds', '25'],
          ['pricePer', '100'],
        ]),
      ),
    ).toEqual([100, 25])
    expect(
      penceAndHolds(
        priced('4.00', [
          ['packHolds', '25'],
          ['pricePer', 'each'],
        ]),
      ),
    ).toEqual([10_000, 25])
  })

  it('goes by the nearest word: the price’s own, then its column’s, then the unit’s, then the file’s', () => {
    const per = (price: string, pricePer: string, unit: string, pricePerUnit = false) =>
      taken(
        priced(
          price,
          [
            ['packHolds', '10'],
            ['pricePer', pricePer],
            ['unit', unit],
          ],
          { pricePerUnit },
        ),
      ).packPence
    expect(per('4.00 /100', 'each', 'per 1000')).toBe(40)
    expect(per('4.00', '100', 'per 1000')).toBe(40)
    expect(per('4.00', '', 'per 1000')).toBe(4)
    expect(per('4.00', '', 'EA', true)).toBe(4000)
    expect(per('4.00', 'pack', 'EA', true)).toBe(400)
    expect(per('4.00', '', 'EA')).toBe(400)
  })

  it('needs to know what the price is for', () => {
    expect(priced('4.00', [['pricePer', 'often']]).row).toBe(
      'What the price is for, "often", is not understood: a number of units, "each" or "pack" is.',
    )
    expect(priced('4.00/0').row).toBe('The price "4.00/0" is for nought units.')
  })

  it('may be nought when that is written, and is told', () => {
    const { row, notes } = priced('0.00')
    expect(row).toMatchObject({ packPence: 0 })
    expect(notes).toEqual(['The price is nought, as written.'])
  })

  it('is a million pounds at most', () => {
    expect(taken(priced('1,000,000.00')).packPence).toBe(100_000_000)
    expect(priced('1,000,000.01').row).toContain('past all sense')
    expect(priced('20.00', [['packHolds', '100000']], { pricePerUnit: true }).row).toContain('past all sense')
  })
})

describe('what a pack holds', () => {
  it('is looked for in the unit, then in the description, only where no column has it', () => {
    const name = ['name', 'Clip bag of 50'] as const
    expect(taken(priced('1.00', [name])).packHolds).toBe(50)
    expect(taken(priced('1.00', [name, ['unit', 'PK100']])).packHolds).toBe(100)
    expect(taken(priced('1.00', [name, ['unit', 'EA']])).packHolds).toBe(50)
    expect(taken(priced('1.00', [name, ['packHolds', '']])).packHolds).toBe(1)
    expect(taken(priced('1.00', [['name', 'Clip']])).packHolds).toBe(1)
  })

  it('is above 0 and 100,000 at most', () => {
    expect(taken(priced('1.00', [['packHolds', '100,000']])).packHolds).toBe(100_000)
    expect(priced('1.00', [['packHolds', '100,001']]).row).toBe('The pack size "100,001" is over 100,000.')
    expect(priced('1.00', [['packHolds', '0.0']]).row).toBe(
      'The pack holds nothing: a pack size must be above 0.',
    )
  })
})

describe('price breaks', () => {
  const breaks = (quantity: string, price: string, how: Partial<FileReading> = {}) =>
    priced(
      '1.00',
      [
        ['breakFromPacks', quantity],
        ['breakPrice', price],
      ],
      how,
    )

  it('may be written 10, 10+ or 10-49, and are left out when half is empty', () => {
    expect(['10', '10+', '10 - 49', '10-'].map((text) => taken(breaks(text, '0.90')).breaks)).toEqual(
      Array.from({ length: 4 }, () => [{ fromPacks: 10, packPence: 90 }]),
    )
    expect(taken(breaks('', '0.90')).breaks).toBeUndefined()
    expect(taken(breaks('10', '')).breaks).toBeUndefined()
  })

  it('are whole packs, two or more', () => {
    expect(breaks('ten', '0.90').row).toBe('A price break from "ten" packs is not a whole number of packs.')
    const one = breaks('1', '0.90')
    expect(taken(one).breaks).toBeUndefined()
    expect(one.notes).toEqual(['A price break from 1 packs is no break and is left out.'])
    expect(breaks('10', 'less').row).toBe('The price "less" is not an amount of money.')
  })

  it('stand in order, and are for the same units as the price', () => {
    const { row } = priced(
      '2.00',
      [
        ['packHolds', '10'],
        ['breakFromPacks', '50'],
        ['breakPrice', '1.00'],
        ['breakFromPacks', '5'],
        ['breakPrice', '1.50'],
      ],
      { pricePerUnit: true },
    )
    expect(row).toMatchObject({
      packPence: 2000,
      breaks: [
        { fromPacks: 5, packPence: 1500 },
        { fromPacks: 50, packPence: 1000 },
      ],
    })
  })
})

describe('the rest of a row', () => {
  it('has its white space evened out', () => {
    expect(taken(priced('1.00', [['name', ' Elbow\u00A0 15\tmm\nend  feed ']])).name).toBe(
      'Elbow 15 mm end feed',
    )
  })

  it('has a code of 200 characters at most', () => {
    const code = (length: number) =>
      read([
        ['code', 'x'.repeat(length)],
        ['price', '1.00'],
      ]).row
    expect(code(200)).toMatchObject({ code: 'x'.repeat(200) })
    expect(code(201)).toBe('The code has 201 characters; 200 are the most.')
  })

  it('has a GTIN with its spaces taken out, or none and a note', () => {
    expect(taken(priced('1.00', [['gtin', '2000 0000 0001 5']])).gtin).toBe('2000000000015')
    const flaw = (text: string) => priced('1.00', [['gtin', text]]).notes
    expect(flaw('12345')).toEqual([
      'The GTIN "12345" is not one: it must have 8, 12, 13 or 14 figures. The row is kept without it.',
    ])
    expect(flaw('5.01E+12')).toEqual([
      'A spreadsheet has shortened the GTIN to "5.01E+12"; the row is kept without it.',
    ])
    expect(taken(priced('1.00', [['gtin', '2000000000016']]))).not.toHaveProperty('gtin')
  })

  it('ends no sooner than it begins', () => {
    const days = (from: string, to: string) =>
      priced('1.00', [
        ['validFrom', from],
        ['validTo', to],
      ]).row
    expect(days('01/02/2027', '01/02/2027')).toMatchObject({ validFrom: '2027-02-01', validTo: '2027-02-01' })
    expect(days('02/02/2027', '01/02/2027')).toBe(
      'The price ends on 2027-02-01, before it begins on 2027-02-02.',
    )
    expect(days('', '32/01/2027')).toContain('is not a day of the calendar')
  })

  it('knows a group by a key made of its name', () => {
    expect(['EF', 'Pipe & fittings', ' -A/1- ', '007', '%', 'x'.repeat(90)].map(groupKey)).toEqual([
      'EF',
      'Pipe-fittings',
      'A-1',
      '007',
      undefined,
      'x'.repeat(80),
    ])
    expect(taken(priced('1.00', [['group', '%']]))).not.toHaveProperty('group')
  })
})
