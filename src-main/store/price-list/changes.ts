import type { Selectable } from 'kysely'
import { changeCounts } from '../../domain/price-list.ts'
import type { ChangeCounts, PriceChange } from '../../domain/price-list.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { readItems, reindexItem } from '../items.ts'
import { fromJson, readRow } from '../read-row.ts'
import { reindexRows } from '../sqlite/row-index.ts'
import { undoSteps } from '../sqlite/price-steps.ts'
import { runSteps } from '../sqlite/take-steps.ts'
import type { ReadTx, Tables, WriteTx } from '../tables.ts'

export const noCounts: ChangeCounts = {
  new: 0,
  changed: 0,
  unchanged: 0,
  missing: 0,
  rejected: 0,
  duplicated: 0,
}

export type NewChange = {
  readonly kind: PriceChange['kind']
  readonly supplierId?: string | undefined
  /** What is done, in words. */
  readonly says: string
  /** The moment, as an ISO date and time. */
  readonly at: string
}

/** Opens a change of prices and gives its number; `endChange` says afterwards what it came to. */
export async function beginChange(tx: WriteTx, change: NewChange): Promise<number> {
  const { kind, supplierId = null, says, at } = change
  const row = await tx
    .insertInto('price_change')
    .values({ kind, supplier_id: supplierId, says: says.slice(0, 200), at, counts: JSON.stringify(noCounts) })
    .returning('change_no')
    .executeTakeFirstOrThrow()
  return row.change_no
}

export async function endChange(
  tx: WriteTx,
  changeNo: number,
  counts: Partial<ChangeCounts>,
): Promise<ChangeCounts> {
  const all = { ...noCounts, ...counts }
  await tx
    .updateTable('price_change')
    .set({ counts: JSON.stringify(all) })
    .where('change_no', '=', changeNo)
    .execute()
  return all
}

/** What was done to the prices, the newest first. */
export async function listChanges(tx: ReadTx, most: number): Promise<readonly PriceChange[]> {
  const rows = await tx
    .selectFrom('price_change')
    .selectAll()
    .orderBy('change_no', 'desc')
    .limit(most)
    .execute()
  return rows.map(changeOf)
}

function changeOf(row: Selectable<Tables['price_change']>): PriceChange {
  const what = `The change of prices ${row.change_no}`
  return {
    changeNo: row.change_no,
    kind: row.kind,
    ...(row.supplier_id === null ? {} : { supplierId: row.supplier_id }),
    says: row.says,
    at: row.at,
    counts: readRow(changeCounts, fromJson(row.counts, what), what),
    undone: row.undone_at !== null,
  }
}
/** Undoes a change: every row is as it was. Refused when a later change wrote to one of its rows. */
export async function undoChange(tx: WriteTx, changeNo: number, at: string): Promise<Outcome<ChangeCounts>> {
  const row = await tx
    .selectFrom('price_change')
    .selectAll()
    .where('change_no', '=', changeNo)
    .executeTakeFirst()
  if (row === undefined) return refuse('not-found', `There is no change of prices ${changeNo}.`, 'changeNo')
  const change = changeOf(row)
  if (change.undone) return refuse('conflict', `“${change.says}” was undone already.`, 'changeNo')
  const later = await laterChange(tx, changeNo)
  if (later !== undefined) {
    const says = `“${later.says}” changed some of the same rows later, so “${change.says}” cannot be undone before it.`
    return refuse('conflict', says, 'changeNo', 'Undo the later change first.')
  }
  const reworded = await rewordedRows(tx, changeNo)
  const relinked = await relinkedItems(tx, changeNo)
  await runSteps(tx, undoSteps(changeNo))
  await reindexRows(tx, reworded)
  for (const item of await readItems(tx, relinked)) await reindexItem(tx, item)
  await tx.updateTable('price_change').set({ undone_at: at }).where('change_no', '=', changeNo).execute()
  return accept(change.counts)
}

/** The last change that wrote to a row after this one did. */
async function laterChange(tx: ReadTx, changeNo: number) {
  return tx
    .selectFrom('row_before')
    .innerJoin('price_change', 'price_change.change_no', 'row_before.by_change')
    .select('price_change.says')
    .where('row_before.change_no', '=', changeNo)
    .orderBy('row_before.by_change', 'desc')
    .limit(1)
    .executeTakeFirst()
}

/** Items that a change gave a row or took one from: the search finds them by their rows' codes. */
async function relinkedItems(tx: ReadTx, changeNo: number): Promise<readonly string[]> {
  const rows = await tx
    .selectFrom('supplier_row')
    .leftJoin('row_before', (join) =>
      join.onRef('row_before.row_no', '=', 'supplier_row.row_no').on('row_before.by_change', '=', changeNo),
    )
    .select(['supplier_row.item_id as now', 'row_before.item_id as before'])
    .where('supplier_row.change_no', '=', changeNo)
    .where((eb) => eb('supplier_row.item_id', 'is not', eb.ref('row_before.item_id')))
    .execute()
  return [...new Set(rows.flatMap(({ now, before }) => [now, before]))].filter((itemId) => itemId !== null)
}

async function rewordedRows(tx: ReadTx, changeNo: number): Promise<readonly number[]> {
  const rows = await tx
    .selectFrom('row_before')
    .innerJoin('supplier_row', 'supplier_row.row_no', 'row_before.row_no')
    .select('row_before.row_no')
    .where('row_before.by_change', '=', changeNo)
    .where((eb) =>
      eb.or([
        eb('row_before.name', 'is not', eb.ref('supplier_row.name')),
        eb('row_before.gtin', 'is not', eb.ref('supplier_row.gtin')),
      ]),
    )
    .execute()
  return rows.map(({ row_no }) => row_no)
}
