import type { Item } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import { putItem, readItem } from '../../store/items.ts'
import { beginChange, endChange } from '../../store/price-list/changes.ts'
import { readKeptRows } from '../../store/price-list/kept-rows.ts'
import { linkRow } from '../../store/price-list/link-row.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { staleBefore } from '../price-files/stale-before.ts'
import { storeOf } from '../store-of.ts'
import { itemProblems } from './item-problems.ts'

/** Undoing the change unlinks the row again; the item stays, as items do. */
export const rowMakeItem: UseCase<'row.makeItem'> = async ({ rowNo, item: given, itemHolds }, desk) => {
  const on = await staleBefore(desk)
  if (!on.ok) return on
  return writing(storeOf(desk), async (tx) => {
    const [row] = await readKeptRows(tx, [rowNo], on.value)
    if (row === undefined) {
      return refuse('not-found', `There is no row ${rowNo} in the suppliers' lists.`, 'rowNo')
    }
    if (row.itemId !== undefined) {
      const message = `${row.code} is ${row.itemName ?? row.itemId} already: say first that it is none.`
      return refuse('conflict', message, 'rowNo', 'Use priceList.link with itemId null.')
    }
    const problems = itemProblems(given)
    if (problems.length > 0) return { ok: false, problems }
    const there = await readItem(tx, given.itemId)
    if (there !== null) {
      const message = `There is an item ${given.itemId} already (${there.name}): link the row to it, or give another id.`
      return refuse('conflict', message, 'item.itemId', 'Link it with priceList.link.')
    }
    const item: Item = { ...given, generic: false }
    await putItem(tx, item)
    const says = `${row.code} is ${item.name}`
    const changeNo = await beginChange(tx, { kind: 'link', supplierId: row.supplierId, says, at: desk.now() })
    await linkRow(tx, changeNo, { rowNo, itemId: item.itemId, itemHolds })
    await endChange(tx, changeNo, { changed: 1 })
    const [linked] = await readKeptRows(tx, [rowNo], on.value)
    if (linked === undefined) throw new Error('The row that was linked is not there')
    return accept({ item, row: linked })
  })
}
