import { reading } from '../../store/store.ts'
import { readFileReading } from '../../store/price-list/file-readings.ts'
import type { UseCase } from '../desk.ts'
import { longWork } from '../running/long-work.ts'
import { sourceOf } from './kept-file.ts'

export const priceFileLook: UseCase<'priceFile.look'> = async (
  { file, supplierId, reading: wanted },
  desk,
) => {
  const source = await sourceOf(file, desk)
  if (!source.ok) return source
  const kept =
    desk.store === null || supplierId === undefined || wanted !== undefined
      ? null
      : await reading(desk.store, (tx) => readFileReading(tx, supplierId))
  return longWork({ kind: 'look', source: source.value, reading: wanted ?? null, kept }, undefined)
}
