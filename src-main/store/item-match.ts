import type { Item } from '../domain/item.ts'

/** An item as a search sees it: the words of its name, and of its codes and other names. */
export type Searchable = {
  readonly itemId: string
  readonly sortName: string
  readonly nameWords: readonly string[]
  readonly otherWords: readonly string[]
}

/** A word looked for: `whole` when only that word will do, otherwise any word that begins with it. */
export type Sought = { readonly word: string; readonly whole: boolean }

/**
 * Text as words: lower case, accents and apostrophes gone, figures apart from letters, so that `15mm` is `15 mm` and
 * `600x1200` is `600 × 1200`. A fraction or decimal is one word.
 */
export function wordsIn(text: string): readonly string[] {
  const plain = text
    .normalize('NFKD')
    .replaceAll('⁄', '/')
    .replaceAll('×', 'x')
    .replace(/[\p{M}'’]/gu, '')
  return plain.toLowerCase().match(/\p{N}+(?:[./]\p{N}+)*|\p{L}+/gu) ?? []
}

/** What a person looks for. A number is whole once something follows it; all else may be the start of a word. */
export function soughtIn(text: string): readonly Sought[] {
  const words = wordsIn(text)
  return words.map((word, at) => ({ word, whole: at < words.length - 1 && /^\p{N}/u.test(word) }))
}

/** An item with the codes it is sold under, ready to be searched. */
export function searchable(item: Item, codes: readonly string[]): Searchable {
  return {
    itemId: item.itemId,
    sortName: sortName(item.name),
    nameWords: wordsIn(item.name),
    otherWords: [...(item.alsoCalled ?? []), item.itemId, ...new Set(codes)].flatMap(wordsIn),
  }
}

/** A name by which items sort as people expect: 8 mm before 15 mm. */
export function sortName(name: string): string {
  return wordsIn(name)
    .map((word) =>
      /^\p{N}/u.test(word)
        ? word.padStart(8 + word.length - (/^\p{N}+/u.exec(word)?.[0].length ?? 0), '0')
        : word,
    )
    .join(' ')
}

/** The items that hold every word sought, the nearest first. */
export function nearestFirst(items: readonly Searchable[], sought: readonly Sought[]): readonly string[] {
  return items
    .flatMap((item) => {
      const far = distance(item, sought)
      return far === null ? [] : [{ item, far }]
    })
    .toSorted((a, b) => a.far - b.far || inOrder(a.item, b.item))
    .map(({ item }) => item.itemId)
}

/** Every item, by name. */
export function byName(items: readonly Searchable[]): readonly string[] {
  return items.toSorted(inOrder).map(({ itemId }) => itemId)
}

function inOrder(a: Searchable, b: Searchable): number {
  return compare(a.sortName, b.sortName) || compare(a.itemId, b.itemId)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

/**
 * How far an item is from what is sought; null when a word is missing. A whole word of the name is nearest, then the
 * start of one or a whole code, then the start of a code; words side by side as typed, and short names, come first.
 */
function distance({ nameWords, otherWords }: Searchable, sought: readonly Sought[]): number | null {
  let far = Math.min(nameWords.length, 29)
  for (const { word, whole } of sought) {
    if (nameWords.includes(word)) continue
    if (otherWords.includes(word)) far += 100
    else if (whole) return null
    else if (nameWords.some((name) => name.startsWith(word))) far += 100
    else if (otherWords.some((other) => other.startsWith(word))) far += 300
    else return null
  }
  return far - 30 * pairsSideBySide(nameWords, sought)
}

function pairsSideBySide(nameWords: readonly string[], sought: readonly Sought[]): number {
  return sought.filter(({ word }, at) => {
    const next = sought[at + 1]?.word
    return (
      next !== undefined && nameWords.some((name, i) => name === word && nameWords[i + 1]?.startsWith(next))
    )
  }).length
}
