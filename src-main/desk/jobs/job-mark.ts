import { accept } from '../../domain/outcome.ts'
import { markJob } from '../../store/jobs.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchJob } from './no-such-job.ts'

export const jobMark: UseCase<'job.mark'> = async ({ jobId, ...marks }, desk) => {
  const marked = await writing(storeOf(desk), (tx) => markJob(tx, jobId, marks))
  return marked === null ? noSuchJob(jobId) : accept({ jobId, ...marked })
}
