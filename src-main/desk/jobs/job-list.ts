import { accept } from '../../domain/outcome.ts'
import { listJobs } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

export const jobList: UseCase<'job.list'> = async (_input, desk) =>
  accept({ jobs: await reading(storeOf(desk), listJobs) })
