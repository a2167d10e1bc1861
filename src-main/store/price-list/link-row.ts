import type { WriteTx } from '../tables.ts'
import { readItems, reindexItem } from '../items.ts'
import { keepRow } from './keep-row.ts'

export type Link = {
  readonly rowNo: number
  /** Null when the row is no item of the catalogue. */
  readonly itemId: string | null
  /** How much of the item's unit a pack holds; what the pack holds when absent. */
  readonly itemHolds?: number | undefined
}

/** Says which item a row is, as part of a change that `beginChange` opened. The search then finds the item by the row's code. */
export async function linkRow(tx: WriteTx, changeNo: number, link: Link): Promise<void> {
  await keepRow(tx, changeNo, link.rowNo)
  const { rowNo, itemId, itemHolds = null } = link
  const { item_id: before } = await tx
    .selectFrom('supplier_row')
    .select('item_id')
    .where('row_no', '=', rowNo)
    .executeTakeFirstOrThrow()
  await tx
    .updateTable('supplier_row')
    .set({ item_id: itemId, item_holds: itemId === null ? null : itemHolds, change_no: changeNo })
    .where('row_no', '=', rowNo)
    .execute()
  const touched = [before, itemId].filter((id) => id !== null)
  for (const item of await readItems(tx, touched)) await reindexItem(tx, item)
}
