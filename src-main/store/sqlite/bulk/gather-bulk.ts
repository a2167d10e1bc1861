import type { Database } from 'better-sqlite3'
import { chosenQuery } from '../../price-list/chosen-rows.ts'
import type { WhichRows } from '../../price-list/chosen-rows.ts'
import { comingKinds, gatheringTables } from '../price-steps.ts'
import { builderOver } from '../query-builder.ts'

export type Bulk = {
  readonly which: WhichRows
  /** The day from which the changed prices hold. */
  readonly day: string
  /** What a price becomes; null when it would be past all sense. */
  readonly priceOf: (packPence: number) => number | null
}

/** A row whose price, or one of its breaks, can't be changed so. */
export type Unchangeable = {
  readonly code: string
  readonly packPence: number
  readonly breaks: string | null
}

export type BulkGathered = {
  readonly changed: number
  readonly unchanged: number
  /** The first of the rows that can't be changed; null when all can. */
  readonly unchangeable: Unchangeable | null
}

const past = -1

/** Gathers every row that a bulk change would change, with its price after it, in one statement and temporary tables only. */
export function gatherBulk(db: Database, { which, day, priceOf }: Bulk): BulkGathered {
  for (const text of gatheringTables) db.exec(text)
  db.function('bulk_pence', { deterministic: true }, (pence: unknown) => priceOf(Number(pence)) ?? past)
  db.function('bulk_breaks', { deterministic: true }, (breaks: unknown) =>
    typeof breaks === 'string' ? breaksAfter(breaks, priceOf) : null,
  )
  const { sql, parameters } = chosenQuery(builderOver(db), which, day).compile()
  const inForce = `from (${sql}) where valid_from <= ? and coalesce(valid_to, '9999-12-31') >= ?`
  const bound = [...parameters, day, day]
  const count = `select count(*) ${inForce}`
  const rows = db.prepare<unknown[], number>(count).pluck().get(bound) ?? 0
  const { changes } = db
    .prepare(
      `with priced as materialized (select *, bulk_pence(pack_pence) as will_pence, bulk_breaks(breaks) as will_breaks ${inForce})
       insert into temp.coming
       select row_no, case when newest_from <= ? then ${comingKinds.newest} else ${comingKinds.earlier} end, supplier_id, code, name,
         gtin, pack_holds, case when will_breaks = '' then ${past} else will_pence end, coalesce(nullif(will_breaks, ''), breaks),
         group_key, ?, null, item_id, item_holds, null, null, pack_pence, pack_holds
       from priced where will_pence <> pack_pence or will_breaks is not breaks`,
    )
    .run([...bound, day, day])
  return { changed: changes, unchanged: rows - changes, unchangeable: firstUnchangeable(db) }
}

/** Price breaks after the change, as text: the same text where none changes, and an empty one where one can't. */
function breaksAfter(text: string, priceOf: Bulk['priceOf']): string {
  const breaks = JSON.parse(text) as readonly { readonly fromPacks: number; readonly packPence: number }[]
  const after = breaks.map((one) => ({ ...one, packPence: priceOf(one.packPence) }))
  if (after.some(({ packPence }) => packPence === null)) return ''
  return after.every(({ packPence }, at) => packPence === breaks[at]?.packPence)
    ? text
    : JSON.stringify(after)
}

function firstUnchangeable(db: Database): Unchangeable | null {
  const row = db
    .prepare<[], Unchangeable>(
      `select code, was_pence as packPence, breaks from temp.coming where pack_pence = ${past} order by supplier_id, code limit 1`,
    )
    .get()
  return row ?? null
}

/** One row that was gathered, with its price before and after. */
export type BulkChanged = {
  readonly code: string
  readonly name: string
  readonly wasPence: number
  readonly willPence: number
  readonly itemId: string | null
}

/** The biggest rises first, then the biggest falls, so many of each; `riseOf` says how much a price rises, a fall below 0. */
export function bulkChanges(
  db: Database,
  riseOf: (wasPence: number, willPence: number) => number,
  most: number,
): readonly BulkChanged[] {
  db.function('bulk_rise', { deterministic: true }, (was: unknown, will: unknown) =>
    riseOf(Number(was), Number(will)),
  )
  const rows = (where: string, order: string) =>
    db
      .prepare<[number], BulkChanged>(
        `select code, name, was_pence as wasPence, pack_pence as willPence, item_id as itemId
         from (select *, bulk_rise(was_pence, pack_pence) as rise from temp.coming)
         where ${where} order by ${order}, code limit ?`,
      )
      .all(most)
  return [...rows('rise >= 0', 'rise desc'), ...rows('rise < 0', 'rise')]
}
