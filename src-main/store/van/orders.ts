import type { Selectable } from 'kysely'
import { orderBody } from '../../domain/follow-up/order.ts'
import type { OrderBody } from '../../domain/follow-up/order.ts'
import { unit } from '../../domain/item.ts'
import type { Unit } from '../../domain/item.ts'
import { fromJson, readRow } from '../read-row.ts'
import type { ReadTx, Tables, WriteTx } from '../tables.ts'

/** One line of an order as it is kept. */
export type KeptLine = {
  readonly lineNo: number
  readonly itemId: string | null
  readonly code: string
  readonly name: string
  readonly unit: Unit
  readonly packHolds: number
  readonly packs: number
  readonly packPence: number
}

/** What came of a line in one delivery, and what of it went into the van. */
export type KeptDelivery = {
  readonly lineNo: number
  readonly packs: number
  readonly onDay: string
  readonly at: string
  readonly says: string | null
  readonly toVan: number | null
}

export type KeptOrder = {
  readonly orderId: string
  readonly supplierId: string
  readonly pickingNo: number | null
  readonly madeOn: string
  readonly sentOn: string | null
  readonly cancelledOn: string | null
  readonly cancelledSays: string | null
  readonly carriagePence: number
  readonly body: OrderBody
  readonly lines: readonly KeptLine[]
  readonly deliveries: readonly KeptDelivery[]
}

/** The last number given in a series; 0 before the first. */
export async function lastInSeries(tx: ReadTx, series: string): Promise<number> {
  const row = await tx
    .selectFrom('number_series')
    .select('last')
    .where('series', '=', series)
    .executeTakeFirst()
  return row?.last ?? 0
}

type NewOrder = Omit<KeptOrder, 'sentOn' | 'cancelledOn' | 'cancelledSays' | 'deliveries'> & {
  readonly madeAt: string
}

export async function keepOrder(tx: WriteTx, made: NewOrder): Promise<void> {
  await tx
    .insertInto('purchase_order')
    .values({
      order_id: made.orderId,
      supplier_id: made.supplierId,
      made_on: made.madeOn,
      made_at: made.madeAt,
      picking_no: made.pickingNo,
      sent_on: null,
      cancelled_on: null,
      cancelled_says: null,
      carriage_pence: made.carriagePence,
      body: JSON.stringify(made.body),
    })
    .execute()
  await tx
    .insertInto('order_line')
    .values(
      made.lines.map((line) => ({
        order_id: made.orderId,
        line_no: line.lineNo,
        item_id: line.itemId,
        code: line.code,
        name: line.name,
        unit: line.unit,
        pack_holds: line.packHolds,
        packs: line.packs,
        pack_pence: line.packPence,
      })),
    )
    .execute()
}

/** One order; null when there is none of that number. */
export async function readOrder(tx: ReadTx, orderId: string): Promise<KeptOrder | null> {
  const row = await tx
    .selectFrom('purchase_order')
    .selectAll()
    .where('order_id', '=', orderId)
    .executeTakeFirst()
  return row === undefined ? null : ((await withLines(tx, [row]))[0] ?? null)
}

/** Orders, the newest first; those of one pick list where one is named. */
export async function listOrders(tx: ReadTx, pickingNo?: number): Promise<readonly KeptOrder[]> {
  const rows = await tx
    .selectFrom('purchase_order')
    .selectAll()
    .$if(pickingNo !== undefined, (query) => query.where('picking_no', '=', pickingNo ?? null))
    .orderBy('made_at', 'desc')
    .orderBy('order_id', 'desc')
    .execute()
  return withLines(tx, rows)
}

async function withLines(
  tx: ReadTx,
  rows: readonly Selectable<Tables['purchase_order']>[],
): Promise<readonly KeptOrder[]> {
  const ids = rows.map(({ order_id }) => order_id)
  if (ids.length === 0) return []
  const lines = await tx
    .selectFrom('order_line')
    .selectAll()
    .where('order_id', 'in', ids)
    .orderBy('line_no')
    .execute()
  const came = await tx
    .selectFrom('delivery')
    .leftJoin('van_move', 'van_move.move_no', 'delivery.move_no')
    .select(['delivery.order_id', 'line_no', 'packs', 'delivery.on_day', 'delivery.at', 'delivery.says'])
    .select('van_move.quantity as to_van')
    .where('delivery.order_id', 'in', ids)
    .orderBy('delivery_no')
    .execute()
  const linesOf = Map.groupBy(lines, ({ order_id }) => order_id)
  const cameOf = Map.groupBy(came, ({ order_id }) => order_id)
  return rows.map((row) => {
    const what = `The order ${row.order_id}`
    return {
      orderId: row.order_id,
      supplierId: row.supplier_id,
      pickingNo: row.picking_no,
      madeOn: row.made_on,
      sentOn: row.sent_on,
      cancelledOn: row.cancelled_on,
      cancelledSays: row.cancelled_says,
      carriagePence: row.carriage_pence,
      body: readRow(orderBody, fromJson(row.body, what), what),
      lines: (linesOf.get(row.order_id) ?? []).map((line) => ({
        lineNo: line.line_no,
        itemId: line.item_id,
        code: line.code,
        name: line.name,
        unit: readRow(unit, line.unit, what),
        packHolds: line.pack_holds,
        packs: line.packs,
        packPence: line.pack_pence,
      })),
      deliveries: (cameOf.get(row.order_id) ?? []).map((one) => ({
        lineNo: one.line_no,
        packs: one.packs,
        onDay: one.on_day,
        at: one.at,
        says: one.says,
        toVan: one.to_van,
      })),
    }
  })
}

export async function markSent(tx: WriteTx, orderId: string, onDay: string): Promise<void> {
  await tx.updateTable('purchase_order').set({ sent_on: onDay }).where('order_id', '=', orderId).execute()
}

export async function markCancelled(
  tx: WriteTx,
  orderId: string,
  { onDay, says }: { readonly onDay: string; readonly says: string },
): Promise<void> {
  await tx
    .updateTable('purchase_order')
    .set({ cancelled_on: onDay, cancelled_says: says })
    .where('order_id', '=', orderId)
    .execute()
}

type NewDelivery = Omit<KeptDelivery, 'toVan'> & { readonly orderId: string; readonly moveNo: number | null }

/** Writes down what came of one line. */
export async function addDelivery(tx: WriteTx, came: NewDelivery): Promise<void> {
  await tx
    .insertInto('delivery')
    .values({
      order_id: came.orderId,
      line_no: came.lineNo,
      packs: came.packs,
      on_day: came.onDay,
      at: came.at,
      says: came.says,
      move_no: came.moveNo,
    })
    .execute()
}
