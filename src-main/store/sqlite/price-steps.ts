/** One statement with what is bound to it. */
export type Step = { readonly text: string; readonly bound: readonly (string | number | null)[] }

/** What a row in `coming` is: new; a price that begins last; one that begins before another; or only other words. */
export const comingKinds = { fresh: 0, newest: 1, earlier: 2, words: 3 } as const

const rowColumns = `supplier_id, code, name, gtin, pack_holds, pack_pence, breaks, group_key, valid_from, valid_to, item_id,
  item_holds, raw_hash, gone_from, change_no, edition`
const pastColumns = 'row_no, valid_from, valid_to, pack_holds, pack_pence, breaks, change_no, edition'

/** Where prices to come are gathered, with what was asked before (`was_`) where that is known, and the rows that a file no longer has. They are this connection's alone. */
export const gatheringTables: readonly string[] = [
  `create temp table if not exists coming (
     row_no integer primary key, kind integer not null, supplier_id text not null, code text not null, name text not null,
     gtin text, pack_holds real not null, pack_pence integer not null, breaks text, group_key text, valid_from text not null,
     valid_to text, item_id text, item_holds real, raw_hash integer, words text, was_pence integer,
     was_holds real)`,
  'create temp table if not exists missing (row_no integer primary key)',
  'delete from temp.coming',
  'delete from temp.missing',
]

export type NewPriceOfRow = {
  readonly rowNo: number
  readonly packPence: number
  readonly breaks: string | null
  readonly validFrom: string
  /** How many the pack holds from then on; as before when absent. */
  readonly packHolds?: number | undefined
  /** The item that the row is from now on; as before when absent. */
  readonly itemId?: string | undefined
}

/** Gathers rows as they are with other prices: what a change made by hand, or of many rows at once, starts from. */
export function gatherPrices(prices: readonly NewPriceOfRow[]): Step {
  const holds = `coalesce(p.value ->> 'packHolds', r.pack_holds)`
  const isNewest = `r.valid_from <= p.value ->> 'validFrom'`
  return {
    text: `insert into temp.coming
      select r.row_no, case when ${isNewest} then ${comingKinds.newest} else ${comingKinds.earlier} end, r.supplier_id, r.code, r.name,
        r.gtin, ${holds}, p.value ->> 'packPence', p.value ->> 'breaks', r.group_key, p.value ->> 'validFrom', null,
        coalesce(p.value ->> 'itemId', r.item_id),
        case when ${isNewest} and ${holds} <> r.pack_holds then r.item_holds * ${holds} / r.pack_holds else r.item_holds end,
        null, null, null, null
      from json_each(?) p cross join supplier_row r on r.row_no = p.value ->> 'rowNo'`,
    bound: [JSON.stringify(prices)],
  }
}

/** Keeps rows and their prices as they are, for undoing a change. `rows` is a query of row numbers. */
export function keepSteps(changeNo: number, rows: string): readonly Step[] {
  return [
    `insert into row_before (by_change, row_no, ${rowColumns})
     select ?, row_no, ${rowColumns} from supplier_row where row_no in (${rows})`,
    `insert into past_before (by_change, ${pastColumns})
     select ?, ${pastColumns} from past_price where row_no in (${rows})`,
  ].map((text) => ({ text, bound: [changeNo] }))
}

/**
 * Takes what was gathered into the list, all of it, keeping the rows as they were for undoing. When all of it is new, what is done to
 * rows that are there is left out.
 */
export function takeSteps(changeNo: number, goneFrom: string, allNew = false): readonly Step[] {
  return allNew ? newRowSteps(changeNo) : [...changedRowSteps(changeNo, goneFrom), ...newRowSteps(changeNo)]
}

