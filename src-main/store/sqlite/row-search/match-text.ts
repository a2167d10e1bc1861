import type { Database } from 'better-sqlite3'
import type { Sought } from '../../item-match.ts'

/** More words than these that begin as typed, and all rows that have one of them are looked up at once. */
const mostCompletions = 24
/** So many words are remembered with what they are replaced by. */
const mostKept = 500
/** Beginnings of so many letters have an index of their own. */
const indexedLetters = 3

/** What the index is asked for whole words. */
export function wholeText(sought: readonly Sought[]): string {
  return sought.map(({ word }) => `"${word}"`).join(' AND ')
}

/**
 * What the index is asked for words that begin as typed, in a way whose answers come one after another, so that the first few
 * hundred cost little however many there are: the index gives the rows of a whole word or of two or three letters so, but would
 * gather all rows of a longer beginning first. A longer one is therefore replaced by the words that begin so, and a single letter by its pairs. What a word is replaced by is kept, since
 * it is asked for again with every letter that is typed after it: make it anew when the rows have changed.
 */
export function matchTexts(db: Database): (sought: readonly Sought[]) => string {
  db.exec(
    `create virtual table if not exists temp.row_word using fts5vocab('main', 'row_search', 'instance')`,
  )
  const next = db
    .prepare<[string, string], string>('select term from temp.row_word where term >= ? and term < ? limit 1')
    .pluck()
  const after = (from: string, end: string) => next.get(from, end) ?? null
  const kept = new Map<string, string>()
  const begun = (word: string): string => {
    const text = kept.get(word) ?? begunText(word, after)
    if (kept.size >= mostKept) kept.clear()
    kept.set(word, text)
    return text
  }
  return (sought) => sought.map(({ word, whole }) => (whole ? `"${word}"` : begun(word))).join(' AND ')
}

type Next = (from: string, end: string) => string | null

function begunText(word: string, after: Next): string {
  const length = Array.from(word).length
  if (length > 1 && length <= indexedLetters) return `"${word}" *`
  const begun = length === 1 ? pairs(word, after) : completions(word, after)
  if (begun === null) return `"${word}" *`
  return `(${[`"${word}"`, ...begun].join(' OR ')})`
}

/** Every word that begins so; null when there are too many. */
function completions(word: string, after: Next): readonly string[] | null {
  const found: string[] = []
  const end = endOf(word)
  for (let term = after(word, end); term !== null; term = after(`${term}\u0001`, end)) {
    if (term !== word) found.push(`"${term}"`)
    if (found.length > mostCompletions) return null
  }
  return found
}

/** Every pair of letters that a word begins with. */
function pairs(letter: string, after: Next): readonly string[] {
  const found: string[] = []
  const end = endOf(letter)
  for (let term = after(letter, end); term !== null;) {
    const pair = Array.from(term).slice(0, 2).join('')
    if (pair !== letter) found.push(`"${pair}" *`)
    term = after(pair === letter ? `${letter}\u0001` : endOf(pair), end)
  }
  return found
}

/** The first text after all that begin with this. */
function endOf(start: string): string {
  const signs = Array.from(start)
  const last = signs.pop() ?? ''
  return `${signs.join('')}${String.fromCodePoint((last.codePointAt(0) ?? 0) + 1)}`
}
