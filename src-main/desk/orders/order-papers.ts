import type { Firm } from '../../domain/firm.ts'
import type { Order } from '../../domain/follow-up/order.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { orderDocument } from '../../documents/order-document.ts'
import { orderCsv as csvOf } from '../../exchange/order-csv.ts'
import { orderXml as xmlOf } from '../../exchange/ubl/order.ts'
import { readFirm } from '../../store/firm.ts'
import { reading } from '../../store/store.ts'
import type { Desk, UseCase } from '../desk.ts'
import { printPdf } from '../papers/print-pdf.ts'
import { printable } from '../papers/printable.ts'
import { usableLogo } from '../papers/usable-logo.ts'
import { filePath, writeFile } from '../papers/write-file.ts'
import { paperPath, writePaper } from '../papers/write-paper.ts'
import { storeOf } from '../store-of.ts'
import { keptOrder } from './order-life.ts'
import { orderOf } from './order-view.ts'

export const orderPdf: UseCase<'order.pdf'> = async ({ orderId, out }, desk) => {
  const where = { out, name: `order-${orderId}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const found = await orderFromFirm(orderId, desk)
  if (!found.ok) return found
  const { order } = found.value
  const firm = await withUsableLogo(found.value.firm)
  if (!firm.ok) return firm
  const view = await printable({ firm: firm.value, order })
  if (!view.ok) return view
  return writePaper(await printPdf(orderDocument(view.value), { createdOn: order.madeOn }), where, desk)
}

export const orderCsv: UseCase<'order.csv'> = async ({ orderId, out }, desk) => {
  const where = { form: 'csv' as const, out, name: `order-${orderId}` }
  const place = filePath(where, desk)
  if (!place.ok) return place
  const found = await reading(storeOf(desk), (tx) => keptOrder(tx, orderId))
  return found.ok ? writeFile({ ...where, bytes: csvOf(orderOf(found.value)) }, desk) : found
}

export const orderXml: UseCase<'order.xml'> = async ({ orderId, out }, desk) => {
  const where = { form: 'xml' as const, out, name: `order-${orderId}` }
  const place = filePath(where, desk)
  if (!place.ok) return place
  const found = await orderFromFirm(orderId, desk)
  if (!found.ok) return found
  const { order, firm } = found.value
  if (order.state === 'cancelled') {
    const message = `${orderId} was cancelled, and its XML could not say so: a program would take it for an order.`
    return refuse('conflict', message, 'orderId', 'Make the PDF, which says so.')
  }
  const xml = xmlOf({
    number: order.orderId,
    issuedOn: order.madeOn,
    currency: 'GBP',
    reference: order.pickingNo === undefined ? undefined : `Pick list ${order.pickingNo}`,
    buyer: firm,
    seller: { name: order.supplierName, addressLines: [] },
    deliverTo: firm.addressLines,
    lines: order.lines.map(({ lineNo, ...line }) => ({ ...line, lineId: String(lineNo) })),
    carriagePence: order.carriagePence,
  })
  return xml.ok ? writeFile({ ...where, bytes: Buffer.from(xml.value, 'utf8') }, desk) : xml
}

/** An order and who gives it; refused while nobody says which firm that is. */
async function orderFromFirm(
  orderId: string,
  desk: Desk,
): Promise<Outcome<{ readonly order: Order; readonly firm: Firm }>> {
  return reading(storeOf(desk), async (tx) => {
    const found = await keptOrder(tx, orderId)
    if (!found.ok) return found
    const firm = await readFirm(tx)
    if (firm !== null) return accept({ order: orderOf(found.value), firm })
    const message = 'Nobody says which firm this order is from; an order needs at least the firm’s name.'
    return refuse('invalid', message, undefined, 'Fill in your firm’s details first.')
  })
}

async function withUsableLogo(firm: Firm): Promise<Outcome<Firm>> {
  if (firm.logo === undefined) return accept(firm)
  const logo = await usableLogo(firm.logo)
  return logo.ok ? accept({ ...firm, logo: logo.value }) : logo
}
