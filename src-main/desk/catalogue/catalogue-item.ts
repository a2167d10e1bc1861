import type { Item } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Supplier, SupplierPrice } from '../../domain/price.ts'
import { readItem } from '../../store/items.ts'
import { readPrices } from '../../store/prices.ts'
import { reading } from '../../store/store.ts'
import { readSuppliers } from '../../store/suppliers.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'

type Found = {
  readonly item: Item | null
  readonly prices: readonly SupplierPrice[]
  readonly suppliers: readonly Supplier[]
}

type Asked = { readonly supplier: Supplier; readonly price: SupplierPrice }

export const catalogueItem: UseCase<'catalogue.item'> = async ({ itemId }, desk) => {
  const { item, prices, suppliers } = await find(itemId, desk)
  if (item === null) return refuse('not-found', `There is no item ${itemId} in the catalogue.`, 'itemId')
  const byId = new Map(suppliers.map((supplier) => [supplier.supplierId, supplier]))
  const asked = prices.flatMap((price) => {
    const supplier = byId.get(price.supplierId)
    return supplier === undefined ? [] : [{ supplier, price }]
  })
  return accept({ item, prices: asked.toSorted(lowestFirst) })
}

function lowestFirst(a: Asked, b: Asked): number {
  const order = [a.price.packPence - b.price.packPence, compare(a.supplier.supplierId, b.supplier.supplierId)]
  return order.find((difference) => difference !== 0) ?? compare(a.price.code, b.price.code)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

async function find(itemId: string, desk: Desk): Promise<Found> {
  if (desk.store !== null) {
    return reading(desk.store, async (tx) => ({
      item: await readItem(tx, itemId),
      prices: await readPrices(tx, desk.today, [itemId]),
      suppliers: await readSuppliers(tx),
    }))
  }
  const { items, prices, suppliers } = await catalogueOf(desk)
  const item = items.find((one) => one.itemId === itemId) ?? null
  return { item, prices: prices.filter((price) => price.itemId === itemId), suppliers }
}
