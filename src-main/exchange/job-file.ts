import { job } from '../domain/job.ts'
import type { Job } from '../domain/job.ts'
import { jsonSchemaOf } from '../domain/json-schema.ts'
import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'

/** The JSON Schema of a job file (`*.job.json`), made from the same schema that every door checks jobs with. */
export function jobFileSchema(): Record<string, unknown> {
  return jsonSchemaOf(job, 'input')
}

/** No job file with its photos is longer than this, so that every door takes it in again. */
export const mostJobFileBytes = 20 * 1024 * 1024

/** A job as its open file, with photos beside it where they were asked for. */
export type JobFile = {
  readonly job: Job
  readonly photos?: readonly { readonly photoId: string; readonly base64: string }[]
}

/** The file itself, unless it came out longer than any door takes: lines are set in as the terminal prints them. */
export function sizedJobFile(file: JobFile, mostBytes: number = mostJobFileBytes): Outcome<JobFile> {
  const bytes = new TextEncoder().encode(`${JSON.stringify(file, null, 2)}\n`).length
  if (bytes <= mostBytes) return accept(file)
  const photos = file.photos?.length ?? 0
  const [has, may] = [bytes, mostBytes].map((count) => (count / 1024 / 1024).toFixed(1))
  return refuse(
    'refused',
    `With ${photos === 1 ? 'its photo' : `its ${photos} photos`} the job makes a file of ${has} MB; a job file has at most ${may} MB.`,
    'photos',
    'Take the photos of some rooms only (photosOf), or the job without photos.',
  )
}
