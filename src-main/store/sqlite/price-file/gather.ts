import type { Database } from 'better-sqlite3'
import type { ChangeCounts, ListRow, RejectedRow } from '../../../domain/price-list.ts'
import { rowWords } from '../../price-list/row-words.ts'
import { comingKinds, gatheringTables } from '../price-steps.ts'
import { codeTable } from './code-table.ts'
import type { CodeTable } from './code-table.ts'
import { rowJudge } from './judge-row.ts'
import { stageFor } from './stage.ts'
import type { Staged } from './stage.ts'
import { closeLanes, hashNumber, mixText, startLanes } from './text-hash.ts'

export type Gathering = {
  readonly supplierId: string
  /** The day from which prices hold that carry no day of their own. */
  readonly validFrom: string
  /** Which cell of a raw row holds the code; null when rows can't be known by their cells. */
  readonly codeAt: number | null
  /** How the file is read, as text: rows count as the same only when read the same way. */
  readonly readingKey: string
  /** True when rows that the file has not are not missing. */
  readonly part: boolean
  /** How many rejected and duplicated rows to spell out. */
  readonly most: number
}

export type Duplicated = { readonly code: string; readonly rowNos: readonly number[]; readonly says: string }

export type Gathered = {
  readonly counts: ChangeCounts
  readonly rejected: readonly RejectedRow[]
  readonly duplicated: readonly Duplicated[]
}

/** What hears a file's rows, and what they came to once the file is at its end. */
export type Gatherer = {
  readonly raw: (rowNo: number, cells: readonly string[]) => 'skip' | 'read'
  readonly row: (rowNo: number, row: ListRow) => void
  readonly rejected: (row: RejectedRow) => void
  readonly end: () => Gathered
}

/**
 * Gathers what a file would change in a supplier's list, in temporary tables only. Rows whose cells are those that the list
 * was last filled from are known by their hash and passed over before anyone looks into them.
 */
export function gather(db: Database, gathering: Gathering): Gatherer {
  for (const text of gatheringTables) db.exec(text)
  const table = listedCodes(db, gathering)
  const judge = rowJudge(db, gathering)
  const stage = stageFor(db, gathering.supplierId)
  const tally = tallyOf(gathering.most)
  const seed = seedOf(gathering.readingKey)
  let nextRowNo = lastRowNo(db)
  let rawHash: number | null = null
  const order = inListOrder(table)

  return {
    raw: (rowNo, cells) => {
      if (gathering.codeAt === null) return 'read'
      rawHash = rawHashOf(cells, seed)
      if (order.takesNext(rawHash, rowNo)) {
        tally.counts.unchanged += 1
        return 'skip'
      }
      const code = (cells[gathering.codeAt] ?? '').trim()
      const place = table.find(code)
      if (place < 0) return 'read'
      order.goesOnFrom(place)
      table.meetAt(place)
      const first = table.fileRowAt(place)
      if (first > 0) {
        tally.duplicate(code, first, rowNo)
        return 'skip'
      }
      if (table.rawHashAt(place) !== rawHash) return 'read'
      table.takeAt(place, rowNo)
      tally.counts.unchanged += 1
      return 'skip'
    },
    row: (rowNo, row) => {
      const place = table.find(row.code)
      if (place < 0) {
        nextRowNo += 1
        table.takeAt(table.add(row.code, nextRowNo, 0), rowNo)
        stage.put({ kind: comingKinds.fresh, rowNo: nextRowNo, rawHash }, stagedNew(row, gathering.validFrom))
        tally.counts.new += 1
        return
      }
      const first = table.fileRowAt(place)
      if (first > 0) return tally.duplicate(row.code, first, rowNo)
      table.takeAt(place, rowNo)
      const judged = judge(table.rowNoAt(place), row)
      tally.counts[judged === null ? 'unchanged' : 'changed'] += 1
      if (judged !== null) stage.put({ kind: judged.kind, rowNo: table.rowNoAt(place), rawHash }, judged.row)
    },
    rejected: tally.reject,
    end: () => {
      stage.end()
      tally.counts.missing = gathering.part ? 0 : putMissing(db, table)
      return { counts: tally.counts, rejected: tally.rejected, duplicated: tally.duplicated }
    },
  }
}

