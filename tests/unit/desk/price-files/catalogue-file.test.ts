import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { storeOf } from '../../../../src-main/desk/store-of.ts'
import { catalogueXml } from '../../../price-files/catalogue-for-tests.ts'
import { valueOf } from '../../../store/store-for-tests.ts'
import { ask, room } from './price-files-for-tests.ts'

/** By then every price of the catalogue has begun. */
const validFrom = '2027-04-01'

async function takeCatalogue(desk: Desk, path: string) {
  const { reading } = valueOf(await ask(desk, 'priceFile.look', { file: { path } }))
  const asked = { file: { path }, supplierId: 'south', reading, validFrom }
  const { fileHash } = valueOf(await ask(desk, 'priceFile.compare', asked))
  return valueOf(await ask(desk, 'priceFile.apply', { ...asked, fileHash })).counts
}

it('a catalogue’s lines are known again by their cells, and one that the supplier takes back is gone', async () => {
  const { desk, put } = await room()
  const xml = catalogueXml('GBP')
  const all = xml.replace('<cbc:ActionCode>Delete</cbc:ActionCode>', '')
  // Four lines have a price; the small catalogue has two rows at this supplier.
  expect(await takeCatalogue(desk, await put('all.xml', all))).toMatchObject({
    new: 4,
    missing: 2,
    rejected: 1,
  })
  const db = new Database(storeOf(desk).file)
  const known = db.prepare(
    `select count(raw_hash) from supplier_row where supplier_id = 'south' and gone_from is null`,
  )
  expect(known.pluck().get()).toBe(4)
  db.close()
  expect(await takeCatalogue(desk, await put('deleted.xml', xml))).toEqual({
    new: 0,
    changed: 0,
    unchanged: 3,
    missing: 1,
    rejected: 2,
    duplicated: 0,
  })
  const { rows } = valueOf(await ask(desk, 'priceList.search', { text: '00128', supplierId: 'south' }))
  expect(rows.map(({ code, goneFrom }) => [code, goneFrom])).toEqual([['00128', validFrom]])
}, 120_000)
