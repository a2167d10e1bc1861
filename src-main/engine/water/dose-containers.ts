import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { coverPacks } from '../buying/cover-packs.ts'
import type { Pack, PackCover } from '../buying/cover-packs.ts'
import { doseLitres } from './system-dose.ts'
import type { DoseInput } from './system-dose.ts'

export type ContainersInput = DoseInput & {
  /** What the product is sold in: litres and pence of one container. */
  readonly packs?: readonly Pack[] | undefined
}
export type DoseInContainers = {
  readonly litres: number
  /** Whole containers, the cheapest that cover the dose; null when nobody said what there is. */
  readonly containers: Omit<PackCover, 'why'> | null
  readonly why: Derivation
}

const none = { picks: [], pence: 0, leftover: 0 }
/** Packs are counted in millionths of a litre. */
const leastLitres = 1e-6

/**
 * The product a system takes by `doseLitres`, and the whole containers to buy by `coverPacks`. No dose takes no container.
 * Refuses what those two refuse.
 *
 * @param input content, share let out, litres that one litre treats, and the containers with litres and pence
 * @source practice, no published source: a container is bought whole
 * @example doseInContainers({ contentLitres: 150, drainedShare: 1, treatedLitresPerLitre: 100, packs: [{ id: 'litre', holds: 1, pence: 1500 }] }).value.containers // => { picks: [{ id: 'litre', count: 2 }], pence: 3000, leftover: 0.5 }
 */
export function doseInContainers(input: ContainersInput): Outcome<DoseInContainers> {
  const { packs, ...rest } = input
  const dose = doseLitres(rest)
  if (!dose.ok) return dose
  const { litres, why } = dose.value
  if (packs === undefined) return accept({ litres, containers: null, why })
  if (litres < leastLitres) return accept({ litres, containers: none, why })
  const cover = coverPacks({ need: litres, packs })
  if (!cover.ok) {
    // The person gave no `need`: what is too large or too fine there comes from the content.
    const problems = cover.problems.map((problem) =>
      problem.path === 'need' ? { ...problem, path: 'contentLitres' } : problem,
    )
    return { ok: false, problems }
  }
  const { why: packsWhy, ...containers } = cover.value
  const count = containers.picks.reduce((sum, pick) => sum + pick.count, 0)
  return accept({
    litres,
    containers,
    why: because('Whole containers that cover the dose', count, { from: [why, packsWhy] }),
  })
}
