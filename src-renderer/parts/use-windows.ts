import { useQueries } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import type { AnswerOf, InputOf } from '../../src-main/contract/requests.ts'
import { call } from '../bridge/call.ts'
import { askKey, useAsk } from '../bridge/use-ask.ts'

/** Requests that answer a window of what they found. */
type Windowed = 'priceList.search' | 'catalogue.search'

/** How many rows are fetched at once. */
const rowsAtOnce = 100

type List<N extends Windowed, R> = {
  readonly name: N
  readonly filter: Omit<InputOf<N>, 'from' | 'most'>
  readonly rowsOf: (answer: AnswerOf<N>) => readonly R[]
}

/** A list of any length, of which only the windows in sight are fetched. */
export function useWindows<N extends Windowed, R>({ name, filter, rowsOf }: List<N, R>) {
  const [seen, setSeen] = useState({ from: 0, to: rowsAtOnce })
  const windowOf = (at: number) =>
    ({ ...filter, from: at * rowsAtOnce, most: rowsAtOnce }) as unknown as InputOf<N>
  const first = useAsk(name, windowOf(0), { keepOld: true })
  const windows = useMemo(() => {
    const [from, to] = [Math.floor(seen.from / rowsAtOnce), Math.floor(seen.to / rowsAtOnce)]
    return Array.from({ length: to - from + 1 }, (_, index) => from + index)
  }, [seen])
  const fetched = useQueries({
    queries: windows.map((at) => ({
      queryKey: askKey(name, windowOf(at)),
      queryFn: () => call(name, windowOf(at)),
    })),
  })
  const rowAt = (index: number): R | undefined => {
    const at = Math.floor(index / rowsAtOnce)
    const answer = at === 0 ? first.data : fetched[windows.indexOf(at)]?.data
    return answer === undefined ? undefined : rowsOf(answer)[index - at * rowsAtOnce]
  }
  const show = (from: number, to: number) => {
    if (from !== seen.from || to !== seen.to) setSeen({ from, to })
  }
  return { first, found: first.data?.found ?? 0, rowAt, show }
}
