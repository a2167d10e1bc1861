import { sql } from 'kysely'
import type { Migration } from '../src-main/store/migration.ts'

const tables: readonly string[] = [
  `create table schema_step (
     id text primary key not null,
     name text not null,
     hash text not null,
     applied_at text not null
   ) strict`,

  // edition: which shipped catalogue put the row here; null once it is the firm's own.
  `create table item (
     item_no integer primary key,
     item_id text not null unique,
     kind text not null,
     name text not null,
     sort_name text not null,
     generic integer not null check (generic in (0, 1)),
     retired integer not null check (retired in (0, 1)),
     also_called text not null check (json_valid(also_called)),
     body text not null check (json_valid(body)),
     edition text
   ) strict`,
  `create index item_by_kind on item (kind, sort_name)`,
  `create index item_by_name on item (sort_name)`,
  `create virtual table item_search using fts5 (
     name_words, other_words,
     prefix = '2 3', detail = 'none', tokenize = "unicode61 remove_diacritics 0 tokenchars './'"
   )`,

  `create table supplier (
     supplier_id text primary key not null,
     name text not null,
     note text,
     carriage_pence integer not null,
     carriage_free_from_pence integer,
     minimum_order_pence integer,
     edition text
   ) strict`,
  `create table supplier_price (
     price_no integer primary key,
     item_id text not null references item (item_id),
     supplier_id text not null references supplier (supplier_id),
     code text not null,
     pack_holds real not null check (pack_holds > 0),
     pack_pence integer not null check (pack_pence >= 0),
     breaks text check (breaks is null or json_valid(breaks)),
     valid_from text not null check (length(valid_from) = 10),
     valid_to text check (valid_to is null or length(valid_to) = 10),
     edition text,
     unique (item_id, supplier_id, code, pack_holds, valid_from)
   ) strict`,
  `create index supplier_price_by_supplier on supplier_price (supplier_id)`,
  `create table catalogue_edition (
     one integer primary key check (one = 1),
     edition text not null
   ) strict`,

  `create table job (
     job_id text primary key not null,
     title text not null,
     customer_name text not null,
     place text not null,
     created_on text not null check (length(created_on) = 10),
     saved_at text not null,
     body text not null check (json_valid(body))
   ) strict`,
  `create index job_by_saved on job (saved_at)`,
  `create table room (
     job_id text not null references job (job_id) on delete cascade,
     room_id text not null,
     position integer not null,
     name text not null,
     body text not null check (json_valid(body)),
     primary key (job_id, room_id)
   ) strict`,
  `create table swap (
     job_id text not null references job (job_id) on delete cascade,
     swap_id text not null,
     room_id text not null,
     position integer not null,
     body text not null check (json_valid(body)),
     primary key (job_id, swap_id),
     foreign key (job_id, room_id) references room (job_id, room_id) on delete cascade
   ) strict`,
  `create index swap_by_room on swap (job_id, room_id)`,

  `create table firm (
     one integer primary key check (one = 1),
     name text not null,
     body text not null check (json_valid(body))
   ) strict`,
  `create table figure_override (
     setting_id text primary key not null,
     value real not null
   ) strict`,

  // A kept quote outlives its job, so it points at none.
  `create table kept_quote (
     quote_id text primary key not null,
     job_id text not null,
     kept_on text not null check (length(kept_on) = 10),
     snapshot text not null check (json_valid(snapshot))
   ) strict`,
  `create index kept_quote_by_job on kept_quote (job_id)`,
]

export const migration: Migration = {
  id: '0010',
  name: 'first tables',
  up: async (tx) => {
    for (const table of tables) await sql.raw(table).execute(tx)
  },
}
