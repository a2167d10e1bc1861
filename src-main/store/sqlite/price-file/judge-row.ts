import type { Database } from 'better-sqlite3'
import type { ListRow } from '../../../domain/price-list.ts'
import { rowWords } from '../../price-list/row-words.ts'
import { comingKinds } from '../price-steps.ts'
import type { Staged } from './stage.ts'

type Listed = {
  readonly name: string
  readonly gtin: string | null
  readonly group_key: string | null
  readonly valid_from: string
  readonly item_id: string | null
  readonly item_holds: number | null
  readonly gone_from: string | null
} & Priced

type Priced = {
  readonly pack_holds: number
  readonly pack_pence: number
  readonly breaks: string | null
  readonly valid_to: string | null
}

/** What a row of the file would do to the row of the list that has its code; null when nothing. */
export type Judged = { readonly kind: number; readonly row: Staged }

/** Holds rows of a file against the list as it is. */
export function rowJudge(db: Database, { validFrom }: { readonly validFrom: string }) {
  const listed = db.prepare<[number], Listed>(
    `select name, gtin, group_key, valid_from, item_id, item_holds, gone_from, pack_holds, pack_pence, breaks, valid_to
     from supplier_row where row_no = ?`,
  )
  const past = db.prepare<[number, string], Priced>(
    `select pack_holds, pack_pence, breaks, valid_to from past_price where row_no = ? and valid_from <= ?
     order by valid_from desc limit 1`,
  )
  return (rowNo: number, row: ListRow): Judged | null => {
    const there = listed.get(rowNo)
    if (there === undefined) throw new Error(`Row ${rowNo} of the list went while the file was read`)
    const from = row.validFrom ?? validFrom
    const isNewest = there.valid_from <= from
    const inForce = isNewest ? there : past.get(rowNo, from)
    const breaks = row.breaks === undefined ? null : JSON.stringify(row.breaks)
    const samePrice =
      inForce !== undefined &&
      inForce.pack_pence === row.packPence &&
      inForce.pack_holds === row.packHolds &&
      inForce.breaks === breaks &&
      endsAlike(inForce.valid_to, row.validTo, { from, isNewest })
    const sameWords =
      there.name === row.name && there.gtin === (row.gtin ?? null) && there.group_key === (row.group ?? null)
    if (samePrice && sameWords && there.gone_from === null) return null
    const priced = isNewest ? comingKinds.newest : comingKinds.earlier
    const was = { wasPence: inForce?.pack_pence ?? null, wasHolds: inForce?.pack_holds ?? null }
    const kind = samePrice ? comingKinds.words : priced
    return { kind, row: { ...stagedOver(there, row, kind), ...was, breaks, validFrom: from } }
  }
}

/** A price that gives way to a later one ends with it, whatever the file says of its end. */
function endsAlike(
  ends: string | null,
  wanted: string | undefined,
  { from, isNewest }: { readonly from: string; readonly isNewest: boolean },
): boolean {
  if (ends !== null && ends < from) return false
  return !isNewest || ends === (wanted ?? null)
}

function stagedOver(
  there: Listed,
  row: ListRow,
  kind: number,
): Omit<Staged, 'breaks' | 'validFrom' | 'wasPence' | 'wasHolds'> {
  const renamed = there.name !== row.name || there.gtin !== (row.gtin ?? null)
  const grows = kind === comingKinds.newest && there.pack_holds !== row.packHolds
  const itemHolds =
    there.item_holds !== null && grows
      ? (there.item_holds * row.packHolds) / there.pack_holds
      : there.item_holds
  return {
    code: row.code,
    name: row.name,
    gtin: row.gtin ?? null,
    packHolds: row.packHolds,
    packPence: row.packPence,
    group: row.group ?? null,
    validTo: row.validTo ?? null,
    itemId: there.item_id,
    itemHolds,
    words: renamed ? rowWords(row) : null,
  }
}
