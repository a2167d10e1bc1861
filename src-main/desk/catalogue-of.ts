import type { Catalogue } from '../domain/catalogue.ts'
import type { Item } from '../domain/item.ts'
import { readCatalogue } from '../store/catalogue.ts'
import { readItems } from '../store/items.ts'
import { pricesInForce } from '../store/prices-in-force.ts'
import { reading } from '../store/store.ts'
import { bundledCatalogue } from './bundled-catalogue.ts'
import type { Desk } from './desk.ts'

/** The firm's catalogue with the prices of a day (today when absent); the shipped one when no data folder is open. */
export async function catalogueOf(desk: Desk, day = desk.today): Promise<Catalogue> {
  if (desk.store !== null) return reading(desk.store, (tx) => readCatalogue(tx, day))
  const shipped = await bundledCatalogue()
  return { ...shipped, prices: pricesInForce(shipped.prices, day) }
}

/** The items of these ids that there are, without reading the rest. */
export async function itemsOf(desk: Desk, itemIds: readonly string[]): Promise<readonly Item[]> {
  if (desk.store !== null) return reading(desk.store, (tx) => readItems(tx, itemIds))
  const wanted = new Set(itemIds)
  return (await bundledCatalogue()).items.filter(({ itemId }) => wanted.has(itemId))
}
