import { describe, expect, it } from 'vitest'
import type { FileReading } from '../../../../src-main/domain/price-list.ts'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { rowReaderOf } from '../../../../src-main/exchange/price-files/row-reader.ts'
import { quantityInHeading } from '../../../../src-main/exchange/price-files/seen/break-heading.ts'
import { proposeColumns } from '../../../../src-main/exchange/price-files/seen/propose-columns.ts'
import { answered, refused } from '../../../answered.ts'
import { fileOf, heardAsDetected, heardOf, inCorpus, plainReading } from './read-for-tests.ts'

describe('a quantity in a heading', () => {
  it.each([
    ['10+', 10],
    ['10 +', 10],
    ['£ 10+', 10],
    ['Price 100+', 100],
    ['Price 10+ (£)', 10],
    ['10+ packs', 10],
    ['10 packs +', 10],
    ['Break 50+', 50],
    ['25 off', 25],
    ['25 off price', 25],
    ['Qty 50', 50],
    ['Quantity: 50', 50],
    ['QTY 50+', 50],
    ['From 12 boxes', 12],
    ['10-24', 10],
    ['10 – 24', 10],
    ['10 to 24 pcs', 10],
    ['1,000+', 1000],
    ['10 or more', 10],
    ['10 and over', 10],
    ['10 & above', 10],
    ['100 up', 100],
    ['1-9', 1],
    ['0 - 9', 1],
    ['1+', 1],
  ])('"%s" says %i', (heading, quantity) => expect(quantityInHeading(heading)).toBe(quantity))

  it.each([
    'Price',
    'Price per 100',
    'Per 100',
    'Break 2 price',
    'Break 1 qty',
    'Price 2',
    'Pack of 10',
    '10 pack',
    '25% off',
    'Qty',
    '15 mm',
    'Price from 1 January 2027',
    '100,001+',
    '',
  ])('"%s" says none', (heading) => expect(quantityInHeading(heading)).toBeNull())
})

describe('columns headed by a quantity', () => {
  it('are price breaks beside the price, and what is in stock is none', async () => {
    const { reading, rows, rejected, notes } = await heardAsDetected(inCorpus('breaks-in-headings.csv'))
    expect(reading.columns).toEqual([
      { at: 0, meaning: 'code' },
      { at: 1, meaning: 'name' },
      { at: 2, meaning: 'packHolds' },
      { at: 3, meaning: 'price' },
      { at: 4, meaning: 'breakPrice', fromPacks: 10 },
      { at: 5, meaning: 'breakPrice', fromPacks: 25 },
      { at: 6, meaning: 'breakPrice', fromPacks: 100 },
    ])
    expect(rows.map(({ packPence, breaks }) => [packPence, breaks])).toEqual([
      [
        1000,
        [
          { fromPacks: 10, packPence: 950 },
          { fromPacks: 25, packPence: 900 },
          { fromPacks: 100, packPence: 825 },
        ],
      ],
      [1200, [{ fromPacks: 10, packPence: 1100 }]],
      [600, undefined],
    ])
    expect([rejected, notes]).toEqual([[], []])
  })

  it('are taken by quantity where they are out of order, and a break that is dearer than fewer is told', async () => {
    const { reading, rows, notes } = await heardAsDetected(inCorpus('breaks-out-of-order.csv'))
    expect(rows.map(({ packPence, breaks }) => [packPence, breaks?.map((one) => one.fromPacks)])).toEqual([
      [40, [10, 50, 200]],
      [50, [10, 50, 200]],
    ])
    expect(notes).toEqual([
      '3: From 10 packs a pack costs £0.55, more than the £0.50 for one alone.',
      '3: From 200 packs a pack costs £0.60, more than the £0.45 from 50 packs.',
    ])
    const look = answered(await lookAtFile(inCorpus('breaks-out-of-order.csv'), reading))
    expect(look.notes[0]).toBe(
      'The columns of price breaks are out of order (50, 10, 200 packs): they are taken by quantity.',
    )
    expect(look.understood[0]?.breaks).toHaveLength(3)
  })

  it('of whole numbers below "Qty 50" are what is in stock, unless a plus says otherwise', () => {
    const rows = [
      ['A1', 'Elbow 15 mm', '1.00', '7'],
      ['A2', 'Elbow 22 mm', '2.00', '9'],
    ]
    const meant = (heading: string) =>
      proposeColumns(['Code', 'Description', 'Price', heading], rows).find(({ at }) => at === 3)
    expect(meant('Qty 50')).toBeUndefined()
    expect(meant('Qty 50+')).toEqual({ at: 3, meaning: 'breakPrice', fromPacks: 50 })
  })

  it('of the same quantity count once, the further left', () => {
    const headings = ['Code', 'Price', '10+', '10 off']
    expect(proposeColumns(headings, [['A1', '1.00', '0.90', '0.80']]).map(({ at }) => at)).toEqual([0, 1, 2])
  })

  it('are twenty at most', () => {
    const headings = ['Code', 'Price', ...Array.from({ length: 25 }, (_, at) => `${at + 2}+`)]
    const columns = proposeColumns(headings, [['A1', ...headings.slice(1).map(() => '1.00')]])
    expect(
      columns.filter(({ meaning }) => meaning === 'breakPrice').map(({ fromPacks }) => fromPacks),
    ).toEqual(Array.from({ length: 20 }, (_, at) => at + 2))
    expect(rowReaderOf({ ...plainReading, columns }).ok).toBe(true)
  })

  it('say so when a reading that was kept takes them for another quantity', async () => {
    const file = fileOf('later.csv', 'Code,Description,Price,20+\nA1,Elbow 15 mm,1.00,0.90\n')
    const columns = [...plainReading.columns, { at: 3, meaning: 'breakPrice', fromPacks: 10 } as const]
    const { notes } = answered(await lookAtFile(file, { ...plainReading, columns }))
    expect(notes).toEqual([
      'Column 4 is headed "20+" and is taken as the price from 10 packs: put the number right.',
    ])
  })
})

