import { because } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import type { Purchase } from '../../../domain/quote.ts'
import type { MergedNeed } from '../merge-needs.ts'
import { addedUp } from '../merge-needs.ts'
import { poundsOf } from '../purchase.ts'
import { purchaseOf, resolveNeed } from '../resolve.ts'
import type { ResolvedLine } from '../resolve.ts'
import type { Shelf } from '../shelf.ts'

/**
 * Finds what each need is met with, and buys lines that came to the same item together, so that they share packs: one line for
 * each item, where the first of them stood, numbered `part-1` on. A gap stays a line of its own, and so do lines that cost less
 * apart, from two suppliers.
 * @param needs merged needs in the order of the list
 * @param shelf the catalogue with the prices in force
 * @param kerfMm the saw cut in mm, 0 to 50
 * @source practice, no published source
 * @example resolveNeeds([{ kind: 'vent', spec: {} }], { parts: new Map() }, 2).length // => 1
 */
export function resolveNeeds(
  needs: readonly MergedNeed[],
  shelf: Shelf,
  kerfMm: number,
): readonly ResolvedLine[] {
  const found = needs.map((need, index) => ({
    need,
    index,
    resolved: resolveNeed(need, shelf, { lineId: 'alone', kerfMm }),
  }))
  const groups = Map.groupBy(found, ({ index, resolved: { purchase } }) =>
    purchase === null || purchase.oneOff === true ? `line ${index}` : purchase.itemId,
  )
  return [...groups.values()]
    .flatMap((group) => shared(group, shelf, kerfMm))
    .map(({ line, purchase }, index) => ({ line, purchase: numbered(purchase, `part-${index + 1}`) }))
}

type FoundLine = { readonly need: MergedNeed; readonly resolved: ResolvedLine }

/** Lines of one item as one line; as they were where they can't be bought together, or cost less from two suppliers. */
function shared(group: readonly FoundLine[], shelf: Shelf, kerfMm: number): readonly ResolvedLine[] {
  const alone = group.map(({ resolved }) => resolved)
  const [first, second] = alone
  const name = first?.purchase?.name
  const itemId = first?.purchase?.itemId
  if (first === undefined || second === undefined || name === undefined || itemId === undefined) return alone
  const needs = group.map(({ need, resolved }) => ({ ...need, why: resolved.line.why }))
  const need = addedUp(first.line.lineKey, needs)
  const bought = purchaseOf(need, { itemId, name }, { lineId: 'shared', kerfMm, shelf })
  if (!bought.ok || bought.value.costPence > costOf(alone)) return alone
  const { quantity, why, swapIds } = need
  const pieces = need.pieces === undefined ? {} : { pieces: need.pieces }
  const line = { ...first.line, quantity, why, swapIds, shared: need.shared, ...pieces }
  const from = [...bought.value.why.from, whyTogether(alone)]
  return [{ line, purchase: { ...bought.value, why: { ...bought.value.why, from } } }]
}

function whyTogether(alone: readonly ResolvedLine[]): Derivation {
  const apart = costOf(alone)
  const says = `Lines of the same item share packs. Bought line by line these ${alone.length} would have cost ${poundsOf(apart)}.`
  return because(says, apart, { unit: 'pence', from: alone.flatMap(({ purchase }) => purchase?.why ?? []) })
}

function costOf(lines: readonly ResolvedLine[]): number {
  return lines.reduce((sum, { purchase }) => sum + (purchase?.costPence ?? 0), 0)
}

/** One-off things go by the id of their line, for they have no other. */
function numbered(purchase: Purchase | null, lineId: string): Purchase | null {
  if (purchase === null) return null
  return purchase.oneOff === true ? { ...purchase, lineId, itemId: lineId } : { ...purchase, lineId }
}
