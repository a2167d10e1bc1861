/**
 * A cutting job in whole steps of length. The saw cut is in the sizes: a piece is its length + kerf, a stock length has one
 * kerf more, so pieces fit a bar when their sizes add up to no more than its room.
 */
export type Cutting = {
  /** Different sizes, the largest first. */
  readonly sizes: readonly number[]
  readonly counts: readonly number[]
  readonly stock: readonly StockBar[]
}
export type StockBar = {
  readonly room: number
  /** What is to be least: pence, and below a penny a grain for the bar itself, so that fewer bars win among equals. */
  readonly cost: number
}
/** One bar: which stock, and how many of each size are cut from it. */
export type CutBar = { readonly stock: number; readonly taken: readonly number[] }
export type Plan = { readonly cost: number; readonly bars: readonly CutBar[] }

/**
 * Some bars as a plan, with what they cost together: sum(cost).
 *
 * @param cutting the job that the bars are for
 * @param bars each on one of the job's stock lengths
 * @source arithmetic
 * @example planOf({ sizes: [5], counts: [2], stock: [{ room: 9, cost: 10 }] }, [{ stock: 0, taken: [1] }, { stock: 0, taken: [1] }]).cost // => 20
 */
export function planOf(cutting: Cutting, bars: readonly CutBar[]): Plan {
  return { cost: bars.reduce((sum, bar) => sum + (cutting.stock[bar.stock]?.cost ?? 0), 0), bars }
}

/**
 * What some pieces are worth, or how long they are together: sum(n_i v_i).
 *
 * @param taken how many of each size
 * @param values what one of each size is worth
 * @source arithmetic
 * @example worthOf([2, 1], [5, 3]) // => 13
 */
export function worthOf(taken: readonly number[], values: readonly number[]): number {
  let sum = 0
  for (let place = 0; place < taken.length; place += 1)
    sum += (taken[place] as number) * (values[place] as number)
  return sum
}