/** A list mostly keeps its order, so the row after the last is tried before its code is looked up. */
function inListOrder(table: CodeTable) {
  let next = 0
  return {
    takesNext: (rawHash: number, fileRow: number): boolean => {
      if (!table.awaits(next, rawHash)) return false
      table.takeAt(next, fileRow)
      next += 1
      return true
    },
    goesOnFrom: (place: number) => {
      next = place + 1
    },
  }
}

function stagedNew(row: ListRow, validFrom: string): Staged {
  return {
    code: row.code,
    name: row.name,
    gtin: row.gtin ?? null,
    packHolds: row.packHolds,
    packPence: row.packPence,
    breaks: row.breaks === undefined ? null : JSON.stringify(row.breaks),
    group: row.group ?? null,
    validFrom: row.validFrom ?? validFrom,
    validTo: row.validTo ?? null,
    itemId: null,
    itemHolds: null,
    words: rowWords(row),
    wasPence: null,
    wasHolds: null,
  }
}

const listedAtOnce = 10_000

/**
 * The codes of the supplier's list, and the hashes of rows that a file may pass over: not of prices that begin only later. They come as lists in JSON, which is four times as quick as row by row.
 */
function listedCodes(db: Database, { supplierId, validFrom }: Gathering): CodeTable {
  const { rows, first, last } = db
    .prepare<[string], { rows: number; first: number | null; last: number | null }>(
      'select count(*) as rows, min(row_no) as first, max(row_no) as last from supplier_row where supplier_id = ?',
    )
    .get(supplierId) ?? { rows: 0, first: null, last: null }
  const table = codeTable(rows)
  const some = db.prepare<[string, string, number, number], { nos: string; codes: string; hashes: string }>(
    `select json_group_array(row_no) as nos, json_group_array(code) as codes, 
       json_group_array(case when valid_from <= ? and gone_from is null then coalesce(raw_hash, -1) else -1 end) as hashes
     from supplier_row not indexed where supplier_id = ? and row_no between ? and ?`,
  )
  for (let from = first ?? 1; from <= (last ?? 0); from += listedAtOnce) {
    const lists = some.get(validFrom, supplierId, from, from + listedAtOnce - 1)
    if (lists === undefined) continue
    const nos = JSON.parse(lists.nos) as readonly number[]
    const codes = JSON.parse(lists.codes) as readonly string[]
    const hashes = JSON.parse(lists.hashes) as readonly number[]
    for (let at = 0; at < nos.length; at += 1) {
      table.add(codes[at] ?? '', nos[at] ?? 0, hashes[at] ?? -1)
    }
  }
  return table
}

function lastRowNo(db: Database): number {
  const row = db
    .prepare<[], { last: number | null }>(
      'select max(last) as last from (select max(row_no) as last from supplier_row union all select max(row_no) from row_before)',
    )
    .get()
  return row?.last ?? 0
}

function seedOf(text: string): number {
  const lanes = startLanes(0)
  mixText(lanes, text)
  closeLanes(lanes)
  return lanes.a
}

function rawHashOf(cells: readonly string[], seed: number): number {
  const lanes = startLanes(seed)
  for (const cell of cells) mixText(lanes, cell)
  closeLanes(lanes)
  return hashNumber(lanes)
}

function putMissing(db: Database, table: CodeTable): number {
  const isGone = db.prepare<[number], { gone: number }>(
    'select gone_from is not null as gone from supplier_row where row_no = ?',
  )
  const put = db.prepare('insert into temp.missing values (?)')
  let missing = 0
  for (const rowNo of table.unmet()) {
    if (isGone.get(rowNo)?.gone !== 0) continue
    put.run(rowNo)
    missing += 1
  }
  return missing
}

function tallyOf(most: number) {
  const counts = { new: 0, changed: 0, unchanged: 0, missing: 0, rejected: 0, duplicated: 0 }
  const rejected: RejectedRow[] = []
  const duplicated: (Duplicated & { rowNos: number[] })[] = []
  return {
    counts,
    rejected,
    duplicated,
    reject: (row: RejectedRow) => {
      counts.rejected += 1
      if (rejected.length < most) rejected.push(row)
    },
    duplicate: (code: string, first: number, rowNo: number) => {
      counts.duplicated += 1
      const known = duplicated.find((one) => one.code === code)
      if (known !== undefined) known.rowNos.push(rowNo)
      else if (duplicated.length < most) {
        const says = `${code} is in row ${first} and again in row ${rowNo}: row ${first} counts.`
        duplicated.push({ code, rowNos: [first, rowNo], says })
      }
    },
  }
}
