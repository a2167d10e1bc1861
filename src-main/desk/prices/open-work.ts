import { setImmediate as breath } from 'node:timers/promises'
import type { Catalogue } from '../../domain/catalogue.ts'
import { listJobs, readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { Desk } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { costOf, partsBought } from './job-parts.ts'

export type OpenWork = {
  readonly jobId: string
  readonly title: string
  readonly wasPence: number
  readonly willPence: number
}

/** More jobs than these, the last saved first, are not worked up to show what a change of prices does to them. */
const mostJobs = 100

/** The jobs whose parts would cost another sum with the prices of `after` than with those of `now`; the dearest turn first. */
export async function openWork(now: Catalogue, after: Catalogue, desk: Desk): Promise<readonly OpenWork[]> {
  const store = storeOf(desk)
  const rows = (await reading(store, listJobs)).slice(0, mostJobs)
  const work: OpenWork[] = []
  for (const { jobId, title } of rows) {
    // Whoever else asks gets a turn between two jobs.
    await breath()
    const job = await reading(store, (tx) => readJob(tx, jobId))
    const was = job === null ? null : await partsBought(job, now, desk)
    const will = job === null ? null : await partsBought(job, after, desk)
    if (was === null || will === null) continue
    work.push({ jobId, title, wasPence: costOf(was), willPence: costOf(will) })
  }
  return work
    .filter(({ wasPence, willPence }) => wasPence !== willPence)
    .toSorted((a, b) => rise(b) - rise(a) || (a.jobId < b.jobId ? -1 : 1))
}

function rise({ wasPence, willPence }: OpenWork): number {
  return willPence - wasPence
}
