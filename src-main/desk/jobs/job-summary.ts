import { accept } from '../../domain/outcome.ts'
import { readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { workUp } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { nextStep, openGapLines } from './next-step.ts'
import { noSuchJob } from './no-such-job.ts'

export const jobSummary: UseCase<'job.summary'> = async ({ jobId }, desk) => {
  const job = await reading(storeOf(desk), (tx) => readJob(tx, jobId))
  if (job === null) return noSuchJob(jobId)
  const worked = job.swaps.length === 0 ? null : await workUp(job, desk)
  const next = nextStep(job, worked)
  if (worked === null || !worked.ok) return accept({ grossPence: null, gaps: 0, next })
  const { quote } = worked.value
  return accept({ grossPence: quote.totals.grossPence, gaps: openGapLines(worked.value).length, next })
}
