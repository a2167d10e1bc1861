import type { Database } from 'better-sqlite3'
import type { ChangeCounts, FileReading } from '../../../domain/price-list.ts'
import { keepSteps, takeSteps } from '../price-steps.ts'
import type { Step } from '../price-steps.ts'

export type Taking = {
  readonly supplierId: string
  readonly says: string
  readonly at: string
  /** The day from which rows that the file has not count as gone. */
  readonly goneFrom: string
  readonly fileHash: string
  readonly fileKey: string
  /** How the file was read. */
  readonly reading: FileReading
  /** The day on which it confirms what it has; null for a file that is only a part of the list. */
  readonly listedOn: string | null
  readonly counts: ChangeCounts
  readonly links: readonly {
    readonly code: string
    readonly itemId: string
    readonly itemHolds?: number | undefined
  }[]
}

/**
 * Takes what was gathered into the list, inside the caller's transaction, and gives the change's number. `goesOn` hears the share
 * that is done; when it says no, the answer is null and the caller rolls back.
 */
export function take(db: Database, taking: Taking, goesOn: (doneRatio: number) => boolean): number | null {
  const { supplierId, says, at, fileHash, fileKey, counts } = taking
  const changeNo = Number(
    db
      .prepare(
        `insert into price_change (kind, supplier_id, says, at, counts, file_hash, file_key, reading_before)
         values ('file', ?, ?, ?, ?, ?, ?, (select body from file_reading where supplier_id = ?))`,
      )
      .run(supplierId, says.slice(0, 200), at, JSON.stringify(counts), fileHash, fileKey, supplierId)
      .lastInsertRowid,
  )
  const steps = takeSteps(changeNo, taking.goneFrom, counts.changed + counts.missing === 0)
  for (const [at, step] of steps.entries()) {
    if (!goesOn(at / steps.length)) return null
    run(db, step)
  }
  for (const link of taking.links) putLink(db, changeNo, { ...link, supplierId })
  keepReading(db, taking)
  return changeNo
}

/** Keeps how a supplier's file was read and what day it confirms; a part of a list leaves that day as it was. */
export function keepReading(
  db: Database,
  { supplierId, reading, listedOn }: Pick<Taking, 'supplierId' | 'reading' | 'listedOn'>,
): void {
  const kept = db
    .prepare<[string], string | null>(`select body ->> 'listedOn' from file_reading where supplier_id = ?`)
    .pluck()
    .get(supplierId)
  const day = listedOn ?? kept ?? undefined
  db.prepare(
    `insert into file_reading (supplier_id, body) values (?, ?)
     on conflict (supplier_id) do update set body = excluded.body where body <> excluded.body`,
  ).run(supplierId, JSON.stringify({ reading, listedOn: day }))
}

function run(db: Database, { text, bound }: Step): void {
  db.prepare(text).run(...bound)
}

type CodeLink = Taking['links'][number] & { readonly supplierId: string }

function putLink(db: Database, changeNo: number, link: CodeLink): void {
  const row = db
    .prepare<[string, string], { row_no: number; change_no: number | null }>(
      'select row_no, change_no from supplier_row where supplier_id = ? and code = ?',
    )
    .get(link.supplierId, link.code)
  if (row === undefined) return
  if (row.change_no !== changeNo) {
    for (const step of keepSteps(changeNo, `select ${row.row_no}`)) run(db, step)
  }
  db.prepare('update supplier_row set item_id = ?, item_holds = ?, change_no = ? where row_no = ?').run(
    link.itemId,
    link.itemHolds ?? null,
    changeNo,
    row.row_no,
  )
}
