import type { Item } from '../../domain/item.ts'
import { accept } from '../../domain/outcome.ts'
import { putItem, readItem } from '../../store/items.ts'
import { reading, writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchItem } from './no-such-item.ts'
import { usedBy } from './used-by.ts'

/** More jobs than these are not worked up to see whether they would buy a part. */
const mostJobs = 500

/** The jobs are asked first: once it is off the shelf, no job would buy it any more. */
export const itemRetire: UseCase<'item.retire'> = async ({ itemId, retired }, desk) => {
  const store = storeOf(desk)
  const there = await reading(store, (tx) => readItem(tx, itemId))
  if (there === null) return noSuchItem(itemId)
  const using = await usedBy({ ...there, retired: false }, desk, mostJobs)
  return writing(store, async (tx) => {
    const before = await readItem(tx, itemId)
    if (before === null) return noSuchItem(itemId)
    const { retired: was = false, ...rest } = before
    const item: Item = retired ? { ...rest, retired: true } : rest
    if (was !== retired) await putItem(tx, item)
    return accept({ item, usedBy: using })
  })
}
