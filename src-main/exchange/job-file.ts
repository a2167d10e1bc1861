import { z } from 'zod'
import { job } from '../domain/job.ts'

/** The JSON Schema of a job file (`*.job.json`), made from the same schema that every door checks jobs with. */
export function jobFileSchema(): Record<string, unknown> {
  return z.toJSONSchema(job, { io: 'input' })
}
