import { accept, refuse } from '../../domain/outcome.ts'
import { readItems } from '../../store/items.ts'
import { confirmList } from '../../store/price-list/confirm-list.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { longWork } from '../running/long-work.ts'
import { sourceOf } from './kept-file.ts'
import { listedOnOf } from './read-file.ts'
import { takenBefore } from './taken-before.ts'

export const priceFileApply: UseCase<'priceFile.apply'> = async (input, desk) => {
  const store = storeOf(desk)
  const source = await sourceOf(input.file, desk)
  if (!source.ok) return source
  const { supplierId, reading: how, validFrom, part, fileHash, links = [], workId } = input
  const taken = { source: source.value, supplierId, reading: how, validFrom, part }
  const before = links.length > 0 ? null : await takenBefore(store, taken)
  if (before !== null && before.fileHash === fileHash) {
    await confirmList(store, supplierId, listedOnOf({ validFrom, part, today: desk.today }))
    return accept({ changeNo: null, counts: before.counts })
  }
  const known = await reading(store, (tx) =>
    readItems(
      tx,
      links.map(({ itemId }) => itemId),
    ),
  )
  const unknown = links.findIndex(({ itemId }) => !known.some((item) => item.itemId === itemId))
  if (unknown >= 0) {
    const says = `There is no item ${links[unknown]?.itemId} in the catalogue to link ${links[unknown]?.code} to.`
    return refuse('not-found', says, `links[${unknown}].itemId`)
  }
  return longWork(
    {
      kind: 'apply',
      file: store.file,
      source: source.value,
      supplierId,
      reading: how,
      validFrom,
      part,
      today: desk.today,
      at: desk.now(),
      most: 0,
      fileHash,
      links,
    },
    workId,
  )
}
