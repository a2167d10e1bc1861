import { coveringProgram } from './covering-program.ts'
import type { Column, Mix } from './covering-program.ts'
import { worthOf } from './cutting.ts'
import type { CutBar, Cutting } from './cutting.ts'
import { fillTable } from './fill-table.ts'

/** How many bars of each stock a plan may use. */
export type BarLimits = { readonly least: readonly number[]; readonly most: readonly number[] }

/** Ways to fill a bar found so far, each once; it grows. */
export type Pool = Map<string, CutBar>

export type Relaxed = {
  /** No plan within the limits costs less. */
  readonly bound: number
  /** Bars in use, and how often: in parts, too. */
  readonly ways: readonly { readonly bar: CutBar; readonly uses: number }[]
}

export type RelaxInput = {
  readonly cutting: Cutting
  readonly limits: BarLimits
  readonly pool: Pool
  /** A bound above this is enough: the work stops there. */
  readonly goal: number
}

const mostRounds = 400
const nextToNothing = 1e-4
/** Room for the rounding of sums in floating point, as a share of the sum of their sizes. */
const guard = 1e-11

/**
 * The cheapest mix of ways to fill bars, when a bar may be used in part and the number of bars of each stock is held between
 * limits, with a bound that holds for whole bars: for any prices u >= 0 of the pieces,
 * cost >= sum(u_i count_i) + sum over stock of n_s (c_s - best filling at u), n_s = least_s where that is 0 or more, else most_s.
 *
 * @param input the job; limits of 0 or more; the pool of fillings; the cost above which a bound need not be known better
 * @source Gilmore and Gomory 1961 (column generation); Lagrangian bound, Desrosiers and Lubbecke, A primer in column generation (2005), from memory
 * @example relaxedPlan({ cutting: { sizes: [5], counts: [3], stock: [{ room: 10, cost: 2 }] }, limits: { least: [0], most: [9] }, pool: new Map(), goal: 99 }).bound // => 3
 */
export function relaxedPlan(input: RelaxInput): Relaxed {
  const { cutting, limits, goal } = input
  const rows = rowsOf(cutting, limits)
  const bars = [...input.pool.values()].filter((bar) => fits(bar, cutting.counts))
  const columns = bars.map((bar) => columnOf(bar, cutting, rows))
  const solve = coveringProgram(rows.needs, rows.dear)
  for (let round = 1, bound = 0; ; round += 1) {
    const mix = solve(columns)
    const fillings = fillingsAt(cutting, rows, mix.prices)
    bound = Math.max(bound, boundOf(cutting, limits, fillings))
    const settled = bound > goal || round === mostRounds || isClose({ bound, goal, cost: costOf(rows, mix) })
    const found = settled ? [] : fillings.bars.filter((bar) => addTo(input.pool, bar))
    if (found.length === 0) return { bound, ways: waysOf(mix) }
    for (const bar of found) columns.push(columnOf(bar, cutting, rows))
  }
}

/** The mix itself is within the goal, so that no bound can pass it, and there is next to nothing between the two. */
function isClose({ bound, goal, cost }: { bound: number; goal: number; cost: number }): boolean {
  return cost <= goal && cost - bound <= cost * nextToNothing
}

/** What the mix costs, as its prices have it: sum(need_i price_i). */
function costOf({ needs, unit }: Rows, { prices }: Mix): number {
  return worthOf(needs, prices) * unit
}

function waysOf({ uses }: Mix): Relaxed['ways'] {
  return [...uses].flatMap(([{ bar }, many]) =>
    bar === undefined || many < 1e-9 ? [] : [{ bar, uses: many }],
  )
}

function fits({ taken }: CutBar, counts: readonly number[]): boolean {
  return taken.every((many, place) => many <= (counts[place] as number))
}

function addTo(pool: Pool, bar: CutBar): boolean {
  const key = `${bar.stock}:${bar.taken.join()}`
  if (pool.has(key)) return false
  pool.set(key, bar)
  return true
}

type Rows = {
  readonly needs: readonly number[]
  /** The row of each size, and of each stock's floor and ceiling; -1 where it has none. */
  readonly ofSize: readonly number[]
  readonly ofLeast: readonly number[]
  readonly ofMost: readonly number[]
  /** The dearest bar, by which costs are divided. */
  readonly unit: number
  readonly dear: number
}

function rowsOf({ counts, stock }: Cutting, { least, most }: BarLimits): Rows {
  const needs: number[] = []
  const row = (need: number, wanted: boolean) => (wanted ? needs.push(need) - 1 : -1)
  const ofSize = counts.map((count) => row(count, count > 0))
  const ofLeast = least.map((bars) => row(bars, bars > 0))
  const ofMost = most.map((bars) => row(-bars, true))
  const unit = Math.max(...stock.map((bar) => bar.cost))
  return { needs, ofSize, ofLeast, ofMost, unit, dear: 10 * counts.reduce((sum, count) => sum + count, 1) }
}

function columnOf(bar: CutBar, cutting: Cutting, rows: Rows): Column {
  const { stock, taken } = bar
  const pieces = taken.flatMap((many, place) => (many > 0 ? [[rows.ofSize[place] as number, many]] : []))
  const floor = rows.ofLeast[stock] as number
  const all = [...pieces, ...(floor < 0 ? [] : [[floor, 1]]), [rows.ofMost[stock] as number, -1]]
  return {
    cost: (cutting.stock[stock]?.cost ?? 0) / rows.unit,
    rows: all.map(([row]) => row as number),
    meets: all.map(([, many]) => many as number),
    bar,
  }
}

type Fillings = {
  /** What a piece of each size is worth. */
  readonly values: readonly number[]
  /** For each stock what no filling's worth can pass. */
  readonly atMost: readonly number[]
  /** The best filling of each stock that is worth more than it costs at these prices. */
  readonly bars: readonly CutBar[]
}

function fillingsAt({ sizes, counts, stock }: Cutting, rows: Rows, prices: readonly number[]): Fillings {
  const priceOf = (row: number) => (row < 0 ? 0 : (prices[row] as number))
  const values = rows.ofSize.map((row) => Math.max(0, priceOf(row)) * rows.unit)
  const fills = fillTable({ sizes, values, counts, rooms: stock.map(({ room }) => room) })
  const bars = stock.flatMap(({ cost }, place) => {
    const worth = priceOf(rows.ofLeast[place] as number) - priceOf(rows.ofMost[place] as number)
    const { taken, value } = fills[place] as (typeof fills)[number]
    return value + worth * rows.unit > cost + rows.unit * 1e-8 ? [{ stock: place, taken }] : []
  })
  return { values, atMost: fills.map((fill) => fill.atMost), bars }
}

function boundOf({ counts, stock }: Cutting, limits: BarLimits, { values, atMost }: Fillings): number {
  const pieces = counts.map((count, place) => count * (values[place] as number))
  const bars = stock.map(({ cost }, place) => {
    const over = cost - (atMost[place] as number)
    return over * (over >= 0 ? (limits.least[place] as number) : (limits.most[place] as number))
  })
  const terms = [...pieces, ...bars]
  const sum = terms.reduce((so, term) => so + term, 0)
  const slip = terms.reduce((so, term) => so + Math.abs(term), 0) * guard
  return Math.max(0, sum - slip)
}
