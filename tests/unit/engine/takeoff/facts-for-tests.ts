import type { JobFacts } from '../../../../src-main/engine/takeoff/job-facts.ts'
import type { SwapFacts } from '../../../../src-main/engine/takeoff/swap-facts.ts'
import { typical } from '../../../typical-asks.ts'

/** The facts of one plain swap, with nothing in its box and no pipe, tapping or hole unless they are given. */
export const swapOf = (swapId: string, roomId: string, more: Partial<SwapFacts> = {}): SwapFacts => ({
  swapId,
  roomId,
  box: [],
  wallBuild: 'solidMasonry',
  ask: typical.swap,
  sides: [],
  joints: [],
  holes: [],
  ...more,
})

/** The facts of a job of these swaps, with a plain room for each place that they name. */
export const factsOf = (swaps: readonly SwapFacts[], job: Partial<JobFacts['job']> = {}): JobFacts => ({
  job: { ...typical.job, swaps: swaps.length, ...job },
  rooms: [...new Set(swaps.map(({ roomId }) => roomId))].map((roomId) => ({
    roomId,
    ask: { ...typical.room, swaps: swaps.filter((swap) => swap.roomId === roomId).length },
  })),
  swaps,
})
