/**
 * Moves marks along a line just far enough that none covers another, keeping their order: each run of marks that touch is kept
 * about its own middle.
 * @param wanted middles, in the order along the line, and how long each mark is
 * @source least squares with an order (pool adjacent violators)
 * @example spread([{ at: 0, length: 4 }, { at: 2, length: 4 }]) // => [-1, 3]
 */
export function spread(
  wanted: readonly { readonly at: number; readonly length: number }[],
): readonly number[] {
  const offsets = wanted.reduce<number[]>((sums, mark, nth) => {
    const before = wanted[nth - 1]
    return [...sums, before === undefined ? 0 : (sums[nth - 1] ?? 0) + (before.length + mark.length) / 2]
  }, [])
  const pools: { sum: number; count: number }[] = []
  wanted.forEach((mark, nth) => {
    pools.push({ sum: mark.at - (offsets[nth] ?? 0), count: 1 })
    for (
      let last = pools.at(-1), before = pools.at(-2);
      last && before;
      last = pools.at(-1), before = pools.at(-2)
    ) {
      if (before.sum / before.count <= last.sum / last.count) break
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count })
    }
  })
  const middles = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
  return middles.map((middle, nth) => middle + (offsets[nth] ?? 0))
}
