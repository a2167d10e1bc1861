import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query'
import type { AnswerOf, InputOf, RequestName } from '../../src-main/contract/requests.ts'
import { call } from './call.ts'

type How = {
  readonly enabled?: boolean
  readonly keepOld?: boolean
  readonly staleMs?: number
  /** Asks again after so many milliseconds, for as long as somebody looks. */
  readonly everyMs?: number
}

/** The key under which an answer is remembered. */
export const askKey = <N extends RequestName>(name: N, input: InputOf<N>) => [name, input] as const

/** Asks a query and remembers the answer. */
export function useAsk<N extends RequestName>(name: N, input: InputOf<N>, how: How = {}) {
  return useQuery({
    queryKey: askKey(name, input),
    queryFn: () => call(name, input),
    enabled: how.enabled ?? true,
    staleTime: how.staleMs ?? 0,
    refetchInterval: how.everyMs ?? false,
    ...(how.keepOld === true ? { placeholderData: keepPreviousData } : {}),
  })
}

/** A command, ready to be given. `onSuccess` is waited for before the command counts as done. */
export function useCommand<N extends RequestName>(name: N, onSuccess?: () => Promise<unknown>) {
  return useMutation<AnswerOf<N>, unknown, InputOf<N>>({
    mutationFn: (input) => call(name, input),
    ...(onSuccess === undefined ? {} : { onSuccess }),
  })
}
