import { hashKey, keepPreviousData, useQuery } from '@tanstack/react-query'
import type { QueryKey } from '@tanstack/react-query'
import { useMemo, useRef } from 'react'
import { call } from '../bridge/call.ts'
import { askKey, useAsk } from '../bridge/use-ask.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Quote } from '../../src-main/domain/quote.ts'
import { repricedNow } from './repriced-now.ts'
import type { Built } from './repriced-now.ts'

type Live = {
  readonly quote: Quote | null
  readonly standing: Quote | null
  readonly quoting: boolean
  readonly error: unknown
}

/**
 * The quote as it is typed. The desk builds it whenever typing stops; while only prices change, the last one is priced anew here
 * at each stroke of a key, by the same rule.
 */
export function useLiveQuote(now: Job, settled: Job, today: string): Live {
  const asked = useQuery({
    queryKey: askKey('quote.build', { job: settled }),
    queryKeyHashFn: (key) => hashOnce(key, settled),
    queryFn: () => call('quote.build', { job: settled }),
    placeholderData: keepPreviousData,
  })
  const figures = useAsk('figures.inForce', { on: now.quotedOn ?? today }, { staleMs: Infinity })
  const kept = useRef<Built | null>(null)
  const { job: forJob, quote: had } = kept.current ?? {}
  if (asked.data !== undefined && !asked.isPlaceholderData && (forJob !== settled || had !== asked.data)) {
    kept.current = { job: settled, quote: asked.data }
  }
  const built = kept.current
  const live = useMemo(() => repricedNow(built, now, figures.data?.settings), [built, now, figures.data])
  const standing = live ?? built?.quote ?? null
  const refused = asked.error !== null && !asked.isFetching && settled === now
  return {
    quote: refused ? null : standing,
    standing,
    quoting: live === null && (asked.isFetching || settled !== now),
    error: live !== null && !refused ? null : asked.error,
  }
}

const hashes = new WeakMap<Job, string>()

/** The name of a question about a whole job, worked out once for each state of it and not at each stroke of a key. */
function hashOnce(key: QueryKey, job: Job): string {
  const had = hashes.get(job)
  if (had !== undefined) return had
  const hash = hashKey(key)
  hashes.set(job, hash)
  return hash
}
