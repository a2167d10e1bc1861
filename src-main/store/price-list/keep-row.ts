import { keepSteps } from '../sqlite/price-steps.ts'
import { runSteps } from '../sqlite/take-steps.ts'
import type { WriteTx } from '../tables.ts'

/** Keeps a row and its prices as they are, for undoing the change that is about to write to it. Once in one change. */
export function keepRow(tx: WriteTx, changeNo: number, rowNo: number): Promise<void> {
  return runSteps(tx, keepSteps(changeNo, `select ${Math.trunc(rowNo)}`))
}
