import type { Catalogue } from '../../domain/catalogue.ts'
import { isWanted } from '../../store/item-search/item-filter.ts'
import { byName, nearestFirst, searchable, soughtIn } from '../../store/item-match.ts'
import { lowestPence } from '../../store/prices-in-force.ts'
import { usualMost } from '../../store/search.ts'
import type { FoundItems, Search } from '../../store/search.ts'

/** A search of a catalogue in memory, by the rules of the data file's own search. */
export function searchCatalogue(catalogue: Catalogue, search: Omit<Search, 'day'>): FoundItems {
  const { text, most = usualMost, from = 0 } = search
  const codes = new Map<string, string[]>()
  for (const { itemId, code } of catalogue.prices) codes.set(itemId, [...(codes.get(itemId) ?? []), code])
  const favourites = new Set(catalogue.favourites ?? [])
  const items = catalogue.items.filter((item) => isWanted(item, search, favourites))
  const searched = items.map((item) => searchable(item, codes.get(item.itemId) ?? []))
  const ids = text.trim() === '' ? byName(searched) : matching(searched, text)
  const byId = new Map(items.map((item) => [item.itemId, item]))
  const lowest = lowestPence(catalogue.prices)
  const shown = ids.slice(from, from + most).flatMap((itemId) => {
    const item = byId.get(itemId)
    const mark = favourites.has(itemId) ? { favourite: true } : {}
    return item === undefined ? [] : [{ item, fromPence: lowest.get(itemId) ?? null, ...mark }]
  })
  return { items: shown, found: ids.length }
}

function matching(searched: Parameters<typeof nearestFirst>[0], text: string): readonly string[] {
  const sought = soughtIn(text)
  return sought.length === 0 ? [] : nearestFirst(searched, sought)
}
