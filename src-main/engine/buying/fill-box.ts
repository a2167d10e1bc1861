import { worthOf } from './cutting.ts'
import type { CutBar, Cutting } from './cutting.ts'
import { relaxedPlan } from './relaxed-plan.ts'
import type { Pool, Relaxed } from './relaxed-plan.ts'

export type BoxInput = {
  readonly cutting: Cutting
  /** How many bars of each stock there are, and no more. */
  readonly most: readonly number[]
  /** What the bars may cost together. */
  readonly goal: number
  readonly pool: Pool
  readonly relaxed: Relaxed
  /** How many linear programs may still be solved; it is counted down. */
  readonly budget: { programs: number }
}
export type Filled = {
  /** Bars that hold every piece within the goal; null when none were found. */
  readonly bars: readonly CutBar[] | null
  /** Every way was looked at, or the bars were found. */
  readonly complete: boolean
}

const mostFillings = 3_000

/**
 * Whether so many bars hold all pieces, by depth first: the longest piece left lies in some bar, so each filling with it to
 * which nothing can be added is a way on, the one the linear program uses most first. A way ends when the linear program of
 * what is left passes the goal, when it wastes more than there is to waste, or when the same was left before.
 *
 * @param input the job, the bars, the money, and the linear program of the whole
 * @source Martello and Toth, Knapsack Problems, chapter 8 (branching on the largest item), from memory
 * @example fillBox({ cutting: { sizes: [6, 5], counts: [1, 1], stock: [{ room: 11, cost: 1 }] }, most: [1], goal: 1, pool: new Map(), relaxed: { bound: 0, ways: [] }, budget: { programs: 9 } }).bars // => [{ stock: 0, taken: [1, 1] }]
 */
export function fillBox({ cutting, most, goal, pool, relaxed, budget }: BoxInput): Filled {
  const seen = new Set<string>()
  let complete = true
  const fill = (here: Here): readonly CutBar[] | null => {
    const ways = fillings(cutting, here)
    if (ways === null) complete = false
    for (const bar of ways ?? []) {
      const next = {
        left: minus(here.left, bar.taken),
        most: here.most.with(bar.stock, (here.most[bar.stock] as number) - 1),
      }
      const bars = [...here.bars, bar]
      if (next.left.every((count) => count === 0)) return bars
      const key = `${next.left.join()}/${next.most.join()}`
      if (seen.has(key)) continue
      seen.add(key)
      if (budget.programs <= 0) {
        complete = false
        return null
      }
      budget.programs -= 1
      const money = here.money - (cutting.stock[bar.stock]?.cost ?? 0)
      const limits = { least: most.map(() => 0), most: next.most }
      const rest = relaxedPlan({ cutting: { ...cutting, counts: next.left }, limits, pool, goal: money })
      if (rest.bound > money) continue
      const found = fill({ ...next, bars, money, relaxed: rest })
      if (found !== null) return found
    }
    return null
  }
  const bars = fill({ left: cutting.counts, most, bars: [], money: goal, relaxed })
  return { bars, complete: complete || bars !== null }
}

type Here = {
  readonly left: readonly number[]
  readonly most: readonly number[]
  readonly bars: readonly CutBar[]
  readonly money: number
  readonly relaxed: Relaxed
}

function minus(counts: readonly number[], taken: readonly number[]): readonly number[] {
  return counts.map((count, place) => count - (taken[place] as number))
}

/** The fillings with the longest piece left, likeliest first; null when there are too many to look at. */
function fillings(cutting: Cutting, { left, most, money, relaxed }: Here): readonly CutBar[] | null {
  const need = worthOf(left, cutting.sizes)
  const room = cutting.stock.reduce((sum, bar, place) => sum + bar.room * (most[place] as number), 0)
  const found: { readonly bar: CutBar; readonly free: number }[] = []
  for (const [stock, { cost }] of cutting.stock.entries()) {
    if ((most[stock] as number) < 1 || cost > money) continue
    if (!addFillings({ cutting, left, stock, mostFree: room - need }, found)) return null
  }
  const uses = new Map(relaxed.ways.map(({ bar, uses: many }) => [keyOf(bar), many]))
  const usesOf = (bar: CutBar) => uses.get(keyOf(bar)) ?? 0
  return found.toSorted((a, b) => usesOf(b.bar) - usesOf(a.bar) || a.free - b.free).map(({ bar }) => bar)
}

function keyOf({ stock, taken }: CutBar): string {
  return `${stock}:${taken.join()}`
}

type Ask = {
  readonly cutting: Cutting
  readonly left: readonly number[]
  readonly stock: number
  readonly mostFree: number
}

/** Adds the fillings of one stock; false when there are too many. */
function addFillings(
  { cutting, left, stock, mostFree }: Ask,
  found: { readonly bar: CutBar; readonly free: number }[],
): boolean {
  const { sizes } = cutting
  const longest = left.findIndex((count) => count > 0)
  const taken = sizes.map(() => 0)
  const lay = (place: number, free: number): void => {
    if (found.length > mostFillings) return
    if (place === sizes.length) {
      const more = sizes.some((size, at) => size <= free && (left[at] as number) > (taken[at] as number))
      if (!more && free <= mostFree) found.push({ bar: { stock, taken: [...taken] }, free })
      return
    }
    const size = sizes[place] as number
    const many = Math.min(left[place] as number, Math.floor(free / size))
    for (let here = many; here >= (place === longest ? 1 : 0); here -= 1) {
      taken[place] = here
      lay(place + 1, free - here * size)
    }
    taken[place] = 0
  }
  lay(longest, cutting.stock[stock]?.room ?? 0)
  return found.length <= mostFillings
}
