import { figure } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { markedUpPence } from '../money/price.ts'
import type { Bounded, Cheapest } from './cheapest-first.ts'
import { trialFacts } from './fitted-cost.ts'
import type { Trial } from './fitted-cost.ts'
import { leastPackPence } from './least-cost.ts'
import type { LeastOfNeeds } from './least-cost.ts'
import { leastReach } from './least-reach.ts'
import { leastOfMakeUp, makeUpOf } from './make-up.ts'
import type { WallLimits } from './wall-limits.ts'

export type Bounds = { readonly bounded: readonly Bounded[]; readonly failed: Cheapest['failed'] }
type LeastOf = { readonly besidePence: number; readonly reachPence: (emitter: Emitter) => number }

/**
 * Gives each emitter that suits and has a price the least that it can cost fitted: its own price with mark-up, what its make-up needs,
 * and the time that its pipes take. Those that cannot be set out are put apart.
 * Refuses a wall for which there is no fixing: it takes none of them.
 * @param suits emitters that heat, fit and are as wanted, with what they give in W
 * @param trial the swap without its emitter
 * @param rules what needs cost at the least, and the wall's limits
 * @source practice, no published source
 * @example boundPrices([], { shelf: { prices: new Map() }, figures: { settings: { 'lift.onePersonKg': { value: 25 }, 'money.markUpEmitterBasisPoints': { value: 2000 } } } }, {}).value.bounded // => []
 */
export function boundPrices(
  suits: readonly { readonly emitter: Emitter; readonly givesW: number }[],
  trial: Trial,
  rules: { readonly leastOf: LeastOfNeeds; readonly limits: WallLimits },
): Outcome<Bounds> {
  const { shelf, figures } = trial
  const onePersonKg = figure(figures, 'lift.onePersonKg')
  const markUp = figure(figures, 'money.markUpEmitterBasisPoints')
  const byMakeUp = new Map<string, LeastOf>()
  const bounded: Bounded[] = []
  const failed: Cheapest['failed'][number][] = []
  for (const { emitter, givesW } of suits) {
    const packPence = leastPackPence(shelf.prices.get(emitter.itemId) ?? [])
    if (packPence === null) continue
    const ownPence = markedUpPence(packPence, markUp)
    const makeUp = makeUpOf(emitter, onePersonKg)
    const known = byMakeUp.get(makeUp)
    const least = known === undefined ? leastLike(emitter, trial, rules) : accept(known)
    if (least.ok) {
      byMakeUp.set(makeUp, least.value)
      const leastPence = ownPence + least.value.besidePence + least.value.reachPence(emitter)
      bounded.push({ emitter, givesW, ownPence, leastPence })
    } else if (least.problems.some((problem) => problem.code === 'gap')) {
      return least
    } else failed.push({ emitter, givesW, ownPence, leastPence: ownPence, problems: least.problems })
  }
  return accept({ bounded, failed })
}

function leastLike(
  emitter: Emitter,
  trial: Trial,
  { leastOf, limits }: { readonly leastOf: LeastOfNeeds; readonly limits: WallLimits },
): Outcome<LeastOf> {
  const { figures, swap } = trial
  const tried = trialFacts(emitter, trial)
  if (!tried.ok) return tried
  const { facts } = tried.value
  const beside = leastOfMakeUp(facts, leastOf, figures)
  if (!beside.ok) return beside
  const reachPence = leastReach(facts, { limits, pipes: swap.pipes }, figures)
  return accept({ besidePence: beside.value, reachPence })
}
