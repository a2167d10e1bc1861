import { accept } from '../../domain/outcome.ts'
import { findJobs } from '../../store/job-search/find-jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'

const usualMost = 8

export const jobFind: UseCase<'job.find'> = async ({ text, most = usualMost }, desk) =>
  accept(await reading(storeOf(desk), (tx) => findJobs(tx, text, most)))
