import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query'
import type { AnswerOf, InputOf, RequestName } from '../../src-main/contract/requests.ts'
import { call } from './call.ts'

type How = { readonly enabled?: boolean; readonly keepOld?: boolean; readonly staleMs?: number }

/** The key under which an answer is remembered. */
export const askKey = <N extends RequestName>(name: N, input: InputOf<N>) => [name, input] as const

/** Asks a query and remembers the answer. */
export function useAsk<N extends RequestName>(name: N, input: InputOf<N>, how: How = {}) {
  return useQuery({
    queryKey: askKey(name, input),
    queryFn: () => call(name, input),
    enabled: how.enabled ?? true,
    staleTime: how.staleMs ?? 0,
    ...(how.keepOld === true ? { placeholderData: keepPreviousData } : {}),
  })
}

/** A command, ready to be given. */
export function useCommand<N extends RequestName>(name: N) {
  return useMutation<AnswerOf<N>, unknown, InputOf<N>>({ mutationFn: (input) => call(name, input) })
}
