import type { SupplierPrice } from '../domain/price.ts'

/**
 * The prices that hold on a day: begun, not ended, and of those for the same pack under the same code the last begun.
 */
export function pricesInForce(prices: readonly SupplierPrice[], day: string): readonly SupplierPrice[] {
  const latest = new Map<string, SupplierPrice>()
  for (const price of prices) {
    if (price.validFrom > day || (price.validTo !== undefined && price.validTo < day)) continue
    const pack = packOf(price)
    const other = latest.get(pack)
    if (other === undefined || other.validFrom < price.validFrom) latest.set(pack, price)
  }
  return [...latest.values()]
}

/** The lowest that one pack of each item costs, by item. */
export function lowestPence(prices: readonly SupplierPrice[]): ReadonlyMap<string, number> {
  const lowest = new Map<string, number>()
  for (const { itemId, packPence } of prices) {
    lowest.set(itemId, Math.min(packPence, lowest.get(itemId) ?? packPence))
  }
  return lowest
}

/** Ids and figures have no spaces, so what comes after the third is the code. */
function packOf({ itemId, supplierId, code, packHolds }: SupplierPrice): string {
  return `${itemId} ${supplierId} ${packHolds} ${code}`
}
