import type { AnswerOf, InputOf } from '../../../../src-main/contract/requests.ts'
import { useWindows } from '../../../parts/use-windows.ts'

export type PriceFilter = Omit<InputOf<'priceList.search'>, 'from' | 'most'>
export type PriceRow = AnswerOf<'priceList.search'>['rows'][number]

/** Rows of price lists, of which only those in sight are fetched. */
export function usePriceRows(filter: PriceFilter) {
  return useWindows<'priceList.search', PriceRow>({
    name: 'priceList.search',
    filter,
    rowsOf: ({ rows }) => rows,
  })
}
