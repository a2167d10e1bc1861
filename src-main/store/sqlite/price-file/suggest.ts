import type { Database } from 'better-sqlite3'
import { wordsIn } from '../../item-match.ts'

export type Suggestion = {
  readonly code: string
  readonly name: string
  readonly itemId: string
  readonly itemName: string
  readonly because: string
}

type Unlinked = { readonly code: string; readonly name: string; readonly gtin: string | null }
type Worded = { readonly itemId: string; readonly name: string; readonly words: readonly string[] }

/** How many rows are held against the catalogue's names, and how many words a name needs to be told by them. */
const mostTried = 20_000
const fewestWords = 3
/** A code shorter than this is two suppliers' by chance. */
const tellingCode = 6

type Known = {
  readonly byId: ReadonlyMap<string, Worded>
  readonly byRarest: ReadonlyMap<string, readonly Worded[]>
  /** Items by the item numbers and codes of the rows that are linked to them. */
  readonly byGtin: ReadonlyMap<string, string>
  readonly byCode: ReadonlyMap<string, string>
}

/** Rows that look like an item of the catalogue: the same item number or code as a linked row, or the item's whole name. */
export function suggestLinks(db: Database, most: number): readonly Suggestion[] {
  const known = knownItems(db)
  const rows = db.prepare<[number], Unlinked>(
    'select code, name, gtin from temp.coming where item_id is null order by row_no limit ?',
  )
  const suggestions: Suggestion[] = []
  for (const { code, name, gtin } of rows.iterate(mostTried)) {
    const found = suggestion({ code, name, gtin }, known)
    if (found === null) continue
    const { item, because } = found
    suggestions.push({ code, name, itemId: item.itemId, itemName: item.name, because })
    if (suggestions.length >= most) break
  }
  return suggestions
}

function knownItems(db: Database): Known {
  const items = db
    .prepare<[], { item_id: string; name: string }>('select item_id, name from item where retired = 0')
    .all()
    .map(({ item_id, name }) => ({ itemId: item_id, name, words: [...new Set(wordsIn(name))] }))
  const linked = db
    .prepare<[], { item_id: string; code: string; gtin: string | null }>(
      'select item_id, code, gtin from supplier_row where item_id is not null order by row_no desc',
    )
    .all()
  return {
    byId: new Map(items.map((item) => [item.itemId, item])),
    byRarest: byRarestWord(items),
    byGtin: new Map(linked.flatMap(({ gtin, item_id }) => (gtin === null ? [] : [[gtin, item_id]]))),
    byCode: new Map(
      linked.flatMap(({ code, item_id }) => (code.length < tellingCode ? [] : [[code, item_id]])),
    ),
  }
}

function suggestion(
  { code, name, gtin }: Unlinked,
  { byId, byRarest, byGtin, byCode }: Known,
): { readonly item: Worded; readonly because: string } | null {
  const sameGtin = byId.get(byGtin.get(gtin ?? '') ?? '')
  if (sameGtin !== undefined)
    return { item: sameGtin, because: `It has the item number ${gtin} of a row that is this item.` }
  const sameCode = byId.get(byCode.get(code) ?? '')
  if (sameCode !== undefined)
    return { item: sameCode, because: `It has the code ${code} of a row that is this item.` }
  const named = itemNamedIn(name, byRarest)
  return named === null
    ? null
    : { item: named, because: `Its description has every word of “${named.name}”.` }
}

/** Each item under the word of its name that the fewest others have. */
function byRarestWord(items: readonly Worded[]): ReadonlyMap<string, readonly Worded[]> {
  const uses = new Map<string, number>()
  for (const { words } of items) for (const word of words) uses.set(word, (uses.get(word) ?? 0) + 1)
  const telling = items.filter(({ words }) => words.length >= fewestWords)
  return Map.groupBy(
    telling,
    ({ words }) => words.toSorted((a, b) => (uses.get(a) ?? 0) - (uses.get(b) ?? 0))[0] ?? '',
  )
}

/** The item whose every word is in the text; the longest name counts, and two of that length are no answer. */
function itemNamedIn(text: string, byRarest: ReadonlyMap<string, readonly Worded[]>): Worded | null {
  const words = new Set(wordsIn(text))
  const named = [...words].flatMap((word) =>
    (byRarest.get(word) ?? []).filter((item) => item.words.every((one) => words.has(one))),
  )
  const longest = Math.max(0, ...named.map((item) => item.words.length))
  const best = named.filter((item) => item.words.length === longest)
  return best.length === 1 ? (best[0] ?? null) : null
}
