import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { allFrom, costOfSplit, orderCost } from './supplier-split-cost.ts'
import type { Assignment, OrderCost, SplitCost, Terms } from './supplier-split-cost.ts'
import type { SplitCase } from './supplier-split.ts'
import type { Share, Way } from './mixed-ways.ts'
import type { OfferedLine } from './supplier-split-offers.ts'
import type { LineBought } from './supplier-split-packs.ts'

export type SplitOrder = {
  readonly supplierId: string
  readonly name: string
  readonly lines: readonly {
    readonly lineId: string
    readonly itemId: string
    readonly packs: LineBought['packs']
    readonly leftover: number
    readonly pence: number
    /** All lines that these packs are for, where there are several. */
    readonly lineIds?: readonly string[]
  }[]
  readonly goodsPence: number
  readonly carriagePence: number
  readonly totalPence: number
  /** How much more in goods would bring this order free of carriage; absent when nothing would. */
  readonly shortOfFreePence?: number
}
/** What one supplier alone would cost, or why that can't be done. */
export type OneSupplier = {
  readonly supplierId: string
  readonly name: string
  readonly goodsPence?: number
  readonly carriagePence?: number
  readonly totalPence?: number
  readonly cannot?: string
}
export type SplitAnswer = {
  readonly orders: readonly SplitOrder[]
  readonly fromVan: readonly { readonly lineId: string; readonly itemId: string; readonly quantity: number }[]
  /** Lines that nobody can supply. They are in no sum here. */
  readonly gaps: readonly { readonly lineId: string; readonly itemId: string; readonly says: string }[]
  readonly goodsPence: number
  readonly carriagePence: number
  readonly totalPence: number
  readonly proved: boolean
  readonly says: string
  readonly oneSupplier: readonly OneSupplier[]
  readonly why: Derivation
}
type Proof = { readonly proved: boolean; readonly searched: boolean }

/**
 * A split laid out: orders, van, gaps, sums, what one supplier alone would cost, and why.
 * Total = sum over orders of (goods + carriage).
 *
 * @param ready the case
 * @param plan by line, the supplier
 * @param proof whether it is proved to be the cheapest, and whether a search was made
 * @source practice, no published source
 * @example splitAnswer({ lines: [], suppliers: [], sum: { lines: [], suppliers: [] }, settled: null }, new Map(), { proved: true, searched: false }).totalPence // => 0
 */
export function splitAnswer(ready: SplitCase, plan: Assignment, proof: Proof): SplitAnswer {
  const cost = costOfSplit(ready.sum, plan)
  const orders = cost.orders.map((order) => orderOf(ready, plan, order))
  const carriagePence = cost.orders.reduce((sum, order) => sum + order.carriagePence, 0)
  const says = verdict(proof)
  return {
    orders,
    fromVan: ready.lines
      .filter(({ fromVan }) => fromVan > 0)
      .map(({ lineId, itemId, fromVan }) => ({ lineId, itemId, quantity: fromVan })),
    gaps: ready.lines
      .filter(({ toBuy, from }) => toBuy > 0 && from.length === 0)
      .map(({ lineId, itemId, gap }) => ({
        lineId,
        itemId,
        says: gap ?? `No supplier offers ${itemId}.`,
      })),
    goodsPence: cost.totalPence - carriagePence,
    carriagePence,
    totalPence: cost.totalPence,
    proved: proof.proved,
    says,
    oneSupplier: ready.suppliers.map((terms) => alone(ready, terms)),
    why: whySplit(ready, plan, { cost, says }),
  }
}

function verdict({ proved, searched }: Proof): string {
  if (!proved) return 'The best found within the time limit; it is not proved that no other split is cheaper.'
  return searched
    ? 'The cheapest split there is: every other was searched or ruled out.'
    : 'The cheapest split there is: nothing can cost less than each line at its cheapest without carriage, or there was no choice.'
}

function orderOf({ lines, suppliers }: SplitCase, plan: Assignment, order: OrderCost): SplitOrder {
  const { supplierId, goodsPence, carriagePence } = order
  const terms = suppliers.find((one) => one.supplierId === supplierId)
  const bought = lines.flatMap(({ lineId, itemId, from, lineIds }) => {
    const taken = shareFrom(from, plan.get(lineId), supplierId)
    if (taken === undefined) return []
    const { packs, leftover, pence } = taken
    return [{ lineId, itemId, packs, leftover, pence, ...(lineIds === undefined ? {} : { lineIds }) }]
  })
  const totalPence = goodsPence + carriagePence
  const laid = {
    supplierId,
    name: terms?.name ?? supplierId,
    lines: bought,
    goodsPence,
    carriagePence,
    totalPence,
  }
  const free = terms?.carriageFreeFromPence
  return carriagePence > 0 && free !== undefined ? { ...laid, shortOfFreePence: free - goodsPence } : laid
}

