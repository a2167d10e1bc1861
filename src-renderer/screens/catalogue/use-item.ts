import { useQueryClient } from '@tanstack/react-query'
import { useCommand } from '../../bridge/use-ask.ts'

const standsOnItems: ReadonlySet<string> = new Set([
  'catalogue.search',
  'catalogue.item',
  'emitter.choose',
  'quote.build',
  'priceList.search',
])

/** Everything that can be done with an item; what stands on it is asked again. */
export function useItem() {
  const queries = useQueryClient()
  const onSuccess = () =>
    queries.invalidateQueries({ predicate: ({ queryKey }) => standsOnItems.has(String(queryKey[0])) })
  return {
    save: useCommand('item.save', onSuccess),
    copy: useCommand('item.copy', onSuccess),
    retire: useCommand('item.retire', onSuccess),
    favourite: useCommand('favourite.set', onSuccess),
  }
}
