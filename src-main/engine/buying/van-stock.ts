import { inMillionths, stepsInUnit } from './whole-units.ts'

export type VanStock = readonly { readonly itemId: string; readonly quantity: number }[]
type Wanted = { readonly lineId: string; readonly itemId: string; readonly need: number }
/** A line with what the van gives of it, and what is still to be bought (0 when the van has it all). */
export type AfterVan<L extends Wanted> = L & { readonly fromVan: number; readonly toBuy: number }

/**
 * What the van gives towards each line, before anything is bought: from_van = min(need, stock left), to_buy = need - from_van.
 * Lines that want the same item are served in the order of their ids, whatever order they come in.
 *
 * @param lines the item and quantity of each, in the item's unit
 * @param stock what is in the van, in the item's unit, 0 or more; an item given twice is added up
 * @source practice, no published source
 * @example takeFromVan([{ lineId: 'a', itemId: 'clip', need: 12 }], [{ itemId: 'clip', quantity: 5 }]).map((line) => line.toBuy) // => [7]
 */
export function takeFromVan<L extends Wanted>(lines: readonly L[], stock: VanStock): readonly AfterVan<L>[] {
  const left = new Map<string, number>()
  for (const { itemId, quantity } of stock) {
    left.set(itemId, (left.get(itemId) ?? 0) + inMillionths(quantity))
  }
  const given = new Map<string, number>()
  for (const { lineId, itemId, need } of lines.toSorted((a, b) => (a.lineId < b.lineId ? -1 : 1))) {
    const taken = Math.min(inMillionths(need), left.get(itemId) ?? 0)
    left.set(itemId, (left.get(itemId) ?? 0) - taken)
    given.set(lineId, taken)
  }
  return lines.map((line) => {
    const taken = given.get(line.lineId) ?? 0
    if (taken === 0) return { ...line, fromVan: 0, toBuy: line.need }
    const toBuy = (inMillionths(line.need) - taken) / stepsInUnit
    return { ...line, fromVan: taken / stepsInUnit, toBuy }
  })
}
