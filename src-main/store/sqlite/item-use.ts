import { sql } from 'kysely'
import type { ReadTx } from '../tables.ts'

export type UsingJob = { readonly jobId: string; readonly title: string }

/** The jobs that name an item themselves, as the emitter of a swap or to fill a gap; the last saved first. */
export function jobsNaming(tx: ReadTx, itemId: string): Promise<readonly UsingJob[]> {
  return tx
    .selectFrom('job')
    .select(['job.job_id as jobId', 'job.title as title'])
    .where(
      sql<boolean>`(
        exists (select 1 from swap where swap.job_id = job.job_id and json_extract(swap.body, '$.emitterId') = ${itemId})
        or exists (select 1 from json_each(job.body, '$.fills') as fill
                   where json_extract(fill.value, '$.itemId') = ${itemId})
      )`,
    )
    .orderBy('job.saved_at', 'desc')
    .orderBy('job.job_id')
    .execute()
}
