import { job } from '../domain/job.ts'
import { jsonSchemaOf } from '../domain/json-schema.ts'

/** The JSON Schema of a job file (`*.job.json`), made from the same schema that every door checks jobs with. */
export function jobFileSchema(): Record<string, unknown> {
  return jsonSchemaOf(job, 'input')
}
