import type { Outcome } from '../../../domain/outcome.ts'
import type { SupplierPrice } from '../../../domain/price.ts'
import type { Bar, Purchase } from '../../../domain/quote.ts'
import { mixedWays, wayAlone } from '../../buying/split/mixed-ways.ts'
import type { Way, WayAlone } from '../../buying/split/mixed-ways.ts'
import type { SplitAnswer } from '../../buying/split/supplier-split-answer.ts'
import { boughtTogether } from '../../buying/split/supplier-split-offers.ts'
import type { OfferedLine } from '../../buying/split/supplier-split-offers.ts'
import { coverWithBreaks } from '../../buying/split/supplier-split-packs.ts'
import { inMillionths, stepsInUnit } from '../../buying/whole-units.ts'
import { cheapestPurchase, packOffered, poundsOf } from '../purchase.ts'
import type { Shelf } from '../shelf.ts'
import type { AfterVanBuying } from './after-van.ts'

type Buying = { readonly shelf: Shelf; readonly kerfMm: number }
/** Lines ready for a split, and how pipe is cut from each supplier's lengths: by line and supplier. */
export type ToSplit = {
  readonly lines: readonly OfferedLine[]
  readonly bars: ReadonlyMap<string, readonly Bar[]>
}

/**
 * A job's purchases as lines to be split over suppliers: what the van gives, and what the rest comes to from each supplier, or from two
 * together. Pipe is bought from one supplier, by the lengths that its cut list needs. A one-off thing is a gap in the split, for no
 * supplier here has it.
 *
 * @param purchases what the job buys
 * @param van what the van gives of it and what is left to buy
 * @param buying the prices in force and the saw cut in mm
 * @source practice, no published source
 * @example linesToSplit([{ lineId: 'a', itemId: 'clip', unit: 'each', need: 5 }], { fromVan: [{ lineId: 'a', quantity: 5 }], purchases: [] }, { kerfMm: 2, shelf: { prices: new Map() } }).lines[0].fromVan // => 5
 */
export function linesToSplit(
  purchases: readonly Purchase[],
  van: AfterVanBuying,
  { shelf, kerfMm }: Buying,
): ToSplit {
  const given = new Map(van.fromVan.map(({ lineId, quantity }) => [lineId, quantity]))
  const rest = new Map(van.purchases.map((purchase) => [purchase.lineId, purchase]))
  const bars = new Map<string, readonly Bar[]>()
  const lineFor = ({ lineId, itemId, name, unit, need }: Purchase) => {
    const toBuy = rest.get(lineId)?.need ?? 0
    return { lineId, itemId, name, unit, need, fromVan: given.get(lineId) ?? 0, toBuy }
  }
  const isLoose = ({ lineId, pieces, oneOff }: Purchase) =>
    rest.has(lineId) && pieces === undefined && oneOff !== true
  const others = purchases.filter((purchase) => !isLoose(purchase))
  const lines = others.map((purchase): OfferedLine => {
    const left = rest.get(purchase.lineId)
    const line = lineFor(purchase)
    if (left === undefined) return { ...line, from: [] }
    if (left.oneOff === true) return { ...line, from: [], gap: elsewhere(left) }
    return { ...line, from: cutWays(left, { shelf, kerfMm }, bars) }
  })
  const loose = Map.groupBy(purchases.filter(isLoose).map(lineFor), ({ itemId }) => itemId)
  const together = [...loose].flatMap(([itemId, group]) => {
    const toBuy = group.reduce((sum, one) => sum + inMillionths(one.toBuy), 0) / stepsInUnit
    return boughtTogether(group, looseWays(itemId, toBuy, shelf), toBuy)
  })
  return { lines: [...lines, ...together], bars }
}

function elsewhere({ name, costPence }: Purchase): string {
  return `${name} is bought elsewhere, by hand, for ${poundsOf(costPence)}. It is in none of the sums here.`
}

