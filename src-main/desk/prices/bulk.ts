import type { InputOf } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Desk, UseCase } from '../desk.ts'
import { longWork } from '../running/long-work.ts'
import { storeOf } from '../store-of.ts'

type Input = InputOf<'price.bulkApply'>

/** Many rows may be many thousands, so both go on another thread. */
export const priceBulkCompare: UseCase<'price.bulkCompare'> = async ({ workId, ...bulk }, desk) => {
  const named = namesRows(bulk.which)
  return named.ok ? longWork({ kind: 'bulkCompare', ...told(bulk, desk) }, workId) : named
}

export const priceBulkApply: UseCase<'price.bulkApply'> = async ({ workId, ...bulk }, desk) => {
  const named = namesRows(bulk.which)
  return named.ok ? longWork({ kind: 'bulkApply', ...told(bulk, desk) }, workId) : named
}

function told(bulk: Omit<Input, 'workId'>, desk: Desk) {
  const { file, folder } = storeOf(desk)
  return { file, folder, today: desk.today, at: desk.now(), bulk }
}

/** Some rows must be named: an empty choice would take every row of every supplier. */
function namesRows({ supplierId, group, text = '', rowNos }: Input['which']): Outcome<null> {
  if (supplierId !== undefined || group !== undefined || text.trim() !== '' || rowNos !== undefined)
    return accept(null)
  const message = 'This would change every price of every supplier: name a supplier, a group, a text or rows.'
  return refuse('invalid', message, 'which')
}
