import { z } from 'zod'
import { unit } from '../domain/item.ts'
import { order, orderRow } from '../domain/follow-up/order.ts'
import { count, day, key, line, list, note, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

export const orderMake = command('order.make', {
  doc: 'Makes an order for each supplier of a pick list, or for one of them, with the next number; at the prices of the pick list.',
  needs: 'data',
  input: record({ pickingNo: count, supplierId: key.optional() }),
  output: record({ orders: list(order) }),
})

export const orderList = query('order.list', {
  doc: 'Orders in short, the newest first; those of one pick list where one is named.',
  needs: 'data',
  input: record({ pickingNo: count.optional() }),
  output: record({ orders: list(orderRow) }),
})

export const orderRead = query('order.read', {
  doc: 'One order, whole: its lines, what came of them and what is still to come.',
  needs: 'data',
  input: record({ orderId: key }),
  output: record({ order }),
})

export const orderSent = command('order.sent', {
  doc: 'Notes that an order went out to its supplier.',
  needs: 'data',
  input: record({ orderId: key, onDay: day.optional() }),
  output: record({ order }),
})

export const orderDeliver = command('order.deliver', {
  doc: 'Notes what came of an order; what the pick list does not need, or all of it, is booked into the van.',
  needs: 'data',
  input: record({
    orderId: key,
    lines: list(record({ lineNo: count, packs: count.gte(1) }), 1000, 1),
    onDay: day.optional(),
    says: note.optional(),
    /** All of it is for the van, whatever the pick list needs. */
    toVan: z.boolean().optional(),
  }),
  output: record({
    order,
    /** What was booked into the van. */
    booked: list(record({ itemId: key, name: line, quantity: z.number(), unit })),
  }),
})

export const orderCancel = command('order.cancel', {
  doc: 'Cancels an order of which nothing has come, with a reason.',
  needs: 'data',
  input: record({ orderId: key, says: note, onDay: day.optional() }),
  output: record({ order }),
})

/** `out` names a file at the terminal; elsewhere a paper goes to the papers folder. */
const paperOf = { orderId: key, out: line.max(1000).optional() }
const file = record({ path: z.string(), bytes: z.int() })
const pages = record({ path: z.string(), pages: z.int(), bytes: z.int() })

export const orderPdf = command('order.pdf', {
  doc: 'An order as a PDF for the supplier: codes, packs and prices before tax, and no customer.',
  needs: 'data',
  input: record(paperOf),
  output: pages,
})

export const orderCsv = command('order.csv', {
  doc: 'An order as CSV: a line for each code, and one for carriage.',
  needs: 'data',
  input: record(paperOf),
  output: file,
})

export const orderXml = command('order.xml', {
  doc: 'An order as XML by the OASIS standard UBL 2.1 (Order).',
  needs: 'data',
  input: record(paperOf),
  output: file,
})

export const pickingPdf = command('picking.pdf', {
  doc: 'A pick list with boxes to tick: the van first, then by supplier and kind, then tools, cuts, lifts and cautions.',
  needs: 'data',
  input: record({ pickingNo: count, out: line.max(1000).optional() }),
  output: pages,
})