describe('a reading of price breaks', () => {
  const withColumns = (...columns: FileReading['columns']) => ({
    ...plainReading,
    columns: [...plainReading.columns, ...columns],
  })

  it('takes quantities from headings and from columns side by side', async () => {
    const file = fileOf('both.csv', 'Code,Description,Price,a,b,c\nA1,Elbow,1.00,0.95,50,0.90\n')
    const reading = withColumns(
      { at: 3, meaning: 'breakPrice', fromPacks: 12 },
      { at: 4, meaning: 'breakFromPacks' },
      { at: 5, meaning: 'breakPrice' },
    )
    const { rows, notes } = await heardOf(file, reading)
    expect(rows[0]?.breaks).toEqual([
      { fromPacks: 12, packPence: 95 },
      { fromPacks: 50, packPence: 90 },
    ])
    expect(notes).toEqual([
      '2: The price breaks are out of order (50, 12 packs): they are taken by quantity.',
    ])
  })

  it('takes the first of two prices from one quantity, and says so', async () => {
    const file = fileOf('twice.csv', 'Code,Description,Price,q,p,q,p\nA1,Elbow,1.00,10,0.90,10,0.80\n')
    const reading = withColumns(
      { at: 3, meaning: 'breakFromPacks' },
      { at: 4, meaning: 'breakPrice' },
      { at: 5, meaning: 'breakFromPacks' },
      { at: 6, meaning: 'breakPrice' },
    )
    const { rows, notes } = await heardOf(file, reading)
    expect(rows[0]?.breaks).toEqual([{ fromPacks: 10, packPence: 90 }])
    expect(notes).toEqual(['2: The price from 10 packs is given twice: the one further left counts.'])
  })

  it.each([
    [
      [{ at: 3, meaning: 'breakPrice' } as const],
      'Price breaks come in pairs: a column of quantities and a column of prices for each. Where a heading says the quantity, give it as the number of packs.',
    ],
    [
      [{ at: 3, meaning: 'unit', fromPacks: 10 } as const],
      'Column 4 is said to be from 10 packs, which only a price of a break can be.',
    ],
    [
      [
        { at: 3, meaning: 'breakPrice', fromPacks: 10 } as const,
        { at: 4, meaning: 'breakPrice', fromPacks: 10 } as const,
      ],
      'Two columns are said to be the price from 10 packs: choose one.',
    ],
    [
      Array.from({ length: 21 }, (_, at) => ({
        at: at + 3,
        meaning: 'breakPrice' as const,
        fromPacks: at + 2,
      })),
      'A row has 20 price breaks at most: leave some columns out.',
    ],
  ])('is refused where its columns do not go together (%#)', (columns, message) => {
    expect(refused(rowReaderOf(withColumns(...columns)))).toEqual({
      code: 'invalid',
      message,
      path: 'reading.columns',
    })
  })
})
