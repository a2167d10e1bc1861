import { job } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { UseCase } from '../desk.ts'

export const jobSample: UseCase<'job.sample'> = () => accept({ job: job.parse(sample) })
