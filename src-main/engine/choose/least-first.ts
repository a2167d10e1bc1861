/** Places in the order of their keys, taken one by one; a key may be raised while it is the least. */
export type LeastFirst = {
  /** The place with the least key, of equals the first; null when none is left. */
  readonly first: () => number | null
  readonly keyOf: (at: number) => number
  /** Takes the first out. */
  readonly drop: () => void
  /** Gives the first a larger key and lets it sink to its place. */
  readonly raise: (key: number) => void
}

/**
 * Puts places in the order of their keys without sorting those that nobody asks for: a binary heap, so that the first comes after
 * about 2 n comparisons and each further one after about 2 log2 n.
 * @param keys the key of each place, none NaN
 * @source binary heap, a published algorithm: J. W. J. Williams, Algorithm 232, 1964
 * @example leastFirst(Float64Array.of(5, 3, 4)).first() // => 1
 */
export function leastFirst(keys: Float64Array): LeastFirst {
  const own = keys.slice()
  const heap = Int32Array.from(own.keys())
  let left = heap.length
  const sink = (from: number) => {
    const at = heap[from] ?? 0
    const key = own[at] ?? 0
    let hole = from
    for (let child = 2 * hole + 1; child < left; child = 2 * hole + 1) {
      let under = heap[child] ?? 0
      const other = heap[child + 1] ?? 0
      if (child + 1 < left && isBefore(own, other, under)) {
        child += 1
        under = other
      }
      const underKey = own[under] ?? 0
      if (key < underKey || (key === underKey && at < under)) break
      heap[hole] = under
      hole = child
    }
    heap[hole] = at
  }
  for (let at = (left >> 1) - 1; at >= 0; at -= 1) sink(at)
  return {
    first: () => (left === 0 ? null : (heap[0] ?? null)),
    keyOf: (at) => own[at] ?? 0,
    drop: () => {
      if (left === 0) return
      left -= 1
      heap[0] = heap[left] ?? 0
      sink(0)
    },
    raise: (key) => {
      if (left === 0) return
      own[heap[0] ?? 0] = key
      sink(0)
    },
  }
}

function isBefore(keys: Float64Array, a: number, b: number): boolean {
  const one = keys[a] ?? 0
  const other = keys[b] ?? 0
  return one < other || (one === other && a < b)
}

/**
 * The places with the least keys, least first, of equals the first; all of them when there are fewer.
 * @param keys the key of each place, none NaN
 * @param most how many, 0 or more
 * @source practice, no published source
 * @example leastPlaces(Float64Array.of(5, 3, 4, 3), 2) // => [1, 3]
 */
export function leastPlaces(keys: Float64Array, most: number): readonly number[] {
  const order = leastFirst(keys)
  const places: number[] = []
  for (let at = order.first(); at !== null && places.length < most; at = order.first()) {
    places.push(at)
    order.drop()
  }
  return places
}
