import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { leastBeside } from './least-cost.ts'
import type { LeastOfNeeds } from './least-cost.ts'

/**
 * Emitters that a price cannot tell apart but by their own price, their size and how their pipes are reached: one name for all.
 * @param emitter of the catalogue
 * @param onePersonKg mass above which two people lift it
 * @source practice, no published source
 * @example makeUpOf({ form: { kind: 'panel' }, tappings: [], box: [], brackets: [{ holes: [{}, {}] }], dryKg: 30 }, 25) // => "panel|2|two"
 */
export function makeUpOf(
  { form, tappings, box, brackets, dryKg }: Pick<Emitter, 'form' | 'tappings' | 'box' | 'brackets' | 'dryKg'>,
  onePersonKg: number,
): string {
  let holes = 0
  for (const bracket of brackets) holes += bracket.holes.length
  let name = `${form.kind}|${holes}|${dryKg > onePersonKg ? 'two' : 'one'}`
  for (const one of tappings) name += `|${one.at} ${one.thread} ${one.holds} ${one.factoryFitted ?? false}`
  for (const one of box) {
    name += `|${one.kind} ${one.count} ${one.suits?.join() ?? ''}`
    for (const field in one.spec) name += ` ${field} ${one.spec[field]}`
  }
  return name
}

/**
 * What all emitters of one make-up cost at the least beside their own price: pipes taken to meet their valves, and of all fixings
 * for such a wall the cheapest to use.
 * Refuses what the labour estimate refuses.
 * @param facts the facts of the swap with one emitter of that make-up in it
 * @param leastOf what needs cost at the least
 * @param figures the firm's figures
 * @source practice, no published source
 * @example leastOfMakeUp({ swaps: [] }, () => 100, { settings: {}, fixings: [] }).ok // => true
 */
export function leastOfMakeUp(facts: JobFacts, leastOf: LeastOfNeeds, figures: Figures): Outcome<number> {
  let least: number | null = null
  for (const bare of bareFacts(facts, figures)) {
    const cost = leastBeside(bare, leastOf, figures)
    if (!cost.ok) return cost
    least = Math.min(least ?? cost.value, cost.value)
  }
  return accept(least ?? 0)
}

/** The facts without what differs within a make-up, once for each way of fixing. */
function bareFacts(facts: JobFacts, figures: Figures): readonly JobFacts[] {
  const swap = facts.swaps[0]
  if (swap === undefined) return []
  const onePersonKg = figure(figures, 'lift.onePersonKg')
  const emitterMassKg = swap.ask.emitterMassKg > onePersonKg ? onePersonKg + 1 : 0
  const straight = { remedy: 'none', elbows: 0, couplers: 0, newPipeMm: 0, clips: 0, tailMm: 0 } as const
  const bare = {
    ...swap,
    ask: { ...swap.ask, emitterMassKg, needsBoard: false },
    sides: swap.sides.map((side) => ({ ...side, ...straight })),
    joints: swap.joints.filter((joint) => joint.holds !== 'extension'),
  }
  const fixings = figures.fixings.filter((fixing) => fixing.builds.includes(swap.wallBuild))
  const ways = fixings.flatMap((fixing, index) => [
    { fixing, needsBoard: false },
    ...(index === 0 ? [{ fixing, needsBoard: true }] : []),
  ])
  return ways.map((way) => ({
    ...facts,
    swaps: [{ ...bare, holes: swap.holes.map((hole) => ({ ...hole, ...way })) }],
  }))
}
