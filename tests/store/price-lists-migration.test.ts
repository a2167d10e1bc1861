import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { itemRow } from '../../src-main/store/items.ts'
import { migrationList } from '../../src-main/store/migration-list.ts'
import { priceHistory, readPrices } from '../../src-main/store/prices.ts'
import { closeStore, openStore, reading } from '../../src-main/store/store.ts'
import { supplierRow } from '../../src-main/store/suppliers.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'
import { now, opened, tempFolder, valueOf } from './store-for-tests.ts'

/** item, supplier, code, what a pack holds, pence, from, to, breaks, edition: as a file of the first step has them. */
const prices = [
  ['test-panel-600x1000', 'north', '00126', 1, 9850, '2026-01-01', '2026-02-28', null, 'test-1'],
  ['test-panel-600x1000', 'north', '00126', 1, 9990, '2026-03-01', null, null, null],
  ['test-panel-600x1000', 'south', '00126', 1, 9500, '2026-01-01', null, null, 'test-1'],
  // One code for two packs, and again for another item.
  [
    'test-pipe-15',
    'north',
    'CU',
    3,
    1450,
    '2026-01-01',
    null,
    '[{"fromPacks":10,"packPence":1400}]',
    'test-1',
  ],
  ['test-pipe-15', 'north', 'CU', 2, 1000, '2026-01-01', null, null, 'test-1'],
  ['test-pipe-22', 'north', 'CU', 3, 2900, '2026-01-01', null, null, 'test-1'],
  ['test-pipe-8', 'north', 'CU', 3, 700, '2026-01-01', null, null, 'test-1'],
  ['test-pipe-22', 'north', 'CU-3', 2.5, 2500, '2026-01-01', null, null, 'test-1'],
] as const

async function folderOfFirstStep(rows: readonly (readonly (string | number | null)[])[]): Promise<string> {
  const folder = await tempFolder()
  const store = valueOf(await openStore({ folder, now, steps: migrationList.slice(0, 1) }))
  await closeStore(store)
  const raw = new Database(store.file)
  const put = (table: string, row: Readonly<Record<string, unknown>>) => {
    const names = Object.keys(row)
    raw
      .prepare(`insert into ${table} (${names.join()}) values (${names.map((name) => `@${name}`).join()})`)
      .run(row)
  }
  for (const item of smallCatalogue.items) put('item', itemRow(item, 'test-1'))
  for (const supplier of smallCatalogue.suppliers) put('supplier', supplierRow(supplier, 'test-1'))
  const price = raw.prepare(
    `insert into supplier_price (item_id, supplier_id, code, pack_holds, pack_pence, valid_from, valid_to, breaks, edition)
     values (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  )
  for (const row of rows) price.run(...row)
  raw.close()
  return folder
}

describe('the step to price lists', () => {
  it('keeps every price, its days, breaks and edition, and gives each pack a code of its own', async () => {
    const folder = await folderOfFirstStep(prices)
    const store = await opened(folder)
    const raw = new Database(store.file, { readonly: true })
    const rows = raw
      .prepare(
        'select supplier_id, code, name, pack_holds, pack_pence, item_id, edition, change_no, raw_hash from supplier_row order by row_no',
      )
      .raw()
      .all()
    const panel = 'Double panel radiator 600 × 1000'
    const pipe = (mm: number) => `Copper pipe ${mm} mm`
    expect(rows).toEqual([
      ['north', '00126', panel, 1, 9990, 'test-panel-600x1000', null, null, null],
      ['south', '00126', panel, 1, 9500, 'test-panel-600x1000', 'test-1', null, null],
      ['north', 'CU', pipe(15), 3, 1450, 'test-pipe-15', 'test-1', null, null],
      ['north', 'CU-2', pipe(15), 2, 1000, 'test-pipe-15', 'test-1', null, null],
      ['north', 'CU-3', pipe(22), 3, 2900, 'test-pipe-22', 'test-1', null, null],
      ['north', 'CU-3-6', pipe(8), 3, 700, 'test-pipe-8', 'test-1', null, null],
      ['north', 'CU-3-7', pipe(22), 2.5, 2500, 'test-pipe-22', 'test-1', null, null],
    ])
    expect(
      raw.prepare('select row_no, pack_pence, valid_from, valid_to, edition from past_price').raw().all(),
    ).toEqual([[1, 9850, '2026-01-01', '2026-02-28', 'test-1']])
    const gone = raw.prepare(`select count(*) from sqlite_schema where name = 'supplier_price'`).pluck().get()
    expect(gone).toBe(0)
    const found = raw.prepare(
      `select rowid from row_search where row_search match '"copper" "15" "cu"' order by 1`,
    )
    expect(found.pluck().all()).toEqual([3, 4])
    raw.close()
    const asked = await reading(store, (tx) => readPrices(tx, '2026-03-02'))
    expect(asked.length).toBe(7)
    expect(asked.find(({ code }) => code === 'CU')?.breaks).toEqual([{ fromPacks: 10, packPence: 1400 }])
    const history = await reading(store, (tx) => priceHistory(tx, 'test-panel-600x1000'))
    expect(history.map(({ supplierId, packPence, validTo }) => [supplierId, packPence, validTo])).toEqual([
      ['north', 9990, undefined],
      ['north', 9850, '2026-02-28'],
      ['south', 9500, undefined],
    ])
  })

  it('is refused, and the file left as it was, when a price would find no row', async () => {
    // The item of this price was lost to a damaged file: its row cannot be made.
    const folder = await folderOfFirstStep(prices)
    const file = `${folder}/tailpiece.db`
    const raw = new Database(file)
    raw.pragma('foreign_keys = off')
    raw.exec(`delete from item where item_id = 'test-pipe-8'`)
    raw.close()
    const outcome = await openStore({ folder, now })
    expect(outcome.ok ? '' : outcome.problems[0]?.message).toMatch(
      /supplier_price had 8 rows and would have 7\). It is as it was/,
    )
    const after = new Database(file, { readonly: true })
    expect(after.prepare('select count(*) from supplier_price').pluck().get()).toBe(8)
    after.close()
  })

  it('does the same for a file without prices', async () => {
    const store = await opened(await folderOfFirstStep([]))
    expect(await reading(store, (tx) => readPrices(tx, '2026-03-02'))).toEqual([])
  })
})