/** What a supplier brings of a line by the way that it is bought; nothing when another brings it. */
function shareFrom(from: readonly Way[], way: string | undefined, supplierId: string): Share | undefined {
  const taken = from.find((one) => one.supplierId === way)
  return (taken?.shares ?? (taken === undefined ? [] : [taken])).find((one) => one.supplierId === supplierId)
}

function alone({ sum, lines }: SplitCase, terms: Terms): OneSupplier {
  const { supplierId, name } = terms
  const without = sum.lines.filter(({ from }) => !from.some((one) => one.supplierId === supplierId))
  if (without.length > 0) {
    const itemOf = new Map(lines.map((line) => [line.lineId, spokenName(line)]))
    const named = without.slice(0, 5).map(({ lineId }) => itemOf.get(lineId) ?? lineId)
    const between = named.some((one) => one.includes(',')) ? '; ' : ', '
    const more = without.length > named.length ? ` and ${without.length - named.length} more` : ''
    return { supplierId, name, cannot: `${name} does not offer ${named.join(between)}${more}.` }
  }
  const goodsPence = costOfSplit(sum, allFrom(sum, supplierId)).orders.reduce(
    (total, order) => total + order.goodsPence,
    0,
  )
  const order = orderCost(terms, goodsPence)
  if (sum.lines.length === 0) return { supplierId, name, goodsPence: 0, carriagePence: 0, totalPence: 0 }
  if (!order.reachesMinimum) {
    const cannot = `The order of ${inPounds(goodsPence)} is under ${name}'s minimum of ${inPounds(terms.minimumOrderPence ?? 0)}.`
    return { supplierId, name, goodsPence, cannot }
  }
  const { carriagePence } = order
  return { supplierId, name, goodsPence, carriagePence, totalPence: goodsPence + carriagePence }
}

function whySplit(
  ready: SplitCase,
  plan: Assignment,
  { cost, says }: { readonly cost: SplitCost; readonly says: string },
): Derivation {
  const orders = cost.orders.map((order) => whyOrder(ready, plan, order))
  const van = ready.lines
    .filter(({ fromVan }) => fromVan > 0)
    .map((line) =>
      because(`${spokenName(line)} from the van`, line.fromVan, {
        unit: line.unit,
        from: [given('Needed', line.need, line.unit)],
      }),
    )
  return because(`Goods and carriage of all orders. ${says}`, cost.totalPence, {
    unit: 'pence',
    from: [...orders, ...van],
  })
}

function whyOrder({ lines, suppliers }: SplitCase, plan: Assignment, order: OrderCost): Derivation {
  const { supplierId, goodsPence, carriagePence } = order
  const terms = suppliers.find((one) => one.supplierId === supplierId)
  const goods = lines
    .filter(({ lineId, from }) => shareFrom(from, plan.get(lineId), supplierId) !== undefined)
    .map((line) => whyLine(line, { way: plan.get(line.lineId), supplierId, suppliers }))
  return because(`Order from ${terms?.name ?? supplierId}`, goodsPence + carriagePence, {
    unit: 'pence',
    from: [
      because('Goods', goodsPence, { unit: 'pence', from: goods }),
      because('Carriage', carriagePence, { unit: 'pence', from: whyCarriage(terms) }),
    ],
  })
}

function whyCarriage(terms: Terms | undefined): readonly Derivation[] {
  if (terms === undefined) return []
  const { carriagePence, carriageFreeFromPence, minimumOrderPence } = terms
  return [
    given('Carriage asked', carriagePence, 'pence'),
    ...(carriageFreeFromPence === undefined
      ? []
      : [given('Free of carriage from', carriageFreeFromPence, 'pence')]),
    ...(minimumOrderPence === undefined ? [] : [given('Minimum order', minimumOrderPence, 'pence')]),
  ]
}

type Taken = {
  readonly way: string | undefined
  readonly supplierId: string
  readonly suppliers: readonly Terms[]
}

function whyLine(line: OfferedLine, { way, supplierId, suppliers }: Taken): Derivation {
  const nameOf = new Map(suppliers.map((one) => [one.supplierId, one.name]))
  const inWords = (one: Way) =>
    (one.shares ?? [one]).map(({ supplierId: id }) => nameOf.get(id) ?? id).join(' and ')
  const taken = line.from.find((one) => one.supplierId === way)
  const others = line.from
    .filter((one) => one !== taken)
    .map((one) => because(`The same from ${inWords(one)}`, one.pence, { unit: 'pence', from: [one.why] }))
  return because(spokenName(line), shareFrom(line.from, way, supplierId)?.pence ?? 0, {
    unit: 'pence',
    from: [...(taken === undefined ? [] : [taken.why]), ...others],
  })
}

function spokenName({ name, itemId }: OfferedLine): string {
  return name ?? itemId
}

function inPounds(pence: number): string {
  return `£${Math.floor(pence / 100)}.${String(pence % 100).padStart(2, '0')}`
}
