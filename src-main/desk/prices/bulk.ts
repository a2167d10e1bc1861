import type { InputOf } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { OnDay } from '../../store/price-list/kept-rows.ts'
import type { Desk, UseCase } from '../desk.ts'
import { longWork } from '../running/long-work.ts'
import { staleBefore } from '../price-files/stale-before.ts'
import { storeOf } from '../store-of.ts'

type Input = InputOf<'price.bulkApply'>

/** Many rows may be many thousands, so both go on another thread. */
export const priceBulkCompare: UseCase<'price.bulkCompare'> = async ({ workId, ...bulk }, desk) => {
  const on = await choiceOn(bulk.which, desk)
  return on.ok ? longWork({ kind: 'bulkCompare', ...told(bulk, desk), on: on.value }, workId) : on
}

export const priceBulkApply: UseCase<'price.bulkApply'> = async ({ workId, ...bulk }, desk) => {
  const on = await choiceOn(bulk.which, desk)
  return on.ok ? longWork({ kind: 'bulkApply', ...told(bulk, desk), on: on.value }, workId) : on
}

function told(bulk: Omit<Input, 'workId'>, desk: Desk) {
  const { file, folder } = storeOf(desk)
  return { file, folder, today: desk.today, at: desk.now(), bulk }
}

/** The day on which rows are chosen, when they are named. */
async function choiceOn(which: Input['which'], desk: Desk): Promise<Outcome<OnDay>> {
  const named = namesRows(which)
  return named.ok ? staleBefore(desk) : named
}

/** Some rows must be named: an empty choice would take every row of every supplier. */
function namesRows({ supplierId, group, text = '', rowNos }: Input['which']): Outcome<null> {
  if (supplierId !== undefined || group !== undefined || text.trim() !== '' || rowNos !== undefined)
    return accept(null)
  const message = 'This would change every price of every supplier: name a supplier, a group, a text or rows.'
  return refuse('invalid', message, 'which')
}
