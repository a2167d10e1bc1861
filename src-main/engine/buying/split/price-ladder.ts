/** From this many packs on, every one of them costs so much. */
export type PriceLevel = { readonly fromPacks: number; readonly pence: number }
export type PriceBreaks = readonly { readonly fromPacks: number; readonly packPence: number }[] | undefined

/**
 * The prices of one pack by the number taken, each lower than the one before; the first from 0 packs. A break that lowers
 * nothing is left out.
 *
 * @param pence of one pack when few are taken, whole, 0 or more
 * @param breaks from 2 packs up, in any order
 * @source practice, no published source
 * @example priceLevels(60, [{ fromPacks: 10, packPence: 50 }]).map((level) => level.fromPacks) // => [0, 10]
 */
export function priceLevels(pence: number, breaks: PriceBreaks): readonly PriceLevel[] {
  const steps = (breaks ?? []).toSorted((a, b) => a.fromPacks - b.fromPacks || a.packPence - b.packPence)
  return steps.reduce<readonly PriceLevel[]>(
    (levels, step) =>
      step.packPence < (levels.at(-1)?.pence ?? 0)
        ? [...levels, { fromPacks: step.fromPacks, pence: step.packPence }]
        : levels,
    [{ fromPacks: 0, pence }],
  )
}

/**
 * What one pack costs when so many are taken, pence.
 *
 * @param levels as `priceLevels` gives them
 * @param count whole packs, 0 or more
 * @source practice, no published source
 * @example priceAtCount(priceLevels(60, [{ fromPacks: 10, packPence: 50 }]), 10) // => 50
 */
export function priceAtCount(levels: readonly PriceLevel[], count: number): number {
  return levels.findLast(({ fromPacks }) => fromPacks <= count)?.pence ?? 0
}

/**
 * How many ways there are to take one level of each ladder: the product of their lengths.
 *
 * @param ladders each with at least one level
 * @source arithmetic
 * @example choiceCount([priceLevels(60, [{ fromPacks: 10, packPence: 50 }]), priceLevels(9, [])]) // => 2
 */
export function choiceCount(ladders: readonly (readonly PriceLevel[])[]): number {
  return ladders.reduce((product, levels) => product * levels.length, 1)
}

/**
 * Every way to take one level of each ladder.
 *
 * @param ladders each with at least one level
 * @source arithmetic
 * @example levelChoices([priceLevels(60, [{ fromPacks: 10, packPence: 50 }])]).map(([level]) => level.pence) // => [60, 50]
 */
export function levelChoices(
  ladders: readonly (readonly PriceLevel[])[],
): readonly (readonly PriceLevel[])[] {
  return ladders.reduce<readonly (readonly PriceLevel[])[]>(
    (choices, levels) => choices.flatMap((choice) => levels.map((level) => [...choice, level])),
    [[]],
  )
}
