import { figure } from '../../domain/figures.ts'
import type { Figures, Fixing } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Wall } from '../../domain/wall.ts'
import type { HoleAsk } from '../takeoff/asks.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'

/**
 * Emitters that a price cannot tell apart but by their own price, their mass, their size and how their pipes are reached: one name
 * for all.
 * @param emitter of the catalogue
 * @source practice, no published source
 * @example makeUpOf({ form: { kind: 'panel' }, finish: 'white', tappings: [], box: [], brackets: [{ holes: [{}, {}] }] }) // => "panel|white|1|2"
 */
export function makeUpOf(
  emitter: Pick<Emitter, 'form' | 'finish' | 'tappings' | 'box' | 'brackets'>,
): string {
  return `${emitter.form.kind}|${emitter.finish}|${builtInWords(emitter)}`
}

/**
 * What an emitter hangs on, what screws into it and what lies in its box: one text for all that are alike in that.
 * @param emitter its brackets, tappings and box
 * @source practice, no published source
 * @example builtInWords({ tappings: [{ at: 'topLeft', thread: 'G1/2', holds: 'vent' }], box: [{ kind: 'vent', count: 1, spec: { thread: 'G1/2' } }], brackets: [{ holes: [{}, {}] }] }) // => "1|2|topLeft G1/2 vent false|vent 1  thread G1/2"
 */
export function builtInWords({
  tappings,
  box,
  brackets,
}: Pick<Emitter, 'tappings' | 'box' | 'brackets'>): string {
  let holes = 0
  for (const bracket of brackets) holes += bracket.holes.length
  let name = `${brackets.length}|${holes}`
  for (const one of tappings) name += `|${one.at} ${one.thread} ${one.holds} ${one.factoryFitted ?? false}`
  for (const one of box) {
    name += `|${one.kind} ${one.count} ${one.suits?.join() ?? ''}`
    for (const field in one.spec) name += ` ${field} ${one.spec[field]}`
  }
  return name
}

/**
 * The facts of a swap without what differs within a make-up, once for each way of fixing; each costs no more than any emitter of that
 * make-up whose holes are all fixed so. Pipes meet their valves, a board is one stud long.
 * @param facts the facts of the swap with one emitter of that make-up in it
 * @param figures the firm's figures
 * @source practice, no published source
 * @example bareFacts({ swaps: [] }, { settings: {}, fixings: [] }) // => []
 */
export function bareFacts(facts: JobFacts, figures: Figures): readonly JobFacts[] {
  const swap = facts.swaps[0]
  if (swap === undefined) return []
  const onePersonKg = figure(figures, 'lift.onePersonKg')
  const emitterMassKg = swap.ask.emitterMassKg > onePersonKg ? onePersonKg + 1 : 0
  const straight = { remedy: 'none', elbows: 0, couplers: 0, newPipeMm: 0, clips: 0, tailMm: 0 } as const
  const bare = {
    ...swap,
    ask: { ...swap.ask, emitterMassKg, needsBoard: false, boardMm: swap.ask.studSpacingMm },
    sides: swap.sides.map((side) => ({ ...side, ...straight })),
    joints: swap.joints.filter((joint) => joint.holds !== 'extension'),
  }
  const fixedBy = (way: Pick<HoleAsk, 'fixing' | 'needsBoard'>): JobFacts => ({
    ...facts,
    swaps: [
      {
        ...bare,
        ask: { ...bare.ask, needsBoard: way.needsBoard },
        holes: swap.holes.map((hole) => ({ ...hole, ...way })),
      },
    ],
  })
  return fixingsFor(swap.wallBuild, figures).flatMap((fixing, index) => [
    fixedBy({ fixing, needsBoard: false }),
    ...(index === 0 ? [fixedBy({ fixing, needsBoard: true })] : []),
  ])
}

/**
 * The fixings that are meant for a kind of wall.
 * @param build what the wall is built of
 * @param figures the firm's figures
 * @source practice, no published source
 * @example fixingsFor('solidMasonry', { fixings: [{ builds: ['boardOnDabs'] }] }) // => []
 */
export function fixingsFor(build: Wall['build'], figures: Pick<Figures, 'fixings'>): readonly Fixing[] {
  return figures.fixings.filter((fixing) => fixing.builds.includes(build))
}
