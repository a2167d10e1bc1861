import { sql } from 'kysely'
import type { Kysely } from 'kysely'
import type { Migration } from '../src-main/store/migration.ts'

const rowColumns = `
     supplier_id text not null references supplier (supplier_id),
     code text not null,
     name text not null,
     gtin text,
     pack_holds real not null check (pack_holds > 0),
     pack_pence integer not null check (pack_pence >= 0),
     breaks text check (breaks is null or json_valid(breaks)),
     group_key text,
     valid_from text not null check (length(valid_from) = 10),
     valid_to text check (valid_to is null or length(valid_to) = 10),
     item_id text references item (item_id),
     item_holds real check (item_holds is null or item_holds > 0),
     raw_hash integer,
     gone_from text check (gone_from is null or length(gone_from) = 10),
     change_no integer,
     edition text`

const pastColumns = `
     row_no integer not null,
     valid_from text not null check (length(valid_from) = 10),
     valid_to text check (valid_to is null or length(valid_to) = 10),
     pack_holds real not null check (pack_holds > 0),
     pack_pence integer not null check (pack_pence >= 0),
     breaks text check (breaks is null or json_valid(breaks)),
     change_no integer,
     edition text`

const tables: readonly string[] = [
  // A row of a supplier's list with the price that begins last. raw_hash: of the file's row as it stood; null once changed here.
  // change_no: which change of prices wrote it last. edition: which shipped catalogue did; null once it is the firm's own.
  `create table supplier_row (
     row_no integer primary key,${rowColumns},
     unique (supplier_id, code)
   ) strict`,
  `create index supplier_row_by_item on supplier_row (item_id) where item_id is not null`,

  // Prices of a row that begin before its newest.
  `create table past_price (${pastColumns},
     primary key (row_no, valid_from)
   ) strict, without rowid`,

  `create table discount_group (
     supplier_id text not null references supplier (supplier_id),
     group_key text not null,
     valid_from text not null check (length(valid_from) = 10),
     name text not null,
     basis_points integer not null check (basis_points between 0 and 10000),
     primary key (supplier_id, group_key, valid_from)
   ) strict, without rowid`,
  `create table favourite (item_id text primary key not null references item (item_id)) strict`,

  // How a supplier's last file was read.
  `create table file_reading (
     supplier_id text primary key not null references supplier (supplier_id),
     body text not null check (json_valid(body))
   ) strict`,

  // reading_before: the supplier's file_reading before this change, kept so that undoing brings it back.
  `create table price_change (
     change_no integer primary key,
     kind text not null check (kind in ('file', 'bulk', 'single', 'link')),
     supplier_id text references supplier (supplier_id),
     says text not null,
     at text not null,
     counts text not null check (json_valid(counts)),
     undone_at text,
     file_hash text,
     file_key text,
     reading_before text
   ) strict`,

  // Whole rows as they were before a change; what is new is known by its change_no.
  `create table row_before (
     by_change integer not null references price_change (change_no),
     row_no integer not null,${rowColumns},
     primary key (by_change, row_no)
   ) strict, without rowid`,
  `create index row_before_by_change on row_before (change_no) where change_no is not null`,
  `create table past_before (
     by_change integer not null references price_change (change_no),${pastColumns},
     primary key (by_change, row_no, valid_from)
   ) strict, without rowid`,

  `create virtual table row_search using fts5 (
     words, content = '', contentless_delete = 1,
     prefix = '2 3', detail = 'none', tokenize = "unicode61 remove_diacritics 0 tokenchars './'"
   )`,
]

/**
 * Prices become rows of suppliers' lists: one row for each pack of an item at a supplier. Where one code stood for several
 * packs or items, the first keeps it and the others get what they hold, or a number, behind it.
 */
const moved: readonly string[] = [
  `create temp table pack as
     select row_number() over (order by min(price_no)) as row_no, item_id, supplier_id, code, code as new_code, pack_holds,
            max(valid_from) as newest, min(price_no) as first_no
     from supplier_price group by item_id, supplier_id, code, pack_holds`,
  `update pack set new_code = code || '-' || printf('%g', pack_holds)
   where exists (select 1 from pack o where o.supplier_id = pack.supplier_id and o.code = pack.code and o.row_no < pack.row_no)`,
  `update pack set new_code = new_code || '-' || row_no
   where exists (select 1 from pack o where o.supplier_id = pack.supplier_id and o.new_code = pack.new_code and o.row_no < pack.row_no)`,
  `insert into supplier_row (row_no, supplier_id, code, name, pack_holds, pack_pence, breaks, valid_from, valid_to, item_id, edition)
   select k.row_no, k.supplier_id, k.new_code, i.name, k.pack_holds, p.pack_pence, p.breaks, p.valid_from, p.valid_to, k.item_id, p.edition
   from pack k
   join supplier_price p on p.item_id = k.item_id and p.supplier_id = k.supplier_id and p.code = k.code
     and p.pack_holds = k.pack_holds and p.valid_from = k.newest
   join item i on i.item_id = k.item_id`,
  `insert into past_price (row_no, valid_from, valid_to, pack_holds, pack_pence, breaks, edition)
   select k.row_no, p.valid_from, p.valid_to, p.pack_holds, p.pack_pence, p.breaks, p.edition
   from pack k
   join supplier_price p on p.item_id = k.item_id and p.supplier_id = k.supplier_id and p.code = k.code
     and p.pack_holds = k.pack_holds and p.valid_from < k.newest`,
]

export const migration: Migration = {
  id: '0020',
  name: 'price lists',
  changesRowsOf: ['supplier_price'],
  up: async (tx) => {
    for (const table of tables) await sql.raw(table).execute(tx)
    for (const step of moved) await sql.raw(step).execute(tx)
    await indexRows(tx)
    await refuseLostPrices(tx)
    await sql.raw('drop table temp.pack').execute(tx)
    await sql.raw('drop table supplier_price').execute(tx)
  },
}

/** The table of prices goes, so this step counts for itself: every price must have found its row. */
async function refuseLostPrices(tx: Kysely<unknown>): Promise<void> {
  const counted = await sql<{ before: number; after: number }>`
    select (select count(*) from supplier_price) as before,
           (select count(*) from supplier_row) + (select count(*) from past_price) as after`.execute(tx)
  const { before, after } = counted.rows[0] ?? { before: 0, after: -1 }
  if (before !== after) throw new Error(`supplier_price had ${before} rows and would have ${after}`)
}

/** Words as the search of this step's time parts them: figures apart from letters, no accents, no apostrophes. */
async function indexRows(tx: Kysely<unknown>): Promise<void> {
  const rows = await sql<{ row_no: number; code: string; name: string }>`
    select row_no, code, name from supplier_row order by row_no`.execute(tx)
  for (const { row_no, code, name } of rows.rows) {
    await sql`insert into row_search (rowid, words) values (${row_no}, ${wordsOf(`${name} ${code}`)})`.execute(
      tx,
    )
  }
}

function wordsOf(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replaceAll('⁄', '/')
    .replaceAll('×', 'x')
    .replace(/[\p{M}'’]/gu, '')
  return (plain.toLowerCase().match(/\p{N}+(?:[./]\p{N}+)*|\p{L}+/gu) ?? []).join(' ')
}
