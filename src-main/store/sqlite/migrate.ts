import { sql } from 'kysely'
import type { Kysely } from 'kysely'
import type { Step } from '../migration.ts'
import type { Tables } from '../tables.ts'
import type { OpenFile } from './open-file.ts'
import { write } from './transact.ts'

export type AppliedStep = { readonly id: string; readonly hash: string }
type Counts = ReadonlyMap<string, number>

/** The steps a file has been through: none for a new file, null for a file that is not ours. */
export function appliedSteps({ raw }: OpenFile): readonly AppliedStep[] | null {
  const tables = raw
    .prepare<[], { name: string }>(`select name from sqlite_schema where type = 'table'`)
    .all()
  if (tables.length === 0) return []
  if (!tables.some(({ name }) => name === 'schema_step')) return null
  return raw.prepare<[], AppliedStep>('select id, hash from schema_step order by id').all()
}

/**
 * Takes a file through the steps it has not seen, all in one transaction: if any fails, the file is as it was. Keys are
 * off meanwhile, because rebuilding a table with them on empties the tables that refer to it; so that nothing is lost
 * unseen, the rows of every table are counted before and after each step and every reference is checked.
 */
export async function migrate(open: OpenFile, steps: readonly Step[], appliedAt: string): Promise<void> {
  open.raw.pragma('foreign_keys = off')
  try {
    await write(
      open,
      async (tx) => {
        // Another process may have done it while we waited.
        const seen = new Set((appliedSteps(open) ?? []).map(({ id }) => id))
        for (const step of steps) if (!seen.has(step.id)) await take(tx, step, appliedAt)
      },
      () => true,
    )
  } finally {
    open.raw.pragma('foreign_keys = on')
  }
}

async function take(tx: Kysely<Tables>, step: Step, appliedAt: string): Promise<void> {
  const before = await rowCounts(tx)
  await step.up(tx as unknown as Kysely<unknown>)
  refuseLostRows(step, before, await rowCounts(tx))
  const broken = await sql<{ table: string }>`pragma foreign_key_check`.execute(tx)
  if (broken.rows.length > 0)
    throw new Error(`rows of ${broken.rows[0]?.table ?? 'a table'} refer to nothing`)
  const { id, name, hash } = step
  await tx.insertInto('schema_step').values({ id, name, hash, applied_at: appliedAt }).execute()
}

async function rowCounts(tx: Kysely<Tables>): Promise<Counts> {
  const tables = await sql<{ name: string }>`
    select name from pragma_table_list
    where schema = 'main' and type = 'table' and name not like 'sqlite\\_%' escape '\\'`.execute(tx)
  const counts = new Map<string, number>()
  for (const { name } of tables.rows) {
    const counted = await sql<{ rows: number }>`select count(*) as rows from ${sql.table(name)}`.execute(tx)
    counts.set(name, counted.rows[0]?.rows ?? 0)
  }
  return counts
}

function refuseLostRows(step: Step, before: Counts, after: Counts): void {
  const meant = new Set(step.changesRowsOf)
  for (const [table, rows] of before) {
    const now = after.get(table) ?? 0
    if (now !== rows && !meant.has(table)) throw new Error(`${table} had ${rows} rows and would have ${now}`)
  }
}
