import type { Order } from '../../domain/follow-up/order.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { reading, writing } from '../../store/store.ts'
import type { ReadTx } from '../../store/tables.ts'
import { listOrders, markCancelled, markSent, readOrder } from '../../store/van/orders.ts'
import type { KeptOrder } from '../../store/van/orders.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { orderOf, orderRowOf, stateOf } from './order-view.ts'

export const orderList: UseCase<'order.list'> = async ({ pickingNo }, desk) => {
  const kept = await reading(storeOf(desk), (tx) => listOrders(tx, pickingNo))
  return accept({ orders: kept.map(orderRowOf) })
}

export const orderRead: UseCase<'order.read'> = ({ orderId }, desk) =>
  reading(storeOf(desk), async (tx) => {
    const found = await keptOrder(tx, orderId)
    return found.ok ? accept({ order: orderOf(found.value) }) : found
  })

export const orderSent: UseCase<'order.sent'> = ({ orderId, onDay = null }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const found = await keptOrder(tx, orderId)
    if (!found.ok) return found
    const kept = found.value
    if (kept.sentOn !== null)
      return refuse('conflict', `${orderId} was sent on ${kept.sentOn} already.`, 'orderId')
    const state = stateOf(kept)
    if (state !== 'made')
      return refuse('conflict', `${orderId} is ${inWords[state]}, so it is not sent any more.`, 'orderId')
    const sentOn = onDay ?? desk.today
    const may = dayFor(kept, sentOn, desk.today)
    if (!may.ok) return may
    await markSent(tx, orderId, sentOn)
    return accept({ order: await orderNow(tx, orderId) })
  })

export const orderCancel: UseCase<'order.cancel'> = ({ orderId, says, onDay = null }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const found = await keptOrder(tx, orderId)
    if (!found.ok) return found
    const state = stateOf(found.value)
    if (state !== 'made' && state !== 'sent') {
      const message = `${orderId} is ${inWords[state]}, so it can’t be cancelled any more.`
      const next = state === 'cancelled' ? undefined : 'Send back what is not wanted, and note it as a use.'
      return refuse('conflict', message, 'orderId', next)
    }
    if (says.trim() === '') return refuse('invalid', 'Say why the order is cancelled.', 'says')
    const cancelledOn = onDay ?? desk.today
    const may = dayFor(found.value, cancelledOn, desk.today)
    if (!may.ok) return may
    await markCancelled(tx, orderId, { onDay: cancelledOn, says })
    return accept({ order: await orderNow(tx, orderId) })
  })

export const inWords = {
  made: 'made and not yet sent',
  sent: 'with the supplier',
  partDelivered: 'delivered in part',
  delivered: 'delivered',
  cancelled: 'cancelled',
} as const

/** Nothing happens to an order before it was made or sent, nor later than today. */
export function dayFor(
  { madeOn, sentOn }: Pick<KeptOrder, 'madeOn' | 'sentOn'>,
  onDay: string,
  today: string,
): Outcome<true> {
  if (onDay > today) return refuse('invalid', `${onDay} is still to come; give a day up to today.`, 'onDay')
  const [from, what] = sentOn === null ? [madeOn, 'made'] : [sentOn, 'sent']
  if (onDay >= from) return accept(true)
  const message = `The order was ${what} on ${from}; give that day or a later one.`
  return refuse('invalid', message, 'onDay')
}

/** An order as it stands after a write. */
export async function orderNow(tx: ReadTx, orderId: string): Promise<Order> {
  const kept = await readOrder(tx, orderId)
  if (kept === null) throw new Error('An order that was just written is not there')
  return orderOf(kept)
}

/** One order; refused when there is none of that number. */
export async function keptOrder(tx: ReadTx, orderId: string): Promise<Outcome<KeptOrder>> {
  const kept = await readOrder(tx, orderId)
  if (kept !== null) return accept(kept)
  return refuse(
    'not-found',
    `There is no order called ${orderId}.`,
    'orderId',
    '`order.list` names them all.',
  )
}
