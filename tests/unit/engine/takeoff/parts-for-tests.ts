import { given } from '../../../../src-main/domain/derivation.ts'
import type { Part } from '../../../../src-main/domain/item.ts'
import type { Fill } from '../../../../src-main/domain/job.ts'
import type { SupplierPrice } from '../../../../src-main/domain/price.ts'
import type { MergedNeed } from '../../../../src-main/engine/takeoff/merge-needs.ts'
import { shelfOf } from '../../../../src-main/engine/takeoff/shelf.ts'
import type { Shelf } from '../../../../src-main/engine/takeoff/shelf.ts'

export const tail = (itemId: string, lengthMm: number): Part => ({
  itemId,
  name: `Tail ${lengthMm} mm`,
  generic: false,
  kind: 'tail',
  spec: { thread: 'G1/2', lengthMm },
})

export const pipe: Part = {
  itemId: 'pipe',
  name: 'Copper pipe 15 mm',
  generic: true,
  kind: 'pipe',
  spec: { material: 'copper', outsideMm: 15 },
}

/** What one supplier asks for a pack of an item. */
export const asks = (
  itemId: string,
  packPence: number,
  more: Partial<SupplierPrice> = {},
): SupplierPrice => ({
  itemId,
  supplierId: 'town',
  code: `${itemId}-code`,
  packHolds: 1,
  packPence,
  validFrom: '2026-01-01',
  ...more,
})

export const tailOf = (lengthMm: number, quantity: number, swapId = 'a'): MergedNeed => ({
  lineKey: `tail lengthMm={"atLeast":${lengthMm}}`,
  kind: 'tail',
  spec: { thread: 'G1/2', lengthMm: { atLeast: lengthMm } },
  quantity,
  unit: 'each',
  shared: false,
  swapIds: [swapId],
  why: given(`Tails of ${lengthMm} mm or more.`, quantity, 'each'),
})

export function shelfWith(
  items: readonly Part[],
  prices: readonly SupplierPrice[],
  more: { readonly favourites?: readonly string[]; readonly fills?: readonly Fill[] } = {},
): Shelf {
  const suppliers = [
    { supplierId: 'town', name: 'Town Counter', carriagePence: 500 },
    { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 600 },
  ]
  const { favourites, fills } = more
  return shelfOf({ items, prices, suppliers, ...(favourites === undefined ? {} : { favourites }) }, fills)
}
