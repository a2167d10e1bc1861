import { accept } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
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

type Buying = { readonly shelf: Shelf; readonly kerfMm: number }

/**
 * What several jobs buy, bought together at the prices in force: need = sum of the jobs' needs, in the cheapest whole packs that cover
 * it; the pieces of pipe of all jobs are cut from the same lengths. An item comes once, from one supplier, unless that is dearer than
 * each job's share from the supplier that is cheapest for it; then it comes once from each of those. Pipe that one job cuts and another
 * buys by the metre comes twice. A one-off thing stays as its job has it.
 * @param jobs the purchases of each job, in the item's unit
 * @param buying the prices in force and the saw cut in mm, 0 to 50
 * @source practice, no published source
 * @example mergePurchases([{ label: 'A', purchases: [{ lineId: 'part-1', itemId: 'x', name: 'X', unit: 'each', need: 1 }] }], { kerfMm: 2, shelf: { prices: new Map() } }).missing.length // => 1
 */
export function mergePurchases(jobs: readonly JobPurchases[], buying: Buying): Merged {
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
    ({ itemId, pieces = [] }) => `${itemId} ${pieces.length === 0 ? 'whole' : 'cut'}`,
  )
  let nth = 0
  for (const same of groups.values()) {
    const bought = cheapestTogether(same, buying)
    if (bought.ok) {
      for (const one of bought.value) purchases.push({ ...one, lineId: `part-${(nth += 1)}` })
    } else {
      const [{ name } = { name: '' }] = same
      missing.push({ name, says: bought.problems.map(({ message }) => message).join(' ') })
    }
  }
  return { purchases, missing }
}

/** All of it at once, each supplier's share at once, or each job's by itself: the first of those that costs the least. */
function cheapestTogether(same: readonly Purchase[], buying: Buying): Outcome<readonly Purchase[]> {
  const together = boughtAtOnce(same, buying)
  if (same.length === 1) return together
  const alone = same.map((one) => boughtAtOnce([one], buying))
  const each = alone.flatMap((one) => (one.ok ? one.value : []))
  if (each.length < same.length) return together
  const shares = Map.groupBy(same, (_, at) => each[at]?.supplierId ?? '')
  const byShare = [...shares].map(([supplierId, share]) =>
    boughtAtOnce(share, onlyFrom(supplierId, share[0]?.itemId ?? '', buying)),
  )
  const ways = [
    ...(together.ok ? [together.value] : []),
    ...(byShare.every(({ ok }) => ok) ? [byShare.flatMap((one) => (one.ok ? one.value : []))] : []),
    each,
  ]
  return accept(ways.reduce((best, way) => (costOf(way) < costOf(best) ? way : best)))
}

function costOf(purchases: readonly Purchase[]): number {
  return purchases.reduce((sum, { costPence }) => sum + costPence, 0)
}

function boughtAtOnce(same: readonly Purchase[], buying: Buying): Outcome<readonly Purchase[]> {
  const [{ itemId, name, unit } = { itemId: '', name: '', unit: 'each' as const }] = same
  const pieces = same.flatMap((one) => one.pieces ?? [])
  const quantity = same.reduce((sum, { need }) => sum + inMillionths(need), 0) / stepsInUnit
  const need = { quantity, unit, ...(pieces.length === 0 ? {} : { pieces }) }
  const bought = purchaseOf(need, { itemId, name }, { ...buying, lineId: 'part' })
  return bought.ok ? accept([bought.value]) : bought
}

/** The same shelf with one supplier's prices only, and nothing remembered of other prices. */
function onlyFrom(supplierId: string, itemId: string, { shelf, kerfMm }: Buying): Buying {
  const asked = (shelf.prices.get(itemId) ?? []).filter((one) => one.supplierId === supplierId)
  const { bought: _, ...rest } = shelf
  return { kerfMm, shelf: { ...rest, prices: new Map([[itemId, asked]]) } }
}
