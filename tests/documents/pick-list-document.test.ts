import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { pickListDocument } from '../../src-main/documents/pick-list-document.ts'
import type { PickListView } from '../../src-main/documents/pick-list-view.ts'
import { pickListView } from '../../src-main/documents/pick-list-view.ts'
import { given } from '../../src-main/domain/derivation.ts'
import type { PickList } from '../../src-main/domain/quote.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { quoteOf, testLines } from './material-for-tests.ts'
import { readPdf, unbroken } from './read-pdf.ts'

const why = given('a reason that no paper prints', 1)
const pickList: PickList = {
  suppliers: [
    {
      supplierId: 'first',
      name: 'Example Merchant',
      lines: [
        {
          itemId: 'rail',
          name: 'Towel rail, 500 wide x 1200 high',
          code: 'TR-0500-1200',
          packs: 1,
          packHolds: 1,
          unit: 'each',
          need: 1,
          leftover: 0,
          generic: true,
          massKg: 12.4,
        },
        {
          itemId: 'plug',
          name: 'Wall plug 8 x 50 mm',
          code: '00126',
          packs: 2,
          packHolds: 10,
          unit: 'each',
          need: 14,
          leftover: 6,
          generic: false,
        },
        {
          itemId: 'pipe',
          name: 'Copper pipe, 15 mm',
          code: 'PI/15',
          packs: 2,
          packHolds: 3,
          unit: 'm',
          need: 3.5,
          leftover: 2.5,
          generic: false,
        },
      ],
    },
  ],
  fromBox: [
    { name: 'vent (O-ring)', quantity: 1, swapId: 'swap-1' },
    { name: 'vent (O-ring)', quantity: 1, swapId: 'swap-1' },
  ],
  tools: [{ toolId: 'bit', name: 'Masonry bit, 8 mm', why }],
  pipeCuts: [
    {
      name: 'Copper pipe, 15 mm',
      bars: [
        {
          stockId: 'PI/15',
          cuts: [
            { id: 'left side', lengthMm: 1800 },
            { id: 'right side', lengthMm: 1150 },
          ],
          offcutMm: 46,
        },
      ],
    },
  ],
  missing: ['The catalogue has no pipe collar (brass).'],
  lifts: [
    {
      swapId: 'swap-1',
      name: 'Triple panel radiator',
      massKg: 61.5,
      says: 'Over 25 kg: two people or a lifting aid.',
    },
  ],
  why,
}

function viewOf(changes: Partial<PickList> = {}): PickListView {
  const quote = quoteOf(testLines)
  const names = { firmName: 'Test Heating', reference: 'TEST-7', madeOn: '2026-03-02' }
  return pickListView({ job: bedroomJob(), pickList: { ...pickList, ...changes }, quote, ...names })
}

async function read(view: PickListView) {
  return readPdf((await printPdf(pickListDocument(view), { createdOn: view.madeOn })).bytes)
}

