import { barTotals } from './bar-totals.ts'
import type { BarTotals } from './bar-totals.ts'
import { branchedPlan } from './branched-plan.ts'
import type { Branched } from './branched-plan.ts'
import { planOf, worthOf } from './cutting.ts'
import type { CutBar, Cutting, Plan } from './cutting.ts'
import { filledPlan, quickPlan } from './first-plan.ts'
import { linearPlan, provenValues } from './piece-values.ts'
import type { ProvenValues } from './piece-values.ts'

/** How much work is done before the best plan so far is given unproven. */
export type Effort = {
  /** Steps of filling a bar, each time the bars are searched one after another. */
  readonly steps: number
  /** Linear programs of branch and price. */
  readonly programs: number
}

/** Enough for any list of ten rooms, nearly always; some seconds at the most. */
export const fullEffort: Effort = { steps: 300_000, programs: 1_200 }

/**
 * The cheapest plan with a bound that no plan can pass: proven when the bound is the plan's own cost. First the longest-first
 * plan against the bound of the linear program; then a short search, bar after bar; then branch and price. In the search the
 * longest piece left is on some bar, so each stock and each filling with that piece, to which nothing more can be added, is a
 * branch. A branch ends when its cost so far + the pieces' proven values passes the dearest total that would still be an
 * improvement and that some number of bars can come to, or when the same pieces were left before at no greater cost.
 *
 * @param cutting the job, each size fitting some stock
 * @param effort how much work may be done
 * @source Gilmore and Gomory 1961 (bound); Martello and Toth, Knapsack Problems, chapter 8 (branching), from memory
 * @example cheapestPlan({ sizes: [6, 5, 4, 3], counts: [1, 1, 1, 2], stock: [{ room: 11, cost: 1 }] }, fullEffort).bound // => 2
 */
export function cheapestPlan(cutting: Cutting, effort: Effort): Branched {
  const need = worthOf(cutting.counts, cutting.sizes)
  const quick = quickPlan(cutting)
  const totals = barTotals(cutting.stock, quick.cost)
  if (quick.cost <= totals.atLeast(0, need)) return { plan: quick, bound: quick.cost }
  const linear = linearPlan(cutting)
  const proven = provenValues(cutting, linear.values, quick.cost)
  const least = totals.atLeast(Math.ceil(worthOf(cutting.counts, proven.values) / proven.scale), need)
  const first = cheaper(quick, filledPlan(cutting, linear.values))
  if (first.cost <= least) return { plan: first, bound: first.cost }
  const found = searched({ cutting, proven, first, totals, least, steps: effort.steps })
  if (found.bound >= found.plan.cost) return found
  const pool = linear.ways.map(({ bar }) => bar)
  const branched = branchedPlan({ cutting, first: found.plan, totals, pool, programs: effort.programs })
  return { plan: branched.plan, bound: Math.max(branched.bound, Math.min(least, branched.plan.cost)) }
}

function cheaper(a: Plan, b: Plan): Plan {
  return b.cost < a.cost ? b : a
}

type Search = {
  readonly cutting: Cutting
  readonly proven: ProvenValues
  readonly first: Plan
  readonly totals: BarTotals
  readonly least: number
  readonly steps: number
}

function searched({ cutting, proven, first, totals, least, steps }: Search): Branched {
  const left = [...cutting.counts]
  const need = worthOf(left, cutting.sizes)
  const bars: CutBar[] = []
  const seen = new Map<string, number>()
  const budget = { steps }
  let best = first
  let goal = totals.below(first.cost, need)
  const branch = (cost: number, value: number, length: number): void => {
    const longest = left.findIndex((count) => count > 0)
    if (longest < 0) {
      best = planOf(cutting, [...bars])
      goal = best.cost <= least ? -1 : totals.below(best.cost, need)
      return
    }
    const key = left.join()
    const before = seen.get(key)
    if (before !== undefined && before <= cost) return
    seen.set(key, cost)
    const ask = { cutting, proven, left, longest, budget, totals, money: goal - cost, value, length }
    for (const { bar, worth, filled } of fillings(ask)) {
      if (budget.steps <= 0) return
      const after = cost + (cutting.stock[bar.stock]?.cost ?? 0)
      if (after * proven.scale + value - worth > goal * proven.scale) continue
      if (totals.roomFor(goal - after) < length - filled) continue
      take(left, bar, -1)
      bars.push(bar)
      branch(after, value - worth, length - filled)
      bars.pop()
      take(left, bar, 1)
    }
  }
  branch(0, worthOf(left, proven.values), need)
  return { plan: best, bound: budget.steps <= 0 ? Math.min(least, best.cost) : best.cost }
}

