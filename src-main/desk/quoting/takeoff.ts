import { accept, refuse } from '../../domain/outcome.ts'
import { jobFacts } from '../../engine/takeoff/job-facts.ts'
import { takeOff } from '../../engine/takeoff/take-off.ts'
import type { UseCase } from '../desk.ts'
import { prepare } from './work-up.ts'

export const takeoffSwap: UseCase<'takeoff.swap'> = async ({ job, swapId }, desk) => {
  if (!job.swaps.some((swap) => swap.swapId === swapId)) {
    return refuse('not-found', `There is no swap called ${swapId} in this job.`, 'swapId')
  }
  const prepared = await prepare(job, desk)
  if (!prepared.ok) return prepared
  const { placed, figures, shelf } = prepared.value
  const only = placed.filter(({ swap }) => swap.swapId === swapId)
  return accept(takeOff(jobFacts(job, only, figures), shelf, figures).takeOff)
}

export const takeoffJob: UseCase<'takeoff.job'> = async ({ job }, desk) => {
  const prepared = await prepare(job, desk)
  if (!prepared.ok) return prepared
  const { placed, figures, shelf } = prepared.value
  return accept(takeOff(jobFacts(job, placed, figures), shelf, figures).takeOff)
}
