import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { countsToCover, surelyBest, worthBuying } from './pack-table.ts'
import type { WholePack } from './pack-table.ts'
import { commonStep, inMillionths, stepsInUnit } from './whole-units.ts'

export type Pack = { readonly id: string; readonly holds: number; readonly pence: number }
export type CoverInput = { readonly need: number; readonly packs: readonly Pack[] }
export type PackCover = {
  /** Packs to take, the largest first. */
  readonly picks: readonly { readonly id: string; readonly count: number }[]
  readonly pence: number
  readonly leftover: number
  readonly why: Derivation
}

const mostQuantity = 1_000_000
const mostPence = 1_000_000_000_00
const mostSteps = 4_000_000
const mostWork = 100_000_000

/**
 * The packs that cover a need for the least money; of those the least left over; of those the fewest packs; of those the
 * one with more of the larger packs. Exact: an unbounded knapsack cover, minimise sum(n_i pence_i) with
 * sum(n_i holds_i) >= need, in whole millionths of a unit.
 * Refuses a need or a pack that is not a millionth to 1000000, a price that is not whole pence, an id given twice, a total
 * past 1000000000 pounds, and sizes so fine beside the need that the search would pass 4000000 steps.
 *
 * @param input need and what each pack holds in the same unit (may be fractions); price of a pack in whole pence, 0 or more
 * @source unbounded knapsack in covering form; Bellman's recursion
 * @example coverPacks({ need: 7, packs: [{ id: 'five', holds: 5, pence: 900 }, { id: 'two', holds: 2, pence: 400 }] }).value.pence // => 1300
 */
export function coverPacks(input: CoverInput): Outcome<PackCover> {
  const wrong = problemIn(input)
  if (wrong !== null) return wrong
  const step = commonStep(input.packs.map((pack) => inMillionths(pack.holds)))
  const need = Math.ceil(inMillionths(input.need) / step)
  const packs = worthBuying(
    input.packs.map((pack, place) => ({ size: inMillionths(pack.holds) / step, pence: pack.pence, place })),
  )
  const sure = surelyBest(need, packs)
  const rest = Math.max(0, need - sure.count * sure.pack.size)
  if (rest > mostSteps || rest * packs.length > mostWork) return tooFine(input)
  const counts = countsToCover(rest, packs)
  const taken = packs.map((pack, index) => ({
    pack,
    count: (counts[index] ?? 0) + (pack === sure.pack ? sure.count : 0),
  }))
  return answer(input, taken, step)
}

type Taken = { readonly pack: WholePack; readonly count: number }

function answer(input: CoverInput, taken: readonly Taken[], step: number): Outcome<PackCover> {
  const pence = taken.reduce((sum, { pack, count }) => sum + pack.pence * count, 0)
  if (pence > mostPence) {
    return refuse(
      'invalid',
      'So many packs cost more than 1000000000 pounds; check the need and the prices.',
      'need',
    )
  }
  const held = taken.reduce((sum, { pack, count }) => sum + pack.size * count, 0) * step
  const leftover = (held - inMillionths(input.need)) / stepsInUnit
  const countAt = new Map(taken.map(({ pack, count }) => [pack.place, count]))
  const picks = taken
    .filter(({ count }) => count > 0)
    .map(({ pack, count }) => ({ id: input.packs[pack.place]?.id ?? '', count }))
  const why = because(
    'The cheapest packs that cover the need, then the least left over, then the fewest',
    pence,
    {
      unit: 'pence',
      from: [
        given('Needed', input.need),
        ...input.packs.map((pack, place) =>
          because(`Packs taken of ${pack.id}`, countAt.get(place) ?? 0, {
            from: [
              given(`One ${pack.id} holds`, pack.holds),
              given(`One ${pack.id} costs`, pack.pence, 'pence'),
            ],
          }),
        ),
      ],
    },
  )
  return accept({ picks, pence, leftover, why })
}

function problemIn({ need, packs }: CoverInput): Outcome<never> | null {
  if (!fits(need)) {
    return refuse(
      'invalid',
      `The need must be from a millionth of a unit to ${mostQuantity}; it was ${need}.`,
      'need',
    )
  }
  if (packs.length === 0)
    return refuse('invalid', 'There are no packs to choose from; give at least one.', 'packs')
  const seen = new Set<string>()
  for (const [index, { id, holds, pence }] of packs.entries()) {
    if (!fits(holds)) {
      const message = `Pack ${id} must hold from a millionth of a unit to ${mostQuantity}; it holds ${holds}.`
      return refuse('invalid', message, `packs[${index}].holds`)
    }
    if (!Number.isSafeInteger(pence) || pence < 0 || pence > mostPence) {
      const message = `Pack ${id} must cost whole pence, 0 or more; it costs ${pence}.`
      return refuse('invalid', message, `packs[${index}].pence`)
    }
    if (seen.has(id))
      return refuse('invalid', `Pack ${id} is there twice; give each pack its own id.`, `packs[${index}].id`)
    seen.add(id)
  }
  return null
}

function fits(quantity: number): boolean {
  return inMillionths(quantity) >= 1 && quantity <= mostQuantity
}

function tooFine({ need }: CoverInput): Outcome<never> {
  return refuse(
    'impossible',
    `The packs' sizes are too fine beside a need of ${need} to find the cheapest cover for certain; give pack sizes that are ` +
      'rounder, or a smaller need.',
    'packs',
  )
}
