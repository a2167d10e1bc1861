import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Unit } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { PipePiece } from '../../domain/take-off.ts'
import { coverWithBreaks } from '../buying/split/supplier-split-packs.ts'
import type { OfferedPack } from '../buying/split/supplier-split-packs.ts'
import { buyBars } from './buying/buy-bars.ts'
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
 * The cheapest way to buy one item from one supplier, in whole packs, price breaks counted. Carriage is not counted here.
 * Refuses, as a gap, an item that nobody asks a price for, and a quantity that no supplier's packs or lengths can meet.
 * @param wanted the item, the quantity in its unit, and for pipe the pieces to cut
 * @param shelf the catalogue with the prices in force
 * @source practice, no published source
 * @example cheapestPurchase({ itemId: 'a', need: 7, unit: 'each' }, { suppliers: new Map(), prices: new Map([['a', [{ supplierId: 's', code: '1', packHolds: 5, packPence: 100 }]]]) }).value.costPence // => 200
 */
export function cheapestPurchase(wanted: ToBuy, shelf: Shelf): Outcome<Purchase> {
  const { bought } = shelf
  if (bought === undefined) return purchaseAfresh(wanted, shelf)
  const { itemId, name, unit, need, pieces, kerfMm, lineId } = wanted
  const key = JSON.stringify([itemId, name, unit, need, pieces, kerfMm])
  const known = bought.get(key) ?? purchaseAfresh(wanted, shelf)
  bought.set(key, known)
  return known.ok ? accept({ ...known.value, lineId }) : known
}

function purchaseAfresh(wanted: ToBuy, shelf: Shelf): Outcome<Purchase> {
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

type Bought = Pick<Purchase, 'packs' | 'leftover' | 'costPence' | 'why' | 'bars'>

function buy(wanted: ToBuy, prices: readonly SupplierPrice[]): Outcome<Bought> {
  const offered = prices.map(packOffered)
  const { need, pieces, kerfMm } = wanted
  const taken =
    pieces === undefined ? coverWithBreaks(need, offered) : buyBars({ pieces, kerfMm, stock: offered })
  if (!taken.ok) return taken
  const packs = taken.value.packs.toSorted((a, b) => b.holds - a.holds)
  const costPence = packs.reduce((sum, pack) => sum + pack.count * pack.packPence, 0)
  const bought = packs.reduce((sum, pack) => sum + pack.count * pack.holds, 0)
  const leftover = roundTo(bought - need)
  const why = whyBought(wanted, packs, { costPence, leftover })
  const answer = { packs, leftover, costPence, why }
  return accept('bars' in taken.value ? { ...answer, bars: taken.value.bars } : answer)
}

/**
 * A supplier's price as a pack on offer.
 * @param price what the supplier asks
 * @source practice, no published source
 * @example packOffered({ code: 'A', packHolds: 5, packPence: 100 }).holds // => 5
 */
export function packOffered(
  price: Pick<SupplierPrice, 'code' | 'packHolds' | 'packPence' | 'breaks'>,
): OfferedPack {
  const { code, packHolds, packPence, breaks } = price
  return { code, holds: packHolds, pence: packPence, ...(breaks === undefined ? {} : { breaks }) }
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

/**
 * Pence as pounds in a sentence.
 * @param pence whole, 0 or more
 * @source practice, no published source
 * @example poundsOf(1205) // => "£12.05"
 */
export function poundsOf(pence: number): string {
  return `£${Math.floor(pence / 100)}.${String(pence % 100).padStart(2, '0')}`
}

function roundTo(value: number): number {
  return Math.round(value * 1e6) / 1e6
}
