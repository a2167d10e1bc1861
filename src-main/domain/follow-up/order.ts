import { z } from 'zod'
import { unit } from '../item.ts'
import { count, day, key, line, list, note, pence, pricePence, record } from '../schema.ts'

/** How an order stands: part delivered while packs are still to come. */
export const orderState = z.enum(['made', 'sent', 'partDelivered', 'delivered', 'cancelled'])
export type OrderState = z.infer<typeof orderState>

/** So many packs by the supplier's own code, before tax. */
export const orderLine = record({
  lineNo: count,
  itemId: key.optional(),
  code: line,
  name: line,
  unit,
  packHolds: z.number().gt(0),
  packs: count.gte(1),
  packPence: pricePence,
  linePence: pence,
  deliveredPacks: count,
  /** What was left behind by a delivery and is still to come. */
  backOrderedPacks: count,
})
export type OrderLine = z.infer<typeof orderLine>

export const delivery = record({
  lineNo: count,
  packs: count.gte(1),
  onDay: day,
  at: z.string(),
  says: note.optional(),
  /** What of it was booked into the van, in the item's unit. */
  toVan: z.number().optional(),
})
export type Delivery = z.infer<typeof delivery>

/** What an order carries besides its lines, as it was when it was made. */
export const orderBody = record({
  supplierName: line,
  /** How the carriage came about, or what the supplier asks that the order does not reach. */
  says: list(z.string()),
  /** What the pick list needs of each line, in its unit; what comes beyond that is for the van. */
  needs: list(record({ lineNo: count, need: z.number() })),
})
export type OrderBody = z.infer<typeof orderBody>

/** An order in short. */
const head = {
  orderId: key,
  supplierId: key,
  supplierName: line,
  pickingNo: count.optional(),
  madeOn: day,
  sentOn: day.optional(),
  cancelledOn: day.optional(),
  cancelledSays: note.optional(),
  state: orderState,
  goodsPence: pence,
  carriagePence: pence,
  /** Goods and carriage, before tax. */
  totalPence: pence,
}
export const orderRow = record({ ...head, lines: count, backOrderedPacks: count })
export type OrderRow = z.infer<typeof orderRow>

export const order = record({
  ...head,
  lines: list(orderLine),
  deliveries: list(delivery),
  says: list(z.string()),
})
export type Order = z.infer<typeof order>
