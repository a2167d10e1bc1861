import type { Emitter, Item, Part } from './item.ts'
import type { Supplier, SupplierPrice } from './price.ts'

/** Everything that can be bought, as it stands on one day: plain lists, so that it crosses to the window whole. */
export type Catalogue = {
  readonly items: readonly Item[]
  readonly suppliers: readonly Supplier[]
  readonly prices: readonly SupplierPrice[]
  /** Items that the firm would rather have, by id, wherever they are what is needed. */
  readonly favourites?: readonly string[]
}

export function isEmitter(item: Item): item is Emitter {
  return item.kind === 'emitter'
}

export function isPart(item: Item): item is Part {
  return item.kind !== 'emitter'
}
