import type { Selectable } from 'kysely'
import { keptRow } from '../../domain/price-list.ts'
import { trustedFrom } from '../../domain/price.ts'
import type { KeptRow, PastPrice } from '../../domain/price-list.ts'
import { fromJson, readRow } from '../read-row.ts'
import type { PastPriceTable, ReadTx, SupplierRowTable } from '../tables.ts'
import { confirmation, readListedOn } from './file-readings.ts'
import type { ListedOn } from './file-readings.ts'
import { netOfDiscount, readDiscounts } from './discounts.ts'
import type { Discounts } from './discounts.ts'

export type OnDay = {
  /** The day whose prices are shown. */
  readonly day: string
  /** Prices that began, and were last confirmed, before this day are stale. */
  readonly staleBefore: string
}

type Row = Selectable<SupplierRowTable> & { readonly item_name: string | null }
type Priced = Pick<Row, 'pack_holds' | 'pack_pence' | 'breaks' | 'valid_from' | 'valid_to'>

/** Rows of suppliers' lists by number, in the order in which they are asked for, with the prices of a day. */
export async function readKeptRows(
  tx: ReadTx,
  rowNos: readonly number[],
  on: OnDay,
): Promise<readonly KeptRow[]> {
  if (rowNos.length === 0) return []
  const rows = await tx
    .selectFrom('supplier_row')
    .leftJoin('item', 'item.item_id', 'supplier_row.item_id')
    .selectAll('supplier_row')
    .select('item.name as item_name')
    .where('row_no', 'in', rowNos)
    .execute()
  const past = await tx
    .selectFrom('past_price')
    .selectAll()
    .where('row_no', 'in', rowNos)
    .where('valid_from', '<=', on.day)
    .orderBy('valid_from', 'desc')
    .execute()
  const pastOf = Map.groupBy(past, ({ row_no }) => row_no)
  const ground = { ...on, discounts: await readDiscounts(tx), listedOn: await readListedOn(tx) }
  const byNo = new Map(rows.map((row) => [row.row_no, row]))
  return rowNos.flatMap((rowNo) => {
    const row = byNo.get(rowNo)
    return row === undefined ? [] : [keptOf(row, priceOn(row, pastOf.get(rowNo) ?? [], on.day), ground)]
  })
}

/** The price that holds on a day; the newest when none does, as of a row whose first price is still to come. */
function priceOn(row: Row, past: readonly Selectable<PastPriceTable>[], day: string): Priced {
  if (row.valid_from <= day) return row
  return past[0] ?? row
}

type Ground = OnDay & { readonly discounts: Discounts; readonly listedOn: ListedOn }

function keptOf(row: Row, price: Priced, { discounts, listedOn, day, staleBefore }: Ground): KeptRow {
  const what = `Row ${row.row_no} of ${row.supplier_id}'s list`
  const off = discounts(row.supplier_id, row.group_key, day)
  const validFrom = price.valid_from
  const isGone = row.gone_from !== null
  const confirmed = confirmation({ supplierId: row.supplier_id, validFrom, isGone }, listedOn, day)
  const kept = {
    rowNo: row.row_no,
    supplierId: row.supplier_id,
    code: row.code,
    name: row.name,
    ...(row.gtin === null ? {} : { gtin: row.gtin }),
    packHolds: price.pack_holds,
    listPence: price.pack_pence,
    netPence: netOfDiscount(price.pack_pence, off),
    ...(price.breaks === null ? {} : { breaks: fromJson(price.breaks, what) }),
    ...(row.group_key === null ? {} : { group: row.group_key }),
    ...(off === 0 ? {} : { discountBasisPoints: off }),
    validFrom,
    ...(price.valid_to === null ? {} : { validTo: price.valid_to }),
    ...confirmed,
    ...(row.item_id === null ? {} : { itemId: row.item_id }),
    ...(row.item_name === null ? {} : { itemName: row.item_name }),
    ...(row.item_id === null ? {} : { itemHolds: row.item_holds ?? row.pack_holds }),
    ...(row.gone_from === null ? {} : { goneFrom: row.gone_from }),
    stale: trustedFrom({ validFrom, ...confirmed }) < staleBefore,
  }
  return readRow(keptRow, kept, what)
}

/** Every price that a row had, has or is to have, the newest first. */
export async function readRowPrices(tx: ReadTx, rowNo: number): Promise<readonly PastPrice[]> {
  const columns = ['pack_holds', 'pack_pence', 'valid_from', 'valid_to'] as const
  const newest = await tx.selectFrom('supplier_row').select(columns).where('row_no', '=', rowNo).execute()
  const past = await tx
    .selectFrom('past_price')
    .select(columns)
    .where('row_no', '=', rowNo)
    .orderBy('valid_from', 'desc')
    .execute()
  return [...newest, ...past].map(({ pack_holds, pack_pence, valid_from, valid_to }) => ({
    packHolds: pack_holds,
    listPence: pack_pence,
    validFrom: valid_from,
    ...(valid_to === null ? {} : { validTo: valid_to }),
  }))
}
