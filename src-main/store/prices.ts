import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'
import type { SupplierPrice } from '../domain/price.ts'
import { itemOf } from './items.ts'
import { beginChange, endChange } from './price-list/changes.ts'
import { linkedPrices } from './price-list/linked-prices.ts'
import { putPrices } from './price-list/put-prices.ts'
import { pricesInForce } from './prices-in-force.ts'
import { indexItem } from './sqlite/item-index.ts'
import { reindexRows } from './sqlite/row-index.ts'
import type { ReadTx, WriteTx } from './tables.ts'

export type NewPrice = {
  readonly itemId: string
  readonly supplierId: string
  /** The supplier's code; when absent, the one that this pack has there already. */
  readonly code?: string | undefined
  /** How much a pack holds, in the item's unit. */
  readonly packHolds: number
  /** On the supplier's list, before the discount of its group. */
  readonly packPence: number
  readonly validFrom: string
}
export type PriceChange = { readonly price: SupplierPrice; readonly before: SupplierPrice | null }

/** The prices in force on a day, after discounts, of every item or of these. */
export async function readPrices(
  tx: ReadTx,
  day: string,
  itemIds?: readonly string[],
): Promise<readonly SupplierPrice[]> {
  return pricesInForce(await linkedPrices(tx, { itemIds, on: day }), day).toSorted(byPack)
}

/** Every price that was ever asked for an item, the newest first, each after the discount of the day it began. */
export async function priceHistory(tx: ReadTx, itemId: string): Promise<readonly SupplierPrice[]> {
  const prices = await linkedPrices(tx, { itemIds: [itemId] })
  return prices.toSorted((a, b) => compare(b.validFrom, a.validFrom) || byPack(a, b))
}

function byPack(a: SupplierPrice, b: SupplierPrice): number {
  return compare(a.itemId, b.itemId) || compare(a.supplierId, b.supplierId) || compare(a.code, b.code)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

/**
 * Sets what a supplier asks for a pack from a day on. The price before it ends the day before; one set for that same day
 * is replaced; one that is to begin later stays, and this one ends before it. It can be undone.
 */
export async function setPrice(
  tx: WriteTx,
  wanted: NewPrice,
  at = `${wanted.validFrom}T00:00:00.000Z`,
): Promise<Outcome<PriceChange>> {
  const named = await whatAndWhose(tx, wanted)
  if (!named.ok) return named
  const history = await priceHistory(tx, wanted.itemId)
  const code = codeFor(wanted, history, named.value.supplierName)
  if (!code.ok) return code
  const row = await rowOfCode(tx, wanted.supplierId, code.value)
  if (row !== undefined && row.item_id !== null && row.item_id !== wanted.itemId) {
    const says = `${named.value.supplierName}'s code ${code.value} is that of ${row.item_id}: give the code that this price is for.`
    return refuse('conflict', says, 'code')
  }
  const says = `${named.value.supplierName} ${code.value}, ${itemOf(named.value).name}`
  const changeNo = await beginChange(tx, { kind: 'single', supplierId: wanted.supplierId, says, at })
  if (row === undefined) await putNewRow(tx, named.value, { ...wanted, code: code.value, changeNo })
  else await putPrices(tx, changeNo, [priceOfRow(row, wanted)])
  await endChange(tx, changeNo, row === undefined ? { new: 1 } : { changed: 1 })
  const after = await priceHistory(tx, wanted.itemId)
  await indexItem(tx, {
    itemNo: named.value.item_no,
    item: itemOf(named.value),
    codes: after.map((one) => one.code),
  })
  const same = (prices: readonly SupplierPrice[]) =>
    prices.filter((one) => one.supplierId === wanted.supplierId && one.code === code.value)
  const price = same(after).find(({ validFrom }) => validFrom === wanted.validFrom)
  if (price === undefined) throw new Error('The price that was set is not there')
  return accept({ price, before: pricesInForce(same(history), wanted.validFrom)[0] ?? null })
}

type RowOfCode = {
  readonly row_no: number
  readonly item_id: string | null
  readonly pack_holds: number
  readonly item_holds: number | null
}

/** A row's price is for its own pack, which may be counted otherwise than the item: a coil of 25 m is one coil there. */
function priceOfRow(row: RowOfCode, { itemId, packHolds, packPence, validFrom }: NewPrice) {
  const perPack = row.item_id === null || row.item_holds === null ? 1 : row.item_holds / row.pack_holds
  return { rowNo: row.row_no, packPence, breaks: null, validFrom, packHolds: packHolds / perPack, itemId }
}

function rowOfCode(tx: ReadTx, supplierId: string, code: string): Promise<RowOfCode | undefined> {
  return tx
    .selectFrom('supplier_row')
    .select(['row_no', 'item_id', 'pack_holds', 'item_holds'])
    .where('supplier_id', '=', supplierId)
    .where('code', '=', code)
    .executeTakeFirst()
}

async function putNewRow(
  tx: WriteTx,
  named: Named,
  wanted: NewPrice & { readonly code: string; readonly changeNo: number },
): Promise<void> {
  const { row_no } = await tx
    .insertInto('supplier_row')
    .values({
      supplier_id: wanted.supplierId,
      code: wanted.code,
      name: itemOf(named).name,
      pack_holds: wanted.packHolds,
      pack_pence: wanted.packPence,
      valid_from: wanted.validFrom,
      item_id: wanted.itemId,
      change_no: wanted.changeNo,
    })
    .returning('row_no')
    .executeTakeFirstOrThrow()
  await reindexRows(tx, [row_no])
}

type Named = {
  readonly item_no: number
  readonly item_id: string
  readonly body: string
  readonly supplierName: string
}

async function whatAndWhose(tx: ReadTx, { itemId, supplierId }: NewPrice): Promise<Outcome<Named>> {
  const item = await tx
    .selectFrom('item')
    .select(['item_no', 'item_id', 'body'])
    .where('item_id', '=', itemId)
    .executeTakeFirst()
  if (item === undefined) return refuse('not-found', `There is no item ${itemId} in the catalogue.`, 'itemId')
  const supplier = await tx
    .selectFrom('supplier')
    .select('name')
    .where('supplier_id', '=', supplierId)
    .executeTakeFirst()
  if (supplier === undefined) return refuse('not-found', `There is no supplier ${supplierId}.`, 'supplierId')
  return accept({ ...item, supplierName: supplier.name })
}

function codeFor(wanted: NewPrice, history: readonly SupplierPrice[], supplierName: string): Outcome<string> {
  if (wanted.code !== undefined) return accept(wanted.code)
  const packs = history.filter(
    (price) => price.supplierId === wanted.supplierId && price.packHolds === wanted.packHolds,
  )
  const codes = new Set(packs.map(({ code }) => code))
  const [only] = codes
  if (only !== undefined && codes.size === 1) return accept(only)
  const why =
    only === undefined
      ? 'has no code yet for a pack of that size'
      : `has several codes for it (${[...codes].join(', ')})`
  return refuse('invalid', `${supplierName} ${why}: give the code that this price is for.`, 'code')
}
