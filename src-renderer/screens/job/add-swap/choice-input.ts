import type { Job, Swap } from '../../../../src-main/domain/job.ts'
import { newSwap } from '../new-things.ts'
import type { SwapAsked } from '../new-things.ts'

/** A place that has no swap yet. */
export type NewPlace = Omit<SwapAsked, 'emitterId'>

export type ChoiceInput = {
  readonly job: Job
  readonly roomId: string
  readonly wallId: string
  readonly swapId: string
}

/** What to ask of a place: about the swap that is there, or about one as it would be put into the job. */
export function choiceInput(job: Job, place: Swap | NewPlace): ChoiceInput {
  const { roomId, wallId } = place
  if ('swapId' in place) return { job, roomId, wallId, swapId: place.swapId }
  const taken = job.swaps.map(({ swapId }) => swapId)
  const swap = newSwap({ ...place, emitterId: 'to-be-chosen' }, taken)
  return { job: { ...job, swaps: [...job.swaps, swap] }, roomId, wallId, swapId: swap.swapId }
}
