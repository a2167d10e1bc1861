import type { CutBar } from './cutting.ts'

/** One way to meet some of the needs: what it costs, and how much of which needs it meets (never below nothing for a bar). */
export type Column = {
  readonly cost: number
  readonly rows: readonly number[]
  readonly meets: readonly number[]
  /** The bar it stands for, if any. */
  readonly bar?: CutBar
}
export type Mix = {
  /** How often each column is used; in parts, too. */
  readonly uses: ReadonlyMap<Column, number>
  /** What one more of each need would cost. */
  readonly prices: readonly number[]
}

const mostSteps = 4_000
const tiny = 1e-9

type Table = {
  readonly columns: Column[]
  readonly uses: Float64Array
  readonly inverse: Float64Array[]
  readonly slack: readonly Column[]
}

/** A program under way: its needs, and the mix found so far; more columns may come. */
export type Program = (columns: readonly Column[]) => Mix

/**
 * The cheapest mix of columns that meets all needs: min sum(c_j x_j) with sum(a_ij x_j) >= need_i, x >= 0, by the simplex
 * method on an explicit inverse. Asked again with more columns it goes on from the mix it had. A need that no column meets is
 * met at the price `dear`. Stops after 4000 steps with what it has then: the answer is approximate, and a bound must be made of
 * its prices, never taken from its cost.
 *
 * @param needs what is to be met; 0 or below it is a ceiling on columns that meet less than nothing
 * @param dear what it costs to leave one of a need unmet, far above every cost; costs are about 1
 * @source Dantzig, Linear Programming and Extensions (1963), revised simplex method, from memory
 * @example coveringProgram([4, 2], 100)([{ cost: 1, rows: [0], meets: [2] }, { cost: 1, rows: [1], meets: [1] }]).prices // => [0.5, 1]
 */
export function coveringProgram(needs: readonly number[], dear: number): Program {
  const table = startingTable(needs, dear)
  const prices = new Float64Array(needs.length)
  return (columns) => {
    for (let step = 0; ; step += 1) {
      priceRows(table, prices)
      const column = step < mostSteps ? mostSaving(columns, table.slack, prices) : null
      if (column === null || !bringIn(table, column)) break
    }
    return { uses: usesOf(table, columns), prices: [...prices] }
  }
}

function usesOf(table: Table, columns: readonly Column[]): ReadonlyMap<Column, number> {
  const wanted = new Set(columns)
  const uses = table.columns.map((column, row) => [column, table.uses[row] ?? 0] as const)
  return new Map(uses.filter(([column]) => wanted.has(column)))
}

/** Each need left unmet, dearly; each ceiling with all its room to spare. */
function startingTable(needs: readonly number[], dear: number): Table {
  const slack = needs.map((_, row) => ({ cost: 0, rows: [row], meets: [-1] }))
  const columns = needs.map((need, row) =>
    need <= 0 ? (slack[row] as Column) : { cost: dear, rows: [row], meets: [1] },
  )
  const inverse = needs.map((need, row) => {
    const unit = new Float64Array(needs.length)
    unit[row] = need <= 0 ? -1 : 1
    return unit
  })
  return { columns, uses: Float64Array.from(needs, Math.abs), inverse, slack }
}

function priceRows({ columns, inverse }: Table, prices: Float64Array): void {
  prices.fill(0)
  columns.forEach(({ cost }, row) => {
    if (cost === 0) return
    const line = inverse[row] as Float64Array
    for (let place = 0; place < prices.length; place += 1)
      prices[place] = (prices[place] as number) + cost * (line[place] as number)
  })
}

function mostSaving(
  columns: readonly Column[],
  slack: readonly Column[],
  prices: Float64Array,
): Column | null {
  let best: Column | null = null
  let least = -tiny
  for (const list of [columns, slack]) {
    for (const column of list) {
      const over = column.cost - metAt(column, prices)
      if (over < least) {
        least = over
        best = column
      }
    }
  }
  return best
}

function metAt({ rows, meets }: Column, prices: Float64Array): number {
  let sum = 0
  for (let at = 0; at < rows.length; at += 1)
    sum += (meets[at] as number) * (prices[rows[at] as number] as number)
  return sum
}

/** One step of the simplex method; false when no column can leave, which rounding alone could bring about. */
function bringIn({ columns, uses, inverse }: Table, column: Column): boolean {
  const rates = inverse.map((line) => metAt(column, line))
  const leaving = leavingRow(rates, uses)
  if (leaving < 0) return false
  const pivot = rates[leaving] as number
  const line = (inverse[leaving] as Float64Array).map((value) => value / pivot)
  const step = (uses[leaving] as number) / pivot
  rates.forEach((rate, row) => {
    if (row === leaving || rate === 0) return
    uses[row] = Math.max(0, (uses[row] as number) - rate * step)
    const other = inverse[row] as Float64Array
    for (let place = 0; place < other.length; place += 1)
      other[place] = (other[place] as number) - rate * (line[place] as number)
  })
  inverse[leaving] = line
  uses[leaving] = step
  columns[leaving] = column
  return true
}

/** The row that is used up first; of equals the one with the largest rate, which keeps rounding small. */
function leavingRow(rates: readonly number[], uses: Float64Array): number {
  let best = -1
  let least = Infinity
  rates.forEach((rate, row) => {
    if (rate <= tiny) return
    const ratio = (uses[row] as number) / rate
    const ties = Math.abs(ratio - least) <= tiny
    if (ties ? rate > (rates[best] as number) : ratio < least) {
      best = row
      least = ties ? least : ratio
    }
  })
  return best
}
