import { item as itemSchema } from '../domain/item.ts'
import type { Item } from '../domain/item.ts'
import { sortName } from './item-match.ts'
import { emitterReader } from './known-rows/emitter-body.ts'
import { fromJson, readRow } from './read-row.ts'
import { indexItem } from './sqlite/item-index.ts'
import type { ReadTx, WriteTx } from './tables.ts'

/** An item as it stands in the catalogue, retired or not; null when there is none of that id. */
export async function readItem(tx: ReadTx, itemId: string): Promise<Item | null> {
  const [item] = await readItems(tx, [itemId])
  return item ?? null
}

/** The items of these ids that are there, in no order. */
export async function readItems(tx: ReadTx, itemIds: readonly string[]): Promise<readonly Item[]> {
  if (itemIds.length === 0) return []
  const rows = await tx
    .selectFrom('item')
    .select(['item_id', 'body'])
    .where('item_id', 'in', itemIds)
    .execute()
  return rows.map(itemOf)
}

/** Whether the firm made or changed an item, so that no later edition of the shipped catalogue touches it. */
export async function isOwnItem(tx: ReadTx, itemId: string): Promise<boolean> {
  const row = await tx.selectFrom('item').select('edition').where('item_id', '=', itemId).executeTakeFirst()
  return row !== undefined && row.edition === null
}

/** Keeps an item as the firm's own, new or changed, and has the search find it. */
export async function putItem(tx: WriteTx, item: Item): Promise<void> {
  const { item_id, ...row } = itemRow(item, null)
  await tx
    .insertInto('item')
    .values({ item_id, ...row })
    .onConflict((conflict) => conflict.column('item_id').doUpdateSet(row))
    .execute()
  await reindexItem(tx, item)
}

/** Has the search find an item by its words and by the codes that it is sold under now. */
export async function reindexItem(tx: WriteTx, item: Item): Promise<void> {
  const { item_no } = await tx
    .selectFrom('item')
    .select('item_no')
    .where('item_id', '=', item.itemId)
    .executeTakeFirstOrThrow()
  const sold = await tx
    .selectFrom('supplier_row')
    .select('code')
    .where('item_id', '=', item.itemId)
    .orderBy('code')
    .execute()
  await indexItem(tx, { itemNo: item_no, item, codes: sold.map(({ code }) => code) })
}

export function itemOf({ item_id, body }: ItemRow): Item {
  const what = whatOf({ item_id })
  return readRow(itemSchema, fromJson(body, what), what)
}

/** Many items, sooner than one by one. */
export function itemsOf(rows: readonly ItemRow[]): readonly Item[] {
  const readEmitter = emitterReader()
  return rows.map((row) => readEmitter(row.body, whatOf(row)) ?? itemOf(row))
}

type ItemRow = { readonly item_id: string; readonly body: string }

function whatOf({ item_id }: Pick<ItemRow, 'item_id'>): string {
  return `The item ${item_id}`
}

/** An item as its row; `edition` is the shipped catalogue it came with, null for the firm's own. */
export function itemRow(item: Item, edition: string | null) {
  return {
    item_id: item.itemId,
    kind: item.kind,
    name: item.name,
    sort_name: sortName(item.name),
    generic: item.generic ? 1 : 0,
    retired: item.retired === true ? 1 : 0,
    also_called: JSON.stringify(item.alsoCalled ?? []),
    body: JSON.stringify(item),
    edition,
  }
}
