import { z } from 'zod'
import { job } from '../domain/job.ts'
import type { Job } from '../domain/job.ts'

/** The JSON Schema of a job file, made from the same schema that every door checks jobs with. */
export function jobFileSchema(): Record<string, unknown> {
  return z.toJSONSchema(job, { io: 'input' })
}

/** A job as the text of its file: two spaces, one field a line, so that two versions can be compared by eye. */
export function jobFileText(value: Job): string {
  return `${JSON.stringify(value, null, 2)}\n`
}
