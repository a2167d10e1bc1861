import { accept } from '../../domain/outcome.ts'
import { removeJob } from '../../store/jobs.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { removePhotosOf } from '../photos/photo-files.ts'
import { storeOf } from '../store-of.ts'
import { noSuchJob } from './no-such-job.ts'

export const jobRemove: UseCase<'job.remove'> = async ({ jobId }, desk) => {
  const removed = await writing(storeOf(desk), (tx) => removeJob(tx, jobId))
  if (!removed) return noSuchJob(jobId)
  await removePhotosOf(desk, jobId)
  return accept({ jobId })
}
