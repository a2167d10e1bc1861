import { answer } from '../desk/router.ts'
import type { OpenDesk } from '../desk/open-desk.ts'
import type { Outcome } from '../domain/outcome.ts'

export type Calls = {
  readonly call: (name: string, input: unknown) => Promise<Outcome<unknown>>
  /** Waits for the calls under way, then closes the desk. */
  readonly close: () => Promise<void>
  /** Waits until no call is under way. */
  readonly settled: () => Promise<void>
}

/** Answers calls and knows which are under way, so that the data file is not closed under a save. */
export function callsTo(open: OpenDesk): Calls {
  const underWay = new Set<Promise<unknown>>()
  const settled = async (): Promise<void> => {
    while (underWay.size > 0) await Promise.allSettled(underWay)
  }
  return {
    call: (name, input) => {
      const answered = answer(name, input, open.desk()).finally(() => underWay.delete(answered))
      underWay.add(answered)
      return answered
    },
    settled,
    close: async () => {
      await settled()
      await open.close()
    },
  }
}
