import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { beginChange, endChange } from '../../store/price-list/changes.ts'
import { readKeptRows, readRowPrices } from '../../store/price-list/kept-rows.ts'
import { linkRow } from '../../store/price-list/link-row.ts'
import { readItem } from '../../store/items.ts'
import { reading, writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { staleBefore } from './stale-before.ts'

export const priceListRow: UseCase<'priceList.row'> = async ({ rowNo }, desk) => {
  const on = await staleBefore(desk)
  if (!on.ok) return on
  return reading(storeOf(desk), async (tx) => {
    const [row] = await readKeptRows(tx, [rowNo], on.value)
    return row === undefined ? noSuchRow(rowNo) : accept({ row, prices: await readRowPrices(tx, rowNo) })
  })
}

export const priceListLink: UseCase<'priceList.link'> = async ({ rowNo, itemId, itemHolds }, desk) => {
  const on = await staleBefore(desk)
  if (!on.ok) return on
  return writing(storeOf(desk), async (tx) => {
    const [row] = await readKeptRows(tx, [rowNo], on.value)
    if (row === undefined) return noSuchRow(rowNo)
    const item = itemId === null ? null : await readItem(tx, itemId)
    if (itemId !== null && item === null)
      return refuse('not-found', `There is no item ${itemId} in the catalogue.`, 'itemId')
    const what = item === null ? 'no item of the catalogue' : item.name
    const says = `${row.code} is ${what}`
    const changeNo = await beginChange(tx, {
      kind: 'link',
      supplierId: row.supplierId,
      says,
      at: desk.now(),
    })
    await linkRow(tx, changeNo, { rowNo, itemId, itemHolds })
    await endChange(tx, changeNo, { changed: 1 })
    const [linked] = await readKeptRows(tx, [rowNo], on.value)
    return linked === undefined ? noSuchRow(rowNo) : accept({ row: linked })
  })
}

function noSuchRow(rowNo: number): Outcome<never> {
  return refuse('not-found', `There is no row ${rowNo} in the suppliers' lists.`, 'rowNo')
}
