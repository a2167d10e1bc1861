import type { Database } from 'better-sqlite3'

/** A row as `coming` takes it. */
export type Staged = {
  readonly code: string
  readonly name: string
  readonly gtin: string | null
  readonly packHolds: number
  readonly packPence: number
  readonly breaks: string | null
  readonly group: string | null
  readonly validFrom: string
  readonly validTo: string | null
  readonly itemId: string | null
  readonly itemHolds: number | null
  /** For the search; null when they are as they were. */
  readonly words: string | null
  /** The price that holds until then, and what its pack holds. */
  readonly wasPence: number | null
  readonly wasHolds: number | null
}

/** Which row of the list it is, what it is there, and the hash of its cells. */
export type Place = { readonly rowNo: number; readonly kind: number; readonly rawHash: number | null }

export type Stage = {
  readonly put: (place: Place, row: Staged) => void
  /** Puts in what still waits to be put in with others. */
  readonly end: () => void
}

const columns = 18
/** Starting a statement costs as much as ten columns, so rows go in together. */
const together = 20

/** Fills `coming`, several rows with one statement. */
export function stageFor(db: Database, supplierId: string): Stage {
  const one = `(${Array.from({ length: columns }, () => '?').join(', ')})`
  const statement = (rows: number) =>
    db.prepare(`insert into temp.coming values ${Array.from({ length: rows }, () => one).join()}`)
  const full = statement(together)
  let waiting: unknown[] = []
  return {
    put: ({ rowNo, kind, rawHash }, row) => {
      waiting.push(rowNo, kind, supplierId, row.code, row.name, row.gtin, row.packHolds, row.packPence)
      waiting.push(row.breaks, row.group, row.validFrom, row.validTo, row.itemId, row.itemHolds)
      waiting.push(rawHash, row.words, row.wasPence, row.wasHolds)
      if (waiting.length < columns * together) return
      full.run(waiting)
      waiting = []
    },
    end: () => {
      if (waiting.length > 0) statement(waiting.length / columns).run(waiting)
      waiting = []
    },
  }
}
