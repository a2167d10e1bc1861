type Mark = { readonly at: number; readonly length: number }
type Ends = { readonly from: number; readonly to: number }

/**
 * Moves marks along a line just far enough that none covers another, keeping their order: each run of marks that touch is kept
 * about its own middle, and all of them are kept between two ends as far as there is room.
 * @param wanted middles, in the order along the line, and how long each mark is
 * @param within the ends
 * @source least squares with an order (pool adjacent violators)
 * @example spread([{ at: 0, length: 4 }, { at: 2, length: 4 }]) // => [-1, 3]
 */
export function spread(
  wanted: readonly Mark[],
  within: Ends = { from: -Infinity, to: Infinity },
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
  return kept(
    middles.map((middle, nth) => middle + (offsets[nth] ?? 0)),
    wanted,
    within,
  )
}

/** Pushes marks back from the far end, then from the near end, each no more than it must. */
function kept(middles: readonly number[], marks: readonly Mark[], { from, to }: Ends): readonly number[] {
  const half = (nth: number) => (marks[nth]?.length ?? 0) / 2
  const pushed = [...middles]
  pushed.reduceRight((end, middle, nth) => {
    pushed[nth] = Math.min(middle, end - half(nth))
    return pushed[nth] - half(nth)
  }, to)
  pushed.reduce((start, middle, nth) => {
    pushed[nth] = Math.max(middle, start + half(nth))
    return pushed[nth] + half(nth)
  }, from)
  return pushed
}
