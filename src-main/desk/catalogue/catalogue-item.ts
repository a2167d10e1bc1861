import type { AnswerOf } from '../../contract/requests.ts'
import { figure } from '../../domain/figures.ts'
import type { Item } from '../../domain/item.ts'
import { accept } from '../../domain/outcome.ts'
import type { Supplier, SupplierPrice } from '../../domain/price.ts'
import { stalePrice } from '../../engine/buying/stale-price.ts'
import { favouritesAmong } from '../../store/favourites.ts'
import { isOwnItem, readItem } from '../../store/items.ts'
import { priceHistory, readPrices } from '../../store/prices.ts'
import { reading } from '../../store/store.ts'
import type { Store } from '../../store/store.ts'
import { readSuppliers } from '../../store/suppliers.ts'
import { bundledCatalogue } from '../bundled-catalogue.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { noSuchItem } from './no-such-item.ts'
import { usedBy } from './used-by.ts'

type Answer = AnswerOf<'catalogue.item'>
type Asked = Answer['prices'][number]
type Suppliers = ReadonlyMap<string, Supplier>

/** Of the jobs saved last, so many are worked up to see whether they buy a part. */
const mostJobs = 50

export const catalogueItem: UseCase<'catalogue.item'> = async ({ itemId }, desk) => {
  const { item, prices, suppliers, more } = await find(itemId, desk)
  if (item === null) return noSuchItem(itemId)
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const limitDays = figure(figures.value, 'prices.staleAfterDays')
  const asked = prices.flatMap((price) => {
    const supplier = suppliers.get(price.supplierId)
    return supplier === undefined
      ? []
      : [{ supplier, price, ...ageOf({ ...price, supplierName: supplier.name }, desk.today, limitDays) }]
  })
  const using = desk.store === null ? [] : await usedBy(item, desk, mostJobs)
  return accept({ item, prices: asked.toSorted(lowestFirst), ...more, usedBy: using })
}

type Named = SupplierPrice & { readonly supplierName: string }

function ageOf(price: Named, today: string, limitDays: number): Partial<Asked> {
  const says = stalePrice(price, today, limitDays)
  return says === null ? {} : { stale: true, staleSays: says }
}

function lowestFirst(a: Asked, b: Asked): number {
  const order = [a.price.packPence - b.price.packPence, compare(a.supplier.supplierId, b.supplier.supplierId)]
  return order.find((difference) => difference !== 0) ?? compare(a.price.code, b.price.code)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

type Found = {
  readonly item: Item | null
  readonly prices: readonly SupplierPrice[]
  readonly suppliers: Suppliers
  readonly more: Pick<Answer, 'favourite' | 'own' | 'history'>
}

const byId = (suppliers: readonly Supplier[]): Suppliers =>
  new Map(suppliers.map((supplier) => [supplier.supplierId, supplier]))

async function find(itemId: string, desk: Desk): Promise<Found> {
  if (desk.store !== null) return findInStore(itemId, desk.store, desk.today)
  return findShipped(itemId, desk)
}

async function findShipped(itemId: string, desk: Desk): Promise<Found> {
  const { items, prices, suppliers } = await catalogueOf(desk)
  const ofItem = (some: readonly SupplierPrice[]) => some.filter((price) => price.itemId === itemId)
  const everPriced = (await bundledCatalogue()).prices
  const named = byId(suppliers)
  return {
    item: items.find((one) => one.itemId === itemId) ?? null,
    prices: ofItem(prices),
    suppliers: named,
    more: { favourite: false, own: false, history: historyOf(ofItem(everPriced), named) },
  }
}

function findInStore(itemId: string, store: Store, today: string): Promise<Found> {
  return reading(store, async (tx) => {
    const suppliers = byId(await readSuppliers(tx))
    const favourites = await favouritesAmong(tx, [itemId])
    return {
      item: await readItem(tx, itemId),
      prices: await readPrices(tx, today, [itemId]),
      suppliers,
      more: {
        favourite: favourites.has(itemId),
        own: await isOwnItem(tx, itemId),
        history: historyOf(await priceHistory(tx, itemId), suppliers),
      },
    }
  })
}

/** By supplier and code, each from the oldest price to the newest. */
function historyOf(prices: readonly SupplierPrice[], suppliers: Suppliers): Answer['history'] {
  const byCode = Map.groupBy(prices, ({ supplierId, code }) => JSON.stringify([supplierId, code]))
  return [...byCode.values()]
    .flatMap((some) => {
      const [first] = some
      if (first === undefined) return []
      const { supplierId, code } = first
      const supplierName = suppliers.get(supplierId)?.name ?? supplierId
      const oldestFirst = some.toSorted((a, b) => compare(a.validFrom, b.validFrom))
      return [{ supplierId, supplierName, code, prices: oldestFirst.map(netPrice) }]
    })
    .toSorted((a, b) => compare(a.supplierName, b.supplierName) || compare(a.code, b.code))
}

function netPrice({ packHolds, packPence, validFrom, validTo }: SupplierPrice) {
  return { packHolds, packPence, validFrom, ...(validTo === undefined ? {} : { validTo }) }
}
