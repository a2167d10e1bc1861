import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Supplier } from '../../domain/price.ts'
import type { Picking, PickingBody } from '../../domain/follow-up/van.ts'
import { unit } from '../../domain/item.ts'
import { orderCost } from '../../engine/buying/split/supplier-split-cost.ts'
import { numberIn, seriesOf } from '../../engine/quote/life/quote-number.ts'
import { poundsOf } from '../../engine/takeoff/purchase.ts'
import { takeNumber } from '../../store/quotes.ts'
import { readItems } from '../../store/items.ts'
import { writing } from '../../store/store.ts'
import { readSuppliers } from '../../store/suppliers.ts'
import type { WriteTx } from '../../store/tables.ts'
import { keepOrder, lastInSeries, listOrders, readOrder } from '../../store/van/orders.ts'
import type { KeptLine } from '../../store/van/orders.ts'
import { readPicking } from '../../store/van/pickings.ts'
import type { Desk, UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchPicking } from '../van/picking-work.ts'
import { orderOf } from './order-view.ts'

const pattern = 'P-{year}-{nnnn}'
/** Kept apart from the series of quotes, whatever pattern the firm numbers those by. */
const seriesKey = (series: string) => `order ${series}`

type Buy = PickingBody['orders'][number]

export const orderMake: UseCase<'order.make'> = ({ pickingNo, supplierId }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const picking = await readPicking(tx, pickingNo)
    if (picking === null) return noSuchPicking(pickingNo)
    if (picking.closedOn !== undefined) {
      const message = `Pick list ${pickingNo} was closed on ${picking.closedOn}; orders are made while it is open.`
      return refuse('conflict', message, 'pickingNo')
    }
    const standing = (await listOrders(tx, pickingNo)).filter(({ cancelledOn }) => cancelledOn === null)
    const ordered = new Map(standing.map((one) => [one.supplierId, one.orderId]))
    const wanted = wantedOf(picking, supplierId, ordered)
    if (!wanted.ok) return wanted
    const terms = new Map((await readSuppliers(tx)).map((one) => [one.supplierId, one]))
    const orders = []
    for (const buy of wanted.value) {
      const made = await madeFor(tx, { buy, picking, terms: terms.get(buy.supplierId) }, desk)
      if (!made.ok) return made
      orders.push(made.value)
    }
    return accept({ orders })
  })

/** Whom to order from: the one that is named, or all that no order stands for. */
function wantedOf(
  { pickingNo, body }: Picking,
  supplierId: string | undefined,
  ordered: ReadonlyMap<string, string>,
): Outcome<readonly Buy[]> {
  const asked =
    supplierId === undefined ? body.orders : body.orders.filter((one) => one.supplierId === supplierId)
  if (asked.length === 0) {
    return supplierId === undefined
      ? refuse('conflict', `Nothing on pick list ${pickingNo} is bought from a supplier.`, 'pickingNo')
      : refuse('not-found', `Nothing on pick list ${pickingNo} is bought from ${supplierId}.`, 'supplierId')
  }
  const open = asked.filter((one) => !ordered.has(one.supplierId))
  if (open.length > 0) return accept(open)
  const names = asked.map((one) => `${one.name} (${ordered.get(one.supplierId) ?? ''})`).join(', ')
  const message = `Pick list ${pickingNo} is ordered already from ${names}.`
  return refuse('conflict', message, supplierId === undefined ? 'pickingNo' : 'supplierId', cancelFirst)
}

const cancelFirst = 'Open that order; to order anew, cancel it first.'

type Making = { readonly buy: Buy; readonly picking: Picking; readonly terms: Supplier | undefined }

async function madeFor(tx: WriteTx, { buy, picking, terms }: Making, desk: Desk) {
  const { supplierId, name, packs = [] } = buy
  const lines = linesFor(picking, buy)
  if (lines.length === 0) {
    const message = `Pick list ${picking.pickingNo} keeps no pack prices for ${name}, so no order is made from it.`
    return refuse('gap', message, 'pickingNo', 'Order these by hand.')
  }
  const goodsPence = lines.reduce((sum, line) => sum + line.packs * line.packPence, 0)
  const series = seriesOf(pattern, desk.today)
  const nth = (await lastInSeries(tx, seriesKey(series))) + 1
  const orderId = numberIn(series, nth)
  await keepOrder(tx, {
    orderId,
    supplierId,
    pickingNo: picking.pickingNo,
    madeOn: desk.today,
    madeAt: desk.now(),
    carriagePence: carriageOf(buy, terms, goodsPence),
    body: {
      supplierName: name,
      says: [...minimumSays(terms, goodsPence), ...(await genericSays(tx, lines))],
      needs: packs.map(({ need }, at) => ({ lineNo: at + 1, need })),
    },
    lines,
  })
  await takeNumber(tx, seriesKey(series), nth)
  const kept = await readOrder(tx, orderId)
  if (kept === null) throw new Error('An order that was just written is not there')
  return accept(orderOf(kept))
}

/** The lines of a pick list that are bought from one supplier, numbered anew. */
function linesFor({ lines }: Picking, { packs = [] }: Buy): readonly KeptLine[] {
  return packs.map(({ lineNo, packPence }, at) => {
    const line = lines.find((one) => one.lineNo === lineNo)
    const { itemId = null, code, packs: count, packHolds } = line ?? {}
    if (line === undefined || code === undefined || count === undefined || packHolds === undefined)
      throw new Error(`Line ${lineNo} of a pick list has a price and no packs`)
    const { name } = line
    return {
      lineNo: at + 1,
      itemId,
      code,
      name,
      unit: unit.parse(line.unit),
      packHolds,
      packs: count,
      packPence,
    }
  })
}

/** Carriage as the split reckoned with it, else by the supplier's terms of today. */
function carriageOf(buy: Buy, terms: Supplier | undefined, goodsPence: number): number {
  if (buy.carriagePence !== undefined) return buy.carriagePence
  return terms === undefined ? 0 : orderCost(terms, goodsPence).carriagePence
}

function minimumSays(terms: Supplier | undefined, goodsPence: number): readonly string[] {
  const { name, minimumOrderPence: least = 0 } = terms ?? { name: '' }
  return goodsPence >= least
    ? []
    : [`${name} takes orders from ${poundsOf(least)}; the goods here come to ${poundsOf(goodsPence)}.`]
}

/** Nobody shall order by an invented code. */
async function genericSays(tx: WriteTx, lines: readonly KeptLine[]): Promise<readonly string[]> {
  const items = await readItems(
    tx,
    lines.flatMap(({ itemId }) => (itemId === null ? [] : [itemId])),
  )
  const generic = new Set(items.flatMap((item) => (item.generic ? [item.itemId] : [])))
  const many = lines.filter(({ itemId }) => itemId !== null && generic.has(itemId)).length
  if (many === 0) return []
  const which = many === 1 ? 'One line is' : `${many} lines are`
  return [`${which} from the generic catalogue: match them to the supplier’s own codes before you send this.`]
}
