import { useQueries } from '@tanstack/react-query'
import { useRef } from 'react'
import { isEmitter } from '../../../src-main/domain/catalogue.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import { job as jobShape } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { call, problemsOf } from '../../bridge/call.ts'
import { askKey, useAsk } from '../../bridge/use-ask.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { circuitsOf, namesOf, toBalance } from './circuits.ts'

/** The job as it last stood with every figure a figure: what is half typed is told beside its field. */
export function useSoundJob(): Job {
  const { settled } = useOpenJob()
  const sound = useRef(settled)
  if (settled !== sound.current && jobShape.safeParse(settled).success) sound.current = settled
  return sound.current
}

/** The water of each emitter, and the balance of the house where its pipes are given. */
export function useBalance() {
  const settled = useSoundJob()
  const asked = useQueries({
    queries: [...new Set(settled.swaps.map(({ emitterId }) => emitterId))].map((itemId) => ({
      queryKey: askKey('catalogue.item', { itemId }),
      queryFn: () => call('catalogue.item', { itemId }),
      staleTime: Infinity,
    })),
  })
  const items = new Map<string, Emitter>()
  for (const { data } of asked) {
    if (data !== undefined && isEmitter(data.item)) items.set(data.item.itemId, data.item)
  }
  const found = circuitsOf(settled, items)
  const { input, wanted, loose } = toBalance(settled, found.circuits)
  const empty = { legs: [], circuits: [], flowC: 60, returnC: 50 }
  const balance = useAsk('house.balance', input ?? empty, { enabled: input !== null, keepOld: true })
  return {
    ...found,
    finding: asked.some(({ isPending }) => isPending),
    wanted,
    loose,
    names: namesOf(settled, found.circuits),
    balance: input === null || balance.error !== null ? null : (balance.data ?? null),
    problems: input === null ? [] : problemsOf(balance.error),
  }
}
