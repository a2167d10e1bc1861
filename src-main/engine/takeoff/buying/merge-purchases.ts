import type { Purchase } from '../../../domain/quote.ts'
import { inMillionths, stepsInUnit } from '../../buying/whole-units.ts'
import { purchaseOf } from '../resolve.ts'
import type { Shelf } from '../shelf.ts'

/** What one job buys, and the short name by which its pipe pieces are told from another's. */
export type JobPurchases = { readonly label: string; readonly purchases: readonly Purchase[] }

/** What several jobs buy together, and what can no longer be bought at all, with the reason. */
export type Merged = {
  readonly purchases: readonly Purchase[]
  readonly missing: readonly { readonly name: string; readonly says: string }[]
}

/**
 * What several jobs buy, bought together at the prices in force: each item once, need = sum of the jobs' needs, in the cheapest whole
 * packs that cover it; the pieces of pipe of all jobs are cut from the same lengths. A one-off thing stays as its job has it.
 * @param jobs the purchases of each job, in the item's unit
 * @param buying the prices in force and the saw cut in mm, 0 to 50
 * @source practice, no published source
 * @example mergePurchases([{ label: 'A', purchases: [{ lineId: 'part-1', itemId: 'x', name: 'X', unit: 'each', need: 1 }] }], { kerfMm: 2, shelf: { prices: new Map() } }).missing.length // => 1
 */
export function mergePurchases(
  jobs: readonly JobPurchases[],
  buying: { readonly shelf: Shelf; readonly kerfMm: number },
): Merged {
  const all = jobs.flatMap(({ label, purchases }, at) =>
    purchases.map((purchase) => ({
      ...purchase,
      lineId: `${at + 1}-${purchase.lineId}`,
      ...(purchase.pieces === undefined
        ? {}
        : { pieces: purchase.pieces.map((piece) => ({ ...piece, id: `${label}: ${piece.id}` })) }),
    })),
  )
  const purchases: Purchase[] = all.filter(({ oneOff }) => oneOff === true)
  const missing: { name: string; says: string }[] = []
  const groups = Map.groupBy(
    all.filter(({ oneOff }) => oneOff !== true),
    ({ itemId }) => itemId,
  )
  let nth = 0
  for (const [itemId, [first, ...others]] of groups) {
    if (first === undefined) continue
    const same = [first, ...others]
    const pieces = same.flatMap((one) => one.pieces ?? [])
    const quantity = same.reduce((sum, { need }) => sum + inMillionths(need), 0) / stepsInUnit
    const need = { quantity, unit: first.unit, ...(pieces.length === 0 ? {} : { pieces }) }
    nth += 1
    const bought = purchaseOf(need, { itemId, name: first.name }, { ...buying, lineId: `part-${nth}` })
    if (bought.ok) purchases.push(bought.value)
    else missing.push({ name: first.name, says: bought.problems.map(({ message }) => message).join(' ') })
  }
  return { purchases, missing }
}
