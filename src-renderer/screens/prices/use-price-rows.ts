import { useQueries } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import type { AnswerOf, InputOf } from '../../../src-main/contract/requests.ts'
import { call } from '../../bridge/call.ts'
import { askKey, useAsk } from '../../bridge/use-ask.ts'

export type PriceFilter = Omit<InputOf<'priceList.search'>, 'from' | 'most'>
export type PriceRow = AnswerOf<'priceList.search'>['rows'][number]

/** How many rows are fetched at once. */
const rowsAtOnce = 100

/** A list of any length, of which only the windows in sight are fetched. */
export function usePriceRows(filter: PriceFilter) {
  const [seen, setSeen] = useState({ from: 0, to: rowsAtOnce })
  const windowOf = (at: number) => ({ ...filter, from: at * rowsAtOnce, most: rowsAtOnce })
  const first = useAsk('priceList.search', windowOf(0), { keepOld: true })
  const windows = useMemo(() => {
    const [from, to] = [Math.floor(seen.from / rowsAtOnce), Math.floor(seen.to / rowsAtOnce)]
    return Array.from({ length: to - from + 1 }, (_, index) => from + index)
  }, [seen])
  const fetched = useQueries({
    queries: windows.map((at) => ({
      queryKey: askKey('priceList.search', windowOf(at)),
      queryFn: () => call('priceList.search', windowOf(at)),
    })),
  })
  const rowAt = (index: number): PriceRow | undefined => {
    const at = Math.floor(index / rowsAtOnce)
    const answer = at === 0 ? first.data : fetched[windows.indexOf(at)]?.data
    return answer?.rows[index - at * rowsAtOnce]
  }
  const show = (from: number, to: number) => {
    if (from !== seen.from || to !== seen.to) setSeen({ from, to })
  }
  return { first, found: first.data?.found ?? 0, rowAt, show }
}
