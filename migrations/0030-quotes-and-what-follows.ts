import { sql } from 'kysely'
import type { Kysely } from 'kysely'
import type { Migration } from '../src-main/store/migration.ts'

const tables: readonly string[] = [
  // The last number given in a series; a series is the firm's pattern with the year in it.
  `create table number_series (
     series text primary key not null,
     last integer not null check (last >= 0)
   ) strict, without rowid`,

  // A quote as it went out. It outlives its job, so it points at none. pdf: null only where it was kept before PDFs were.
  `create table issued_quote (
     quote_id text primary key not null,
     number text not null,
     revision integer not null check (revision >= 0),
     job_id text not null,
     title text not null,
     customer_name text not null,
     issued_on text not null check (length(issued_on) = 10),
     valid_until text not null check (length(valid_until) = 10),
     gross_pence integer not null,
     program text not null,
     snapshot text not null check (json_valid(snapshot)),
     pdf blob,
     pdf_hash text check ((pdf is null) = (pdf_hash is null)),
     pages integer check ((pdf is null) = (pages is null)),
     unique (number, revision)
   ) strict`,
  `create index issued_quote_by_job on issued_quote (job_id)`,
  `create trigger issued_quote_stays before update on issued_quote
   begin select raise(abort, 'an issued quote is never changed'); end`,
  `create trigger issued_quote_is_kept before delete on issued_quote
   begin select raise(abort, 'an issued quote is never deleted'); end`,

  // What happened to a quote; the last one says how it stands.
  `create table quote_event (
     event_no integer primary key,
     quote_id text not null references issued_quote (quote_id),
     kind text not null check (kind in ('issued', 'sent', 'accepted', 'declined', 'withdrawn', 'replaced')),
     on_day text not null check (length(on_day) = 10),
     at text not null,
     reason text,
     body text check (body is null or json_valid(body))
   ) strict`,
  `create index quote_event_by_quote on quote_event (quote_id, event_no)`,

  // One round of picking for one or several accepted quotes. body: tools, lifts and cuts as they were worked out.
  `create table picking (
     picking_no integer primary key,
     title text not null,
     made_on text not null check (length(made_on) = 10),
     made_at text not null,
     closed_on text check (closed_on is null or length(closed_on) = 10),
     body text not null check (json_valid(body))
   ) strict`,
  `create table picking_quote (
     picking_no integer not null references picking (picking_no),
     quote_id text not null references issued_quote (quote_id),
     primary key (picking_no, quote_id)
   ) strict, without rowid`,
  `create index picking_quote_by_quote on picking_quote (quote_id)`,
  // source: the van, the emitter's own box, or the supplier. need and picked are in the line's unit.
  `create table picking_line (
     picking_no integer not null references picking (picking_no),
     line_no integer not null,
     source text not null check (source in ('van', 'box', 'supplier')),
     supplier_id text references supplier (supplier_id),
     kind text not null,
     item_id text references item (item_id),
     code text,
     name text not null,
     unit text not null,
     need real not null check (need > 0),
     packs integer check (packs is null or packs > 0),
     pack_holds real check (pack_holds is null or pack_holds > 0),
     picked real not null default 0 check (picked >= 0),
     ticked_at text,
     instead_item_id text references item (item_id),
     instead_says text,
     short_says text,
     primary key (picking_no, line_no),
     check ((source = 'supplier') = (supplier_id is not null))
   ) strict, without rowid`,

  `create table purchase_order (
     order_id text primary key not null,
     supplier_id text not null references supplier (supplier_id),
     made_on text not null check (length(made_on) = 10),
     made_at text not null,
     picking_no integer references picking (picking_no),
     sent_on text check (sent_on is null or length(sent_on) = 10),
     cancelled_on text check (cancelled_on is null or length(cancelled_on) = 10),
     cancelled_says text,
     carriage_pence integer not null check (carriage_pence >= 0),
     body text not null check (json_valid(body))
   ) strict`,
  `create index purchase_order_by_picking on purchase_order (picking_no) where picking_no is not null`,
  `create table order_line (
     order_id text not null references purchase_order (order_id),
     line_no integer not null,
     item_id text references item (item_id),
     code text not null,
     name text not null,
     unit text not null,
     pack_holds real not null check (pack_holds > 0),
     packs integer not null check (packs > 0),
     pack_pence integer not null check (pack_pence >= 0),
     primary key (order_id, line_no)
   ) strict, without rowid`,

  // Whatever goes into or out of the van, in the item's unit; what is in it is the sum. counted: what a count found.
  `create table van_move (
     move_no integer primary key,
     item_id text not null references item (item_id),
     kind text not null check (kind in ('receipt', 'use', 'return', 'count', 'correction')),
     quantity real not null,
     counted real check ((kind = 'count') = (counted is not null)),
     on_day text not null check (length(on_day) = 10),
     at text not null,
     says text,
     picking_no integer references picking (picking_no),
     order_id text references purchase_order (order_id)
   ) strict`,
  `create index van_move_by_item on van_move (item_id, move_no)`,

  `create table delivery (
     delivery_no integer primary key,
     order_id text not null,
     line_no integer not null,
     packs integer not null check (packs > 0),
     on_day text not null check (length(on_day) = 10),
     at text not null,
     says text,
     move_no integer references van_move (move_no),
     foreign key (order_id, line_no) references order_line (order_id, line_no)
   ) strict`,
  `create index delivery_by_line on delivery (order_id, line_no)`,

  // What really happened on an accepted quote's job.
  `create table after_job (
     quote_id text primary key not null references issued_quote (quote_id),
     saved_at text not null,
     closed_on text check (closed_on is null or length(closed_on) = 10),
     body text not null check (json_valid(body))
   ) strict`,
]

