import type { Database } from 'better-sqlite3'
import type { ListRow } from '../../../domain/price-list.ts'
import type { SupplierPrice } from '../../../domain/price.ts'
import { comingKinds } from '../price-steps.ts'

type Breaks = NonNullable<ListRow['breaks']>

/** What would change at one row. Price breaks are there only where they change. */
export type Change = {
  readonly code: string
  readonly name: string
  readonly wasPence: number | null
  readonly willPence: number | null
  readonly risesBasisPoints?: number
  readonly wasHolds?: number
  readonly willHolds?: number
  readonly itemId?: string
  readonly wasBreaks?: Breaks
  readonly willBreaks?: Breaks
}

type ChangeRow = {
  readonly code: string
  readonly name: string
  readonly was: number | null
  readonly will: number | null
  readonly was_holds: number | null
  readonly will_holds: number | null
  readonly item_id: string | null
  readonly was_breaks: string | null
  readonly will_breaks: string | null
}

export type Report = {
  readonly changed: readonly Change[]
  readonly added: readonly Change[]
  readonly missing: readonly Change[]
}

/** Spells out what was gathered, so many rows of each kind: the biggest rises first, then the biggest falls. */
export function report(db: Database, most: number): Report {
  const rows = (text: string) => db.prepare<[number], ChangeRow>(`${text} limit ?`).all(most).map(changeOf)
  // A price that begins before another that is there already is held against its own past, which is not gathered.
  const coming = `select c.code, c.name, c.was_pence as was, c.pack_pence as will, c.was_holds, c.pack_holds as will_holds, c.item_id,
      case when c.kind = ${comingKinds.earlier} then c.breaks else r.breaks end as was_breaks, c.breaks as will_breaks
    from temp.coming c left join supplier_row r using (row_no) where c.kind`
  return {
    changed: rows(
      `${coming} <> ${comingKinds.fresh} order by will < was, abs(will - was) * 1.0 / max(was, 1) desc, c.code`,
    ),
    added: rows(`${coming} = ${comingKinds.fresh} order by c.row_no`),
    missing: rows(
      `select code, name, pack_pence as was, null as will, pack_holds as was_holds, null as will_holds, item_id,
         null as was_breaks, null as will_breaks
       from supplier_row join temp.missing using (row_no) order by item_id is null, code`,
    ),
  }
}

function changeOf(row: ChangeRow): Change {
  const { code, name, was, will, was_holds, will_holds, item_id } = row
  const sameSize = was_holds === will_holds
  return {
    code,
    name,
    wasPence: was,
    willPence: will,
    ...(sameSize && was !== null && will !== null && was > 0
      ? { risesBasisPoints: Math.round(((will - was) * 10_000) / was) }
      : {}),
    ...(was_holds === null ? {} : { wasHolds: was_holds }),
    ...(will_holds === null ? {} : { willHolds: will_holds }),
    ...(item_id === null ? {} : { itemId: item_id }),
    ...breaksChanged(row),
  }
}

function breaksChanged({
  was,
  was_breaks,
  will_breaks,
}: ChangeRow): Pick<Change, 'wasBreaks' | 'willBreaks'> {
  if (was_breaks === will_breaks) return {}
  const breaksIn = (text: string | null) => (text === null ? [] : (JSON.parse(text) as Breaks))
  const willBreaks = breaksIn(will_breaks)
  return was === null ? { willBreaks } : { wasBreaks: breaksIn(was_breaks), willBreaks }
}

/** A price that would change for an item of the catalogue, as listed and with its group, in the item's unit. */
export type ComingPrice = {
  readonly price: SupplierPrice
  readonly group: string | null
}

type LinkedRow = {
  readonly supplier_id: string
  readonly code: string
  readonly group_key: string | null
  readonly pack_holds: number
  readonly pack_pence: number
  readonly breaks: string | null
  readonly valid_from: string
  readonly item_id: string
  readonly item_holds: number | null
}

/** Prices of linked rows that would hold on a day. */
export function comingPrices(db: Database, day: string): readonly ComingPrice[] {
  const rows = db
    .prepare<[string, string], LinkedRow>(
      `select c.supplier_id, c.code, c.group_key, c.pack_holds, c.pack_pence, c.breaks, c.valid_from, c.item_id,
         case when c.kind = ${comingKinds.newest} then c.item_holds else c.item_holds * c.pack_holds / r.pack_holds end as item_holds
       from temp.coming c join supplier_row r using (row_no)
       where c.item_id is not null and c.kind in (${comingKinds.newest}, ${comingKinds.earlier})
         and c.valid_from <= ? and coalesce(c.valid_to, '9999-12-31') >= ?`,
    )
    .all(day, day)
  return rows.map((row) => ({
    group: row.group_key,
    price: {
      itemId: row.item_id,
      supplierId: row.supplier_id,
      code: row.code,
      packHolds: row.item_holds ?? row.pack_holds,
      packPence: row.pack_pence,
      ...(row.breaks === null
        ? {}
        : { breaks: JSON.parse(row.breaks) as NonNullable<SupplierPrice['breaks']> }),
      validFrom: row.valid_from,
    },
  }))
}
