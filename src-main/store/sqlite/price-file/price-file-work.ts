import type { Database } from 'better-sqlite3'
import { refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { patiently } from '../patiently.ts'

/** A connection of its own for one piece of work with a price file, closed when the work is over. */
export async function withConnection<T>(file: string, work: (db: Database) => Promise<T>): Promise<T> {
  const { default: SqliteFile } = await import('better-sqlite3')
  const db = new SqliteFile(file, { timeout: 200, fileMustExist: true })
  try {
    db.pragma('synchronous = full')
    db.pragma('foreign_keys = on')
    db.pragma('cache_size = -32768')
    return await work(db)
  } finally {
    if (db.inTransaction) db.exec('rollback')
    db.close()
  }
}

/** Everything is read from one state of the file; what is gathered lies in temporary tables, which are not part of that. */
export async function onOneState<T>(db: Database, work: () => Promise<T>): Promise<T> {
  db.exec('begin')
  try {
    return await work()
  } finally {
    db.exec('commit')
  }
}

/** Writes all of it or nothing. */
export async function inOne<T>(db: Database, work: () => Promise<Outcome<T>>): Promise<Outcome<T>> {
  await patiently(() => db.exec('begin immediate'))
  try {
    const outcome = await work()
    if (outcome.ok) db.exec('commit')
    return outcome
  } finally {
    if (db.inTransaction) db.exec('rollback')
  }
}

/** Which state the prices are in: another when they were changed or confirmed, or a change undone. */
export function priceState(db: Database): string {
  const row = db
    .prepare<[], { state: string }>(
      `select coalesce(max(change_no), 0) || ' ' || count(undone_at) || ' ' || coalesce(max(undone_at), '') ||
         ' ' || (select coalesce(max(edition), '') from catalogue_edition) ||
         ' ' || (select coalesce(group_concat(body ->> 'listedOn'), '') from file_reading) as state from price_change`,
    )
    .get()
  return row?.state ?? ''
}

/** `within` is what stands before `supplierId` in the path of a problem. */
export function knownSupplier(db: Database, supplierId: string, within = ''): Outcome<null> {
  const known = db.prepare('select 1 from supplier where supplier_id = ?').get(supplierId)
  return known === undefined
    ? refuse(
        'not-found',
        `There is no supplier ${supplierId}: name one that supplier.list has.`,
        `${within}supplierId`,
      )
    : { ok: true, value: null }
}

/** Whether the supplier's list has a code, or would have it with what was gathered. */
export function isListed(db: Database, supplierId: string, code: string): boolean {
  const row = db
    .prepare<[string, string, string], { one: number }>(
      `select 1 as one from supplier_row where supplier_id = ? and code = ?
       union all select 1 from temp.coming where code = ? limit 1`,
    )
    .get(supplierId, code, code)
  return row !== undefined
}
