import { jobFileFormat } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { newJobId } from '../../parts/new-job-id.ts'

/**
 * A job with nothing surveyed yet. The temperatures are where a person starts from, to be put right on site: outside
 * -3 °C and a 60/50 °C system (practice, no published source).
 */
export function newJob(named: {
  readonly title: string
  readonly customer: string
  readonly today: string
}): Job {
  return {
    format: jobFileFormat,
    version: 1,
    jobId: newJobId(),
    title: named.title,
    createdOn: named.today,
    customer: { name: named.customer, addressLines: [] },
    site: { addressLines: [] },
    survey: {
      surveyedOn: named.today,
      outsideC: -3,
      system: { flowC: 60, returnC: 50, kind: 'sealed', drain: 'wholeSystem', flush: false },
    },
    rooms: [],
    swaps: [],
  }
}
