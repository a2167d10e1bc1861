import { createHash } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { describe, expect, it } from 'vitest'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { detectReading } from '../../../../src-main/exchange/price-files/detect-reading.ts'
import { answered, refused } from '../../../answered.ts'
import { heardAsDetected, inCorpus } from './read-for-tests.ts'

const heard = (name: string) => heardAsDetected(inCorpus(name))
const meaningsOf = (columns: readonly { readonly meaning: string }[]) =>
  columns.map(({ meaning }) => meaning).join(' ')

describe('the files that suppliers might send', () => {
  const folder = dirname(inCorpus('README.md').path)
  const files = readdirSync(folder).filter((name) => !/\.(ts|md)$/.test(name))

  it('are all told of in their README', () => {
    const readme = readFileSync(inCorpus('README.md').path, 'utf8')
    expect(files.length).toBeGreaterThan(20)
    expect(files.filter((name) => !readme.includes(`\`${name}\``))).toEqual([])
  })

  it('give the hash of their bytes', async () => {
    const name = 'letterhead.csv'
    const { answer } = await heard(name)
    const bytes = readFileSync(inCorpus(name).path)
    expect(answered(answer)).toEqual({ rows: 5, fileHash: createHash('sha256').update(bytes).digest('hex') })
  })
})

describe('a list under a letterhead', () => {
  it('is read from its headings on, prices per 100 becoming pack prices', async () => {
    const { reading, rows, rejected, notes } = await heard('letterhead.csv')
    expect(reading).toMatchObject({
      form: 'text',
      encoding: 'utf-8',
      delimiter: ',',
      headerRow: 6,
      decimal: 'point',
    })
    expect(meaningsOf(reading.columns)).toBe('code name packHolds price pricePer group')
    expect(rows).toEqual([
      { rowNo: 7, code: '00126', name: 'Elbow 15 mm, end feed', packHolds: 10, packPence: 1050, group: 'EF' },
      { rowNo: 8, code: '00127', name: 'Tee 15 mm end feed', packHolds: 10, packPence: 12_345, group: 'EF' },
      {
        rowNo: 9,
        code: '00128',
        name: 'Clip 15 mm single',
        packHolds: 100,
        packPence: 410,
        group: 'Clips-bands',
      },
      {
        rowNo: 11,
        code: '00201',
        name: 'Copper tube 15 mm x 3 m',
        packHolds: 1,
        packPence: 1234,
        group: 'CT',
      },
    ])
    expect(rejected).toEqual([
      { rowNo: 10, text: 'COPPER TUBE |  |  |  |  | ', says: 'The row has no price.' },
    ])
    expect(notes).toEqual([])
  })
})

describe('encodings and marks', () => {
  it('Windows-1252 with semicolons and decimal commas', async () => {
    const { reading, rows, notes } = await heard('decimal-comma.csv')
    expect(reading).toMatchObject({
      encoding: 'windows-1252',
      delimiter: ';',
      decimal: 'comma',
      dates: 'dayFirst',
    })
    expect(rows.map(({ name, packPence }) => [name, packPence])).toEqual([
      ['Valve d’angle 15 mm', 300],
      ['Towel rail 500 x 1200, white', 123_450],
      ['Pump head', 123_450],
      ['Olive 15 mm', 1250],
    ])
    expect(rows[0]?.validFrom).toBe('2027-01-13')
    expect(notes).toEqual(['2: The price carries €; the figure is taken as pounds.'])
  })

  it.each([
    ['tabs-utf16-marked.txt', 'utf-16le', '\t'],
    ['pipes-utf16-unmarked.txt', 'utf-16be', '|'],
  ])('%s is %s', async (name, encoding, delimiter) => {
    const { reading, rows } = await heard(name)
    expect(reading).toMatchObject({ encoding, delimiter, headerRow: 1 })
    expect(rows.map(({ code, packPence }) => [code, packPence])).toEqual([
      ['T1', 320],
      ['T2', 1400],
    ])
  })

  it('line ends of every kind, in one file', async () => {
    const { rows } = await heard('mixed-line-ends.csv')
    expect(rows.map(({ rowNo, name }) => [rowNo, name])).toEqual([
      [2, 'Elbow 15 mm'],
      [3, 'Tee'],
      [4, 'Cap'],
    ])
  })
})

