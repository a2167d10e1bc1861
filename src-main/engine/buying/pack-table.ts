/** A pack in whole steps of quantity, with its place in the list that it came from. */
export type WholePack = { readonly size: number; readonly pence: number; readonly place: number }

/**
 * The packs without those that are never worth buying, the largest first. One goes when as many of another as hold no less
 * cost less than it does: ceil(size / other size) x other pence < pence.
 *
 * @param packs sizes in whole steps (1 or more), prices in whole pence (0 or more)
 * @source dominance in unbounded knapsacks (Kellerer, Pferschy and Pisinger, Knapsack Problems, chapter 8), from memory
 * @example worthBuying([{ size: 1, pence: 10, place: 0 }, { size: 10, pence: 110, place: 1 }]).length // => 1
 */
export function worthBuying(packs: readonly WholePack[]): readonly WholePack[] {
  return packs
    .filter((pack) => !packs.some((other) => Math.ceil(pack.size / other.size) * other.pence < pack.pence))
    .toSorted((a, b) => b.size - a.size || a.place - b.place)
}

/**
 * How many of the best-value pack every cheapest cover of a large need holds, so that only the rest must be searched.
 * Each other pack i is in it at most m_i times: no more than the best pack's saving pays for, m_i <= c w / (c_i w - w_i c);
 * or, at equal value, less than w / gcd(w_i, w), for that many would be changed for larger packs of the best. So the best
 * fills at least need - sum(m_i w_i).
 *
 * @param need whole steps, 1 or more
 * @param packs as `worthBuying` gives them, at least one
 * @source exchange argument, ours
 * @example surelyBest(1000, [{ size: 10, pence: 100, place: 0 }, { size: 1, pence: 20, place: 1 }]).count // => 100
 */
export function surelyBest(
  need: number,
  packs: readonly WholePack[],
): { readonly pack: WholePack; readonly count: number } {
  const pack = packs.reduce((best, next) => (dearness(next, best) < 0n ? next : best))
  const others = packs
    .filter((other) => other !== pack)
    .map((other) => mostOf(other, pack) * BigInt(other.size))
  const filled = BigInt(need) - others.reduce((sum, steps) => sum + steps, 0n)
  const count = filled <= 0n ? 0 : Number((filled + BigInt(pack.size) - 1n) / BigInt(pack.size))
  return { pack, count }
}

/** Above 0 when `a` costs more for what it holds than `b`. */
function dearness(a: WholePack, b: WholePack): bigint {
  return BigInt(a.pence) * BigInt(b.size) - BigInt(b.pence) * BigInt(a.size)
}

function mostOf(other: WholePack, best: WholePack): bigint {
  const excess = dearness(other, best)
  const byNumber = BigInt(best.size / divisor(other.size, best.size) - 1)
  if (excess === 0n) return byNumber
  const byMoney = (BigInt(best.pence) * BigInt(best.size)) / excess
  return byMoney < byNumber ? byMoney : byNumber
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b)
}

/**
 * How many of each pack cover a need for the least money, then the least left over, then the fewest packs. For each need r
 * from 1 up: best(r) = least over packs of (pence, 0, 1) + best(r - size), where best(r <= 0) = (0, -r, 0).
 *
 * @param need whole steps; takes need x packs operations and 22 bytes a step
 * @param packs at least one, in the order in which equals are preferred
 * @source Bellman's recursion for the unbounded knapsack
 * @example countsToCover(7, [{ size: 5, pence: 9, place: 0 }, { size: 2, pence: 4, place: 1 }]) // => [1, 1]
 */
export function countsToCover(need: number, packs: readonly WholePack[]): readonly number[] {
  const counts = packs.map(() => 0)
  if (need <= 0) return counts
  const choice = choices(need, packs)
  let rest = need
  while (rest > 0) {
    const taken = choice[rest] ?? 0
    counts[taken] = (counts[taken] ?? 0) + 1
    rest -= packs[taken]?.size ?? rest
  }
  return counts
}

/** For each need, the place of the pack to take first. */
function choices(need: number, packs: readonly WholePack[]): Uint16Array {
  const cost = new Float64Array(need + 1)
  const over = new Float64Array(need + 1)
  const many = new Uint32Array(need + 1)
  const choice = new Uint16Array(need + 1)
  for (let rest = 1; rest <= need; rest += 1) {
    let least = Infinity
    let leastOver = Infinity
    let fewest = Infinity
    for (let place = 0; place < packs.length; place += 1) {
      const { size, pence } = packs[place] as WholePack
      const after = rest - size
      const costHere = pence + (after > 0 ? (cost[after] as number) : 0)
      if (costHere > least) continue
      const overHere = after > 0 ? (over[after] as number) : -after
      const manyHere = 1 + (after > 0 ? (many[after] as number) : 0)
      if (costHere === least && (overHere > leastOver || (overHere === leastOver && manyHere >= fewest)))
        continue
      least = costHere
      leastOver = overHere
      fewest = manyHere
      choice[rest] = place
    }
    cost[rest] = least
    over[rest] = leastOver
    many[rest] = fewest
  }
  return choice
}
