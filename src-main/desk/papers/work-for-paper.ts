import type { Desk } from '../desk.ts'
import type { Job } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { keptWork, workUp } from '../quoting/work-up.ts'
import type { WorkedUp } from '../quoting/work-up.ts'

/** What a paper may be asked for: a job as it stands, or a quote as it was issued. */
export type PaperInput =
  | { readonly job: Job; readonly out?: string | undefined }
  | { readonly quoteId: string; readonly out?: string | undefined }

/** The job worked up, with the names that its paper and file go by. */
export type PaperWork = WorkedUp & { readonly reference: string; readonly fileKey: string }

export async function workForPaper(input: PaperInput, desk: Desk): Promise<Outcome<PaperWork>> {
  const kept = 'quoteId' in input
  const worked = kept ? await keptWork(input.quoteId, desk) : await workUp(input.job, desk)
  if (!worked.ok) return worked
  const { job } = worked.value
  const reference = kept ? input.quoteId : (job.reference ?? job.jobId)
  return accept({ ...worked.value, reference, fileKey: kept ? input.quoteId : job.jobId })
}
