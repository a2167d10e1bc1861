import { describe, expect, it } from 'vitest'
import { isPerUnit, meaningsOf } from '../../../../src-main/exchange/price-files/seen/column-words.ts'
import { decimalMarkOf } from '../../../../src-main/exchange/price-files/seen/decimal-mark.ts'
import { headerRowOf } from '../../../../src-main/exchange/price-files/seen/header-row.ts'
import { proposeColumns } from '../../../../src-main/exchange/price-files/seen/propose-columns.ts'
import { heardAsDetected, fileOf } from './read-for-tests.ts'

const proposed = (headings: readonly string[], rows: readonly (readonly string[])[] = []) =>
  proposeColumns(headings, rows).map(({ at, meaning }) => `${at} ${meaning}`)

describe('a heading', () => {
  it.each([
    ['Code', 'code'],
    ['Part No.', 'code'],
    ['Product Code', 'code'],
    ['STOCK CODE', 'code'],
    ['SKU', 'code'],
    ['Supplier ref', 'code'],
    ['Description', 'name'],
    ['Product description', 'name'],
    ['Product name', 'name'],
    ['GTIN', 'gtin'],
    ['EAN 13', 'gtin'],
    ['Barcode', 'gtin'],
    ['Bar code', 'gtin'],
    ['Pack size', 'packHolds'],
    ['Qty per pack', 'packHolds'],
    ['Pack Qty', 'packHolds'],
    ['Qty', 'packHolds'],
    ['Price', 'price'],
    ['List price (£)', 'price'],
    ['Trade price ex VAT', 'price'],
    ['Nett price', 'price'],
    ['Per', 'pricePer'],
    ['Price per', 'pricePer'],
    ['UOM', 'unit'],
    ['Unit of measure', 'unit'],
    ['Discount group', 'group'],
    ['Product group', 'group'],
    ['Price group', 'group'],
    ['Category', 'group'],
    ['Valid from', 'validFrom'],
    ['Effective date', 'validFrom'],
    ['Price from', 'validFrom'],
    ['Valid to', 'validTo'],
    ['Break 1 qty', 'breakFromPacks'],
    ['Break 1 price', 'breakPrice'],
  ])('"%s" is the %s', (heading, meaning) => {
    expect(meaningsOf(heading)[0]?.meaning).toBe(meaning)
  })

  it.each([
    '',
    'Stock',
    'Weight kg',
    'Min order qty',
    'Old price',
    'Price inc VAT',
    'VAT code',
    'Commodity code',
    'Colour',
    'Price increase %',
  ])('"%s" is none of ours', (heading) => {
    expect(meaningsOf(heading)).toEqual([])
  })

  it('may say that the price is for a unit', () => {
    expect(['Unit price', 'Price each', 'Price per unit', 'Cost ea'].map(isPerUnit)).toEqual([
      true,
      true,
      true,
      true,
    ])
    expect(['Price', 'Pack price', 'List price'].map(isPerUnit)).toEqual([false, false, false])
  })
})

describe('the columns that are proposed', () => {
  it('go by the words above them', () => {
    expect(proposed(['Part No', 'Description', 'Pack', 'UOM', 'Trade', 'Barcode'])).toEqual([
      '0 code',
      '1 name',
      '2 packHolds',
      '3 unit',
      '4 price',
      '5 gtin',
    ])
  })

  it('of two prices the list price is taken, and of two alike the first', () => {
    expect(proposed(['Code', 'Net price', 'List price'])).toEqual(['0 code', '2 price'])
    expect(proposed(['Code', 'Price', 'Price'])).toEqual(['0 code', '1 price'])
  })

  it('what stands in a column can speak against the word above it', () => {
    expect(
      proposed(
        ['Code', 'Price', 'Cost'],
        [
          ['A1', 'see web', '1.50'],
          ['A2', 'see web', '2.50'],
        ],
      ),
    ).toEqual(['0 code', '2 price'])
  })

  it('without headings go by what stands in them', () => {
    const rows = [
      ['x', '2000000000015', 'Elbow 15 mm end feed', 'A-1', '£1.50'],
      ['x', '2000000000022', 'Tee 15 mm end feed', 'A-2', '£2.50'],
      ['x', '2000000000039', 'Cap 15 mm end feed', 'A-3', '£3.50'],
    ]
    expect(proposed([], rows)).toEqual(['1 gtin', '2 name', '3 code', '4 price'])
  })

  it('never name a break’s quantity without its price', () => {
    expect(proposed(['Code', 'Price', 'Break 1 qty', 'Break 1 price', 'Break 2 qty'])).toEqual([
      '0 code',
      '1 price',
      '2 breakFromPacks',
      '3 breakPrice',
    ])
  })

  it('of nothing are none', () => {
    expect(proposed([], [])).toEqual([])
    expect(proposed(['', ''], [['', '']])).toEqual([])
  })
})

describe('the row of the headings', () => {
  const rows = [
    ['A1', 'Elbow', '1.50'],
    ['A2', 'Tee', '2.50'],
  ]

  it('is found under a logo and an address', () => {
    const top = [
      ['Osterby Wholesale'],
      ['12 Dock Road'],
      [],
      ['Price list', '2027'],
      ['Code', 'Description', 'Price'],
    ]
    expect(headerRowOf([...top, ...rows])).toBe(5)
  })

  it('is none where rows begin at once', () => {
    expect(headerRowOf(rows)).toBe(0)
    expect(headerRowOf([])).toBe(0)
  })

  it('is the first of headings that are repeated', () => {
    const repeated = ['Code', 'Description', 'Price']
    expect(headerRowOf([repeated, ...rows, repeated, ...rows])).toBe(1)
  })
})

describe('the mark of decimals', () => {
  it.each([
    [['1.50', '2.50'], 'point'],
    [['1,50', '2,50'], 'comma'],
    [['1,234.50'], 'point'],
    [['1.234,50'], 'comma'],
    [['1,234', '2.5'], 'point'],
    [['1.234', '2,5'], 'comma'],
    [['1.234.567'], 'comma'],
    [['1,234,567'], 'point'],
    [['1,234'], 'point'],
    [['1.234'], 'point'],
    [['€ 3,-', '4,10'], 'comma'],
    [[], 'point'],
  ] as const)('of %j is the %s', (amounts, mark) => {
    expect(decimalMarkOf(amounts)).toBe(mark)
  })
})

describe('delimiters', () => {
  it.each([
    [',', 'Elbow; 15 mm | x'],
    [';', 'Elbow, 15 mm, end | feed'],
    ['\t', 'Elbow, 15 mm; end | feed'],
    ['|', 'Elbow, 15 mm; end feed'],
  ])('%j is found in spite of the others in the text', async (delimiter, name) => {
    const text = [
      ['Code', 'Description', 'Pack', 'Price'],
      ['A1', name, '10', '1.50'],
      ['A2', name, '5', '2.50'],
    ]
    const file = fileOf('delimiters.csv', text.map((cells) => cells.join(delimiter)).join('\n'))
    const { reading, rows } = await heardAsDetected(file)
    expect(reading.delimiter).toBe(delimiter)
    expect(rows.map((row) => row.name)).toEqual([name, name])
  })
})
