import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { storeOf } from '../../../../src-main/desk/store-of.ts'
import { tempFolder, valueOf } from '../../../store/store-for-tests.ts'
import { ask, everyTable, problemOf, room } from './price-files-for-tests.ts'

const corpus = join(import.meta.dirname, '../../../price-files')
const tables = (desk: Desk) => everyTable(storeOf(desk).file, ['price_change'])
const whole = { supplierId: 'north' } as const

async function withFile(name: string) {
  const { desk, put } = await room()
  return { desk, put, path: await put(name, await readFile(join(corpus, name), 'utf8')) }
}

async function takeIn(desk: Desk, path: string) {
  const { reading } = valueOf(await ask(desk, 'priceFile.look', { file: { path } }))
  const how = { file: { path }, supplierId: 'north', reading }
  const compared = valueOf(await ask(desk, 'priceFile.compare', how))
  const { fileHash } = compared
  const { changeNo } = valueOf(await ask(desk, 'priceFile.apply', { ...how, fileHash }))
  return { compared, changeNo: changeNo ?? 0 }
}

async function rowOf(desk: Desk, code: string) {
  const { rows } = valueOf(await ask(desk, 'priceList.search', { text: code }))
  const row = rows.find((one) => one.code === code)
  if (row === undefined) throw new Error(`There is no row ${code}`)
  return row
}

const breaksOfH1 = [
  { fromPacks: 10, packPence: 950 },
  { fromPacks: 25, packPence: 900 },
  { fromPacks: 100, packPence: 825 },
]

describe('price breaks that headings state', () => {
  it('are compared, taken in, undone, and written out so that they are read in again as they were', async () => {
    const { desk, path } = await withFile('breaks-in-headings.csv')
    const before = tables(desk)
    const { compared, changeNo } = await takeIn(desk, path)
    expect(compared.added.map(({ code, willBreaks }) => [code, willBreaks])).toEqual([
      ['H1', breaksOfH1],
      ['H2', [{ fromPacks: 10, packPence: 1100 }]],
      ['H3', undefined],
    ])
    expect(compared.cautions).toEqual([])
    expect((await rowOf(desk, 'H1')).breaks).toEqual(breaksOfH1)
    const out = join(await tempFolder(), 'list.csv')
    const written = valueOf(await ask(desk, 'price.export', { form: 'csv', which: whole, out }))
    const again = valueOf(await ask(desk, 'priceFile.look', { file: { path: written.path } }))
    const { understood } = again
    expect(understood.map(({ code, breaks }) => [code, breaks])).toEqual([
      ['H1', breaksOfH1],
      ['H2', [{ fromPacks: 10, packPence: 1100 }]],
      ['H3', undefined],
    ])
    valueOf(await ask(desk, 'price.undo', { changeNo }))
    expect(tables(desk)).toEqual(before)
  })

  it('count as a change where nothing else changes, before and after', async () => {
    const { desk, put, path } = await withFile('breaks-in-headings.csv')
    await takeIn(desk, path)
    const text = (await readFile(path, 'utf8')).replace('£9.00', '£8.90').replace('£11.00', '')
    const { compared } = await takeIn(desk, await put('next.csv', text))
    expect(compared.counts).toMatchObject({ changed: 2, unchanged: 1 })
    expect(
      compared.changed.map(({ code, wasPence, willPence, wasBreaks, willBreaks }) => [
        code,
        wasPence === willPence,
        wasBreaks?.map(({ packPence }) => packPence),
        willBreaks?.map(({ packPence }) => packPence),
      ]),
    ).toEqual([
      ['H1', true, [950, 900, 825], [950, 890, 825]],
      ['H2', true, [1100], []],
    ])
  })

  it('are told before they are taken where they are dearer than fewer packs', async () => {
    const { desk, path } = await withFile('breaks-out-of-order.csv')
    const { compared } = await takeIn(desk, path)
    expect(compared.counts.new).toBe(2)
    expect(compared.cautions).toEqual([
      {
        says: 'From 10 packs a pack costs £0.55, more than the £0.50 for one alone.',
        rows: 1,
        rowNos: [3],
      },
      {
        says: 'From 200 packs a pack costs £0.60, more than the £0.45 from 50 packs.',
        rows: 1,
        rowNos: [3],
      },
    ])
  })

  it('are one sentence where the same is to be said of many rows', async () => {
    const { desk, put } = await room()
    const rows = Array.from({ length: 9 }, (_, at) => `C${at},Clip ${at} mm,1.00,1.10`)
    const path = await put('same.csv', ['Code,Description,Price,10+', ...rows].join('\n'))
    const { compared } = await takeIn(desk, path)
    expect(compared.cautions).toEqual([
      {
        says: 'From 10 packs a pack costs £1.10, more than the £1.00 for one alone.',
        rows: 9,
        rowNos: [2, 3, 4, 5, 6],
      },
    ])
  })
})

