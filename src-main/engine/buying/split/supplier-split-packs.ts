import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { accept, refuse, under } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { coverPacks } from '../cover-packs.ts'
import { choiceCount, levelChoices, priceAtCount, priceLevels } from './price-ladder.ts'
import type { PriceLevel } from './price-ladder.ts'
import { inMillionths, stepsInUnit } from '../whole-units.ts'

/** A pack as a supplier offers it; from `fromPacks` of this code on, every one of them costs `packPence`. */
export type OfferedPack = {
  readonly code: string
  readonly holds: number
  readonly pence: number
  readonly breaks?: readonly { readonly fromPacks: number; readonly packPence: number }[] | undefined
}
/** What one line comes to from one supplier. */
export type LineBought = {
  readonly packs: readonly {
    readonly code: string
    readonly holds: number
    readonly count: number
    readonly packPence: number
  }[]
  readonly pence: number
  readonly leftover: number
  readonly why: Derivation
}

const mostTrials = 4096

type Ladder = { readonly pack: OfferedPack; readonly levels: readonly PriceLevel[] }
type Cover = {
  readonly counts: readonly number[]
  readonly pence: number
  readonly over: number
  readonly many: number
}

/**
 * The packs of one supplier that cover a need for the least money, price breaks counted; then the least left over; then the
 * fewest packs. Exact: for each choice of a break level k_i for each pack, from_k of it are taken at p_k and the rest of the
 * need is covered at those prices; the best of all choices holds the best cover, for that is found at its own levels.
 * Refuses what `coverPacks` refuses, a break that is not whole pence from 2 packs up, and more than 4096 choices of levels.
 *
 * @param need in the unit of `holds`, a millionth to 1000000
 * @param packs at least one; prices in whole pence
 * @source exhaustive over all-units discount levels; within a level Bellman's recursion for the unbounded knapsack
 * @example coverWithBreaks(9, [{ code: 'A', holds: 1, pence: 60, breaks: [{ fromPacks: 10, packPence: 50 }] }]).value.pence // => 500
 */
export function coverWithBreaks(need: number, packs: readonly OfferedPack[]): Outcome<LineBought> {
  const sorted = packs.toSorted(inOrder)
  const wrong = breakFault(packs)
  if (wrong !== null) return wrong
  const ladders = sorted.map((pack) => ({ pack, levels: priceLevels(pack.pence, pack.breaks) }))
  if (choiceCount(ladders.map(({ levels }) => levels)) > mostTrials) {
    const message = `These packs have so many price breaks that more than ${mostTrials} ways would have to be tried; give fewer breaks.`
    return refuse('impossible', message, 'packs')
  }
  const best = bestCover(need, ladders)
  return best.ok ? accept(boughtAs(need, sorted, best.value)) : best
}

function bestCover(need: number, ladders: readonly Ladder[]): Outcome<Cover> {
  let best: Cover | null = null
  for (const levels of levelChoices(ladders.map(({ levels }) => levels))) {
    const spent = levels.reduce((sum, { fromPacks, pence }) => sum + fromPacks * pence, 0)
    if (best !== null && spent > best.pence) continue
    const found = coverAt(need, ladders, levels)
    if (!found.ok) return found
    if (best === null || isBetter(found.value, best)) best = found.value
  }
  return best === null
    ? refuse('invalid', 'There are no packs to choose from; give at least one.', 'packs')
    : accept(best)
}

