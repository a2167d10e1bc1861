import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'
import { supplierPrice } from '../domain/price.ts'
import type { SupplierPrice } from '../domain/price.ts'
import { dayBefore } from './day-before.ts'
import { pricesInForce } from './prices-in-force.ts'
import { fromJson, readRow } from './read-row.ts'
import { indexItem } from './sqlite/item-index.ts'
import { itemOf } from './items.ts'
import type { ReadTx, Tables, WriteTx } from './tables.ts'

export type NewPrice = {
  readonly itemId: string
  readonly supplierId: string
  /** The supplier's code; when absent, the one that this pack has there already. */
  readonly code?: string | undefined
  readonly packHolds: number
  readonly packPence: number
  readonly validFrom: string
}
export type PriceChange = { readonly price: SupplierPrice; readonly before: SupplierPrice | null }

type PriceRow = Omit<Tables['supplier_price'], 'price_no' | 'edition'>

const priceColumns = [
  'item_id',
  'supplier_id',
  'code',
  'pack_holds',
  'pack_pence',
  'breaks',
  'valid_from',
  'valid_to',
] as const

/** The prices in force on a day, of every item or of these. */
export async function readPrices(
  tx: ReadTx,
  day: string,
  itemIds?: readonly string[],
): Promise<readonly SupplierPrice[]> {
  const rows = await tx
    .selectFrom('supplier_price')
    .select(priceColumns)
    .where('valid_from', '<=', day)
    .where((eb) => eb.or([eb('valid_to', 'is', null), eb('valid_to', '>=', day)]))
    .$if(itemIds !== undefined, (price) => price.where('item_id', 'in', itemIds ?? []))
    .orderBy('item_id')
    .orderBy('supplier_id')
    .orderBy('code')
    .execute()
  return pricesInForce(rows.map(priceOf), day)
}

/** Every price that was ever asked for an item, the newest first. */
export async function priceHistory(tx: ReadTx, itemId: string): Promise<readonly SupplierPrice[]> {
  const rows = await tx
    .selectFrom('supplier_price')
    .select(priceColumns)
    .where('item_id', '=', itemId)
    .orderBy('valid_from', 'desc')
    .orderBy('supplier_id')
    .orderBy('code')
    .execute()
  return rows.map(priceOf)
}

/**
 * Sets what a supplier asks for a pack from a day on. The price before it ends the day before; one set for that same day
 * is replaced; one that is to begin later stays, and this one ends before it.
 */
export async function setPrice(tx: WriteTx, wanted: NewPrice): Promise<Outcome<PriceChange>> {
  const named = await whatAndWhose(tx, wanted)
  if (!named.ok) return named
  const history = await priceHistory(tx, wanted.itemId)
  const code = codeFor(wanted, history, named.value.supplierName)
  if (!code.ok) return code
  const same = history.filter((price) => isSamePack(price, { ...wanted, code: code.value }))
  const before = pricesInForce(same, wanted.validFrom)[0] ?? null
  const later = same.findLast(({ validFrom }) => validFrom > wanted.validFrom)
  const { itemId, supplierId, packHolds, packPence, validFrom } = wanted
  const ends = later === undefined ? {} : { validTo: dayBefore(later.validFrom) }
  const price: SupplierPrice = {
    itemId,
    supplierId,
    code: code.value,
    packHolds,
    packPence,
    validFrom,
    ...ends,
  }
  if (before !== null && before.validFrom < validFrom) await endPrice(tx, before, dayBefore(validFrom))
  await putPrice(tx, price)
  await indexAnew(tx, named.value, [...history, price])
  return accept({ price, before })
}

/** A price as its row; `edition` is the shipped catalogue it came with, null for one that the firm set. */
export function priceRow(price: SupplierPrice, edition: string | null) {
  return {
    item_id: price.itemId,
    supplier_id: price.supplierId,
    code: price.code,
    pack_holds: price.packHolds,
    pack_pence: price.packPence,
    breaks: price.breaks === undefined ? null : JSON.stringify(price.breaks),
    valid_from: price.validFrom,
    valid_to: price.validTo ?? null,
    edition,
  }
}

function priceOf(row: PriceRow): SupplierPrice {
  const what = `A price of the item ${row.item_id}`
  const price = {
    itemId: row.item_id,
    supplierId: row.supplier_id,
    code: row.code,
    packHolds: row.pack_holds,
    packPence: row.pack_pence,
    ...(row.breaks === null ? {} : { breaks: fromJson(row.breaks, what) }),
    validFrom: row.valid_from,
    ...(row.valid_to === null ? {} : { validTo: row.valid_to }),
  }
  return readRow(supplierPrice, price, what)
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

function isSamePack(price: SupplierPrice, other: NewPrice): boolean {
  return (
    price.supplierId === other.supplierId && price.code === other.code && price.packHolds === other.packHolds
  )
}

async function endPrice(tx: WriteTx, price: SupplierPrice, validTo: string): Promise<void> {
  await tx
    .updateTable('supplier_price')
    .set({ valid_to: validTo })
    .where('item_id', '=', price.itemId)
    .where('supplier_id', '=', price.supplierId)
    .where('code', '=', price.code)
    .where('pack_holds', '=', price.packHolds)
    .where('valid_from', '=', price.validFrom)
    .execute()
}

async function putPrice(tx: WriteTx, price: SupplierPrice): Promise<void> {
  const row = priceRow(price, null)
  const { pack_pence, breaks, valid_to, edition } = row
  await tx
    .insertInto('supplier_price')
    .values(row)
    .onConflict((conflict) =>
      conflict
        .columns(['item_id', 'supplier_id', 'code', 'pack_holds', 'valid_from'])
        .doUpdateSet({ pack_pence, breaks, valid_to, edition }),
    )
    .execute()
}

async function indexAnew(tx: WriteTx, named: Named, prices: readonly SupplierPrice[]): Promise<void> {
  await indexItem(tx, { itemNo: named.item_no, item: itemOf(named), codes: prices.map(({ code }) => code) })
}
