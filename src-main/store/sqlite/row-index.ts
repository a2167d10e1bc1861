import { sql } from 'kysely'
import { rowWords } from '../price-list/row-words.ts'
import type { WriteTx } from '../tables.ts'

const atOnce = 5000

/** Puts these rows of suppliers' lists into the search index anew, as they stand now. */
export async function reindexRows(tx: WriteTx, rowNos: readonly number[]): Promise<void> {
  for (let from = 0; from < rowNos.length; from += atOnce) {
    const some = rowNos.slice(from, from + atOnce)
    const rows = await tx
      .selectFrom('supplier_row')
      .select(['row_no', 'code', 'name', 'gtin'])
      .where('row_no', 'in', some)
      .execute()
    for (const row of rows) {
      await sql`delete from row_search where rowid = ${row.row_no}`.execute(tx)
      await sql`insert into row_search (rowid, words) values (${row.row_no}, ${rowWords(row)})`.execute(tx)
    }
  }
}
