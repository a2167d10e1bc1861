import { useQuery } from '@tanstack/react-query'
import { call } from '../../bridge/call.ts'
import { askKey } from '../../bridge/use-ask.ts'

let last: Promise<unknown> = Promise.resolve()

/** Waits until what was asked before has been answered: whoever opens a job then waits for one sum at most, not for all. */
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const mine = last.then(work, work)
  last = mine.catch(() => undefined)
  return mine
}

/** What a job comes to and what is next, asked once its row has been in sight. */
export function useSummary(jobId: string, seen: boolean) {
  return useQuery({
    queryKey: askKey('job.summary', { jobId }),
    queryFn: ({ signal }) =>
      inTurn(() => {
        signal.throwIfAborted()
        return call('job.summary', { jobId })
      }),
    enabled: seen,
  })
}
