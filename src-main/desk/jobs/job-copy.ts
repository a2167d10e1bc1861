import { randomUUID } from 'node:crypto'
import { accept } from '../../domain/outcome.ts'
import { readJob, saveJob } from '../../store/jobs.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { copyOfJob } from './copy-of-job.ts'
import { noSuchJob } from './no-such-job.ts'

export const jobCopy: UseCase<'job.copy'> = ({ jobId }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const job = await readJob(tx, jobId)
    if (job === null) return noSuchJob(jobId)
    const copy = copyOfJob(job, { jobId: `job-${randomUUID()}`, today: desk.today })
    await saveJob(tx, copy, desk.now())
    return accept({ jobId: copy.jobId, title: copy.title })
  })