describe('priceList.setPrice', () => {
  it('sets the price of a row that is no item, is listed among the changes, and is undone', async () => {
    const { desk, path } = await withFile('breaks-in-headings.csv')
    await takeIn(desk, path)
    const before = tables(desk)
    const { rowNo } = await rowOf(desk, 'H3')
    const set = valueOf(await ask(desk, 'priceList.setPrice', { rowNo, listPence: 123450 }))
    expect(set.row).toMatchObject({ code: 'H3', listPence: 123450, netPence: 123450, validFrom: desk.today })
    expect(set.cautions).toEqual([])
    const { changes } = valueOf(await ask(desk, 'price.changes', { most: 1 }))
    expect(changes).toMatchObject([
      { changeNo: set.changeNo, kind: 'single', says: 'H3: £6.00 is now £1,234.50', undone: false },
    ])
    valueOf(await ask(desk, 'price.undo', { changeNo: set.changeNo ?? 0 }))
    expect(tables(desk)).toEqual(before)
  })

  it('keeps the price breaks, and says which of them the new price undercuts', async () => {
    const { desk, path } = await withFile('breaks-in-headings.csv')
    await takeIn(desk, path)
    const { rowNo } = await rowOf(desk, 'H1')
    const set = valueOf(await ask(desk, 'priceList.setPrice', { rowNo, listPence: 940 }))
    expect(set.row.breaks).toEqual(breaksOfH1)
    expect(set.cautions).toEqual(['From 10 packs a pack costs £9.50, more than the £9.40 for one alone.'])
    const others = { rowNo, listPence: 940, breaks: [{ fromPacks: 10, packPence: 900 }] }
    expect(valueOf(await ask(desk, 'priceList.setPrice', others)).row.breaks).toEqual(others.breaks)
  })

  it('sets the price of an item too, before the discount of its group, from a day that is still to come', async () => {
    const { desk } = await room()
    const row = await rowOf(desk, '00126')
    expect(row.itemId).toBe('test-panel-600x1000')
    const input = { rowNo: row.rowNo, listPence: 10100, validFrom: '2026-06-01' }
    const set = valueOf(await ask(desk, 'priceList.setPrice', input))
    expect(set.row.listPence).toBe(row.listPence)
    const { prices } = valueOf(await ask(desk, 'priceList.row', { rowNo: row.rowNo }))
    expect(prices[0]).toMatchObject({ listPence: 10100, validFrom: '2026-06-01' })
  })

  it('changes nothing where the price is that already, and says where there is no such row', async () => {
    const { desk } = await room()
    const before = everyTable(storeOf(desk).file)
    const row = await rowOf(desk, '00126')
    const same = { rowNo: row.rowNo, listPence: row.listPence }
    expect(valueOf(await ask(desk, 'priceList.setPrice', same))).toEqual({
      row,
      changeNo: null,
      cautions: [],
    })
    expect(everyTable(storeOf(desk).file)).toEqual(before)
    const nowhere = { rowNo: 999_999, listPence: 100 }
    expect(problemOf(await ask(desk, 'priceList.setPrice', nowhere))).toEqual({
      code: 'not-found',
      message: "There is no row 999999 in the suppliers' lists.",
      path: 'rowNo',
    })
    expect(problemOf(await ask(desk, 'priceList.setPrice', { ...same, listPence: -1 }))).toMatchObject({
      code: 'invalid',
      path: 'listPence',
    })
  })
})
