import { gatherPrices, gatheringTables, takeSteps } from '../sqlite/price-steps.ts'
import type { NewPriceOfRow } from '../sqlite/price-steps.ts'
import { runSteps } from '../sqlite/take-steps.ts'
import type { WriteTx } from '../tables.ts'

/**
 * Gives rows of suppliers' lists other prices from a day on, as part of a change that `beginChange` opened. What a price
 * replaces ends the day before; one that is to begin later stays, and the new one ends before it. Rows are kept as they were
 * for undoing. One row only once in one change.
 */
export async function putPrices(
  tx: WriteTx,
  changeNo: number,
  prices: readonly NewPriceOfRow[],
): Promise<void> {
  const nothing = gatheringTables.map((text) => ({ text, bound: [] }))
  await runSteps(tx, [...nothing, gatherPrices(prices)])
  await runSteps(tx, takeSteps(changeNo, '9999-12-31'))
}