describe('codes and texts', () => {
  it('stay as they are written, be they noughts or formulas', async () => {
    const { rows, rejected } = await heard('codes-as-text.csv')
    expect(rows.map(({ code, name }) => [code, name])).toEqual([
      ['00126', '=HYPERLINK("http://example.com","Elbow")'],
      ['=1+1', '+44 adaptor'],
      ['-5A', '@SUM(A1)'],
    ])
    expect(rejected).toHaveLength(1)
    expect(rejected[0]?.says).toContain('shortened the code to "5.01E+12"')
  })
})

describe('packs, breaks, dates', () => {
  it('packs are taken from the description where no column has them, if certain', async () => {
    const { reading, rows } = await heard('packs-in-words.csv')
    expect(meaningsOf(reading.columns)).toBe('code name price')
    expect(rows.map(({ packHolds }) => packHolds)).toEqual([100, 50, 100, 100, 100, 3, 25, 1, 1])
    expect(rows[0]?.packPence).toBe(240)
  })

  it('price breaks go in pairs', async () => {
    const { rows } = await heard('price-breaks.csv')
    expect(rows.map(({ breaks }) => breaks)).toEqual([
      [
        { fromPacks: 10, packPence: 950 },
        { fromPacks: 50, packPence: 900 },
      ],
      [{ fromPacks: 5, packPence: 1100 }],
    ])
  })

  it('unit prices, a wrong GTIN, fine prices and four ways to write a day', async () => {
    const { reading, rows, notes } = await heard('dates-and-numbers.csv')
    expect(meaningsOf(reading.columns)).toBe('code gtin name price packHolds unit group validFrom validTo')
    expect(reading.pricePerUnit).toBe(true)
    expect(
      rows.map(({ gtin, packHolds, packPence, validFrom }) => [gtin, packHolds, packPence, validFrom]),
    ).toEqual([
      ['2000000000015', 1, 750, '2027-01-31'],
      [undefined, 100, 345, '2027-02-01'],
      [undefined, 1, 201, '2027-02-03'],
      // 46023 is 365 days after 45658, 1 January 2025.
      [undefined, 1, 150, '2026-01-01'],
    ])
    expect(notes).toEqual([
      '3: The GTIN "2000000000016" is not one: its check figure is wrong. The row is kept without it.',
      '4: The price is finer than a penny: the pack’s price is rounded, half a penny up.',
    ])
  })

  it('a list without headings is read by its contents', async () => {
    const { reading, rows } = await heard('no-headings.csv')
    expect(reading.headerRow).toBe(0)
    expect(meaningsOf(reading.columns)).toBe('code name gtin price')
    expect(rows.map(({ rowNo, packPence }) => [rowNo, packPence])).toEqual([
      [1, 325],
      [2, 475],
      [3, 295],
    ])
  })
})

describe('rows that are wrong', () => {
  it('are each rejected with a reason, and the others kept', async () => {
    const { answer, rows, rejected } = await heard('wrong-rows.csv')
    expect(answered(answer).rows).toBe(14)
    expect(rows.map(({ rowNo, packPence }) => [rowNo, packPence])).toEqual([
      [2, 100],
      [16, 1],
    ])
    expect(rejected.map(({ rowNo, says }) => `${rowNo} ${says}`)).toEqual([
      '3 The row has no code.',
      '4 The row has no price.',
      '5 The price "-2.50" is below nought.',
      '6 The price "POA" is not an amount of money.',
      '7 The price "1,000,000.01" makes a pack over 1,000,000.00: that is past all sense.',
      '8 The price "12,50" is not written with a decimal point, as this file is said to be.',
      '9 The pack holds nothing: a pack size must be above 0.',
      '10 The pack size "some" is not a number of units.',
      '11 "31/02/2027" is not a day of the calendar, read day first.',
      '12 "60" is not a day of the calendar, read day first.',
      '13 The price "(2.50)" is below nought.',
      '14 The price "0.004" makes a pack of less than half a penny: is a pack size missing?',
    ])
    expect(rejected[0]?.text).toBe(' | No code | 1 | 1.00 | 01/02/2027')
  })
})

