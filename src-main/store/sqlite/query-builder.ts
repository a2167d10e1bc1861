import type { Database } from 'better-sqlite3'
import { Kysely, SqliteDialect } from 'kysely'
import type { Tables, WriteTx } from '../tables.ts'

/** The query builder over a connection that has its own owner: it is not to be ended, because that would close the connection. */
export function builderOver(db: Database): WriteTx {
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database: db }) })
}
