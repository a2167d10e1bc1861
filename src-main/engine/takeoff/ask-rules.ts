import type { Asks, Per } from './asks.ts'
import type { JobFacts } from './job-facts.ts'

/** One question put to one rule, with the swaps that its answer belongs to; none for what the job needs once. */
export type Question<P extends Per = Per> = {
  readonly ask: Asks[P]
  readonly shared: boolean
  readonly swapIds: readonly string[]
}

/**
 * The questions of one kind that a job holds.
 * @param per what the rule is asked about
 * @param facts the job's facts
 * @source practice, no published source
 * @example questions('swap', { rooms: [], swaps: [{ swapId: 'a', ask: 'what' }] }) // => [{"ask":"what","shared":false,"swapIds":["a"]}]
 */
export function questions<P extends Per>(per: P, facts: JobFacts): readonly Question<P>[] {
  const all: { readonly [K in Per]: () => readonly Question<K>[] } = {
    job: () => [{ ask: facts.job, shared: true, swapIds: facts.swaps.map((swap) => swap.swapId) }],
    room: () =>
      facts.rooms.map(({ roomId, ask }) => ({
        ask,
        shared: false,
        swapIds: facts.swaps.filter((swap) => swap.roomId === roomId).map((swap) => swap.swapId),
      })),
    swap: () => facts.swaps.map((swap) => ({ ask: swap.ask, shared: false, swapIds: [swap.swapId] })),
    side: () => each(facts, (swap) => swap.sides),
    joint: () => each(facts, (swap) => swap.joints),
    hole: () => each(facts, (swap) => swap.holes),
  }
  return all[per]()
}

function each<T>(facts: JobFacts, of: (swap: JobFacts['swaps'][number]) => readonly T[]) {
  return facts.swaps.flatMap((swap) =>
    of(swap).map((ask) => ({ ask, shared: false, swapIds: [swap.swapId] })),
  )
}
