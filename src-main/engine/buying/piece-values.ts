import { bestFill } from './best-fill.ts'
import { worthOf } from './cutting.ts'
import type { CutBar, Cutting } from './cutting.ts'

const mostRounds = 2_000

export type LinearPlan = {
  /** What a piece of each size costs at least, roughly. */
  readonly values: readonly number[]
  /** Ways to fill a bar, and how often each is used: in parts, too. */
  readonly ways: readonly { readonly bar: CutBar; readonly uses: number }[]
}

/**
 * The cheapest mix of ways to cut when a bar may be cut in part, with its dual values: the linear program
 * min sum(c_p x_p) with sum(a_ip x_p) = count_i over all ways p to fill a bar. Ways are brought in one at a time, the one
 * that saves most (column generation), with the simplex method on an explicit inverse. Approximate; `provenValues` makes a
 * bound of the values that holds.
 *
 * @param cutting the job, each size fitting some stock; sizes that have run out (count 0) are worth 0
 * @source Gilmore and Gomory, A linear programming approach to the cutting stock problem, Operations Research 9 (1961)
 * @example linearPlan({ sizes: [5, 4], counts: [1, 1], stock: [{ room: 9, cost: 10 }] }).values.reduce((a, b) => a + b) // => 10
 */
export function linearPlan(cutting: Cutting): LinearPlan {
  const places = cutting.sizes
    .map((_, place) => place)
    .filter((place) => (cutting.counts[place] as number) > 0)
  const pick = (values: readonly number[]) => places.map((place) => values[place] as number)
  const spread = (values: readonly number[]) =>
    cutting.sizes.map((_, place) => values[places.indexOf(place)] ?? 0)
  const { values, ways } = solved({ ...cutting, sizes: pick(cutting.sizes), counts: pick(cutting.counts) })
  return {
    values: spread(values),
    ways: ways.map(({ bar, uses }) => ({ bar: { stock: bar.stock, taken: spread(bar.taken) }, uses })),
  }
}

function solved(cutting: Cutting): LinearPlan {
  const basis = startingBasis(cutting)
  for (let round = 0; round < mostRounds; round += 1) {
    const way = mostSaving(cutting, dualsOf(cutting, basis))
    if (way === null || !bringIn(basis, way)) break
  }
  const ways = basis.bars.map((bar, row) => ({ bar, uses: basis.uses[row] ?? 0 }))
  return { values: dualsOf(cutting, basis), ways }
}

/** Ways in use, how often each, and the inverse of the matrix whose columns are their pieces. */
type Basis = { readonly bars: CutBar[]; readonly uses: number[]; readonly inverse: number[][] }

/** For each size, bars of the stock that is cheapest for it alone, cut into that size only. */
function startingBasis({ sizes, counts, stock }: Cutting): Basis {
  const alone = sizes.map((size, place) => {
    const ways = stock
      .map(({ room, cost }, at) => ({
        at,
        cost,
        many: Math.min(counts[place] as number, Math.floor(room / size)),
      }))
      .filter(({ many }) => many > 0)
    return ways.reduce((best, next) => (next.cost * best.many < best.cost * next.many ? next : best))
  })
  return {
    bars: alone.map(({ at, many }, place) => ({
      stock: at,
      taken: sizes.map((_, i) => (i === place ? many : 0)),
    })),
    uses: alone.map(({ many }, place) => (counts[place] as number) / many),
    inverse: alone.map(({ many }, row) => sizes.map((_, column) => (row === column ? 1 / many : 0))),
  }
}

/** costs x inverse, never below 0. */
function dualsOf({ stock }: Cutting, { bars, inverse }: Basis): readonly number[] {
  const costs = bars.map((bar) => stock[bar.stock]?.cost ?? 0)
  return costs.map((_, column) => {
    const sum = costs.reduce((so, cost, row) => so + cost * (inverse[row]?.[column] ?? 0), 0)
    return Math.max(0, sum)
  })
}

/** The way to fill a bar that is worth most for its cost; null when none is worth more than it. */
function mostSaving({ sizes, counts, stock }: Cutting, values: readonly number[]): CutBar | null {
  const ways = stock.map(({ room, cost }, place) => {
    const { taken, value } = bestFill({ sizes, values, counts, room })
    return { bar: { stock: place, taken }, saves: value / cost }
  })
  const best = ways.reduce((so, next) => (next.saves > so.saves ? next : so))
  return best.saves > 1 + 1e-9 ? best.bar : null
}

/** One simplex step; false when no way can leave, which rounding alone could bring about. */
function bringIn({ bars, uses, inverse }: Basis, way: CutBar): boolean {
  const column = inverse.map((row) => worthOf(way.taken, row))
  const leaving = column.reduce((best, rate, row) => {
    if (rate <= 1e-9) return best
    const ratio = (uses[row] as number) / rate
    return best < 0 || ratio < (uses[best] as number) / (column[best] as number) ? row : best
  }, -1)
  if (leaving < 0) return false
  const pivot = column[leaving] as number
  const scaled = (inverse[leaving] as number[]).map((value) => value / pivot)
  const step = (uses[leaving] as number) / pivot
  for (let row = 0; row < bars.length; row += 1) {
    const rate = column[row] as number
    if (row === leaving || rate === 0) continue
    uses[row] = Math.max(0, (uses[row] as number) - rate * step)
    inverse[row] = (inverse[row] as number[]).map((value, place) => value - rate * (scaled[place] as number))
  }
  inverse[leaving] = scaled
  uses[leaving] = step
  bars[leaving] = way
  return true
}

export type ProvenValues = {
  /** Whole values: no bar's filling is worth more than the bar's cost x scale. */
  readonly values: readonly number[]
  readonly scale: number
}

/**
 * Values as whole numbers that are certain: no filling of any bar is worth more than scale x its cost, checked by exact
 * search in whole numbers and brought down where it is. Then any pieces cost at least their values together / scale.
 *
 * @param cutting the job
 * @param rough values in the same money as the stock's cost, 0 or more
 * @param most a cost that is not passed (it sets the scale, so that sums stay exact)
 * @source weak duality; Farley, A note on bounding a class of linear programming problems, Operations Research 38 (1990), from memory
 * @example provenValues({ sizes: [5, 4], counts: [1, 1], stock: [{ room: 9, cost: 8 }] }, [4, 4], 16).values.length // => 2
 */
export function provenValues(cutting: Cutting, rough: readonly number[], most: number): ProvenValues {
  const scale = Math.max(1, Math.floor(2 ** 50 / Math.max(1, most)))
  const values = rough.map((value) => Math.floor(value * scale))
  const { sizes, counts, stock } = cutting
  const excess = stock.map(
    ({ room, cost }) => bestFill({ sizes, values, counts, room }).atMost / (cost * scale),
  )
  const worst = Math.max(...excess)
  if (worst <= 1) return { values, scale }
  const down = (1 - 1e-12) / worst
  return { values: values.map((value) => Math.floor(value * down)), scale }
}
