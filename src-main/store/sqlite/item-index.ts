import { sql } from 'kysely'
import type { RawBuilder } from 'kysely'
import type { Item } from '../../domain/item.ts'
import { searchable } from '../item-match.ts'
import type { Searchable, Sought } from '../item-match.ts'
import type { ReadTx, WriteTx } from '../tables.ts'

/** More hits than these are too many to read anyhow: the first are put in order, and all are counted. */
const mostRanked = 5000
const rowsAtOnce = 500

type IndexRow = { readonly itemNo: number; readonly item: Item; readonly codes: readonly string[] }

/** Builds the search index anew, in bulk. */
export async function rebuildIndex(tx: WriteTx, rows: readonly IndexRow[]): Promise<void> {
  await tx.deleteFrom('item_search').execute()
  const indexRows = rows.map(indexRow)
  for (let from = 0; from < indexRows.length; from += rowsAtOnce) {
    await tx
      .insertInto('item_search')
      .values(indexRows.slice(from, from + rowsAtOnce))
      .execute()
  }
}

/** Puts one item into the index anew. */
export async function indexItem(tx: WriteTx, row: IndexRow): Promise<void> {
  await tx.deleteFrom('item_search').where('rowid', '=', row.itemNo).execute()
  await tx.insertInto('item_search').values(indexRow(row)).execute()
}

/** Items that hold every word sought and are as `which` says, in no order, and how many there are. */
export async function candidates(
  tx: ReadTx,
  sought: readonly Sought[],
  which: RawBuilder<boolean>,
): Promise<{ readonly items: readonly Searchable[]; readonly found: number }> {
  const hits = tx
    .selectFrom('item_search')
    .innerJoin('item', 'item.item_no', 'item_search.rowid')
    .where(sql<boolean>`item_search match ${matchText(sought)}`)
    .where(which)
  const counted = await hits.select((eb) => eb.fn.countAll<number>().as('found')).executeTakeFirstOrThrow()
  const rows = await hits
    .select(['item.item_id', 'item.sort_name', 'item_search.name_words', 'item_search.other_words'])
    .limit(mostRanked)
    .execute()
  const items = rows.map((row) => ({
    itemId: row.item_id,
    sortName: row.sort_name,
    nameWords: row.name_words.split(' '),
    otherWords: row.other_words.split(' '),
  }))
  return { items, found: counted.found }
}

/** Words are letters, figures, `.` and `/` only, so that nothing a person types is read as an operator. */
function matchText(sought: readonly Sought[]): string {
  return sought.map(({ word, whole }) => (whole ? `"${word}"` : `"${word}"*`)).join(' ')
}

function indexRow({ itemNo, item, codes }: IndexRow) {
  const { nameWords, otherWords } = searchable(item, codes)
  return { rowid: itemNo, name_words: nameWords.join(' '), other_words: otherWords.join(' ') }
}
