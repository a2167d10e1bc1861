import { useQueryClient } from '@tanstack/react-query'
import { useAsk, useCommand } from '../../../bridge/use-ask.ts'

/** After an order changed, what is shown of it is asked for again. */
function useAgain() {
  const queries = useQueryClient()
  return () =>
    Promise.all(
      ['order.list', 'order.read', 'van.stock', 'van.moves'].map((name) =>
        queries.invalidateQueries({ queryKey: [name] }),
      ),
    )
}

/** The orders of a pick list, and how more are made. */
export function useOrders(pickingNo: number) {
  const list = useAsk('order.list', { pickingNo })
  const make = useCommand('order.make', useAgain())
  return { list, make }
}

/** One order, whole, and what can happen to it. */
export function useOrder(orderId: string) {
  const again = useAgain()
  const read = useAsk('order.read', { orderId })
  const sent = useCommand('order.sent', again)
  const deliver = useCommand('order.deliver', again)
  const cancel = useCommand('order.cancel', again)
  return { read, sent, deliver, cancel }
}

export type OrderWork = ReturnType<typeof useOrder>
