import type { Item } from '../domain/item.ts'
import type { TakeOffKind } from '../domain/take-off.ts'
import { nearestFirst, soughtIn } from './item-match.ts'
import { readItems } from './items.ts'
import { lowestPence } from './prices-in-force.ts'
import { readPrices } from './prices.ts'
import { candidates } from './sqlite/item-index.ts'
import type { ReadTx } from './tables.ts'

export type Search = {
  readonly text: string
  readonly kind?: TakeOffKind | undefined
  readonly most?: number | undefined
  /** The day whose prices are shown. */
  readonly day: string
}
export type FoundItems = {
  readonly items: readonly { readonly item: Item; readonly fromPence: number | null }[]
  readonly found: number
}

/** How many items a search gives when nobody says. */
export const usualMost = 50

/** Items that hold every word of the text, the nearest first; every item by name when there is no text. */
export async function searchItems(
  tx: ReadTx,
  { text, kind, most = usualMost, day }: Search,
): Promise<FoundItems> {
  const { ids, found } =
    text.trim() === '' ? await everyId(tx, kind, most) : await matchingIds(tx, text, kind)
  const shown = ids.slice(0, most)
  const byId = new Map((await readItems(tx, shown)).map((item) => [item.itemId, item]))
  const lowest = lowestPence(await readPrices(tx, day, shown))
  const items = shown.flatMap((itemId) => {
    const item = byId.get(itemId)
    return item === undefined ? [] : [{ item, fromPence: lowest.get(itemId) ?? null }]
  })
  return { items, found }
}

type Ids = { readonly ids: readonly string[]; readonly found: number }

async function matchingIds(tx: ReadTx, text: string, kind: TakeOffKind | undefined): Promise<Ids> {
  const sought = soughtIn(text)
  if (sought.length === 0) return { ids: [], found: 0 }
  const { items, found } = await candidates(tx, sought, kind)
  return { ids: nearestFirst(items, sought), found }
}

async function everyId(tx: ReadTx, kind: TakeOffKind | undefined, most: number): Promise<Ids> {
  const items = tx
    .selectFrom('item')
    .where('retired', '=', 0)
    .$if(kind !== undefined, (item) => item.where('kind', '=', kind ?? ''))
  const rows = await items.select('item_id').orderBy('sort_name').orderBy('item_id').limit(most).execute()
  const counted = await items.select((eb) => eb.fn.countAll<number>().as('found')).executeTakeFirstOrThrow()
  return { ids: rows.map(({ item_id }) => item_id), found: counted.found }
}
