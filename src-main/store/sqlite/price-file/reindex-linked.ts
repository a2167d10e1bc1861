import type { Database } from 'better-sqlite3'
import { readItems, reindexItem } from '../../items.ts'
import { builderOver } from '../query-builder.ts'

/** Has the search find items by the codes of their rows, in the transaction that is open on the connection. */
export async function reindexLinked(db: Database, itemIds: readonly string[]): Promise<void> {
  const tx = builderOver(db)
  for (const item of await readItems(tx, [...new Set(itemIds)])) await reindexItem(tx, item)
}
