export type RowFilter = {
  readonly supplierId?: string | undefined
  readonly group?: string | undefined
  readonly linked?: boolean | undefined
  readonly stale?: boolean | undefined
  /** The day whose prices are shown. */
  readonly day: string
  /** Prices that began, and were last confirmed, before this day are stale. */
  readonly staleBefore: string
}
export type RowSort = 'nearest' | 'code' | 'name' | 'price'

export type Where = {
  readonly where: string
  readonly bound: readonly string[]
  /** True when every row passes. */
  readonly isOpen: boolean
}

/** The day on which the price began that holds on a day; of a row whose only price is still to come, that one's. */
const beganOn = `coalesce(case when r.valid_from <= ? then r.valid_from else
  (select max(p.valid_from) from past_price p where p.row_no = r.row_no and p.valid_from <= ?) end, r.valid_from)`

/** The day from which its age counts, as `trustedFrom` has it: of a row that is not gone, no earlier than the supplier's last list. */
const trusted = `max(${beganOn}, coalesce(case when r.gone_from is null then
  (select f.body ->> 'listedOn' from file_reading f where f.supplier_id = r.supplier_id and f.body ->> 'listedOn' <= ?) end, ''))`

/** The rows `r` that a filter lets pass, as SQL. */
export function filterOf({ supplierId, group, linked, stale, day, staleBefore }: RowFilter): Where {
  const parts: { readonly text: string; readonly bound: readonly string[] }[] = []
  if (supplierId !== undefined) parts.push({ text: 'r.supplier_id = ?', bound: [supplierId] })
  if (group !== undefined) parts.push({ text: 'r.group_key = ?', bound: [group] })
  if (linked !== undefined) parts.push({ text: `r.item_id is ${linked ? 'not ' : ''}null`, bound: [] })
  if (stale !== undefined)
    parts.push({ text: `${trusted} ${stale ? '<' : '>='} ?`, bound: [day, day, day, staleBefore] })
  return {
    where: parts.length === 0 ? 'true' : parts.map(({ text }) => text).join(' and '),
    bound: parts.flatMap(({ bound }) => bound),
    isOpen: parts.length === 0,
  }
}

/** The order of rows that are shown without being ranked. */
export function orderOf(sort: RowSort): string {
  const orders = {
    nearest: 'r.supplier_id, r.code',
    code: 'r.code, r.supplier_id',
    name: 'r.name collate nocase, r.code, r.supplier_id',
    price: 'r.pack_pence, r.code, r.supplier_id',
  } as const
  return orders[sort]
}
