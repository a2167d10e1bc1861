import { z } from 'zod'
import type { Catalogue } from '../domain/catalogue.ts'
import { item } from '../domain/item.ts'
import { supplier, supplierPrice } from '../domain/price.ts'
import { wordsEdition } from '../store/item-search/trade-words.ts'

type Shipped = {
  readonly edition: string
  readonly items: readonly unknown[]
  readonly suppliers: readonly unknown[]
  readonly prices: readonly unknown[]
}

let shippedOnce: Promise<Shipped> | undefined
let catalogueOnce: Promise<Catalogue> | undefined

/** The generic catalogue that comes with the program, with every price in it whatever its day. */
export function bundledCatalogue(): Promise<Catalogue> {
  catalogueOnce ??= shipped().then(({ items, suppliers, prices }) => ({
    items: z.array(item).parse(items),
    suppliers: z.array(supplier).parse(suppliers),
    prices: z.array(supplierPrice).parse(prices),
  }))
  return catalogueOnce
}

/** Which edition of the generic catalogue this is, and of the words that it is found by. */
export async function bundledEdition(): Promise<string> {
  return (await shipped()).edition
}

function shipped(): Promise<Shipped> {
  shippedOnce ??= readShipped()
  return shippedOnce
}

async function readShipped(): Promise<Shipped> {
  const [emitters, parts, suppliers, prices] = await Promise.all([
    import('../../resources/catalogue/emitters.json', { with: { type: 'json' } }),
    import('../../resources/catalogue/parts.json', { with: { type: 'json' } }),
    import('../../resources/catalogue/suppliers.json', { with: { type: 'json' } }),
    import('../../resources/catalogue/prices.json', { with: { type: 'json' } }),
  ])
  const editions = [emitters, parts, suppliers, prices].map((file) => file.default.edition)
  return {
    edition: [...[...new Set(editions)].toSorted(), wordsEdition].join('+'),
    items: [...emitters.default.items, ...parts.default.items],
    suppliers: suppliers.default.suppliers,
    prices: prices.default.prices,
  }
}