/** Quotes that were kept before quotes were issued: each is the first of its number, in the order in which they were kept. */
const moved: readonly string[] = [
  `insert into issued_quote
     (quote_id, number, revision, job_id, title, customer_name, issued_on, valid_until, gross_pence, program, snapshot)
   select quote_id, quote_id, 0, job_id,
     coalesce(json_extract(snapshot, '$.job.title'), job_id),
     coalesce(json_extract(snapshot, '$.job.customer.name'), '?'),
     kept_on,
     date(kept_on, '+' || cast(coalesce(json_extract(snapshot, '$.figures.settings."money.validDays".value'), 30) as integer) || ' days'),
     coalesce(json_extract(snapshot, '$.quote.totals.grossPence'), 0),
     'before numbers were issued', snapshot
   from kept_quote order by rowid`,
  `insert into quote_event (quote_id, kind, on_day, at)
   select quote_id, 'issued', issued_on, issued_on || 'T00:00:00.000Z' from issued_quote order by issued_on, quote_id`,
  `insert into number_series (series, last)
   select substr(quote_id, 1, 7) || '{nnnn}', max(cast(substr(quote_id, 8) as integer))
   from issued_quote where quote_id glob 'Q-[0-9][0-9][0-9][0-9]-[0-9]*' group by substr(quote_id, 1, 7)`,
]

export const migration: Migration = {
  id: '0030',
  name: 'quotes and what follows',
  changesRowsOf: ['kept_quote'],
  up: async (tx) => {
    for (const table of tables) await sql.raw(table).execute(tx)
    for (const step of moved) await sql.raw(step).execute(tx)
    await refuseLostQuotes(tx)
    await sql.raw('drop table kept_quote').execute(tx)
  },
}

/** The table of kept quotes goes, so this step counts for itself. */
async function refuseLostQuotes(tx: Kysely<unknown>): Promise<void> {
  const counted = await sql<{ before: number; after: number }>`
    select (select count(*) from kept_quote) as before, (select count(*) from issued_quote) as after`.execute(
    tx,
  )
  const { before, after } = counted.rows[0] ?? { before: 0, after: -1 }
  if (before !== after) throw new Error(`kept_quote had ${before} rows and would have ${after}`)
}
