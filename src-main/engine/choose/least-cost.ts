import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import { jobWork, labourFor } from '../labour/job-labour.ts'
import { markedUpPence } from '../money/price.ts'
import { penceForMinutes } from '../quote/labour-lines.ts'
import { askedFor, useBoxes } from '../takeoff/gather-needs.ts'
import type { JobNeed } from '../takeoff/gather-needs.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { specKey } from '../takeoff/match-spec.ts'
import { resolveNeed } from '../takeoff/resolve.ts'
import { rules } from '../takeoff/rule-list.ts'
import type { Shelf } from '../takeoff/shelf.ts'

/** Less than any quantity that matters: a sum added up in another order must not ask for one more pack. */
const nothingMuch = 1e-9

/** What needs cost at the least, pence with mark-up. */
export type LeastOfNeeds = (needs: readonly JobNeed[]) => number

/**
 * The least that a pack of an item can cost, pence: the lowest price that anybody asks, price breaks counted as if reached
 * wherever one pack is not enough. Null when nobody asks a price.
 * @param prices of one item, as the suppliers ask today
 * @source practice, no published source
 * @example leastPackPence([{ packHolds: 1, packPence: 900 }, { packHolds: 1, packPence: 800 }]) // => 800
 */
export function leastPackPence(
  prices: readonly Pick<SupplierPrice, 'packHolds' | 'packPence' | 'breaks'>[],
): number | null {
  let least: number | null = null
  for (const { packHolds, packPence, breaks } of prices) {
    const broken = packHolds >= 1 || breaks === undefined ? [] : breaks.map((step) => step.packPence)
    const pence = broken.reduce((lower, step) => Math.min(lower, step), packPence)
    least = least === null ? pence : Math.min(least, pence)
  }
  return least
}

/**
 * A rule that says what needs cost at the least: each pack at the lowest price that it can come to, so that more of a thing never
 * costs less. Emitters are left out. What was asked once is remembered.
 * @param shelf the catalogue with the prices in force
 * @param figures the firm's figures: pipe.kerfMm, money.markUpPartsBasisPoints
 * @source practice, no published source
 * @example leastOfNeeds({ parts: new Map(), prices: new Map() }, { settings: { 'pipe.kerfMm': { value: 1 }, 'money.markUpPartsBasisPoints': { value: 0 } } })([{ kind: 'vent', spec: {}, quantity: 1 }]) // => 0
 */
export function leastOfNeeds(shelf: Shelf, figures: Figures): LeastOfNeeds {
  const lowest = withoutBreaks(shelf)
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const markUp = figure(figures, 'money.markUpPartsBasisPoints')
  const known = new Map<string, number>()
  const price = (lineKey: string, group: readonly JobNeed[]): number => {
    const first = group[0]
    if (first === undefined) return 0
    const quantity = group.reduce((sum, need) => sum + need.quantity, 0)
    const pieces = group.flatMap((need) => need.pieces ?? [])
    const cuts = pieces.map((piece) => `${piece.lengthMm}x${piece.count}`).join(' ')
    const asked = `${lineKey}|${quantity}|${cuts}`
    const found = known.get(asked)
    if (found !== undefined) return found
    const merged = { ...first, lineKey, quantity: quantity - nothingMuch * quantity }
    const need = pieces.length === 0 ? merged : { ...merged, pieces }
    const { purchase } = resolveNeed(need, lowest, { lineId: 'least', kerfMm })
    const pence = purchase === null ? 0 : markedUpPence(purchase.costPence, markUp)
    known.set(asked, pence)
    return pence
  }
  return (needs) => {
    const wanted = needs.filter((need) => need.kind !== 'emitter')
    const groups = Map.groupBy(wanted, (need) => `${need.kind} ${specKey(need.spec)}`)
    return [...groups].reduce((sum, [lineKey, group]) => sum + price(lineKey, group), 0)
  }
}

/** Every pack at the lowest price that it can come to. */
function withoutBreaks(shelf: Shelf): Shelf {
  const parts = new Set([...shelf.parts.values()].flatMap((list) => list.map((part) => part.itemId)))
  const prices = new Map(
    [...shelf.prices].flatMap(([itemId, asked]) =>
      parts.has(itemId) ? [[itemId, asked.map((price) => lowered(price))] as const] : [],
    ),
  )
  return { ...shelf, prices }
}

function lowered({ breaks = [], ...price }: SupplierPrice): SupplierPrice {
  return {
    ...price,
    packPence: breaks.reduce((lower, step) => Math.min(lower, step.packPence), price.packPence),
  }
}

/**
 * The least that the parts (without the emitter) and the labour of a swap cost, pence before tax; a penny less, for rounding.
 * Refuses what the labour estimate refuses.
 * @param facts the facts of the swap
 * @param leastOf what needs cost at the least
 * @param figures the firm's figures
 * @source practice, no published source
 * @example leastBeside({ job: { swaps: 0, drain: 'freeze', contentLitres: 0, drainedShare: 0, builtYear: 2020, travelKm: 0, contentWhy: { says: 'None', value: 0, from: [] } }, rooms: [], swaps: [] }, () => 100, { settings: { 'water.inhibitorLitresPerLitre': { value: 100 }, 'money.labourPencePerHour': { value: 6000 }, 'labour.accessOptimisticRatio': { value: 1 }, 'labour.accessLikelyRatio': { value: 1 }, 'labour.accessPessimisticRatio': { value: 1 } }, tasks: { fill: { name: 'Work', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 }, 'leak-check': { name: 'Work', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 }, explain: { name: 'Work', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 } } }).value // => 6099
 */
export function leastBeside(facts: JobFacts, leastOf: LeastOfNeeds, figures: Figures): Outcome<number> {
  const labour = labourFor(jobWork(facts, figures), figures)
  if (!labour.ok) return labour
  const { remaining } = useBoxes(askedFor(rules, facts, figures), facts)
  const labourPence = penceForMinutes(labour.value.expectedMin, figure(figures, 'money.labourPencePerHour'))
  return accept(leastOf(remaining) + labourPence - 1)
}