describe('the pick list on paper', { timeout: 60_000 }, () => {
  it('has each pack with its code as it is written, what is needed and what is spare', async () => {
    const { text } = await read(viewOf())
    expect(text).toContain('TR-0500-1200')
    expect(text).toContain('12.4 kg')
    expect(text.replaceAll('\n', ' ')).toContain('Lines marked “generic” are from the generic catalogue')
    expect(text.match(/, generic/g)).toHaveLength(1)
    expect(text).toMatch(/00126 Wall plug 8 × 50 mm 2 × 10 14 6/)
    expect(text).toMatch(/PI\/15 Copper pipe, 15 mm 2 × 3 m 3\.5 m 2\.5 m/)
  })

  it('has boxes, cuts, tools, what is missing, lifts and cautions', async () => {
    const flat = unbroken((await read(viewOf())).text)
    expect(flat).toContain('Back bedroom: 2 × vent (O-ring)')
    expect(flat).toContain(
      'Length 1, PI/15: cut 1800 mm (left side), 1150 mm (right side). Left over: 46 mm.',
    )
    expect(flat).toContain('Masonry bit, 8 mm')
    expect(flat).toContain('The catalogue has no pipe collar (brass).')
    expect(flat).toContain('Triple panel radiator, 61.5 kg. Over 25 kg: two people or a lifting aid.')
    expect(flat).toContain('Look for hidden pipes and cables before drilling.')
  })

  it('has what the van has already before what is to be bought', async () => {
    const fromVan = [
      { itemId: 'plug', name: 'Wall plug 8 x 50 mm', quantity: 6, unit: 'each' as const },
      { itemId: 'pipe', name: 'Copper pipe, 15 mm', quantity: 3, unit: 'm' as const },
    ]
    const flat = unbroken((await read(viewOf({ fromVan }))).text)
    expect(flat).toContain('6 × Wall plug 8 × 50 mm')
    expect(flat).toContain('Copper pipe, 15 mm, 3 m')
    expect(flat.indexOf('From the van')).toBeGreaterThan(0)
    expect(flat.indexOf('From the van')).toBeLessThan(flat.indexOf('To buy'))
    expect(unbroken((await read(viewOf())).text)).not.toContain('From the van')
  })

  it('has each order’s carriage and what one supplier alone would cost, where the orders were split', async () => {
    const [first] = pickList.suppliers
    if (first === undefined) throw new Error('The test list has a supplier')
    const suppliers = [
      { ...first, goodsPence: 12_345, carriagePence: 650, shortOfFreePence: 1155 },
      { ...first, supplierId: 'second', name: 'Sample Stores', goodsPence: 9000, carriagePence: 0 },
    ]
    const split = {
      goodsPence: 21_345,
      carriagePence: 650,
      totalPence: 21_995,
      proved: true,
      says: 'The cheapest split there is.',
      oneSupplier: [
        {
          supplierId: 'first',
          name: 'Example Merchant',
          goodsPence: 24_000,
          carriagePence: 0,
          totalPence: 24_000,
        },
        { supplierId: 'second', name: 'Sample Stores', cannot: 'Sample Stores does not offer pipe 15 x 2.' },
      ],
    }
    const flat = unbroken((await read(viewOf({ suppliers, split }))).text)
    expect(flat).toContain(
      'Goods £123.45, carriage £6.50, together £129.95 before tax. £11.55 more in goods would come free of it.',
    )
    expect(flat).toContain('Goods £90.00, no carriage, together £90.00 before tax.')
    expect(flat).toContain(
      'All orders: goods £213.45, carriage £6.50, together £219.95 before tax. The cheapest split there is.',
    )
    expect(flat).toContain('All from Example Merchant: goods £240.00, no carriage, together £240.00.')
    expect(flat).toContain('Not all from Sample Stores. Sample Stores does not offer pipe 15 × 2.')
    expect(unbroken((await read(viewOf())).text)).not.toMatch(/What the orders come to|before tax/)
  })

  it('prints when there is nothing to buy', async () => {
    const { text } = await read(
      viewOf({ suppliers: [], fromBox: [], tools: [], pipeCuts: [], missing: [], lifts: [] }),
    )
    expect(text).toContain('There is nothing to buy for this job.')
    expect(text).not.toMatch(/^(Tools|Lifting|Pipe to cut)/m)
  })

  it('repeats a supplier’s name over every page of a long list, and loses no line of it', async () => {
    const [supplier] = pickList.suppliers
    const [, plug] = supplier?.lines ?? []
    if (supplier === undefined || plug === undefined) throw new Error('The test list has lines')
    const lines = Array.from({ length: 150 }, (_, index) => ({ ...plug, code: `CODE-${index}.` }))
    const { pages, text } = await read(viewOf({ suppliers: [{ ...supplier, lines }] }))
    const long = pages.filter((rows) => rows.some((row) => row.startsWith('CODE-')))
    expect(long.length).toBeGreaterThan(2)
    for (const rows of long) expect(rows.some((row) => row.startsWith('Example Merchant Packs'))).toBe(true)
    for (let index = 0; index < 150; index += 1) expect(text).toContain(`CODE-${index}.`)
  })
})
