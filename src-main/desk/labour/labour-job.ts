import { labourOfJob } from '../../engine/labour/labour-of-job.ts'
import { jobFacts } from '../../engine/takeoff/job-facts.ts'
import type { UseCase } from '../desk.ts'
import { prepare } from '../quoting/work-up.ts'

export const labourJob: UseCase<'labour.job'> = async ({ job }, desk) => {
  const prepared = await prepare(job, desk)
  if (!prepared.ok) return prepared
  const { placed, figures } = prepared.value
  return labourOfJob(jobFacts(job, placed, figures), figures)
}
