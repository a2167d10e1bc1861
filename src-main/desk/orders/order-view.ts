import type { Order, OrderRow, OrderState } from '../../domain/follow-up/order.ts'
import type { KeptOrder } from '../../store/van/orders.ts'

/** How much of each line has come. */
export function deliveredOf({ deliveries }: Pick<KeptOrder, 'deliveries'>, lineNo: number): number {
  return deliveries.reduce((sum, one) => (one.lineNo === lineNo ? sum + one.packs : sum), 0)
}

/** How an order stands: by what has come of it, then by whether it went out. */
export function stateOf(kept: KeptOrder): OrderState {
  if (kept.cancelledOn !== null) return 'cancelled'
  if (kept.deliveries.length === 0) return kept.sentOn === null ? 'made' : 'sent'
  const whole = kept.lines.every(({ lineNo, packs }) => deliveredOf(kept, lineNo) >= packs)
  return whole ? 'delivered' : 'partDelivered'
}

/** What is the same of an order in short and of one that is whole. */
function headOf(kept: KeptOrder) {
  const goodsPence = kept.lines.reduce((sum, { packs, packPence }) => sum + packs * packPence, 0)
  return {
    orderId: kept.orderId,
    supplierId: kept.supplierId,
    supplierName: kept.body.supplierName,
    ...(kept.pickingNo === null ? {} : { pickingNo: kept.pickingNo }),
    madeOn: kept.madeOn,
    ...(kept.sentOn === null ? {} : { sentOn: kept.sentOn }),
    ...(kept.cancelledOn === null ? {} : { cancelledOn: kept.cancelledOn }),
    ...(kept.cancelledSays === null ? {} : { cancelledSays: kept.cancelledSays }),
    state: stateOf(kept),
    goodsPence,
    carriagePence: kept.carriagePence,
    totalPence: goodsPence + kept.carriagePence,
  }
}

export function orderOf(kept: KeptOrder): Order {
  const head = headOf(kept)
  return {
    ...head,
    lines: kept.lines.map(({ itemId, ...line }) => {
      const deliveredPacks = deliveredOf(kept, line.lineNo)
      return {
        ...line,
        ...(itemId === null ? {} : { itemId }),
        linePence: line.packs * line.packPence,
        deliveredPacks,
        backOrderedPacks: head.state === 'partDelivered' ? line.packs - deliveredPacks : 0,
      }
    }),
    deliveries: kept.deliveries.map(({ says, toVan, ...one }) => ({
      ...one,
      ...(says === null ? {} : { says }),
      ...(toVan === null ? {} : { toVan }),
    })),
    says: kept.body.says,
  }
}

export function orderRowOf(kept: KeptOrder): OrderRow {
  const { lines } = orderOf(kept)
  const backOrderedPacks = lines.reduce((sum, line) => sum + line.backOrderedPacks, 0)
  return { ...headOf(kept), lines: lines.length, backOrderedPacks }
}