describe('files that are no price list', () => {
  it.each([
    ['empty.csv', 'is empty'],
    ['open-quote.csv', 'Row 3 of "open-quote.csv" opens a quotation mark that is never closed'],
    ['zero-bytes.csv', 'has zero bytes among its text'],
    ['renamed-zip.xlsx', 'is a zip of other files, whatever its name says'],
    ['old-workbook.xls', 'is an old workbook (.xls)'],
    ['web-page.xls', 'is a web page, whatever its name says'],
    ['catalogue-in-euro.xml', 'is priced in "EUR"; prices are kept in GBP'],
    ['catalogue-with-entities.xml', 'carries a document type'],
  ])('%s: %s', async (name, says) => {
    expect(refused(await detectReading(inCorpus(name))).message).toContain(says)
    expect(refused(await lookAtFile(inCorpus(name))).message).toContain(says)
  })

  it('headings alone are nothing to read in', async () => {
    const { answer } = await heard('headings-only.csv')
    expect(refused(answer).message).toContain('has no row below its headings in row 1')
  })

  it('without a column of prices the person is asked for one', async () => {
    const { reading, answer } = await heard('no-price.csv')
    expect(meaningsOf(reading.columns)).toBe('code name')
    expect(refused(answer)).toMatchObject({ path: 'reading.columns' })
    expect(refused(answer).message).toContain('No column is said to hold the price')
    const look = answered(await lookAtFile(inCorpus('no-price.csv')))
    expect(look.understood).toEqual([])
    expect(look.raw).toHaveLength(3)
    expect(look.notes[0]).toContain('No column is said to hold the price')
  })
})

describe('a look at a file', () => {
  it('shows the rows as they stand and as understood', async () => {
    const look = answered(await lookAtFile(inCorpus('letterhead.csv')))
    expect(look.name).toBe('letterhead.csv')
    expect(look.bytes).toBe(readFileSync(inCorpus('letterhead.csv').path).length)
    expect(look.headings).toEqual(['Code', 'Description', 'Pack Qty', 'List Price', 'Per', 'Discount Group'])
    expect(look.raw[0]?.[0]).toBe('BRACKENHOLT SUPPLY')
    expect(look.understood[0]).toEqual({
      rowNo: 7,
      code: '00126',
      name: 'Elbow 15 mm, end feed',
      packHolds: 10,
      packPence: 1050,
    })
    expect(look.rejected.map(({ rowNo }) => rowNo)).toEqual([10])
    expect(look).not.toHaveProperty('sheets')
  })

  it('says when two columns have the same heading', async () => {
    const look = answered(await lookAtFile(inCorpus('headings-twice.csv')))
    expect(look.notes).toEqual(['Columns 3 and 4 are all headed "Price": column 3 is taken as the price.'])
    expect(look.understood.map(({ packPence }) => packPence)).toEqual([100, 200])
  })

  it('reads as the person says', async () => {
    const found = answered(await lookAtFile(inCorpus('headings-twice.csv')))
    const columns = found.reading.columns.map((one) => (one.meaning === 'price' ? { ...one, at: 3 } : one))
    const look = answered(await lookAtFile(inCorpus('headings-twice.csv'), { ...found.reading, columns }))
    expect(look.understood.map(({ packPence }) => packPence)).toEqual([120, 240])
  })
})
