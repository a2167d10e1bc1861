import { setImmediate as breath } from 'node:timers/promises'
import type { Item } from '../../domain/item.ts'
import { listJobs, readJob } from '../../store/jobs.ts'
import { jobsNaming } from '../../store/sqlite/item-use.ts'
import type { UsingJob } from '../../store/sqlite/item-use.ts'
import { reading } from '../../store/store.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk } from '../desk.ts'
import { partsBought } from '../prices/job-parts.ts'
import { storeOf } from '../store-of.ts'

/**
 * The jobs that use an item. A job names its emitters, but its parts come from rules, so that for a part the `most` jobs saved
 * last are worked up to see what they would buy today.
 */
export async function usedBy(item: Item, desk: Desk, most: number): Promise<readonly UsingJob[]> {
  const store = storeOf(desk)
  const named = await reading(store, (tx) => jobsNaming(tx, item.itemId))
  if (item.kind === 'emitter') return named
  const rows = (await reading(store, listJobs)).slice(0, most)
  const catalogue = await catalogueOf(desk)
  const using = new Set(named.map(({ jobId }) => jobId))
  for (const { jobId } of rows.filter((row) => !using.has(row.jobId))) {
    // Whoever else asks gets a turn between two jobs.
    await breath()
    const job = await reading(store, (tx) => readJob(tx, jobId))
    const bought = job === null ? null : await partsBought(job, catalogue, desk)
    if (bought?.some(({ itemId }) => itemId === item.itemId) === true) using.add(jobId)
  }
  const beyond = named.filter(({ jobId }) => !rows.some((row) => row.jobId === jobId))
  const among = rows.filter(({ jobId }) => using.has(jobId))
  return [...among.map(({ jobId, title }) => ({ jobId, title })), ...beyond]
}
