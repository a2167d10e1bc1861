import type { Generated, Kysely } from 'kysely'
import type { QuoteEventKind } from '../domain/follow-up/quote-life.ts'

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

/** A row of a supplier's list with the price that begins last. Whoever changes a price sets `raw_hash` to null. */
export type SupplierRowTable = {
  row_no: Generated<number>
  supplier_id: string
  code: string
  name: string
  gtin: string | null
  pack_holds: number
  pack_pence: number
  breaks: string | null
  group_key: string | null
  valid_from: string
  valid_to: string | null
  item_id: string | null
  /** How much of the item's unit a pack holds; null when that is `pack_holds`. */
  item_holds: number | null
  raw_hash: number | null
  gone_from: string | null
  change_no: number | null
  edition: string | null
}

/** A price of a row that begins before its newest. */
export type PastPriceTable = {
  row_no: number
  valid_from: string
  valid_to: string | null
  pack_holds: number
  pack_pence: number
  breaks: string | null
  change_no: number | null
  edition: string | null
}

type PriceChangeTable = {
  change_no: Generated<number>
  kind: 'file' | 'bulk' | 'single' | 'link'
  supplier_id: string | null
  says: string
  at: string
  counts: string
  undone_at: string | null
  file_hash: string | null
  /** How that file was read and from which day: the same file read the same way changes nothing. */
  file_key: string | null
  reading_before: string | null
}

type DiscountGroupTable = {
  supplier_id: string
  group_key: string
  valid_from: string
  name: string
  basis_points: number
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

type IssuedQuoteTable = {
  quote_id: string
  number: string
  revision: number
  job_id: string
  title: string
  customer_name: string
  issued_on: string
  valid_until: string
  gross_pence: number
  /** The version of the program that worked it out. */
  program: string
  snapshot: string
  pdf: Uint8Array | null
  pdf_hash: string | null
  pages: number | null
}

type QuoteEventTable = {
  event_no: Generated<number>
  quote_id: string
  kind: QuoteEventKind
  on_day: string
  at: string
  reason: string | null
  body: string | null
}

type PickingTable = {
  picking_no: Generated<number>
  title: string
  made_on: string
  made_at: string
  closed_on: string | null
  body: string
}

/** One thing to pick. `need` and `picked` are in the line's unit. */
export type PickingLineTable = {
  picking_no: number
  line_no: number
  source: 'van' | 'box' | 'supplier'
  supplier_id: string | null
  kind: string
  item_id: string | null
  code: string | null
  name: string
  unit: string
  need: number
  packs: number | null
  pack_holds: number | null
  picked: Generated<number>
  ticked_at: string | null
  instead_item_id: string | null
  instead_says: string | null
  short_says: string | null
}

type PurchaseOrderTable = {
  order_id: string
  supplier_id: string
  made_on: string
  made_at: string
  picking_no: number | null
  sent_on: string | null
  cancelled_on: string | null
  cancelled_says: string | null
  carriage_pence: number
  body: string
}

type OrderLineTable = {
  order_id: string
  line_no: number
  item_id: string | null
  code: string
  name: string
  unit: string
  pack_holds: number
  packs: number
  pack_pence: number
}

/** Whatever goes into or out of the van, in the item's unit: what is in it is the sum. */
type VanMoveTable = {
  move_no: Generated<number>
  item_id: string
  kind: 'receipt' | 'use' | 'return' | 'count' | 'correction'
  quantity: number
  counted: number | null
  on_day: string
  at: string
  says: string | null
  picking_no: number | null
  order_id: string | null
}

type DeliveryTable = {
  delivery_no: Generated<number>
  order_id: string
  line_no: number
  packs: number
  on_day: string
  at: string
  says: string | null
  move_no: number | null
}

/** The data file's tables as they stand after the last migration. */
export type Tables = {
  schema_step: { id: string; name: string; hash: string; applied_at: string }
  item: ItemTable
  item_search: ItemSearchTable
  supplier: SupplierTable
  supplier_row: SupplierRowTable
  past_price: PastPriceTable
  discount_group: DiscountGroupTable
  favourite: { item_id: string }
  file_reading: { supplier_id: string; body: string }
  price_change: PriceChangeTable
  row_before: Omit<SupplierRowTable, 'row_no'> & { row_no: number; by_change: number }
  past_before: PastPriceTable & { by_change: number }
  catalogue_edition: { one: number; edition: string }
  job: JobTable
  room: RoomTable
  swap: SwapTable
  firm: { one: number; name: string; body: string }
  figure_override: { setting_id: string; value: number }
  number_series: { series: string; last: number }
  issued_quote: IssuedQuoteTable
  quote_event: QuoteEventTable
  picking: PickingTable
  picking_quote: { picking_no: number; quote_id: string }
  picking_line: PickingLineTable
  purchase_order: PurchaseOrderTable
  order_line: OrderLineTable
  van_move: VanMoveTable
  delivery: DeliveryTable
  after_job: { quote_id: string; saved_at: string; closed_on: string | null; body: string }
}

/** A transaction that reads one state of the file and can't write. */
export type ReadTx = Pick<Kysely<Tables>, 'selectFrom' | 'getExecutor'>

/** A transaction that writes, and reads what it wrote. */
export type WriteTx = Kysely<Tables>
