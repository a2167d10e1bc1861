import type { Item } from '../domain/item.ts'
import { favouritesAmong } from './favourites.ts'
import type { ItemFilter } from './item-search/item-filter.ts'
import { allOf, whichItems } from './item-search/item-filter.ts'
import { nearestFirst, soughtIn } from './item-match.ts'
import { readItems } from './items.ts'
import { lowestPence } from './prices-in-force.ts'
import { readPrices } from './prices.ts'
import { candidates } from './sqlite/item-index.ts'
import type { ReadTx } from './tables.ts'

export type Search = ItemFilter & {
  readonly text: string
  readonly most?: number | undefined
  /** How many of the nearest to pass over. */
  readonly from?: number | undefined
  /** The day whose prices are shown. */
  readonly day: string
}
export type FoundItems = {
  readonly items: readonly {
    readonly item: Item
    readonly fromPence: number | null
    readonly favourite?: boolean
  }[]
  readonly found: number
}

/** How many items a search gives when nobody says. */
export const usualMost = 50

/** Items that hold every word of the text, the nearest first; every item by name when there is no text. */
export async function searchItems(tx: ReadTx, search: Search): Promise<FoundItems> {
  const { text, most = usualMost, from = 0, day } = search
  const { ids, found } =
    text.trim() === '' ? await someIds(tx, search, { most, from }) : await matchingIds(tx, search)
  const shown = text.trim() === '' ? ids : ids.slice(from, from + most)
  const byId = new Map((await readItems(tx, shown)).map((item) => [item.itemId, item]))
  const lowest = lowestPence(await readPrices(tx, day, shown))
  const favourites = await favouritesAmong(tx, shown)
  const items = shown.flatMap((itemId) => {
    const item = byId.get(itemId)
    const mark = favourites.has(itemId) ? { favourite: true } : {}
    return item === undefined ? [] : [{ item, fromPence: lowest.get(itemId) ?? null, ...mark }]
  })
  return { items, found }
}

type Ids = { readonly ids: readonly string[]; readonly found: number }

async function matchingIds(tx: ReadTx, search: Search): Promise<Ids> {
  const sought = soughtIn(search.text)
  if (sought.length === 0) return { ids: [], found: 0 }
  const { items, found } = await candidates(tx, sought, allOf(whichItems(search)))
  return { ids: nearestFirst(items, sought), found }
}

async function someIds(
  tx: ReadTx,
  filter: ItemFilter,
  { most, from }: { readonly most: number; readonly from: number },
): Promise<Ids> {
  const items = tx.selectFrom('item').where(allOf(whichItems(filter)))
  const rows = await items
    .select('item_id')
    .orderBy('sort_name')
    .orderBy('item_id')
    .limit(most)
    .offset(from)
    .execute()
  const counted = await items.select((eb) => eb.fn.countAll<number>().as('found')).executeTakeFirstOrThrow()
  return { ids: rows.map(({ item_id }) => item_id), found: counted.found }
}
