/** Totals of money that bars can come to, and how much room each total buys. */
export type BarTotals = {
  /** The least total that is not below this, and that buys so much room. */
  readonly atLeast: (cost: number, room: number) => number
  /** The largest total below this that buys so much room; -1 when there is none. */
  readonly below: (cost: number, room: number) => number
  /** The most room that this much money buys. */
  readonly roomFor: (cost: number) => number
}

type Total = { readonly cost: number; readonly room: number; readonly roomSoFar: number }
type Bar = { readonly room: number; readonly cost: number }

const mostTotals = 50_000

/**
 * The totals that some number of bars can come to, up to a most, each with the most room it buys: all sums of whole
 * multiples of the prices. When there are more than 50000, every whole number counts as a total that buys any room, which
 * is never wrong, only looser.
 *
 * @param bars prices in whole numbers of 1 or more, rooms in whole steps
 * @param most no total above it is asked for
 * @source unbounded knapsack in covering form
 * @example barTotals([{ room: 9, cost: 5 }, { room: 5, cost: 3 }], 20).atLeast(0, 11) // => 8
 */
export function barTotals(bars: readonly Bar[], most: number): BarTotals {
  const totals = totalsUpTo(bars, most)
  if (totals === null) {
    return {
      atLeast: (cost) => cost,
      below: (cost) => cost - 1,
      roomFor: () => Number.MAX_SAFE_INTEGER,
    }
  }
  return {
    atLeast: (cost, room) => {
      const start = lastWithin(totals, cost - 1) + 1
      return totals.slice(start).find((total) => total.room >= room)?.cost ?? most
    },
    below: (cost, room) =>
      totals.slice(0, lastWithin(totals, cost - 1) + 1).findLast((total) => total.room >= room)?.cost ?? -1,
    roomFor: (cost) => totals[lastWithin(totals, cost)]?.roomSoFar ?? -1,
  }
}

/** The place of the last total of at most this; -1 when there is none (halving the list). */
function lastWithin(totals: readonly Total[], cost: number): number {
  let low = -1
  let high = totals.length
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((totals[middle]?.cost ?? Infinity) <= cost) low = middle
    else high = middle
  }
  return low
}

function totalsUpTo(bars: readonly Bar[], most: number): readonly Total[] | null {
  const rooms = new Map([[0, 0]])
  for (const bar of bars) {
    // A total put in while walking is walked in its turn: so each bar is taken once, twice and more.
    for (const [cost, room] of rooms) {
      const next = cost + bar.cost
      if (next > most || (rooms.get(next) ?? -1) >= room + bar.room) continue
      rooms.delete(next)
      rooms.set(next, room + bar.room)
      if (rooms.size > mostTotals) return null
    }
  }
  let roomSoFar = 0
  return [...rooms]
    .toSorted(([a], [b]) => a - b)
    .map(([cost, room]) => {
      roomSoFar = Math.max(roomSoFar, room)
      return { cost, room, roomSoFar }
    })
}