function take(left: number[], bar: CutBar, sign: number): void {
  for (let place = 0; place < left.length; place += 1) {
    left[place] = (left[place] as number) + sign * (bar.taken[place] as number)
  }
}

type Ask = {
  readonly cutting: Cutting
  readonly proven: ProvenValues
  readonly left: readonly number[]
  readonly longest: number
  readonly budget: { steps: number }
  readonly totals: BarTotals
  /** Money that may still be spent below the goal, and what is left: its proven value, scaled, and its length. */
  readonly money: number
  readonly value: number
  readonly length: number
}
type Filling = {
  readonly bar: CutBar
  readonly worth: number
  readonly filled: number
  readonly loses: number
}

/** Every filling of every stock worth looking at, the least lossy first. */
function fillings(ask: Ask): readonly Filling[] {
  const found = ask.cutting.stock.flatMap((_, stock) => fillingsOf(ask, stock))
  return found.toSorted(
    (a, b) => a.loses - b.loses || longestFirst(a.bar.taken, b.bar.taken) || a.bar.stock - b.bar.stock,
  )
}

function longestFirst(a: readonly number[], b: readonly number[]): number {
  const place = a.findIndex((many, index) => many !== b[index])
  return place < 0 ? 0 : (b[place] as number) - (a[place] as number)
}

function fillingsOf(ask: Ask, stock: number): readonly Filling[] {
  const { cutting, proven, left, longest, budget } = ask
  const { room, cost } = cutting.stock[stock] as Cutting['stock'][number]
  const { sizes } = cutting
  const leastWorth = (cost - ask.money) * proven.scale + ask.value
  const mostFree = room + ask.totals.roomFor(ask.money - cost) - ask.length
  const dense = bestDensities(cutting, proven.values, left)
  const smallest = left.findLastIndex((count) => count > 0)
  const taken = sizes.map(() => 0)
  const found: Filling[] = []
  const fill = (place: number, free: number, worth: number): void => {
    budget.steps -= 1
    if (budget.steps <= 0 || worth + free * (dense[place] ?? 0) < leastWorth) return
    if (place > smallest || free < (sizes[smallest] as number)) {
      if (worth >= leastWorth && free <= mostFree && !canTakeMore(ask, taken, free)) {
        found.push({
          bar: { stock, taken: [...taken] },
          worth,
          filled: room - free,
          loses: cost * proven.scale - worth,
        })
      }
      return
    }
    const size = sizes[place] as number
    const most = Math.min(left[place] as number, Math.floor(free / size))
    for (let many = most; many >= (place === longest ? 1 : 0); many -= 1) {
      taken[place] = many
      fill(place + 1, free - many * size, worth + many * (proven.values[place] as number))
    }
    taken[place] = 0
  }
  if (mostFree >= 0) fill(longest, room, 0)
  return found
}

/** For each place, the most that a step of length is worth from there on, a little more than less. */
function bestDensities(
  { sizes }: Cutting,
  values: readonly number[],
  left: readonly number[],
): readonly number[] {
  const dense = sizes.map(() => 0)
  let most = 0
  for (let place = sizes.length - 1; place >= 0; place -= 1) {
    if ((left[place] as number) > 0)
      most = Math.max(most, (values[place] as number) / (sizes[place] as number))
    dense[place] = most * (1 + 1e-12)
  }
  return dense
}

function canTakeMore({ cutting, left }: Ask, taken: readonly number[], free: number): boolean {
  return cutting.sizes.some(
    (size, place) => size <= free && (left[place] as number) > (taken[place] as number),
  )
}
