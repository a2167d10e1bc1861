import type { Database } from 'better-sqlite3'
import { nearestFirst, soughtIn, wordsIn } from '../../item-match.ts'
import type { Searchable, Sought } from '../../item-match.ts'
import { partedText } from '../../price-list/row-words.ts'
import { priceState } from '../price-file/price-file-work.ts'
import { matchTexts, wholeText } from './match-text.ts'
import { filterOf, orderOf } from './row-filter.ts'
import type { RowFilter, RowSort } from './row-filter.ts'
import { saidOtherwise } from './row-words-said.ts'

export type RowSearch = RowFilter & {
  readonly text: string
  readonly sort: RowSort
  readonly from: number
  readonly most: number
}

/** Numbers of the rows of one window, and how many there are in all. */
export type RowHits = {
  readonly rowNos: readonly number[]
  readonly found: number
  /** True when there are more than were counted. */
  readonly atLeast: boolean
}

type Hits = { readonly rowNos: readonly number[]; readonly atLeast: boolean }

/** So many hits are put in order at first, and so many when a person goes on past those. */
const [fewRanked, mostRanked] = [400, 20_000] as const
const listsKept = 8

/** Searches a connection's rows; lists that were made are kept until the prices change. */
export function rowSearcher(db: Database): (search: RowSearch) => RowHits {
  let hitsOf = textSearcher(db)
  const kept = new Map<string, Hits>()
  let state = ''
  return ({ text, from, most, ...search }) => {
    const now = priceState(db)
    if (now !== state) {
      kept.clear()
      hitsOf = textSearcher(db)
    }
    state = now
    const isDeep = from + most > fewRanked
    const key = JSON.stringify([text, isDeep, search])
    const hits = kept.get(key) ?? (text.trim() === '' ? everyRow(db, search) : hitsOf(text, search, isDeep))
    kept.delete(key)
    kept.set(key, hits)
    for (const oldest of kept.keys()) {
      if (kept.size <= listsKept) break
      kept.delete(oldest)
    }
    const { rowNos, atLeast } = hits
    return { rowNos: rowNos.slice(from, from + most), found: rowNos.length, atLeast }
  }
}

type Search = Omit<RowSearch, 'text' | 'from' | 'most'>

function everyRow(db: Database, search: Search): Hits {
  const { where, bound } = filterOf(search)
  const rowNos = db
    .prepare<unknown[], number>(
      `select r.row_no from supplier_row r where ${where} order by ${orderOf(search.sort)}`,
    )
    .pluck()
    .all(bound)
  return { rowNos, atLeast: false }
}

function textSearcher(db: Database) {
  const asked = matchTexts(db)
  return (text: string, search: Search, isDeep: boolean): Hits => {
    const sought = soughtIn(text)
    if (sought.length === 0) return { rowNos: [], atLeast: false }
    const first = ranked(db, { sought, search, asked, most: fewRanked, text })
    const all =
      isDeep || search.sort !== 'nearest'
        ? ranked(db, { sought, search, asked, most: mostRanked, text })
        : first
    const rowNos = [...new Set([...first.rowNos, ...all.rowNos])]
    return {
      rowNos: search.sort === 'nearest' ? rowNos : inOrder(db, rowNos, search.sort),
      atLeast: all.atLeast,
    }
  }
}

type Ranking = {
  readonly text: string
  readonly sought: readonly Sought[]
  readonly search: Search
  readonly asked: ReturnType<typeof matchTexts>
  readonly most: number
}

/** The code as typed first, then whole words, then beginnings, then the same in the trade's other words. */
function ranked(db: Database, { text, sought, search, asked, most }: Ranking): Hits {
  const found = new Set(rowsOfCode(db, text, search))
  const nearest = nearestIn(db)
  const candidates = candidatesFor(db, search)
  let atLeast = false
  const take = (words: readonly Sought[], match: string) => {
    if (atLeast) return
    const rowNos = candidates(match, most)
    atLeast ||= rowNos.length >= most
    for (const rowNo of nearest(rowNos, words)) found.add(rowNo)
  }
  const whole = wholeText(sought)
  if (!isJustBegun(sought)) take(sought, whole)
  if (!atLeast) {
    const begun = asked(sought)
    if (begun !== whole || isJustBegun(sought)) take(sought, begun)
  }
  for (const words of saidOtherwise(sought.map(({ word }) => word))) {
    if (atLeast) break
    const other = soughtIn(words.join(' '))
    take(other, asked(other))
  }
  return { rowNos: [...found], atLeast }
}

/**
 * True when the last of several words is a single letter or figure as yet. Few rows have that as a word, so looking for all of
 * them first would go through the whole index for what the next letter overtakes; they still come before the rest that is found.
 */
function isJustBegun(sought: readonly Sought[]): boolean {
  const last = sought.at(-1)?.word ?? ''
  return sought.length > 1 && Array.from(last).length === 1
}

function candidatesFor(db: Database, search: Search) {
  const { where, bound, isOpen } = filterOf(search)
  const text = isOpen
    ? 'select rowid from row_search where row_search match ? limit ?'
    : `select r.row_no from row_search s cross join supplier_row r on r.row_no = s.rowid where row_search match ? and ${where} limit ?`
  const found = db.prepare<unknown[], number>(text).pluck()
  return (match: string, most: number) => found.all([match, ...(isOpen ? [] : bound), most])
}

function rowsOfCode(db: Database, text: string, search: Search): readonly number[] {
  const { where, bound } = filterOf(search)
  return db
    .prepare<unknown[], number>(
      `select r.row_no from supplier_row r where r.supplier_id in (select supplier_id from supplier) and r.code = ? and ${where}`,
    )
    .pluck()
    .all([text.trim(), ...bound])
}

type Row = {
  readonly row_no: number
  readonly code: string
  readonly name: string
  readonly gtin: string | null
}

/** Puts rows in order by how near they are to what is sought. A row that is looked at twice is read and taken apart once. */
function nearestIn(db: Database) {
  const read = db
    .prepare<[string], [number, string, string, string | null]>(
      `select row_no, code, name, gtin from json_each(?) as asked cross join supplier_row on row_no = asked.value`,
    )
    .raw()
  const known = new Map<number, Searchable>()
  return (rowNos: readonly number[], sought: readonly Sought[]): readonly number[] => {
    const unknown = rowNos.filter((rowNo) => !known.has(rowNo))
    for (const [row_no, code, name, gtin] of read.all(JSON.stringify(unknown)))
      known.set(row_no, searchableRow({ row_no, code, name, gtin }))
    return nearestFirst(
      rowNos.flatMap((rowNo) => known.get(rowNo) ?? []),
      sought,
    ).map(Number)
  }
}

function searchableRow({ row_no, code, name, gtin }: Row): Searchable {
  const otherWords = quickWords(code)
  return {
    itemId: String(row_no),
    sortName: name,
    nameWords: quickWords(name),
    otherWords: gtin === null ? otherWords : [...otherWords, gtin],
  }
}

/** `wordsIn`, quickly for plain letters. */
function quickWords(text: string): readonly string[] {
  return /^[ -&(-~]*$/.test(text)
    ? (partedText(text)
        .toLowerCase()
        .match(/[a-z0-9./]+/g) ?? [])
    : wordsIn(text)
}

function inOrder(db: Database, rowNos: readonly number[], sort: RowSort): readonly number[] {
  return db
    .prepare<[string], number>(
      `select r.row_no from supplier_row r where r.row_no in (select value from json_each(?)) order by ${orderOf(sort)}`,
    )
    .pluck()
    .all(JSON.stringify(rowNos))
}
