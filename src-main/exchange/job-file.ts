import { job } from '../domain/job.ts'
import type { Job } from '../domain/job.ts'
import { jsonSchemaOf } from '../domain/json-schema.ts'
import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'

/** The JSON Schema of a job file (`*.job.json`), made from the same schema that every door checks jobs with. */
export function jobFileSchema(): Record<string, unknown> {
  return jsonSchemaOf(job, 'input')
}

/** No job file with what goes along in it is longer than this, so that every door takes it in again. */
export const mostJobFileBytes = 20 * 1024 * 1024

/** A job as its open file, with photos and issued quotes beside it where they were asked for. */
type WithJob = {
  readonly job: Job
  readonly photos?: readonly unknown[] | undefined
  readonly quotes?: readonly unknown[] | undefined
}

/** The file itself, unless it came out longer than any door takes: lines are set in as the terminal prints them. */
export function sizedJobFile<F extends WithJob>(file: F, mostBytes: number = mostJobFileBytes): Outcome<F> {
  const bytes = new TextEncoder().encode(`${JSON.stringify(file, null, 2)}\n`).length
  if (bytes <= mostBytes) return accept(file)
  const [has, may] = [bytes, mostBytes].map((count) => (count / 1024 / 1024).toFixed(1))
  const message = `With ${cargoOf(file)} the job makes a file of ${has} MB; a job file has at most ${may} MB.`
  if (file.quotes === undefined)
    return refuse(
      'refused',
      message,
      'photos',
      'Take the photos of some rooms only (photosOf), or the job without photos.',
    )
  const next =
    file.photos === undefined
      ? 'Take the job without its quotes.'
      : 'Take the quotes and the photos each in a file of its own, or the photos of some rooms only (photosOf).'
  return refuse('refused', message, file.photos === undefined ? 'quotes' : 'photos', next)
}

/** What makes the file long. */
function cargoOf({ photos, quotes }: WithJob): string {
  return [
    ...(photos === undefined && quotes !== undefined ? [] : [manyOf(photos?.length ?? 0, 'photo')]),
    ...(quotes === undefined ? [] : [manyOf(quotes.length, 'quote')]),
  ].join(' and ')
}

function manyOf(count: number, what: string): string {
  return count === 1 ? `its ${what}` : `its ${count} ${what}s`
}
