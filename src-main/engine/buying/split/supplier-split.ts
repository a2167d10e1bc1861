import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { splitAnswer } from './supplier-split-answer.ts'
import type { SplitAnswer } from './supplier-split-answer.ts'
import { costOfSplit, plainSplits, settledSplit, sharesOf } from './supplier-split-cost.ts'
import type { Assignment, SplitSum, Terms } from './supplier-split-cost.ts'
import { chosenIn, splitModel } from './supplier-split-model.ts'
import type { OfferedLine } from './supplier-split-offers.ts'

/** A split made ready: settled without search, or to be put to a solver. */
export type SplitCase = {
  /** Every line, in the order of the ids. */
  readonly lines: readonly OfferedLine[]
  readonly suppliers: readonly Terms[]
  readonly sum: SplitSum
  readonly settled: Assignment | null
}

/**
 * What a solver says of a model in LP text: the values it found, and whether it proved them the best; that there are none;
 * or that it ran out of time before it found any.
 */
export type Solved =
  | { readonly kind: 'found'; readonly proved: boolean; readonly valueOf: (name: string) => number }
  | { readonly kind: 'impossible' }
  | { readonly kind: 'outOfTime' }

/** The solver that the split is handed: it takes LP text. */
export type Solve = (model: string) => Promise<Solved>

/**
 * Makes a split ready. Lines and suppliers are put into the order of their ids, so that the answer does not depend on the
 * order in which they were given. Lines that nobody offers stay out of the sum and stand in the answer as gaps.
 *
 * @param lines each with what it comes to from each supplier
 * @param suppliers their terms, in whole pence
 * @source practice, no published source
 * @example splitCase([{ lineId: 'b', toBuy: 1, from: [] }, { lineId: 'a', toBuy: 1, from: [] }], []).lines.map((line) => line.lineId) // => ["a", "b"]
 */
export function splitCase(lines: readonly OfferedLine[], suppliers: readonly Terms[]): SplitCase {
  const sorted = lines
    .map((line) => ({ ...line, from: line.from.toSorted((a, b) => byId(a.supplierId, b.supplierId)) }))
    .toSorted((a, b) => byId(a.lineId, b.lineId))
  const known = suppliers.toSorted((a, b) => byId(a.supplierId, b.supplierId))
  const bought = sorted.filter(({ from }) => from.length > 0)
  const used = new Set(
    bought.flatMap(({ from }) => from.flatMap(sharesOf).map(({ supplierId }) => supplierId)),
  )
  const sum: SplitSum = {
    lines: bought.map(({ lineId, from }) => ({
      lineId,
      from: from.map((way) => ({
        supplierId: way.supplierId,
        pence: way.pence,
        ...(way.shares === undefined ? {} : { shares: sharesOf(way) }),
      })),
    })),
    suppliers: known.filter(({ supplierId }) => used.has(supplierId)),
  }
  return { lines: sorted, suppliers: known, sum, settled: settledSplit(sum) }
}

/**
 * The cheapest assignment of lines to suppliers, with carriage, free carriage and minimum orders. The solver is asked only where the
 * answer is not settled without it; a split that needs no search is kept when it is no dearer than what the solver found.
 * The solver's plan is costed again in whole pence and checked against every minimum before it is believed.
 * Refuses, as impossible, what no split can meet.
 *
 * @param ready as `splitCase` gives it
 * @param solved what the solver said of `splitModel(ready.sum)`; null when it was not asked
 * @source uncapacitated facility location with fixed charges (Balinski), with order minima, ours
 * @example splitFrom(splitCase([{ lineId: 'a', itemId: 'clip', need: 1, fromVan: 0, toBuy: 1, unit: 'each', from: [{ supplierId: 's', packs: [], pence: 90, leftover: 0, why: { says: 'Given', value: 90, from: [] } }] }], [{ supplierId: 's', name: 'S', carriagePence: 10 }]), null).value.totalPence // => 100
 */
export function splitFrom(ready: SplitCase, solved: Solved | null): Outcome<SplitAnswer> {
  if (ready.settled !== null)
    return accept(splitAnswer(ready, ready.settled, { proved: true, searched: false }))
  if (solved === null) throw new Error('This split needs the solver, and it was not asked')
  if (solved.kind === 'impossible') return noSplit(ready)
  const searched = solved.kind === 'found' ? [chosenIn(ready.sum, solved.valueOf)] : []
  const plans = [...searched, ...plainSplits(ready.sum)]
    .map((plan, place) => ({ plan, place, cost: costOfSplit(ready.sum, plan) }))
    .filter(({ cost }) => cost.allowed)
    .toSorted((a, b) => a.cost.totalPence - b.cost.totalPence || a.place - b.place)
  const best = plans[0]
  if (best === undefined) {
    const message =
      'No split over the suppliers was found within the time limit, and none that is plain to see meets every minimum order.'
    return refuse('refused', message, 'lines', 'Ask for fewer lines at a time, or leave a supplier out.')
  }
  const proved = solved.kind === 'found' && solved.proved && best.place === 0
  return accept(splitAnswer(ready, best.plan, { proved, searched: true }))
}

/**
 * The whole of it with a solver at hand.
 *
 * @param ready as `splitCase` gives it
 * @param solve takes LP text
 * @source as splitFrom
 * @example splitWith(splitCase([], []), () => { throw new Error('not asked') }) instanceof Promise // => true
 */
export async function splitWith(ready: SplitCase, solve: Solve): Promise<Outcome<SplitAnswer>> {
  return splitFrom(ready, ready.settled === null ? await solve(splitModel(ready.sum)) : null)
}

function noSplit({ sum }: SplitCase): Outcome<never> {
  const minima = sum.suppliers
    .filter(({ minimumOrderPence = 0 }) => minimumOrderPence > 0)
    .map(({ name }) => name)
  return refuse(
    'impossible',
    `However the lines are split, some order stays under its supplier's minimum (${minima.join(', ')}).`,
    'suppliers',
    'Add what the van needs anyway to the order, fetch the goods from a supplier without a minimum, or ask for the minimum to be waived.',
  )
}

function byId(a: string, b: string): number {
  if (a === b) return 0
  return a < b ? -1 : 1
}
