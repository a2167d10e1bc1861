import { accept } from '../../domain/outcome.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { longWork } from '../running/long-work.ts'
import { sourceOf } from './kept-file.ts'
import { takenBefore } from './taken-before.ts'

const usualMost = 100

const nothing = {
  changed: [],
  added: [],
  missing: [],
  rejected: [],
  duplicated: [],
  openWork: [],
  suggested: [],
} as const

export const priceFileCompare: UseCase<'priceFile.compare'> = async (input, desk) => {
  const { file, folder } = storeOf(desk)
  const source = await sourceOf(input.file, desk)
  if (!source.ok) return source
  const { supplierId, reading, validFrom, part, most = usualMost, workId } = input
  const before = await takenBefore(storeOf(desk), {
    source: source.value,
    supplierId,
    reading,
    validFrom,
    part,
  })
  if (before !== null && before.counts.rejected + before.counts.duplicated === 0)
    return accept({ ...before, ...nothing })
  return longWork(
    {
      kind: 'compare',
      file,
      folder,
      source: source.value,
      supplierId,
      reading,
      validFrom,
      part,
      today: desk.today,
      most,
    },
    workId,
  )
}
