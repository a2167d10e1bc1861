import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Unit } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { PipePiece } from '../../domain/take-off.ts'
import { coverPacks } from '../buying/cover-packs.ts'
import { cutPipe } from '../buying/cut-pipe.ts'
import type { Shelf } from './shelf.ts'

/** What is to be bought of one item. */
export type ToBuy = {
  readonly lineId: string
  readonly itemId: string
  readonly name: string
  readonly unit: Unit
  readonly need: number
  readonly pieces?: readonly PipePiece[]
  readonly kerfMm: number
}

/**
 * The cheapest way to buy one item from one supplier, in whole packs. Carriage is not counted here.
 * Refuses, as a gap, an item that nobody asks a price for, and a quantity that no supplier's packs or lengths can meet.
 * @param wanted the item, the quantity in its unit, and for pipe the pieces to cut
 * @param shelf the catalogue with the prices in force
 * @source practice, no published source
 * @example cheapestPurchase({ itemId: 'a', need: 7, unit: 'each' }, { suppliers: new Map(), prices: new Map([['a', [{ supplierId: 's', code: '1', packHolds: 5, packPence: 100 }]]]) }).value.costPence // => 200
 */
export function cheapestPurchase(wanted: ToBuy, shelf: Shelf): Outcome<Purchase> {
  const offers = Map.groupBy(shelf.prices.get(wanted.itemId) ?? [], (price) => price.supplierId)
  const tried = [...offers].map(([supplierId, prices]) => ({ supplierId, bought: buy(wanted, prices) }))
  const best = tried
    .flatMap(({ supplierId, bought }) => (bought.ok ? [{ ...bought.value, supplierId }] : []))
    .toSorted((a, b) => a.costPence - b.costPence || (a.supplierId < b.supplierId ? -1 : 1))[0]
  if (best === undefined) {
    const refused = tried.map(({ bought }) => bought).find((bought) => !bought.ok)
    return refused ?? refuse('gap', `Nobody asks a price today for ${wanted.name}.`)
  }
  const { lineId, itemId, name, unit, need, pieces } = wanted
  const supplierName = shelf.suppliers.get(best.supplierId)?.name ?? best.supplierId
  const purchase = { lineId, itemId, name, unit, need, ...best, supplierName }
  return accept(pieces === undefined ? purchase : { ...purchase, pieces })
}

type Bought = Pick<Purchase, 'packs' | 'leftover' | 'costPence' | 'why'>

function buy(wanted: ToBuy, prices: readonly SupplierPrice[]): Outcome<Bought> {
  const counts = wanted.pieces === undefined ? packCounts(wanted.need, prices) : barCounts(wanted, prices)
  if (!counts.ok) return counts
  const packs = counts.value.flatMap(({ index, count }) => {
    const price = prices[index]
    return price === undefined || count === 0
      ? []
      : [{ code: price.code, holds: price.packHolds, count, packPence: pricedAt(price, count) }]
  })
  const costPence = packs.reduce((sum, pack) => sum + pack.count * pack.packPence, 0)
  const bought = packs.reduce((sum, pack) => sum + pack.count * pack.holds, 0)
  const leftover = roundTo(bought - wanted.need)
  return accept({ packs, leftover, costPence, why: whyBought(wanted, packs, { costPence, leftover }) })
}

/** A price by the number of packs, where the supplier gives breaks. */
function pricedAt(price: SupplierPrice, count: number): number {
  const reached = (price.breaks ?? []).filter((step) => step.fromPacks <= count).map((step) => step.packPence)
  return Math.min(price.packPence, ...reached)
}

type Count = { readonly index: number; readonly count: number }

function packCounts(need: number, prices: readonly SupplierPrice[]): Outcome<readonly Count[]> {
  const packs = prices.map((price, index) => ({
    id: `p${index}`,
    holds: price.packHolds,
    pence: price.packPence,
  }))
  const covered = coverPacks({ need, packs })
  if (!covered.ok) return covered
  return accept(covered.value.picks.map(({ id, count }) => ({ index: Number(id.slice(1)), count })))
}

function barCounts(wanted: ToBuy, prices: readonly SupplierPrice[]): Outcome<readonly Count[]> {
  const stock = prices.map((price, index) => ({
    id: `p${index}`,
    lengthMm: Math.round(price.packHolds * 1000),
    pence: price.packPence,
  }))
  const pieces = (wanted.pieces ?? []).map((piece, index) => ({ ...piece, id: `${index + 1}` }))
  const cut = cutPipe({ pieces, stock, kerfMm: wanted.kerfMm })
  if (!cut.ok) return cut
  const byStock = Map.groupBy(cut.value.bars, (bar) => bar.stockId)
  return accept(
    [...byStock].map(([stockId, bars]) => ({ index: Number(stockId.slice(1)), count: bars.length })),
  )
}

function whyBought(
  wanted: ToBuy,
  packs: Purchase['packs'],
  { costPence, leftover }: { readonly costPence: number; readonly leftover: number },
): Derivation {
  const from = packs.map((pack) =>
    because(
      `${pack.count} ${pack.count === 1 ? 'pack' : 'packs'} of ${pack.holds}${unitWords[wanted.unit]}, each ${poundsOf(pack.packPence)}, code ${pack.code}.`,
      pack.count * pack.packPence,
      {
        unit: 'pence',
      },
    ),
  )
  return because('Whole packs, the cheapest that cover the need.', costPence, {
    unit: 'pence',
    from: [
      given('Needed', roundTo(wanted.need), wanted.unit),
      ...from,
      given('Left over', leftover, wanted.unit),
    ],
  })
}

const unitWords: Readonly<Record<Unit, string>> = { each: '', m: ' m', m2: ' m²', ml: ' ml', L: ' L' }

function poundsOf(pence: number): string {
  return `£${Math.floor(pence / 100)}.${String(pence % 100).padStart(2, '0')}`
}

function roundTo(value: number): number {
  return Math.round(value * 1e6) / 1e6
}
