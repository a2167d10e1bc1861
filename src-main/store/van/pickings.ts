import { sql } from 'kysely'
import { pickingBody } from '../../domain/follow-up/van.ts'
import type { Picking, PickingLine } from '../../domain/follow-up/van.ts'
import { fromJson, readRow } from '../read-row.ts'
import type { PickingLineTable, ReadTx, WriteTx } from '../tables.ts'

export type NewPicking = Omit<Picking, 'pickingNo' | 'closedOn'> & {
  readonly madeAt: string
  readonly quoteIds: readonly string[]
}

/** Keeps a new round of picking and gives its number back. */
export async function keepPicking(tx: WriteTx, made: NewPicking): Promise<number> {
  const { picking_no } = await tx
    .insertInto('picking')
    .values({
      title: made.title,
      made_on: made.madeOn,
      made_at: made.madeAt,
      closed_on: null,
      body: JSON.stringify(made.body),
    })
    .returning('picking_no')
    .executeTakeFirstOrThrow()
  await tx
    .insertInto('picking_quote')
    .values(made.quoteIds.map((quote_id) => ({ picking_no, quote_id })))
    .execute()
  if (made.lines.length > 0)
    await tx
      .insertInto('picking_line')
      .values(made.lines.map((line) => rowOf(picking_no, line)))
      .execute()
  return picking_no
}

function rowOf(picking_no: number, line: PickingLine) {
  return {
    picking_no,
    line_no: line.lineNo,
    source: line.source,
    supplier_id: line.supplierId ?? null,
    kind: line.kind,
    item_id: line.itemId ?? null,
    code: line.code ?? null,
    name: line.name,
    unit: line.unit,
    need: line.need,
    packs: line.packs ?? null,
    pack_holds: line.packHolds ?? null,
    picked: 0,
    ticked_at: null,
    instead_item_id: null,
    instead_says: null,
    short_says: null,
  }
}

/** One round of picking, whole; null when there is none of that number. */
export async function readPicking(tx: ReadTx, pickingNo: number): Promise<Picking | null> {
  const row = await tx
    .selectFrom('picking')
    .selectAll()
    .where('picking_no', '=', pickingNo)
    .executeTakeFirst()
  if (row === undefined) return null
  const lines = await tx
    .selectFrom('picking_line')
    .leftJoin('supplier', 'supplier.supplier_id', 'picking_line.supplier_id')
    .selectAll('picking_line')
    .select('supplier.name as supplier_name')
    .where('picking_no', '=', pickingNo)
    .orderBy('line_no')
    .execute()
  const what = `The pick list ${pickingNo}`
  return {
    pickingNo,
    title: row.title,
    madeOn: row.made_on,
    ...(row.closed_on === null ? {} : { closedOn: row.closed_on }),
    lines: lines.map(lineOf),
    body: readRow(pickingBody, fromJson(row.body, what), what),
  }
}

type LineRow = Omit<PickingLineTable, 'picked'> & {
  readonly picked: number
  readonly supplier_name: string | null
}

function lineOf(row: LineRow): PickingLine {
  return {
    lineNo: row.line_no,
    source: row.source,
    ...(row.supplier_id === null ? {} : { supplierId: row.supplier_id }),
    ...(row.supplier_name === null ? {} : { supplierName: row.supplier_name }),
    kind: row.kind,
    ...(row.item_id === null ? {} : { itemId: row.item_id }),
    ...(row.code === null ? {} : { code: row.code }),
    name: row.name,
    unit: row.unit,
    need: row.need,
    ...(row.packs === null ? {} : { packs: row.packs }),
    ...(row.pack_holds === null ? {} : { packHolds: row.pack_holds }),
    picked: row.picked,
    ...(row.ticked_at === null ? {} : { tickedAt: row.ticked_at }),
    ...(row.instead_item_id === null ? {} : { insteadItemId: row.instead_item_id }),
    ...(row.instead_says === null ? {} : { insteadSays: row.instead_says }),
    ...(row.short_says === null ? {} : { shortSays: row.short_says }),
  }
}

/** Rounds of picking in short, the newest first. */
export async function listPickings(tx: ReadTx) {
  const rows = await tx
    .selectFrom('picking')
    .select([
      'picking_no as pickingNo',
      'title',
      'made_on as madeOn',
      'closed_on as closedOn',
      sql<string>`(select json_group_array(quote_id) from picking_quote q where q.picking_no = picking.picking_no)`.as(
        'quoteIds',
      ),
      sql<number>`(select count(*) from picking_line l where l.picking_no = picking.picking_no)`.as('lines'),
      sql<number>`(select count(*) from picking_line l where l.picking_no = picking.picking_no and l.ticked_at is not null)`.as(
        'ticked',
      ),
      sql<number>`(select count(*) from picking_line l where l.picking_no = picking.picking_no and l.short_says is not null)`.as(
        'short',
      ),
    ])
    .orderBy('picking_no', 'desc')
    .execute()
  return rows.map(({ quoteIds, closedOn, ...row }) => ({
    ...row,
    ...(closedOn === null ? {} : { closedOn }),
    quoteIds: JSON.parse(quoteIds) as string[],
  }))
}

/** Which of these quotes have been picked for, or are being. */
export async function quotesBeingPicked(
  tx: ReadTx,
  quoteIds: readonly string[],
): Promise<readonly { readonly quoteId: string; readonly pickingNo: number }[]> {
  return tx
    .selectFrom('picking_quote')
    .innerJoin('picking', 'picking.picking_no', 'picking_quote.picking_no')
    .select(['picking_quote.quote_id as quoteId', 'picking.picking_no as pickingNo'])
    .where('picking_quote.quote_id', 'in', [...quoteIds])
    .execute()
}

export type Tick = {
  readonly pickingNo: number
  readonly lineNo: number
  readonly picked: number
  readonly tickedAt: string | null
  readonly insteadItemId: string | null
  readonly insteadSays: string | null
  readonly shortSays: string | null
}

/** Notes what was found of one line. */
export async function tickLine(tx: WriteTx, tick: Tick): Promise<void> {
  await tx
    .updateTable('picking_line')
    .set({
      picked: tick.picked,
      ticked_at: tick.tickedAt,
      instead_item_id: tick.insteadItemId,
      instead_says: tick.insteadSays,
      short_says: tick.shortSays,
    })
    .where('picking_no', '=', tick.pickingNo)
    .where('line_no', '=', tick.lineNo)
    .execute()
}

export async function closePicking(tx: WriteTx, pickingNo: number, closedOn: string): Promise<void> {
  await tx.updateTable('picking').set({ closed_on: closedOn }).where('picking_no', '=', pickingNo).execute()
}
