import type { Database } from 'better-sqlite3'
import { sql } from 'kysely'
import type { ReadTx, Tables } from '../tables.ts'

/** The tables that `readCatalogue` reads. */
const ofCatalogue: readonly (keyof Tables)[] = [
  'item',
  'supplier',
  'supplier_row',
  'past_price',
  'discount_group',
  'favourite',
]

/**
 * Has this connection count each row of the catalogue that it writes, whoever writes it and how. The count lies in the connection, not
 * in the file, and goes back with a transaction that is undone.
 */
export function watchCatalogue(raw: Database): void {
  raw.exec('create temp table if not exists catalogue_moves (many integer not null)')
  raw.exec('insert into temp.catalogue_moves select 0 where not exists (select 1 from temp.catalogue_moves)')
  for (const table of ofCatalogue) {
    for (const how of ['insert', 'update', 'delete']) {
      raw.exec(`
        create temp trigger if not exists ${table}_${how}_moves after ${how} on main.${table}
        begin update catalogue_moves set many = many + 1; end`)
    }
  }
}

/**
 * A word that is another one after any write to the catalogue by this connection, which must be watched, or any write at all by
 * another: what was worked out from the catalogue before is good while the word stays the same.
 */
export async function catalogueState(tx: ReadTx): Promise<string> {
  const asked = sql<{ many: number; version: number }>`
    select many, data_version as version from temp.catalogue_moves, pragma_data_version`
  const { rows } = await asked.execute(tx)
  const state = rows[0]
  if (state === undefined) throw new Error('SQLite did not say what state the catalogue is in')
  return `${state.many} ${state.version}`
}
