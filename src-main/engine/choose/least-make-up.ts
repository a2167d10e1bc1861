import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { useBoxes } from '../takeoff/gather-needs.ts'
import type { JobNeed } from '../takeoff/gather-needs.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import type { LeastOfNeeds } from './least-cost.ts'
import { fixingsFor } from './make-up.ts'
import type { TrialPrices } from './trial-prices.ts'

/** What prices need: what needs cost at the least and could be met with, what the rules say, and the firm's figures. */
export type Least = Pick<TrialPrices, 'needsOf' | 'holeNeedsOf' | 'workPence'> & {
  readonly leastOf: LeastOfNeeds
  readonly itemsOf: (need: JobNeed) => readonly string[]
  readonly figures: Figures
}

/**
 * What all emitters of one make-up cost at the least beside their own price, pence before tax; a penny less, for rounding: of all fixings
 * for such a wall the cheapest to use. Where holes of one emitter may take different fixings, the least time of any, and of the parts in
 * the holes no more than one hole each of two fixings.
 * Refuses what the labour estimate refuses.
 * @param bare the facts of the make-up, once for each way of fixing
 * @param mixed whether holes of one emitter may take different fixings
 * @param least what needs cost at the least, the shelf and the firm's figures
 * @source practice, no published source
 * @example leastOfMakeUp([], false, {}) // => { "ok": true, "value": 0 }
 */
export function leastOfMakeUp(bare: readonly JobFacts[], mixed: boolean, least: Least): Outcome<number> {
  const [first] = bare
  if (first === undefined) return accept(0)
  const works: number[] = []
  for (const way of bare) {
    const work = least.workPence(way)
    if (!work.ok) return work
    works.push(work.value)
  }
  if (!mixed) {
    const ways = bare.map((way, at) => least.leastOf(remaining(way, least)) + (works[at] ?? 0))
    return accept(Math.min(...ways) - 1)
  }
  const withoutHoles = { ...first, swaps: first.swaps.map((swap) => ({ ...swap, holes: [] })) }
  const besides = remaining({ ...withoutHoles, swaps: withoutHoles.swaps.map(boardless) }, least)
  const others = itemsFor(besides, least)
  const inHoles = [...bare, ...pairsOf(first, least.figures)].map((way) => {
    const needs = useBoxes(least.holeNeedsOf(way), way).remaining
    return least.leastOf(apartFrom(others, needs, least))
  })
  return accept(Math.min(...works) + least.leastOf(besides) + Math.min(...inHoles) - 1)
}

function boardless(swap: JobFacts['swaps'][number]): JobFacts['swaps'][number] {
  return { ...swap, ask: { ...swap.ask, needsBoard: false } }
}

function remaining(facts: JobFacts, { needsOf }: Pick<Least, 'needsOf'>): readonly JobNeed[] {
  return useBoxes(needsOf(facts), facts).remaining
}

/** One hole each of every two fixings: no mixture needs less. */
function pairsOf(facts: JobFacts, figures: Figures): readonly JobFacts[] {
  const [swap] = facts.swaps
  const [hole] = swap?.holes ?? []
  if (swap === undefined || hole === undefined) return []
  const fixings = fixingsFor(swap.wallBuild, figures)
  return fixings.flatMap((one, index) =>
    fixings.slice(index + 1).map((other) => {
      const holes = [one, other].map((fixing) => ({ ...hole, fixing, needsBoard: false }))
      return { ...facts, swaps: [{ ...swap, holes }] }
    }),
  )
}

/**
 * The ids of all items that some of these needs could be met with.
 * @param needs what the rules ask for
 * @param least what each could be met with
 * @source practice, no published source
 * @example [...itemsFor([{ kind: 'vent' }, { kind: 'vent' }], { itemsOf: () => ['a', 'b'] })] // => ["a", "b"]
 */
export function itemsFor(
  needs: readonly JobNeed[],
  { itemsOf }: Pick<Least, 'itemsOf'>,
): ReadonlySet<string> {
  const items = new Set<string>()
  for (const need of needs) for (const itemId of itemsOf(need)) items.add(itemId)
  return items
}

/**
 * Those needs that none of these items could meet: they share no pack with what the items are bought for.
 * @param items ids of items
 * @param needs what the rules ask for
 * @param least what each could be met with
 * @source practice, no published source
 * @example apartFrom(new Set(['a']), [{ kind: 'vent' }, { kind: 'blank' }], { itemsOf: ({ kind }) => (kind === 'vent' ? ['a'] : ['b']) }) // => [{ "kind": "blank" }]
 */
export function apartFrom(
  items: ReadonlySet<string>,
  needs: readonly JobNeed[],
  { itemsOf }: Pick<Least, 'itemsOf'>,
): readonly JobNeed[] {
  return needs.filter((need) => !itemsOf(need).some((itemId) => items.has(itemId)))
}