function changedRowSteps(changeNo: number, goneFrom: string): readonly Step[] {
  const touched = `select row_no from temp.coming where kind <> ${comingKinds.fresh} union all select row_no from temp.missing`
  return [
    ...keepSteps(changeNo, touched),
    say(
      `insert into past_price (${pastColumns})
       select r.row_no, r.valid_from,
         case when r.valid_to is null or r.valid_to >= c.valid_from then date(c.valid_from, '-1 day') else r.valid_to end,
         r.pack_holds, r.pack_pence, r.breaks, r.change_no, r.edition
       from temp.coming c join supplier_row r using (row_no)
       where c.kind = ${comingKinds.newest} and r.valid_from < c.valid_from`,
    ),
    ...earlierSteps(changeNo).map((text) => say(text)),
    say(
      `update supplier_row as r set
         pack_holds = c.pack_holds, pack_pence = c.pack_pence, breaks = c.breaks, valid_from = c.valid_from, valid_to = c.valid_to,
         item_holds = c.item_holds, edition = null
       from temp.coming c where r.row_no = c.row_no and c.kind = ${comingKinds.newest}`,
    ),
    say(
      `update supplier_row as r set
         name = c.name, gtin = c.gtin, group_key = c.group_key, item_id = c.item_id, item_holds = c.item_holds,
         raw_hash = c.raw_hash, gone_from = null, change_no = ?
       from temp.coming c where r.row_no = c.row_no and c.kind <> ${comingKinds.fresh}`,
      changeNo,
    ),
    say(
      `update supplier_row set gone_from = ?, raw_hash = null, change_no = ? where row_no in (select row_no from temp.missing)`,
      goneFrom,
      changeNo,
    ),
    say(
      `delete from row_search where rowid in (select row_no from temp.coming where kind <> 0 and words is not null)`,
    ),
  ]
}

function newRowSteps(changeNo: number): readonly Step[] {
  return [
    say(
      `insert into supplier_row (row_no, ${rowColumns})
       select row_no, supplier_id, code, name, gtin, pack_holds, pack_pence, breaks, group_key, valid_from, valid_to, item_id,
         item_holds, raw_hash, null, ?, null
       from temp.coming where kind = ${comingKinds.fresh} order by row_no`,
      changeNo,
    ),
    say(
      `insert into row_search (rowid, words) select row_no, words from temp.coming where words is not null order by row_no`,
    ),
  ]
}

function say(text: string, ...bound: readonly (string | number | null)[]): Step {
  return { text, bound }
}

/** A price that ends before another begins: the one before it ends the day before, and it ends before the next. */
function earlierSteps(changeNo: number): readonly string[] {
  const kind = comingKinds.earlier
  const next = `coalesce((select min(p.valid_from) from past_price p where p.row_no = c.row_no and p.valid_from > c.valid_from),
    r.valid_from)`
  return [
    `update past_price as p set valid_to = date(c.valid_from, '-1 day')
     from temp.coming c
     where c.kind = ${kind} and p.row_no = c.row_no and p.valid_from < c.valid_from
       and (p.valid_to is null or p.valid_to >= c.valid_from)`,
    `insert into past_price (${pastColumns})
     select c.row_no, c.valid_from, min(coalesce(c.valid_to, '9999-12-31'), date(${next}, '-1 day')), c.pack_holds, c.pack_pence,
       c.breaks, ${changeNo}, null
     from temp.coming c join supplier_row r using (row_no) where c.kind = ${kind}
     on conflict (row_no, valid_from) do update set
       valid_to = excluded.valid_to, pack_holds = excluded.pack_holds, pack_pence = excluded.pack_pence,
       breaks = excluded.breaks, change_no = excluded.change_no, edition = null`,
  ]
}

/** Puts every row that a change touched back as it was, and forgets what was kept for that. */
export function undoSteps(changeNo: number): readonly Step[] {
  const wasNew = `change_no = ? and row_no not in (select row_no from row_before where by_change = ?)`
  const reading = `from price_change as c where change_no = ? and kind = 'file' and not exists
    (select 1 from price_change as later where later.change_no > c.change_no and later.kind = 'file'
     and later.supplier_id = c.supplier_id and later.undone_at is null)`
  const texts = [
    `delete from past_price where row_no in
       (select row_no from row_before where by_change = ? union select row_no from supplier_row where change_no = ?)`,
    `delete from row_search where rowid in (select row_no from supplier_row where ${wasNew})`,
    `delete from supplier_row where ${wasNew}`,
    `insert or replace into supplier_row (row_no, ${rowColumns})
     select row_no, ${rowColumns} from row_before where by_change = ?`,
    `insert into past_price (${pastColumns}) select ${pastColumns} from past_before where by_change = ?`,
    `delete from file_reading where supplier_id in (select supplier_id ${reading})`,
    `insert into file_reading (supplier_id, body)
     select supplier_id, reading_before ${reading} and reading_before is not null`,
    `delete from past_before where by_change = ?`,
    `delete from row_before where by_change = ?`,
  ]
  return texts.map((text) => ({ text, bound: Array.from(text.matchAll(/\?/g), () => changeNo) }))
}
