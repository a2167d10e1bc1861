import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { writing } from '../../store/store.ts'
import type { WriteTx } from '../../store/tables.ts'
import { addDelivery } from '../../store/van/orders.ts'
import type { KeptLine, KeptOrder } from '../../store/van/orders.ts'
import { addMove } from '../../store/van/van-stock.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { dayFor, keptOrder, orderNow } from './order-life.ts'
import { deliveredOf, stateOf } from './order-view.ts'

type Came = {
  readonly line: KeptLine
  readonly packs: number
  readonly onDay: string
  /** This moment. */
  readonly at: string
  readonly says: string | undefined
  readonly toVan: boolean
}

export const orderDeliver: UseCase<'order.deliver'> = (input, desk) =>
  writing(storeOf(desk), async (tx) => {
    const { orderId, lines, onDay = null, says, toVan = false } = input
    const day = onDay ?? desk.today
    const booked = []
    for (const [nth, { lineNo, packs }] of lines.entries()) {
      const found = await keptOrder(tx, orderId)
      if (!found.ok) return found
      const kept = found.value
      const line = lineToCome(kept, { lineNo, packs, path: `lines[${nth}]` })
      if (!line.ok) return line
      const may = dayFor(kept, day, desk.today)
      if (!may.ok) return may
      const move = await noteLine(tx, kept, {
        line: line.value,
        packs,
        onDay: day,
        at: desk.now(),
        says,
        toVan,
      })
      if (move !== null) booked.push(move)
    }
    return accept({ order: await orderNow(tx, orderId), booked })
  })

type Asked = { readonly lineNo: number; readonly packs: number; readonly path: string }

function lineToCome(kept: KeptOrder, { lineNo, packs, path }: Asked): Outcome<KeptLine> {
  const { orderId } = kept
  if (stateOf(kept) === 'cancelled') {
    const message = `${orderId} was cancelled on ${kept.cancelledOn}, so nothing comes of it.`
    return refuse('conflict', message, 'orderId', 'Note what came all the same as a receipt into the van.')
  }
  const line = kept.lines.find((one) => one.lineNo === lineNo)
  if (line === undefined) {
    return refuse(
      'not-found',
      `${orderId} has no line ${lineNo}; it has 1 to ${kept.lines.length}.`,
      `${path}.lineNo`,
    )
  }
  const open = line.packs - deliveredOf(kept, lineNo)
  if (packs <= open) return accept(line)
  const message = `${packs} of ${line.name} are more than are still to come: ${open} of the ${line.packs} ordered.`
  return refuse('conflict', message, `${path}.packs`, 'Note what came beyond that as a receipt into the van.')
}

const exact = (quantity: number) => Math.round(quantity * 1e6) / 1e6

/** What came, written down; what is for the van goes into it. */
async function noteLine(tx: WriteTx, kept: KeptOrder, came: Came) {
  const { orderId } = kept
  const { line, packs, onDay, says, at } = came
  const { itemId, name, unit } = line
  const quantity = itemId === null ? 0 : forVan(kept, came)
  const move =
    itemId === null || quantity === 0
      ? null
      : await addMove(tx, {
          itemId,
          kind: 'receipt',
          quantity,
          onDay,
          at,
          says: `Order ${orderId}, ${kept.body.supplierName}`,
          orderId,
        })
  await addDelivery(tx, { orderId, lineNo: line.lineNo, packs, onDay, at, says: says ?? null, moveNo: move })
  return move === null || itemId === null ? null : { itemId, name, quantity, unit }
}

/**
 * How much of it is for the van: all, or what goes beyond the need of the pick list. Several packs of one item fill one need; what
 * was booked into the van before has not filled any of it.
 */
function forVan(kept: KeptOrder, { line, packs, toVan }: Came): number {
  const came = exact(packs * line.packHolds)
  if (toVan) return came
  const same = kept.lines.filter(({ itemId }) => itemId === line.itemId)
  const lineNos = new Set(same.map(({ lineNo }) => lineNo))
  const need = kept.body.needs.reduce((sum, one) => (lineNos.has(one.lineNo) ? sum + one.need : sum), 0)
  const before = same.reduce((sum, one) => sum + deliveredOf(kept, one.lineNo) * one.packHolds, 0)
  const booked = kept.deliveries.reduce(
    (sum, one) => (lineNos.has(one.lineNo) ? sum + (one.toVan ?? 0) : sum),
    0,
  )
  const open = Math.max(0, exact(need - (before - booked)))
  return exact(came - Math.min(came, open))
}
