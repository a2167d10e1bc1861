import type { Database } from 'better-sqlite3'
import { Kysely, SqliteDialect } from 'kysely'
import type { Tables } from '../tables.ts'
import { patiently } from './patiently.ts'

/** One connection to a data file: the query builder, and SQLite itself for what only SQLite can do. */
export type OpenFile = { readonly kysely: Kysely<Tables>; readonly raw: Database; readonly file: string }

/**
 * SQLite stops the whole thread while it waits, so it waits briefly and `patiently` does the rest: hardly at all once the file
 * is open, as a large price list is written for several seconds. Longer while it is opened, when not all can be tried again.
 */
const openingTimeoutMs = 200
const busyTimeoutMs = 4

/** Opens a file, or makes it, without changing anything in it yet. */
export async function openFile(file: string): Promise<OpenFile> {
  const { default: SqliteFile } = await import('better-sqlite3')
  const raw = new SqliteFile(file, { timeout: openingTimeoutMs })
  return { raw, file, kysely: new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) }) }
}

/** Sets the connection to keep every commit, whatever happens to the machine, and to hold references true. */
export async function makeDurable({ raw }: OpenFile): Promise<void> {
  await patiently(() => raw.pragma('journal_mode = wal'))
  raw.pragma('synchronous = full')
  raw.pragma('foreign_keys = on')
  raw.pragma(`busy_timeout = ${busyTimeoutMs}`)
}

/** Writes the log back into the file and closes it, so that one file lies on disk. Waits for what is under way. */
export async function closeFile({ kysely, raw }: OpenFile): Promise<void> {
  await kysely.connection().execute(async () => {
    raw.pragma('wal_checkpoint(truncate)')
  })
  await kysely.destroy()
}
