import type { Generated, Kysely } from 'kysely'

type ItemTable = {
  item_no: Generated<number>
  item_id: string
  kind: string
  name: string
  sort_name: string
  generic: number
  retired: number
  also_called: string
  body: string
  edition: string | null
}

type ItemSearchTable = { rowid: number; name_words: string; other_words: string }

type SupplierTable = {
  supplier_id: string
  name: string
  note: string | null
  carriage_pence: number
  carriage_free_from_pence: number | null
  minimum_order_pence: number | null
  edition: string | null
}

type SupplierPriceTable = {
  price_no: Generated<number>
  item_id: string
  supplier_id: string
  code: string
  pack_holds: number
  pack_pence: number
  breaks: string | null
  valid_from: string
  valid_to: string | null
  edition: string | null
}

type JobTable = {
  job_id: string
  title: string
  customer_name: string
  place: string
  created_on: string
  saved_at: string
  body: string
}

type RoomTable = { job_id: string; room_id: string; position: number; name: string; body: string }
type SwapTable = { job_id: string; swap_id: string; room_id: string; position: number; body: string }

/** The data file's tables as they stand after the last migration. */
export type Tables = {
  schema_step: { id: string; name: string; hash: string; applied_at: string }
  item: ItemTable
  item_search: ItemSearchTable
  supplier: SupplierTable
  supplier_price: SupplierPriceTable
  catalogue_edition: { one: number; edition: string }
  job: JobTable
  room: RoomTable
  swap: SwapTable
  firm: { one: number; name: string; body: string }
  figure_override: { setting_id: string; value: number }
  kept_quote: { quote_id: string; job_id: string; kept_on: string; snapshot: string }
}

/** A transaction that reads one state of the file and can't write. */
export type ReadTx = Pick<Kysely<Tables>, 'selectFrom' | 'getExecutor'>

/** A transaction that writes, and reads what it wrote. */
export type WriteTx = Kysely<Tables>
