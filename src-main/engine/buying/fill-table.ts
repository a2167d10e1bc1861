import { bestFill } from './best-fill.ts'
import type { Fill } from './best-fill.ts'

/** Pieces to choose from, place by place, and the bars to fill, all in whole steps of length. */
export type TableInput = {
  readonly sizes: readonly number[]
  readonly values: readonly number[]
  readonly counts: readonly number[]
  readonly rooms: readonly number[]
}

type Lot = { readonly place: number; readonly many: number; readonly size: number; readonly value: number }

const mostCells = 3_000_000
/** Room for the rounding of sums, as a share of the sum. */
const guard = 1e-12

/**
 * The most valuable pieces for each of several bars at once: best(r) = max over lots of best(r - size) + value, one table for
 * the longest bar, which every shorter one reads. A table of more than 3000000 cells is not laid out; each bar is then
 * filled by search.
 *
 * @param input whole sizes of 1 or more, values of 0 or more (0 is never taken), whole counts, whole rooms
 * @source bounded knapsack by dynamic programming over lots of 1, 2, 4 ... (Martello and Toth, Knapsack Problems, 1990), from memory
 * @example fillTable({ sizes: [6, 5, 4], values: [7, 5, 4], counts: [1, 1, 1], rooms: [9, 11] }).map((fill) => fill.taken) // => [[0, 1, 1], [1, 1, 0]]
 */
export function fillTable({ sizes, values, counts, rooms }: TableInput): readonly Fill[] {
  const longest = Math.max(0, ...rooms)
  const lots = sizes.flatMap((size, place) => {
    const value = values[place] as number
    const most = Math.min(counts[place] as number, Math.floor(longest / size))
    return value > 0
      ? lotsOf(most).map((many) => ({ place, many, size: many * size, value: many * value }))
      : []
  })
  const width = longest + 1
  if (lots.length * width > mostCells) return rooms.map((room) => bestFill({ sizes, values, counts, room }))
  const best = new Float64Array(width)
  const chosen = new Uint8Array(lots.length * width)
  lots.forEach((lot, row) => layLot(lot, best, chosen.subarray(row * width, (row + 1) * width)))
  return rooms.map((room) => {
    const value = best[room] as number
    return {
      taken: readBack({ lots, chosen, width }, room, sizes.length),
      value,
      atMost: value * (1 + guard),
    }
  })
}

/** A count as lots that make up every number to it: 1, 2, 4 and what is left. */
function lotsOf(count: number): readonly number[] {
  const lots: number[] = []
  let left = count
  for (let lot = 1; left > 0; lot *= 2) {
    lots.push(Math.min(lot, left))
    left -= lot
  }
  return lots
}

function layLot({ size, value }: Lot, best: Float64Array, chosen: Uint8Array): void {
  for (let room = best.length - 1; room >= size; room -= 1) {
    const filled = (best[room - size] as number) + value
    if (filled <= (best[room] as number)) continue
    best[room] = filled
    chosen[room] = 1
  }
}

type Laid = { readonly lots: readonly Lot[]; readonly chosen: Uint8Array; readonly width: number }

function readBack({ lots, chosen, width }: Laid, room: number, places: number): readonly number[] {
  const taken = Array.from({ length: places }, () => 0)
  let left = room
  for (let row = lots.length - 1; row >= 0; row -= 1) {
    if (chosen[row * width + left] !== 1) continue
    const { place, many, size } = lots[row] as Lot
    taken[place] = (taken[place] as number) + many
    left -= size
  }
  return taken
}
