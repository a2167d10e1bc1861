import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

/** The refusal for a job that is not in the data folder. */
export function noSuchJob(jobId: string): Outcome<never> {
  return refuse(
    'not-found',
    `There is no job ${jobId} in the data folder.`,
    'jobId',
    'job.list shows those that there are.',
  )
}
