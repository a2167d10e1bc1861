import { describe, expect, it } from 'vitest'
import type { Item } from '../../../src-main/domain/item.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { undoChange } from '../../../src-main/store/price-list/changes.ts'
import { writing } from '../../../src-main/store/store.ts'
import { answered, refused } from '../../answered.ts'
import { deskWith, filledStore } from '../store-for-tests.ts'
import { asked, outcome } from './ask-for-tests.ts'

const clip: Item = {
  kind: 'clip',
  itemId: 'own-clip-15',
  name: 'Pipe clip 15 mm, our usual',
  generic: true,
  spec: { outsideMm: 15 },
}

/** A desk with one row that is linked to no item. */
async function withLooseRow(): Promise<{ readonly desk: Desk; readonly rowNo: number }> {
  const store = await filledStore()
  const { row_no: rowNo } = await writing(store, (tx) =>
    tx
      .insertInto('supplier_row')
      .values({
        supplier_id: 'north',
        code: 'PC15-100',
        name: 'CLIP PIPE 15MM BAG 100',
        pack_holds: 1,
        pack_pence: 800,
        valid_from: '2026-01-01',
      })
      .returning('row_no')
      .executeTakeFirstOrThrow(),
  )
  return { desk: deskWith(store), rowNo }
}

describe('row.makeItem', () => {
  it('makes an item of the firm’s own that is bought by the row, and is found by its code', async () => {
    const { desk, rowNo } = await withLooseRow()
    const { item, row } = await asked(desk, 'row.makeItem', { rowNo, item: clip, itemHolds: 100 })
    expect(item).toEqual({ ...clip, generic: false })
    expect(row).toMatchObject({ rowNo, itemId: 'own-clip-15', itemName: clip.name, itemHolds: 100 })
    const read = await asked(desk, 'catalogue.item', { itemId: 'own-clip-15' })
    expect(read.prices.map(({ price }) => [price.code, price.packHolds, price.packPence])).toEqual([
      ['PC15-100', 100, 800],
    ])
    expect(read.own).toBe(true)
    const { items } = await asked(desk, 'catalogue.search', { text: 'PC15-100' })
    expect(items.map(({ item: one, fromPence }) => [one.itemId, fromPence])).toEqual([['own-clip-15', 800]])
  })

  it('is found by the code no more once the row is said to be none, and so is an item that was linked', async () => {
    const { desk, rowNo } = await withLooseRow()
    await asked(desk, 'row.makeItem', { rowNo, item: clip })
    const found = async () =>
      (await asked(desk, 'catalogue.search', { text: 'PC15-100' })).items.map(({ item }) => item.itemId)
    await asked(desk, 'priceList.link', { rowNo, itemId: null })
    expect(await found()).toEqual([])
    await asked(desk, 'priceList.link', { rowNo, itemId: 'test-old-wipes' })
    await asked(desk, 'priceList.link', { rowNo, itemId: 'test-pipe-8' })
    expect(await found()).toEqual(['test-pipe-8'])
  })

  it('holds what the row’s pack holds where nobody says', async () => {
    const { desk, rowNo } = await withLooseRow()
    expect((await asked(desk, 'row.makeItem', { rowNo, item: clip })).row.itemHolds).toBe(1)
  })

  it('is unlinked again when it is undone; the item stays', async () => {
    const { desk, rowNo } = await withLooseRow()
    await asked(desk, 'row.makeItem', { rowNo, item: clip })
    if (desk.store === null) throw new Error('There is a store')
    const changes = await asked(desk, 'price.changes', {})
    expect(changes.changes).toMatchObject([
      { kind: 'link', says: 'PC15-100 is Pipe clip 15 mm, our usual', supplierId: 'north', undone: false },
    ])
    const changeNo = changes.changes[0]?.changeNo ?? 0
    answered(await writing(desk.store, (tx) => undoChange(tx, changeNo, desk.now())))
    expect(await asked(desk, 'catalogue.item', { itemId: 'own-clip-15' })).toMatchObject({ prices: [] })
  })

  it('refuses a row that is not there or is linked already, and an id that is taken', async () => {
    const { desk, rowNo } = await withLooseRow()
    expect(refused(await outcome(desk, 'row.makeItem', { rowNo: 9999, item: clip }))).toMatchObject({
      code: 'not-found',
      message: "There is no row 9999 in the suppliers' lists.",
      path: 'rowNo',
    })
    const taken = { ...clip, itemId: 'test-pipe-15' }
    expect(refused(await outcome(desk, 'row.makeItem', { rowNo, item: taken }))).toMatchObject({
      code: 'conflict',
      message:
        'There is an item test-pipe-15 already (Copper pipe 15 mm): link the row to it, or give another id.',
      path: 'item.itemId',
    })
    const plug: Item = {
      ...clip,
      kind: 'plug',
      spec: { bitMm: 6, lengthMm: 30, screwLeastMm: 5, screwMostMm: 4 },
    }
    expect(refused(await outcome(desk, 'row.makeItem', { rowNo, item: plug })).path).toBe(
      'item.spec.screwMostMm',
    )
    await asked(desk, 'row.makeItem', { rowNo, item: clip })
    const again = { rowNo, item: { ...clip, itemId: 'own-clip-15b' } }
    expect(refused(await outcome(desk, 'row.makeItem', again))).toMatchObject({
      code: 'conflict',
      message: 'PC15-100 is Pipe clip 15 mm, our usual already: say first that it is none.',
      path: 'rowNo',
    })
    expect(refused(await outcome(desk, 'catalogue.item', { itemId: 'own-clip-15b' })).code).toBe('not-found')
  })
})
