import type { AnswerOf } from '../../contract/requests.ts'
import type { ApplyTask } from '../price-files/apply-work.ts'
import type { CompareTask } from '../price-files/compare-work.ts'
import type { LookTask } from '../price-files/look-work.ts'
import type { UndoTask } from '../price-files/undo-work.ts'
import type { BulkApplyTask, BulkCompareTask } from '../prices/bulk-work.ts'

/** What a thread of its own is given to do. */
export type PriceTask = CompareTask | ApplyTask | LookTask | UndoTask | BulkCompareTask | BulkApplyTask

type Answers = {
  readonly compare: AnswerOf<'priceFile.compare'>
  readonly apply: AnswerOf<'priceFile.apply'>
  readonly look: AnswerOf<'priceFile.look'>
  readonly undo: AnswerOf<'price.undo'>
  readonly bulkCompare: AnswerOf<'price.bulkCompare'>
  readonly bulkApply: AnswerOf<'price.bulkApply'>
}
export type TaskAnswer<T extends PriceTask> = Answers[T['kind']]
