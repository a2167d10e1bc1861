import { isEmitter, isPart } from '../../domain/catalogue.ts'
import type { Catalogue } from '../../domain/catalogue.ts'
import type { Emitter, ItemKind, Part } from '../../domain/item.ts'
import type { Fill } from '../../domain/job.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Supplier, SupplierPrice } from '../../domain/price.ts'
import type { Purchase } from '../../domain/quote.ts'

/** A gap filled by hand: with an item of the catalogue, if it is there, or with a thing by name and price. */
export type ByHand =
  | { readonly kind: 'item'; readonly itemId: string; readonly item: Part | null }
  | { readonly kind: 'oneOff'; readonly name: string; readonly netCostPence: number }

/** The catalogue laid out for looking up: by id, by kind, each item's prices, and what was chosen by hand or is preferred. */
export type Shelf = {
  readonly emitters: ReadonlyMap<string, Emitter>
  readonly parts: ReadonlyMap<ItemKind, readonly Part[]>
  readonly prices: ReadonlyMap<string, readonly SupplierPrice[]>
  readonly suppliers: ReadonlyMap<string, Supplier>
  /** Items that the firm would rather have. */
  readonly favourites?: ReadonlySet<string>
  /** By the key of the line that would be a gap. */
  readonly byHand?: ReadonlyMap<string, ByHand>
  /** What buying came to before: the same item in the same quantity always comes to the same. */
  readonly bought?: Map<string, Outcome<Purchase>>
}

/**
 * Lays a catalogue out for looking up. Retired items stay off the shelf, apart from emitters that a job already names and
 * parts that were chosen by hand.
 * @param catalogue items, suppliers, the prices in force and the firm's preferred items
 * @param fills the job's gaps that were filled by hand
 * @source practice, no published source
 * @example shelfOf({ items: [{ itemId: 'v', kind: 'vent', retired: true }], prices: [], suppliers: [] }).parts.size // => 0
 */
export function shelfOf(catalogue: Catalogue, fills: readonly Fill[] = []): Shelf {
  const parts = catalogue.items.filter(isPart)
  const inUse = parts.filter((part) => part.retired !== true)
  const { favourites } = catalogue
  return {
    emitters: new Map(catalogue.items.filter(isEmitter).map((emitter) => [emitter.itemId, emitter])),
    parts: Map.groupBy(inUse, (part) => part.kind),
    prices: Map.groupBy(catalogue.prices, (price) => price.itemId),
    suppliers: new Map(catalogue.suppliers.map((supplier) => [supplier.supplierId, supplier])),
    ...(favourites === undefined ? {} : { favourites: new Set(favourites) }),
    ...(fills.length === 0 ? {} : { byHand: new Map(fills.map((fill) => handed(fill, parts))) }),
  }
}

function handed(fill: Fill, parts: readonly Part[]): readonly [string, ByHand] {
  if (!('itemId' in fill)) {
    return [fill.gapKey, { kind: 'oneOff', name: fill.name, netCostPence: fill.netCostPence }]
  }
  const { gapKey, itemId } = fill
  return [gapKey, { kind: 'item', itemId, item: parts.find((part) => part.itemId === itemId) ?? null }]
}
