import type { Catalogue } from '../../domain/catalogue.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import { dayBefore } from '../day-before.ts'
import { reindexRows } from '../sqlite/row-index.ts'
import type { ReadTx, SupplierRowTable, WriteTx } from '../tables.ts'

const atOnce = 500

/** A price of a row as its table has it. */
type Dated = Pick<
  SupplierRowTable,
  'pack_holds' | 'pack_pence' | 'breaks' | 'valid_from' | 'valid_to' | 'edition'
>
type Shipped = {
  readonly supplierId: string
  readonly code: string
  readonly itemId: string
  readonly name: string
  readonly prices: readonly Dated[]
}
type There = { readonly row_no: number; readonly isShipped: boolean; readonly prices: readonly Dated[] }

/**
 * Puts the shipped prices in, and brings those of an earlier edition up to this one. What the firm priced, linked or imported
 * itself is the firm's, and so is any pair of item and supplier that it priced: shipped prices of those are left out.
 */
export async function seedPrices(tx: WriteTx, catalogue: Catalogue, edition: string): Promise<void> {
  const own = await ownPairs(tx)
  const there = await rowsThere(tx, [...new Set(catalogue.prices.map(({ supplierId }) => supplierId))])
  let nextRowNo = await lastRowNo(tx)
  const written: (Shipped & { readonly rowNo: number })[] = []
  for (const one of shippedRows(catalogue, edition)) {
    if (own.has(pairOf(one.itemId, one.supplierId))) continue
    const row = there.get(pairOf(one.supplierId, one.code))
    if (row !== undefined && !row.isShipped) continue
    const rowNo = row?.row_no ?? (nextRowNo += 1)
    written.push({ ...one, rowNo, prices: following([...(row?.prices ?? []), ...one.prices]) })
  }
  for (let from = 0; from < written.length; from += atOnce) {
    await putRows(tx, written.slice(from, from + atOnce))
  }
  await reindexRows(
    tx,
    written.map(({ rowNo }) => rowNo),
  )
}

function pairOf(a: string, b: string): string {
  return JSON.stringify([a, b])
}

function shippedRows({ items, prices }: Catalogue, edition: string): readonly Shipped[] {
  const names = new Map(items.map(({ itemId, name }) => [itemId, name]))
  const byCode = Map.groupBy(prices, ({ supplierId, code }) => pairOf(supplierId, code))
  return [...byCode.values()].flatMap((some) => {
    const [first] = some
    if (first === undefined) return []
    const { supplierId, code, itemId } = first
    const dated = some.map((price) => datedOf(price, edition))
    return [{ supplierId, code, itemId, name: names.get(itemId) ?? '', prices: dated }]
  })
}

function datedOf(price: SupplierPrice, edition: string): Dated {
  return {
    pack_holds: price.packHolds,
    pack_pence: price.packPence,
    breaks: price.breaks === undefined ? null : JSON.stringify(price.breaks),
    valid_from: price.validFrom,
    valid_to: price.validTo ?? null,
    edition,
  }
}

/** Prices by the day they begin, each ended before the next; of two for one day the later given counts. */
function following(prices: readonly Dated[]): readonly Dated[] {
  const byDay = [...new Map(prices.map((price) => [price.valid_from, price])).values()]
  const sorted = byDay.toSorted((a, b) => (a.valid_from < b.valid_from ? -1 : 1))
  return sorted.map((price, at) => {
    const next = sorted[at + 1]
    if (next === undefined || (price.valid_to !== null && price.valid_to < next.valid_from)) return price
    return { ...price, valid_to: dayBefore(next.valid_from) }
  })
}

async function ownPairs(tx: ReadTx): Promise<ReadonlySet<string>> {
  const rows = await tx
    .selectFrom('supplier_row')
    .select(['item_id', 'supplier_id'])
    .where('item_id', 'is not', null)
    .where((eb) => eb.or([eb('edition', 'is', null), eb('change_no', 'is not', null)]))
    .execute()
  return new Set(rows.map(({ item_id, supplier_id }) => pairOf(item_id ?? '', supplier_id)))
}

async function lastRowNo(tx: ReadTx): Promise<number> {
  const last = await tx
    .selectFrom('supplier_row')
    .select((eb) => eb.fn.max('row_no').as('row_no'))
    .executeTakeFirst()
  return last?.row_no ?? 0
}

/** Every row of the suppliers' lists that a shipped one may meet: those that came with a catalogue, and codes taken. */
async function rowsThere(tx: ReadTx, suppliers: readonly string[]): Promise<ReadonlyMap<string, There>> {
  const rows = await tx.selectFrom('supplier_row').selectAll().where('supplier_id', 'in', suppliers).execute()
  const past = await tx
    .selectFrom('past_price')
    .selectAll()
    .where('row_no', 'in', tx.selectFrom('supplier_row').select('row_no').where('edition', 'is not', null))
    .execute()
  const pastOf = Map.groupBy(past, ({ row_no }) => row_no)
  return new Map(
    rows.map((row) => {
      const prices = [...(pastOf.get(row.row_no) ?? []), row].map(pickDated)
      const isShipped = row.edition !== null && row.change_no === null
      return [pairOf(row.supplier_id, row.code), { row_no: row.row_no, isShipped, prices }]
    }),
  )
}

function pickDated({ pack_holds, pack_pence, breaks, valid_from, valid_to, edition }: Dated): Dated {
  return { pack_holds, pack_pence, breaks, valid_from, valid_to, edition }
}

async function putRows(tx: WriteTx, rows: readonly (Shipped & { readonly rowNo: number })[]): Promise<void> {
  const values = rows.flatMap(({ rowNo, supplierId, code, name, itemId, prices }) => {
    const newest = prices.at(-1)
    const row = { row_no: rowNo, supplier_id: supplierId, code, name, item_id: itemId }
    return newest === undefined ? [] : [{ ...row, ...newest }]
  })
  await tx
    .insertInto('supplier_row')
    .values(values)
    .onConflict((conflict) =>
      conflict.column('row_no').doUpdateSet((eb) => ({
        name: eb.ref('excluded.name'),
        item_id: eb.ref('excluded.item_id'),
        pack_holds: eb.ref('excluded.pack_holds'),
        pack_pence: eb.ref('excluded.pack_pence'),
        breaks: eb.ref('excluded.breaks'),
        valid_from: eb.ref('excluded.valid_from'),
        valid_to: eb.ref('excluded.valid_to'),
        edition: eb.ref('excluded.edition'),
      })),
    )
    .execute()
  await tx
    .deleteFrom('past_price')
    .where(
      'row_no',
      'in',
      rows.map(({ rowNo }) => rowNo),
    )
    .execute()
  const past = rows.flatMap(({ rowNo, prices }) =>
    prices.slice(0, -1).map((price) => ({ row_no: rowNo, ...price })),
  )
  if (past.length > 0) await tx.insertInto('past_price').values(past).execute()
}
