import { accept } from '../../domain/outcome.ts'
import { readKeptRows } from '../../store/price-list/kept-rows.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { searchOnThread } from '../running/search-thread.ts'
import { staleBefore } from './stale-before.ts'

const usualMost = 50

export const priceListSearch: UseCase<'priceList.search'> = async (input, desk) => {
  const store = storeOf(desk)
  const on = await staleBefore(desk)
  if (!on.ok) return on
  const { sort = 'nearest', from = 0, most = usualMost, ...rest } = input
  const { rowNos, found, atLeast } = await searchOnThread(store, { ...rest, ...on.value, sort, from, most })
  return accept({ rows: await reading(store, (tx) => readKeptRows(tx, rowNos, on.value)), found, atLeast })
}
