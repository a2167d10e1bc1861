import { accept } from '../../domain/outcome.ts'
import { jobFileSchema } from '../../exchange/job-file.ts'
import type { UseCase } from '../desk.ts'

export const jobSchema: UseCase<'job.schema'> = () => accept({ schema: jobFileSchema() })
