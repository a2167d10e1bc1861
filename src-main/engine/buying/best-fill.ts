/** Pieces to choose from, in whole steps of length: place by place their size, their worth, and how many there are. */
export type FillInput = {
  readonly sizes: readonly number[]
  readonly values: readonly number[]
  readonly counts: readonly number[]
  readonly room: number
}
export type Fill = {
  /** How many of each piece. */
  readonly taken: readonly number[]
  readonly value: number
  /** What no filling can pass: the value itself when the search came to its end. */
  readonly atMost: number
}

const mostSteps = 100_000

/**
 * The most valuable pieces that fit in a bar: maximise sum(n_i v_i) with sum(n_i size_i) <= room, n_i <= count_i. Pieces
 * are tried by worth for their length; a branch ends when filling what is left at the best worth cannot win. After
 * 100000 steps the best so far is given, with a bound that still holds.
 *
 * @param input whole sizes of 1 or more, values of 0 or more (0 is never taken), whole counts, whole room
 * @source bounded knapsack by branch and bound (Horowitz and Sahni; Kellerer, Pferschy and Pisinger), from memory
 * @example bestFill({ sizes: [6, 5, 4], values: [7, 5, 4], counts: [1, 1, 1], room: 9 }).value // => 9
 */
export function bestFill({ sizes, values, counts, room }: FillInput): Fill {
  const worth = (place: number) => (values[place] as number) / (sizes[place] as number)
  const order = sizes
    .map((_, place) => place)
    .filter((place) => (values[place] as number) > 0 && (counts[place] as number) > 0)
    .toSorted((a, b) => worth(b) - worth(a) || a - b)
  const whole = values.every((value) => Number.isInteger(value))
  const ceiling = (index: number, left: number) => {
    const most = guarded(left * worth(order[index] as number))
    return whole ? Math.floor(most) : most
  }
  const now = sizes.map(() => 0)
  let best = { taken: [...now], value: 0 }
  let steps = 0
  const search = (index: number, left: number, value: number): void => {
    steps += 1
    if (value > best.value) best = { taken: [...now], value }
    const place = order[index]
    if (place === undefined || steps > mostSteps) return
    const size = sizes[place] as number
    const most = Math.min(counts[place] as number, Math.floor(left / size))
    for (let many = most; many >= 0; many -= 1) {
      const rest = left - many * size
      const sum = value + many * (values[place] as number)
      const next = index + 1 < order.length ? ceiling(index + 1, rest) : 0
      if (sum + next <= best.value) break
      now[place] = many
      search(index + 1, rest, sum)
    }
    now[place] = 0
  }
  search(0, room, 0)
  const outer = order.length === 0 ? 0 : ceiling(0, room)
  return { ...best, atMost: steps > mostSteps ? Math.max(best.value, outer) : best.value }
}

/** Never below the true product, whatever rounding did. */
function guarded(value: number): number {
  return value * (1 + 1e-12)
}
