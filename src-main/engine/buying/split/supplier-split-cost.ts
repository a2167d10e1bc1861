/** What a supplier asks for bringing an order. */
export type Terms = {
  readonly supplierId: string
  readonly name: string
  readonly carriagePence: number
  /** Goods of this much or more come free of carriage. */
  readonly carriageFreeFromPence?: number | undefined
  /** Goods of less than this are not brought at all. */
  readonly minimumOrderPence?: number | undefined
}
/** What a line costs from one supplier, or from two together: then the id is of the pair, and the shares say what each gets. */
export type WayCost = {
  readonly supplierId: string
  readonly pence: number
  readonly shares?: readonly { readonly supplierId: string; readonly pence: number }[] | undefined
}
/** The bare sum behind a split: what each line costs from each supplier who has it, and the suppliers' terms. */
export type SplitSum = {
  readonly lines: readonly {
    readonly lineId: string
    readonly from: readonly WayCost[]
  }[]
  readonly suppliers: readonly Terms[]
}
/** By line, the supplier it is bought from, or the pair of them. */
export type Assignment = ReadonlyMap<string, string>
export type OrderCost = {
  readonly supplierId: string
  readonly goodsPence: number
  readonly carriagePence: number
  readonly reachesMinimum: boolean
}
export type SplitCost = {
  readonly orders: readonly OrderCost[]
  readonly totalPence: number
  /** Every line is bought from somebody who has it, and every order reaches its supplier's minimum. */
  readonly allowed: boolean
}

/**
 * What an assignment of lines to suppliers costs: goods, and carriage of each order that does not reach the sum from which it
 * is free. Total = sum over suppliers used of (goods_s + carriage_s if goods_s < free_s).
 *
 * @param sum what each line costs from each supplier, in whole pence, and the suppliers' terms
 * @param assignment by line, the supplier
 * @source practice, no published source
 * @example costOfSplit({ lines: [{ lineId: 'a', from: [{ supplierId: 's', pence: 900 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 600, carriageFreeFromPence: 1000 }] }, new Map([['a', 's']])).totalPence // => 1500
 */
export function costOfSplit(sum: SplitSum, assignment: Assignment): SplitCost {
  const goods = new Map<string, number>()
  let complete = true
  for (const { lineId, from } of sum.lines) {
    const taken = from.find(({ supplierId }) => supplierId === assignment.get(lineId))
    if (taken === undefined) complete = false
    for (const { supplierId, pence } of taken === undefined ? [] : sharesOf(taken)) {
      goods.set(supplierId, (goods.get(supplierId) ?? 0) + pence)
    }
  }
  const orders = sum.suppliers.flatMap((terms) => {
    const goodsPence = goods.get(terms.supplierId)
    return goodsPence === undefined ? [] : [orderCost(terms, goodsPence)]
  })
  return {
    orders,
    totalPence: orders.reduce((total, order) => total + order.goodsPence + order.carriagePence, 0),
    allowed: complete && orders.every(({ reachesMinimum }) => reachesMinimum),
  }
}

/**
 * What each supplier gets of a line: all of it from one, or a share each.
 *
 * @param way from one supplier or from two
 * @source practice, no published source
 * @example sharesOf({ supplierId: 's', pence: 5 }) // => [{ supplierId: 's', pence: 5 }]
 */
export function sharesOf(way: WayCost): readonly { readonly supplierId: string; readonly pence: number }[] {
  return (way.shares ?? [way]).map(({ supplierId, pence }) => ({ supplierId, pence }))
}

/**
 * One order: its carriage, and whether the supplier takes it at all.
 *
 * @param terms of the supplier
 * @param goodsPence before carriage and tax, whole pence, 0 or more
 * @source practice, no published source
 * @example orderCost({ supplierId: 's', name: 'S', carriagePence: 600, carriageFreeFromPence: 1000 }, 1000).carriagePence // => 0
 */
export function orderCost(terms: Terms, goodsPence: number): OrderCost {
  const { supplierId, carriagePence, carriageFreeFromPence, minimumOrderPence = 0 } = terms
  const free = carriageFreeFromPence !== undefined && goodsPence >= carriageFreeFromPence
  return {
    supplierId,
    goodsPence,
    carriagePence: free ? 0 : carriagePence,
    reachesMinimum: goodsPence >= minimumOrderPence,
  }
}

/**
 * Every line from whoever is cheapest for it, carriage not looked at; of equals one supplier before two, then the first by id.
 *
 * @param sum what each line costs from each supplier
 * @source practice, no published source
 * @example [...cheapestByLine({ lines: [{ lineId: 'a', from: [{ supplierId: 't', pence: 3 }, { supplierId: 's', pence: 3 }] }], suppliers: [] }).values()] // => ["s"]
 */
export function cheapestByLine(sum: SplitSum): Assignment {
  return new Map(
    sum.lines.flatMap(({ lineId, from }) => {
      const best = from.toSorted(
        (a, b) =>
          a.pence - b.pence ||
          sharesOf(a).length - sharesOf(b).length ||
          (a.supplierId < b.supplierId ? -1 : 1),
      )[0]
      return best === undefined ? [] : [[lineId, best.supplierId] as const]
    }),
  )
}

/**
 * Every line from one supplier.
 *
 * @param sum whose lines are assigned
 * @param supplierId the one
 * @source practice, no published source
 * @example allFrom({ lines: [{ lineId: 'a', from: [] }], suppliers: [] }, 's').get('a') // => "s"
 */
export function allFrom(sum: SplitSum, supplierId: string): Assignment {
  return new Map(sum.lines.map(({ lineId }) => [lineId, supplierId]))
}

/**
 * A split that can't be beaten, found without search; null when there is none. No split costs less than each line at its
 * cheapest with no carriage at all, so one that costs just that is the cheapest: one supplier for all is tried first, then
 * every line from its cheapest. A single supplier who has to do is settled too.
 *
 * @param sum what each line costs from each supplier, and the suppliers' terms
 * @source lower bound by relaxing the fixed charges, ours
 * @example settledSplit({ lines: [{ lineId: 'a', from: [{ supplierId: 's', pence: 5 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 0 }] }).get('a') // => "s"
 */
export function settledSplit(sum: SplitSum): Assignment | null {
  const plans = plainSplits(sum)
  const least = sum.lines.reduce(
    (total, { from }) =>
      total + from.reduce((low, { pence }) => Math.min(low, pence), Number.MAX_SAFE_INTEGER),
    0,
  )
  const forced = sum.lines.every(({ from }) => from.length === 1)
  return (
    plans.find((plan) => {
      const cost = costOfSplit(sum, plan)
      return cost.allowed && (forced || cost.totalPence === least)
    }) ?? null
  )
}

/**
 * The splits that need no search: all from one supplier, for each who can; and every line from its cheapest.
 *
 * @param sum what each line costs from each supplier, and the suppliers' terms
 * @source practice, no published source
 * @example plainSplits({ lines: [{ lineId: 'a', from: [{ supplierId: 's', pence: 5 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 0 }] }).length // => 2
 */
export function plainSplits(sum: SplitSum): readonly Assignment[] {
  const single = sum.suppliers.map(({ supplierId }) => allFrom(sum, supplierId))
  return [...single, cheapestByLine(sum)].filter((plan) => costOfSplit(sum, plan).allowed)
}
