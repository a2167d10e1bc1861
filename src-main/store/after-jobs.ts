import { afterJob } from '../domain/follow-up/after-job.ts'
import type { ActualTask, AfterJob } from '../domain/follow-up/after-job.ts'
import { fromJson, readRow } from './read-row.ts'
import type { ReadTx, WriteTx } from './tables.ts'

export type KeptAfterJob = { readonly afterJob: AfterJob; readonly closedOn: string | null }

/** What happened on the job of an accepted quote; null while nobody said. */
export async function readAfterJob(tx: ReadTx, quoteId: string): Promise<KeptAfterJob | null> {
  const row = await tx
    .selectFrom('after_job')
    .select(['body', 'closed_on'])
    .where('quote_id', '=', quoteId)
    .executeTakeFirst()
  if (row === undefined) return null
  const what = `What happened after the quote ${quoteId}`
  return { afterJob: readRow(afterJob, fromJson(row.body, what), what), closedOn: row.closed_on }
}

export async function saveAfterJob(
  tx: WriteTx,
  quoteId: string,
  kept: { readonly afterJob: AfterJob; readonly savedAt: string; readonly closedOn: string | null },
): Promise<void> {
  const row = { saved_at: kept.savedAt, closed_on: kept.closedOn, body: JSON.stringify(kept.afterJob) }
  await tx
    .insertInto('after_job')
    .values({ quote_id: quoteId, ...row })
    .onConflict((conflict) => conflict.column('quote_id').doUpdateSet(row))
    .execute()
}

/** What every closed job took, by task: one entry a job, its minutes and how many plain ones they were reckoned for. */
export async function closedActuals(tx: ReadTx): Promise<ReadonlyMap<string, readonly ActualTask[]>> {
  const rows = await tx
    .selectFrom('after_job')
    .select(['quote_id', 'body'])
    .where('closed_on', 'is not', null)
    .orderBy('quote_id')
    .execute()
  const tasks = rows.flatMap(({ quote_id, body }) => {
    const what = `What happened after the quote ${quote_id}`
    return addedUp(readRow(afterJob, fromJson(body, what), what).tasks)
  })
  return Map.groupBy(tasks, ({ taskId }) => taskId)
}

/** Each task once: rooms have their own entries. */
function addedUp(tasks: readonly ActualTask[]): readonly ActualTask[] {
  return [...Map.groupBy(tasks, ({ taskId }) => taskId).values()].flatMap((same) => {
    const [first] = same
    if (first === undefined) return []
    const count = same.reduce((sum, one) => sum + one.count * (one.slowerRatio ?? 1), 0)
    const minutes = same.reduce((sum, one) => sum + one.minutes, 0)
    return [{ ...first, count, minutes }]
  })
}
