import { coverWithBreaks } from './supplier-split-packs.ts'
import type { LineBought, OfferedPack } from './supplier-split-packs.ts'

/** What one supplier brings of a line that is bought from two. */
export type Share = {
  readonly supplierId: string
  readonly packs: LineBought['packs']
  readonly pence: number
  readonly leftover: number
}
/** What a line comes to from one supplier, or from two: then the id names both, and the shares say what each brings. */
export type Way = LineBought & { readonly supplierId: string; readonly shares?: readonly Share[] | undefined }
/** A line from one supplier alone, with the packs that the supplier has. */
export type WayAlone = Way & { readonly offered: readonly OfferedPack[] }

/** Two are tried for each of so many suppliers, those who are cheapest alone. */
const mostMixed = 6

/**
 * The ways to buy a line from two suppliers together that cost less than from either alone: least sum(n_i pence_i) over the
 * packs of both, price breaks counted. Pairs of the six suppliers who are cheapest alone are tried, and a pair whose packs
 * `coverWithBreaks` can't settle for certain is left out. What is left over is put to the second of the two.
 *
 * @param need in the unit of the packs, a millionth to 1000000
 * @param alone what the line comes to from each supplier alone
 * @source unbounded knapsack in covering form, as coverWithBreaks
 * @example mixedWays(12, [{ supplierId: 'a', pence: 1000, offered: [{ code: 'BAG', holds: 10, pence: 500 }] }, { supplierId: 'b', pence: 720, offered: [{ code: 'ONE', holds: 1, pence: 60 }] }]).map((way) => way.pence) // => [620]
 */
export function mixedWays(
  need: number,
  alone: readonly Pick<WayAlone, 'supplierId' | 'pence' | 'offered'>[],
): readonly Way[] {
  const tried = alone
    .toSorted((a, b) => a.pence - b.pence || (a.supplierId < b.supplierId ? -1 : 1))
    .slice(0, mostMixed)
    .toSorted((a, b) => (a.supplierId < b.supplierId ? -1 : 1))
  return tried.flatMap((first, place) =>
    tried.slice(place + 1).flatMap((second) => {
      const bought = coverWithBreaks(need, [...named(first), ...named(second)])
      if (!bought.ok || bought.value.pence >= Math.min(first.pence, second.pence)) return []
      return [wayOfTwo(bought.value, first.supplierId, second.supplierId)]
    }),
  )
}

/**
 * A line from one supplier as a way to buy it, without the packs that were on offer.
 *
 * @param alone what the line comes to from one supplier
 * @source practice, no published source
 * @example wayAlone({ supplierId: 's', pence: 5, offered: [] }).pence // => 5
 */
export function wayAlone({ supplierId, packs, pence, leftover, why }: WayAlone): Way {
  return { supplierId, packs, pence, leftover, why }
}

/** Packs of two suppliers told apart: their codes may be the same. */
function named({ supplierId, offered }: Pick<WayAlone, 'supplierId' | 'offered'>): readonly OfferedPack[] {
  return offered.map((pack) => ({ ...pack, code: `${supplierId}/${pack.code}` }))
}

function wayOfTwo(bought: LineBought, first: string, second: string): Way {
  const shareOf = (supplierId: string, leftover: number): Share => {
    const start = `${supplierId}/`
    const packs = bought.packs
      .filter(({ code }) => code.startsWith(start))
      .map((pack) => ({ ...pack, code: pack.code.slice(start.length) }))
    const pence = packs.reduce((sum, { count, packPence }) => sum + count * packPence, 0)
    return { supplierId, packs, pence, leftover }
  }
  const shares = [shareOf(first, 0), shareOf(second, bought.leftover)]
  return { ...bought, supplierId: `${first}+${second}`, shares }
}
