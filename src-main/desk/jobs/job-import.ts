import { accept, refuse } from '../../domain/outcome.ts'
import { readJob, saveJob } from '../../store/jobs.ts'
import { readItems } from '../../store/items.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { checkJob } from './check-job.ts'

export const jobImport: UseCase<'job.import'> = ({ job, replace = false }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const items = await readItems(
      tx,
      job.swaps.map(({ emitterId }) => emitterId),
    )
    const checked = checkJob(job, { items })
    if (!checked.ok) return checked
    const there = await readJob(tx, job.jobId)
    if (there !== null && !replace) {
      const says = `There is a job ${job.jobId} already (${there.title}): import under another id, or say to replace it.`
      return refuse('conflict', says, 'job.jobId', 'Set replace to true to put this one in its place.')
    }
    await saveJob(tx, job, desk.now())
    return accept({ jobId: job.jobId, replaced: there !== null })
  })