/** The best cover with at least so many of each pack as its level asks, at the level's price. */
function coverAt(need: number, ladders: readonly Ladder[], levels: readonly PriceLevel[]): Outcome<Cover> {
  const held = levels.reduce(
    (sum, { fromPacks }, index) => sum + fromPacks * inMillionths(ladders[index]?.pack.holds ?? 0),
    0,
  )
  const rest = inMillionths(need) - held
  const taken = levels.map(({ fromPacks }) => fromPacks)
  if (held > 0 && rest <= 0) return accept(scored(need, ladders, taken))
  const packs = ladders.map(({ pack }, index) => ({
    id: `${index}`,
    holds: pack.holds,
    pence: levels[index]?.pence ?? pack.pence,
  }))
  const covered = coverPacks({ need: held > 0 ? rest / stepsInUnit : need, packs })
  if (!covered.ok) return inCodes(covered, ladders)
  const more = new Map(covered.value.picks.map(({ id, count }) => [Number(id), count]))
  return accept(
    scored(
      need,
      ladders,
      taken.map((count, index) => count + (more.get(index) ?? 0)),
    ),
  )
}

/** A refusal that speaks of packs by their places, put into their codes. */
function inCodes(refused: Outcome<never> | Outcome<unknown>, ladders: readonly Ladder[]): Outcome<never> {
  if (refused.ok) throw new Error('Only a refusal is put into codes')
  const problems = refused.problems.map((problem) => ({
    ...problem,
    message: problem.message.replace(
      /^Pack (\d+) /,
      (_, place: string) => `Pack ${ladders[Number(place)]?.pack.code ?? place} `,
    ),
    ...(problem.path === undefined ? {} : { path: problem.path.split('[')[0] ?? problem.path }),
  }))
  return { ok: false, problems }
}

function scored(need: number, ladders: readonly Ladder[], counts: readonly number[]): Cover {
  const held = counts.reduce(
    (sum, count, index) => sum + count * inMillionths(ladders[index]?.pack.holds ?? 0),
    0,
  )
  return {
    counts,
    pence: counts.reduce(
      (sum, count, index) => sum + count * priceAtCount(ladders[index]?.levels ?? [], count),
      0,
    ),
    over: held - inMillionths(need),
    many: counts.reduce((sum, count) => sum + count, 0),
  }
}

function isBetter(a: Cover, b: Cover): boolean {
  return (a.pence - b.pence || a.over - b.over || a.many - b.many) < 0
}

function inOrder(a: OfferedPack, b: OfferedPack): number {
  if (a.code !== b.code) return a.code < b.code ? -1 : 1
  if (a.holds !== b.holds || a.pence !== b.pence) return b.holds - a.holds || a.pence - b.pence
  return JSON.stringify(a.breaks ?? []) < JSON.stringify(b.breaks ?? []) ? -1 : 1
}

function breakFault(packs: readonly OfferedPack[]): Outcome<never> | null {
  for (const [index, { code, breaks = [] }] of packs.entries()) {
    const place = breaks.findIndex(
      ({ fromPacks, packPence }) =>
        !Number.isSafeInteger(fromPacks) ||
        fromPacks < 2 ||
        !Number.isSafeInteger(packPence) ||
        packPence < 0,
    )
    if (place >= 0) {
      const message = `A price break of pack ${code} must be whole pence, 0 or more, from a whole number of packs, 2 or more.`
      return under(`packs[${index}]`, refuse('invalid', message, `breaks[${place}]`))
    }
  }
  return null
}

function boughtAs(need: number, sorted: readonly OfferedPack[], cover: Cover): LineBought {
  const packs = sorted.flatMap((pack, index) => {
    const count = cover.counts[index] ?? 0
    if (count === 0) return []
    const packPence = priceAtCount(priceLevels(pack.pence, pack.breaks), count)
    return [{ code: pack.code, holds: pack.holds, count, packPence }]
  })
  const leftover = cover.over / stepsInUnit
  const why = because('The cheapest whole packs that cover the need, price breaks counted', cover.pence, {
    unit: 'pence',
    from: [
      given('Needed', need),
      ...packs.map(({ code, holds, count, packPence }) =>
        because(`Packs of ${code}`, count * packPence, {
          unit: 'pence',
          from: [
            given('Packs taken', count),
            given('One holds', holds),
            given('One costs', packPence, 'pence'),
          ],
        }),
      ),
      given('Left over', leftover),
    ],
  })
  return { packs, pence: cover.pence, leftover, why }
}
