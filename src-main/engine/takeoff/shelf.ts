import { isEmitter, isPart } from '../../domain/catalogue.ts'
import type { Catalogue } from '../../domain/catalogue.ts'
import type { Emitter, ItemKind, Part } from '../../domain/item.ts'
import type { Supplier, SupplierPrice } from '../../domain/price.ts'

/** The catalogue laid out for looking up: by id, by kind, and each item's prices. */
export type Shelf = {
  readonly emitters: ReadonlyMap<string, Emitter>
  readonly parts: ReadonlyMap<ItemKind, readonly Part[]>
  readonly prices: ReadonlyMap<string, readonly SupplierPrice[]>
  readonly suppliers: ReadonlyMap<string, Supplier>
}

/**
 * Lays a catalogue out for looking up. Retired items stay off the shelf, apart from emitters that a job already names.
 * @param catalogue items, suppliers and the prices in force
 * @source practice, no published source
 * @example shelfOf({ items: [{ itemId: 'v', kind: 'vent', retired: true }], prices: [], suppliers: [] }).parts.size // => 0
 */
export function shelfOf(catalogue: Catalogue): Shelf {
  const inUse = catalogue.items.filter(isPart).filter((part) => part.retired !== true)
  return {
    emitters: new Map(catalogue.items.filter(isEmitter).map((emitter) => [emitter.itemId, emitter])),
    parts: Map.groupBy(inUse, (part) => part.kind),
    prices: Map.groupBy(catalogue.prices, (price) => price.itemId),
    suppliers: new Map(catalogue.suppliers.map((supplier) => [supplier.supplierId, supplier])),
  }
}
