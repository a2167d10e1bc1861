import { bestFill } from './best-fill.ts'
import { planOf, worthOf } from './cutting.ts'
import type { CutBar, Cutting, Plan } from './cutting.ts'

/**
 * A good way to cut, without proof: each piece, the longest first, laid in the fullest bar that takes it; the best of one
 * try for each stock length.
 *
 * @param cutting the job, each size fitting some stock
 * @source best-fit decreasing (Johnson 1973), from memory
 * @example quickPlan({ sizes: [5, 4, 3], counts: [1, 1, 1], stock: [{ room: 7, cost: 1 }] }).cost // => 2
 */
export function quickPlan(cutting: Cutting): Plan {
  return cheapestOf(cutting.stock.map((_, preferred) => shrunk(cutting, bestFit(cutting, preferred))))
}

/**
 * Another way to cut, without proof: bar after bar, the longest piece left and beside it what fills the bar best, by length
 * and by the given values; the better of the two.
 *
 * @param cutting the job, each size fitting some stock
 * @param values what a piece of each size is worth (0 or more)
 * @source sequential filling of one bar after another, practice
 * @example filledPlan({ sizes: [5, 4, 3], counts: [1, 1, 1], stock: [{ room: 7, cost: 1 }] }, [5, 4, 3]).cost // => 2
 */
export function filledPlan(cutting: Cutting, values: readonly number[]): Plan {
  return cheapestOf([cutting.sizes, values].map((worth) => shrunk(cutting, filledOneByOne(cutting, worth))))
}

function cheapestOf(plans: readonly Plan[]): Plan {
  return plans.reduce((best, next) => (next.cost < best.cost ? next : best))
}

type OpenBar = { stock: number; left: number; readonly taken: number[] }

function bestFit(cutting: Cutting, preferred: number): readonly CutBar[] {
  const bars: OpenBar[] = []
  cutting.sizes.forEach((size, place) => {
    for (let piece = 0; piece < (cutting.counts[place] as number); piece += 1) {
      const fitting = bars.filter((bar) => bar.left >= size)
      const bar = fitting.reduce<OpenBar | null>(
        (best, next) => (best && best.left <= next.left ? best : next),
        null,
      )
      const into = bar ?? opened(cutting, size, preferred)
      if (bar === null) bars.push(into)
      into.left -= size
      into.taken[place] = (into.taken[place] as number) + 1
    }
  })
  return bars
}

function opened(cutting: Cutting, size: number, preferred: number): OpenBar {
  const fits = (stock: number) => (cutting.stock[stock]?.room ?? 0) >= size
  const stock = fits(preferred) ? preferred : cheapestFor(cutting, size)
  return { stock, left: cutting.stock[stock]?.room ?? 0, taken: cutting.sizes.map(() => 0) }
}

/** The cheapest stock with room for so much; of equals the first. */
function cheapestFor({ stock }: Cutting, size: number): number {
  return stock.reduce((best, next, place) => {
    if (next.room < size) return best
    return best < 0 || next.cost < (stock[best]?.cost ?? 0) ? place : best
  }, -1)
}

/** Each bar on the cheapest stock that still holds what is cut from it. */
function shrunk(cutting: Cutting, bars: readonly CutBar[]): Plan {
  const smaller = bars.map(({ taken }) => ({
    taken,
    stock: cheapestFor(cutting, worthOf(taken, cutting.sizes)),
  }))
  return planOf(cutting, smaller)
}

/** Bar after bar: the longest piece left, and beside it what is worth most; on the stock that gives most for its money. */
function filledOneByOne(cutting: Cutting, values: readonly number[]): readonly CutBar[] {
  const left = [...cutting.counts]
  const bars: CutBar[] = []
  for (;;) {
    const longest = left.findIndex((count) => count > 0)
    if (longest < 0) return bars
    const bar = bestBar(cutting, { values, left, longest })
    takeAway(left, bar.taken)
    bars.push(bar)
  }
}

type Filling = {
  readonly values: readonly number[]
  readonly left: readonly number[]
  readonly longest: number
}

function takeAway(left: number[], taken: readonly number[]): void {
  taken.forEach((many, place) => {
    left[place] = (left[place] as number) - many
  })
}

function bestBar(cutting: Cutting, filling: Filling): CutBar {
  const first = cutting.sizes[filling.longest] as number
  const bars = cutting.stock.flatMap(({ room, cost }, stock) => {
    if (room < first) return []
    const { taken, value } = filledBeside(cutting, stock, filling)
    return [{ stock, taken, dear: cost / (value + 1e-9) }]
  })
  return bars.reduce((best, next) => (next.dear < best.dear ? next : best))
}

/** One piece of the longest size, and what is worth most beside it. */
function filledBeside(
  { sizes, stock }: Cutting,
  place: number,
  { values, left, longest }: Filling,
): { readonly taken: readonly number[]; readonly value: number } {
  const room = (stock[place]?.room ?? 0) - (sizes[longest] as number)
  const counts = left.map((count, at) => (at === longest ? count - 1 : count))
  const fill = bestFill({ sizes, values, counts, room })
  const taken = fill.taken.map((many, at) => (at === longest ? many + 1 : many))
  return { taken, value: fill.value + (values[longest] as number) }
}
