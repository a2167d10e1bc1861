import { itemKind, unitOfKind } from '../../domain/item.ts'
import type { Unit } from '../../domain/item.ts'
import type { VanItem, VanMove, VanMoveKind } from '../../domain/follow-up/van.ts'
import { readRow } from '../read-row.ts'
import type { ReadTx, WriteTx } from '../tables.ts'

/** Sums of decimal quantities go by millionths, so that 0.1 and 0.2 are 0.3. */
const exact = (quantity: number) => Math.round(quantity * 1e6) / 1e6

/** What is in the van: the sum of each item's moves, where there is any. */
export async function readVanStock(tx: ReadTx): Promise<readonly VanItem[]> {
  const rows = await tx
    .selectFrom('van_move')
    .innerJoin('item', 'item.item_id', 'van_move.item_id')
    .select(({ fn }) => [
      'van_move.item_id as itemId',
      'item.name as name',
      'item.kind as kind',
      fn.sum<number>('van_move.quantity').as('quantity'),
      fn.max('van_move.on_day').as('since'),
    ])
    .groupBy('van_move.item_id')
    .orderBy('item.kind')
    .orderBy('item.sort_name')
    .execute()
  return rows
    .map((row) => {
      const kind = readRow(itemKind, row.kind, `The item ${row.itemId}`)
      return { ...row, kind, unit: unitOfKind[kind], quantity: exact(row.quantity) }
    })
    .filter(({ quantity }) => quantity !== 0)
}

export type VanItemMoves = {
  readonly itemId: string
  readonly name: string
  readonly unit: Unit
  readonly quantity: number
  readonly moves: readonly VanMove[]
}

/** One item with all its moves in order; null when there is no such item. */
export async function readVanMoves(tx: ReadTx, itemId: string): Promise<VanItemMoves | null> {
  const item = await tx
    .selectFrom('item')
    .select(['name', 'kind'])
    .where('item_id', '=', itemId)
    .executeTakeFirst()
  if (item === undefined) return null
  const kind = readRow(itemKind, item.kind, `The item ${itemId}`)
  const rows = await tx
    .selectFrom('van_move')
    .selectAll()
    .where('item_id', '=', itemId)
    .orderBy('move_no')
    .execute()
  let after = 0
  const moves = rows.map((row): VanMove => {
    after = exact(after + row.quantity)
    return {
      kind: row.kind,
      quantity: row.quantity,
      ...(row.counted === null ? {} : { counted: row.counted }),
      after,
      onDay: row.on_day,
      at: row.at,
      ...(row.says === null ? {} : { says: row.says }),
      ...(row.picking_no === null ? {} : { pickingNo: row.picking_no }),
      ...(row.order_id === null ? {} : { orderId: row.order_id }),
    }
  })
  return { itemId, name: item.name, unit: unitOfKind[kind], quantity: after, moves }
}

/** How much of an item is in the van. */
export async function inVanNow(tx: ReadTx, itemId: string): Promise<number> {
  const row = await tx
    .selectFrom('van_move')
    .select(({ fn }) => fn.sum<number | null>('quantity').as('quantity'))
    .where('item_id', '=', itemId)
    .executeTakeFirst()
  return exact(row?.quantity ?? 0)
}

export type NewMove = {
  readonly itemId: string
  readonly kind: VanMoveKind
  /** What it adds to the van. */
  readonly quantity: number
  readonly counted?: number
  readonly onDay: string
  readonly at: string
  readonly says?: string | undefined
  readonly pickingNo?: number
  readonly orderId?: string
}

/** Writes a move down and gives its number back. */
export async function addMove(tx: WriteTx, move: NewMove): Promise<number> {
  const { move_no } = await tx
    .insertInto('van_move')
    .values({
      item_id: move.itemId,
      kind: move.kind,
      quantity: exact(move.quantity),
      counted: move.counted ?? null,
      on_day: move.onDay,
      at: move.at,
      says: move.says ?? null,
      picking_no: move.pickingNo ?? null,
      order_id: move.orderId ?? null,
    })
    .returning('move_no')
    .executeTakeFirstOrThrow()
  return move_no
}
