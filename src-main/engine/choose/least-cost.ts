import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import { sellingOf, soldFor } from '../quote/selling-price.ts'
import type { JobNeed } from '../takeoff/gather-needs.ts'
import { candidates, resolveNeed } from '../takeoff/resolve.ts'
import type { Shelf } from '../takeoff/shelf.ts'
import { lineKeyOf } from './trial-prices.ts'

/** Less than any quantity that matters: a sum added up in another order must not ask for one more pack. */
const nothingMuch = 1e-9

/** What needs cost at the least, pence with mark-up. */
export type LeastOfNeeds = (needs: readonly JobNeed[]) => number

/**
 * The least that one of an item can cost, pence: the lowest price that anybody asks for a pack, or for as many as reach a price
 * break; where one pack is not enough, breaks are counted as if reached. Null when nobody asks a price.
 * @param prices of one item, as the suppliers ask today
 * @source practice, no published source
 * @example leastPackPence([{ packHolds: 1, packPence: 900 }, { packHolds: 1, packPence: 800 }]) // => 800
 */
export function leastPackPence(
  prices: readonly Pick<SupplierPrice, 'packHolds' | 'packPence' | 'breaks'>[],
): number | null {
  let least: number | null = null
  for (const { packHolds, packPence, breaks } of prices) {
    const many = (fromPacks: number) => (packHolds >= 1 ? fromPacks : 1)
    const broken = (breaks ?? []).map((step) => step.packPence * many(step.fromPacks))
    const pence = broken.reduce((lower, step) => Math.min(lower, step), packPence)
    least = least === null ? pence : Math.min(least, pence)
  }
  return least
}

/**
 * A rule that says what needs cost at the least: each pack at the lowest price that it can come to, so that more of a thing never
 * costs less. Emitters are left out. What was asked once is remembered.
 * @param shelf the catalogue with the prices in force
 * @param figures the firm's figures: pipe.kerfMm, money.markUpPartsBasisPoints
 * @param itemsOf what each need could be met with, where that was looked up before
 * @source practice, no published source
 * @example leastOfNeeds({ parts: new Map(), prices: new Map() }, { settings: { 'pipe.kerfMm': { value: 1 }, 'money.markUpPartsBasisPoints': { value: 0 } } })([{ kind: 'vent', spec: {}, quantity: 1 }]) // => 0
 */
export function leastOfNeeds(shelf: Shelf, figures: Figures, itemsOf = itemsOnce(shelf)): LeastOfNeeds {
  const lowest = withoutBreaks(shelf)
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const known = new Map<string, number>()
  const price = (lineKey: string, group: readonly JobNeed[]): number => {
    const first = group[0]
    if (first === undefined) return 0
    const quantity = group.reduce((sum, need) => sum + need.quantity, 0)
    const pieces = group.flatMap((need) => need.pieces ?? [])
    const cuts = pieces.map((piece) => `${piece.lengthMm}x${piece.count}`).join(' ')
    const asked = `${lineKey}|${quantity}|${cuts}`
    const found = known.get(asked)
    if (found !== undefined) return found
    const merged = { ...first, lineKey, quantity: quantity - nothingMuch * quantity }
    const need = pieces.length === 0 ? merged : { ...merged, pieces }
    const { purchase } = resolveNeed(need, lowest, { lineId: 'least', kerfMm })
    const pence = purchase === null ? 0 : soldPence(purchase.costPence, first.kind, figures)
    known.set(asked, pence)
    return pence
  }
  return (needs) => {
    const wanted = needs.filter((need) => need.kind !== 'emitter')
    const groups = Map.groupBy(wanted, lineKeyOf)
    const lines = [...groups].map(([lineKey, group]) => ({
      items: group[0] === undefined ? [] : itemsOf(group[0]),
      pence: price(lineKey, group),
    }))
    return sumOfLeast(lines)
  }
}

/**
 * A rule that says which items a need could be met with, by id; of one line it is looked up once.
 * @param shelf the catalogue
 * @source practice, no published source
 * @example itemsOnce({ parts: new Map([['vent', [{ itemId: 'v', spec: { thread: 'G1/2' } }]]]) })({ kind: 'vent', spec: { thread: 'G1/2' } }) // => ["v"]
 */
export function itemsOnce(shelf: Pick<Shelf, 'emitters' | 'parts'>): (need: JobNeed) => readonly string[] {
  const known = new Map<string, readonly string[]>()
  return (need) => {
    const lineKey = lineKeyOf(need)
    const items = known.get(lineKey) ?? candidates(need, shelf).map(({ itemId }) => itemId)
    known.set(lineKey, items)
    return items
  }
}

/** As `partLines` charges it: by mark-up or by margin. */
function soldPence(costPence: number, kind: JobNeed['kind'], figures: Figures): number {
  return Number(soldFor(costPence, sellingOf(kind, figures, undefined), []).value)
}

type LeastOfLine = { readonly items: readonly string[]; readonly pence: number }

/** Lines that one item could meet may share its packs, so of those only the dearest is sure to be paid. */
function sumOfLeast(lines: readonly LeastOfLine[]): number {
  const clusterOf = new Map<string, Cluster>()
  let clusters: readonly Cluster[] = []
  for (const { items, pence } of lines) {
    const met = new Set(items.flatMap((itemId) => clusterOf.get(itemId) ?? []))
    const joined = { items: new Set(items), pence }
    for (const one of met) {
      for (const itemId of one.items) joined.items.add(itemId)
      joined.pence = Math.max(joined.pence, one.pence)
    }
    for (const itemId of joined.items) clusterOf.set(itemId, joined)
    clusters = met.size === 0 ? [...clusters, joined] : [...clusters.filter((one) => !met.has(one)), joined]
  }
  return clusters.reduce((sum, { pence }) => sum + pence, 0)
}

type Cluster = { readonly items: Set<string>; pence: number }

/** Every pack of a part at the lowest price that it can come to. */
function withoutBreaks(shelf: Shelf): Shelf {
  const parts = [...shelf.parts.values()].flat()
  const prices = new Map(
    parts.map(({ itemId }) => [itemId, (shelf.prices.get(itemId) ?? []).map((price) => lowered(price))]),
  )
  return { ...shelf, prices }
}

function lowered({ breaks = [], ...price }: SupplierPrice): SupplierPrice {
  return {
    ...price,
    packPence: breaks.reduce((lower, step) => Math.min(lower, step.packPence), price.packPence),
  }
}
