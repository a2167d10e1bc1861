import { accept } from '../../domain/outcome.ts'
import { readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchJob } from './no-such-job.ts'

export const jobRead: UseCase<'job.read'> = async ({ jobId }, desk) => {
  const job = await reading(storeOf(desk), (tx) => readJob(tx, jobId))
  return job === null ? noSuchJob(jobId) : accept({ job })
}
