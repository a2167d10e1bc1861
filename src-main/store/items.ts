import { item as itemSchema } from '../domain/item.ts'
import type { Item } from '../domain/item.ts'
import { sortName } from './item-match.ts'
import { fromJson, readRow } from './read-row.ts'
import type { ReadTx } from './tables.ts'

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

export function itemOf({ item_id, body }: { readonly item_id: string; readonly body: string }): Item {
  const what = `The item ${item_id}`
  return readRow(itemSchema, fromJson(body, what), what)
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