/** Pipe from each supplier whose lengths can meet the cut list; the others drop out. */
function cutWays(purchase: Purchase, buying: Buying, bars: Map<string, readonly Bar[]>): readonly Way[] {
  return bySupplier(purchase.itemId, buying.shelf).flatMap(([supplierId, asked]) => {
    const cut = cutFrom(purchase, asked, buying)
    if (!cut.ok) return []
    const { packs, costPence, leftover, why } = cut.value
    bars.set(barsKey(purchase.lineId, supplierId), cut.value.bars ?? [])
    return [{ supplierId, packs, pence: costPence, leftover, why }]
  })
}

/** An item from each supplier whose packs can meet the need, and from two together where that is cheaper. */
function looseWays(itemId: string, need: number, shelf: Shelf): readonly Way[] {
  const alone = bySupplier(itemId, shelf).flatMap(([supplierId, asked]): readonly WayAlone[] => {
    const offered = asked.map(packOffered)
    const bought = coverWithBreaks(need, offered)
    return bought.ok ? [{ ...bought.value, supplierId, offered }] : []
  })
  return [...alone.map(wayAlone), ...mixedWays(need, alone)]
}

function bySupplier(itemId: string, shelf: Shelf): readonly [string, readonly SupplierPrice[]][] {
  return [...Map.groupBy(shelf.prices.get(itemId) ?? [], ({ supplierId }) => supplierId)]
}

function barsKey(lineId: string, supplierId: string): string {
  return `${lineId} ${supplierId}`
}

function cutFrom(
  { lineId, itemId, name, unit, need, pieces }: Purchase,
  prices: readonly SupplierPrice[],
  { shelf, kerfMm }: Buying,
): Outcome<Purchase> {
  const wanted = { lineId, itemId, name, unit, need, kerfMm, ...(pieces === undefined ? {} : { pieces }) }
  return cheapestPurchase(wanted, { ...shelf, prices: new Map([[itemId, prices]]) })
}

/**
 * The purchases that a split stands for, in the order of the list: each order's lines from its supplier, and what is bought elsewhere.
 * Of a line bought from two suppliers each gets a purchase for its own share of the need.
 *
 * @param split orders with their lines
 * @param rest what was to be bought, by line
 * @param bars how pipe is cut, as `linesToSplit` gives it
 * @source practice, no published source
 * @example purchasesOfSplit({ orders: [] }, [{ lineId: 'a', oneOff: true }], new Map()).length // => 1
 */
export function purchasesOfSplit(
  split: Pick<SplitAnswer, 'orders'>,
  rest: readonly Purchase[],
  bars: ToSplit['bars'],
): readonly Purchase[] {
  const asked = new Map(rest.map((purchase) => [purchase.lineId, purchase]))
  const bought = split.orders.flatMap(({ supplierId, name, lines }) =>
    lines.flatMap(({ lineId, packs, leftover, pence }) => {
      const purchase = asked.get(lineId)
      if (purchase === undefined) return []
      const held = packs.reduce((sum, pack) => sum + pack.count * inMillionths(pack.holds), 0)
      const need = (held - inMillionths(leftover)) / stepsInUnit
      const cut = bars.get(barsKey(lineId, supplierId))
      const from = { supplierId, supplierName: name, packs: packs.toSorted((a, b) => b.holds - a.holds) }
      const { bars: _, ...plain } = purchase
      const taken = { ...plain, ...from, need, leftover, costPence: pence }
      return [cut === undefined ? taken : { ...taken, bars: cut }]
    }),
  )
  const places = new Map(rest.map(({ lineId }, place) => [lineId, place]))
  const placeOf = ({ lineId }: Purchase) => places.get(lineId) ?? rest.length
  return [...bought, ...rest.filter(({ oneOff }) => oneOff === true)].toSorted(
    (a, b) => placeOf(a) - placeOf(b),
  )
}
