import type { Item } from '../domain/item.ts'
import { tradeWords } from './item-search/trade-words.ts'

/** An item as a search sees it: the words of its name, and of its codes and other names. */
export type Searchable = {
  readonly itemId: string
  readonly sortName: string
  readonly nameWords: readonly string[]
  readonly otherWords: readonly string[]
}

/** A word looked for: `whole` when only that word will do, otherwise any word that begins with it. */
export type Sought = { readonly word: string; readonly whole: boolean }

/** Accents and apostrophes; and signs that Unicode counts as letters since 2015, which SQLite's index still takes for accents. */
const unspoken = /[\p{M}'’\u19b0-\u19c0\u19c8\u19c9\u1cf2\u1cf3]/gu

/**
 * Text as words: lower case, accents and apostrophes gone, figures apart from letters, so that `15mm` is `15 mm` and
 * `600x1200` is `600 × 1200`. A fraction or decimal is one word. Letters are those that SQLite's index knows, as it spells them.
 */
export function wordsIn(text: string): readonly string[] {
  const plain = text.normalize('NFKD').replaceAll('⁄', '/').replaceAll('×', 'x').replace(unspoken, '')
  return (
    plain
      .toLowerCase()
      .replaceAll('ς', 'σ')
      .match(/\p{N}+(?:[./]\p{N}+)*|\p{L}+/gu) ?? []
  )
}

/**
 * What a person looks for. A number is whole once something follows it; all else may be the start of a word. `half inch` is
 * 1/2 inch, and a plural finds its singular.
 */
export function soughtIn(text: string): readonly Sought[] {
  const words = inFigures(wordsIn(text)).map(oneOf)
  return words.map((word, at) => ({ word, whole: at < words.length - 1 && /^\p{N}/u.test(word) }))
}

/** Fractions of an inch as they are said. */
const saidInches: readonly (readonly [said: readonly string[], figure: string])[] = [
  [['three', 'quarter'], '3/4'],
  [['three', 'quarters'], '3/4'],
  [['three', 'eighths'], '3/8'],
  [['half'], '1/2'],
  [['quarter'], '1/4'],
  [['eighth'], '1/8'],
]

/** `half inch` as `1/2 inch`: a fraction that is said just before `inch`, `in` or `bsp`. */
function inFigures(words: readonly string[]): readonly string[] {
  const written: string[] = []
  for (let at = 0; at < words.length;) {
    const found = saidInches.find(([said]) => isSaidAt(said, words, at))
    written.push(found?.[1] ?? words[at] ?? '')
    at += found?.[0].length ?? 1
  }
  return written
}

function isSaidAt(said: readonly string[], words: readonly string[], at: number): boolean {
  const after = words[at + said.length] ?? ''
  return said.every((word, i) => words[at + i] === word) && /^(in|inch|inches|bsp)$/.test(after)
}

/** `radiators` as `radiator`, `inches` as `inch`: what is left is the start of both. */
function oneOf(word: string): string {
  if (/\p{L}(ch|sh|x)es$/u.test(word)) return word.slice(0, -2)
  return /^\p{L}{3,}s$/u.test(word) && !word.endsWith('ss') ? word.slice(0, -1) : word
}

/** An item with the codes it is sold under, ready to be searched. */
export function searchable(item: Item, codes: readonly string[]): Searchable {
  return {
    itemId: item.itemId,
    sortName: sortName(item.name),
    nameWords: wordsIn(item.name),
    otherWords: [
      ...new Set(
        [...(item.alsoCalled ?? []), ...tradeWords(item), item.itemId, ...new Set(codes)].flatMap(wordsIn),
      ),
    ],
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
