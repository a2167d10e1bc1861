import type { SupplierPrice } from '../../domain/price.ts'
import { readPrice } from '../known-rows/read-price.ts'
import { fromJson } from '../read-row.ts'
import type { ReadTx } from '../tables.ts'
import { confirmation, readListedOn } from './file-readings.ts'
import type { ListedOn } from './file-readings.ts'
import { netOfDiscount, readDiscounts } from './discounts.ts'
import type { Discounts } from './discounts.ts'

type Which = {
  /** These items only; every item when absent. */
  readonly itemIds?: readonly string[] | undefined
  /** Prices that had begun by this day and not ended before it, at its discounts; every price when absent. */
  readonly on?: string | undefined
}

type PriceRow = {
  readonly item_id: string | null
  readonly supplier_id: string
  readonly code: string
  readonly group_key: string | null
  readonly item_holds: number | null
  readonly gone_from: string | null
  /** What the row's newest price is for; `item_holds` goes with that. */
  readonly row_holds: number
  readonly pack_holds: number
  readonly pack_pence: number
  readonly breaks: string | null
  readonly valid_from: string
  readonly valid_to: string | null
}

const rowFields = [
  'supplier_row.item_id',
  'supplier_row.supplier_id',
  'supplier_row.code',
  'supplier_row.group_key',
  'supplier_row.item_holds',
  'supplier_row.gone_from',
  'supplier_row.pack_holds as row_holds',
] as const

/** What suppliers ask for the items of the catalogue, in the item's unit and after discounts, in no order. */
export async function linkedPrices(tx: ReadTx, { itemIds, on }: Which): Promise<readonly SupplierPrice[]> {
  const linked = tx
    .selectFrom('supplier_row')
    .where('supplier_row.item_id', 'is not', null)
    .$if(itemIds !== undefined, (row) => row.where('supplier_row.item_id', 'in', itemIds ?? []))
  const newest = await linked
    .select(rowFields)
    .select(['pack_holds', 'pack_pence', 'breaks', 'valid_from', 'valid_to'])
    .$if(on !== undefined, (row) =>
      row
        .where('valid_from', '<=', on ?? '')
        .where((eb) => eb.or([eb('valid_to', 'is', null), eb('valid_to', '>=', on ?? '')])),
    )
    .execute()
  const past = await linked
    .innerJoin('past_price as p', 'p.row_no', 'supplier_row.row_no')
    .select(rowFields)
    .select(['p.pack_holds', 'p.pack_pence', 'p.breaks', 'p.valid_from', 'p.valid_to'])
    .$if(on !== undefined, (row) =>
      row
        .where('p.valid_from', '<=', on ?? '')
        .where((eb) => eb.or([eb('p.valid_to', 'is', null), eb('p.valid_to', '>=', on ?? '')])),
    )
    .execute()
  const ground = { on, discounts: await readDiscounts(tx), listedOn: await readListedOn(tx) }
  return [...newest, ...past].map((row) => priceOf(row, ground))
}

type Ground = {
  readonly on: string | undefined
  readonly discounts: Discounts
  readonly listedOn: ListedOn
}

function priceOf(row: PriceRow, { on, discounts, listedOn }: Ground): SupplierPrice {
  const what = `A price of the item ${row.item_id}`
  const off = discounts(row.supplier_id, row.group_key, on ?? row.valid_from)
  const { supplier_id: supplierId, valid_from: validFrom } = row
  const isGone = row.gone_from !== null
  const confirmed = on === undefined ? {} : confirmation({ supplierId, validFrom, isGone }, listedOn, on)
  const price = {
    itemId: row.item_id,
    supplierId,
    code: row.code,
    packHolds: inItemsUnit(row),
    packPence: netOfDiscount(row.pack_pence, off),
    ...(row.breaks === null ? {} : { breaks: netBreaks(fromJson(row.breaks, what), off) }),
    validFrom,
    ...(row.valid_to === null ? {} : { validTo: row.valid_to }),
    ...confirmed,
  }
  return readPrice(price, what)
}

function inItemsUnit({ item_holds, row_holds, pack_holds }: PriceRow): number {
  if (item_holds === null) return pack_holds
  return pack_holds === row_holds ? item_holds : (item_holds * pack_holds) / row_holds
}

/** Breaks are kept as they are listed, so they are read leniently here and checked with the price that they belong to. */
function netBreaks(breaks: unknown, off: number): unknown {
  if (!Array.isArray(breaks)) return breaks
  return (breaks as readonly { readonly fromPacks: number; readonly packPence: number }[]).map(
    ({ fromPacks, packPence }) => ({ fromPacks, packPence: netOfDiscount(packPence, off) }),
  )
}
