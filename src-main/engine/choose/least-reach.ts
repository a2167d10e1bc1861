import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import type { PipeRemedy } from '../../domain/set-out.ts'
import type { Pipe } from '../../domain/wall.ts'
import { jobWork, labourFor } from '../labour/job-labour.ts'
import { penceForMinutes } from '../quote/labour-lines.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { pipeOn } from '../wall/centre-line.ts'
import { pipeOffset } from '../wall/pipe-offset.ts'
import { dropMm } from './wall-limits.ts'
import type { WallLimits } from './wall-limits.ts'

/**
 * A rule that says what bringing the pipes to an emitter's valves costs at the least, pence before tax: the time alone, without pipe and
 * elbows. What was asked once is remembered by the places of the valves.
 * @param facts the facts of the swap with an emitter of the same make-up in it
 * @param reach the wall's limits and the pipes
 * @param figures the firm's figures: wall.… for the remedy, labour and its rate
 * @source practice, no published source; the remedy as `pipeOffset`
 * @example leastReach({ swaps: [] }, { limits: {}, pipes: [] }, { settings: {} })({ widthMm: 600, pipeCentresMm: 550, connectionOffWallMm: 50 }) // => 0
 */
export function leastReach(
  facts: JobFacts,
  { limits, pipes }: { readonly limits: WallLimits; readonly pipes: readonly Pipe[] },
  figures: Figures,
): (emitter: Emitter) => number {
  const placesKnown = new Map<string, number>()
  const remediesKnown = new Map<string, number>()
  const sides = facts.swaps[0]?.sides ?? []
  return (emitter) => {
    if (sides.length === 0) return 0
    const drop = dropMm(limits, emitter)
    const place = `${emitter.pipeCentresMm} ${emitter.connectionOffWallMm} ${drop}`
    const known = placesKnown.get(place)
    if (known !== undefined) return known
    const remedies = sides.map(({ side }): PipeRemedy => {
      const pipe = pipeOn(pipes, side)
      if (pipe === undefined) return 'none'
      const half = side === 'left' ? -emitter.pipeCentresMm / 2 : emitter.pipeCentresMm / 2
      const xMm = limits.centreMm + limits.centrePerPipeCentres * emitter.pipeCentresMm + half
      const valve = { side, xMm, yMm: limits.bottomMm - drop }
      return pipeOffset(pipe, valve, { emitter, figures }).remedy
    })
    const named = remedies.join(' ')
    const pence = remediesKnown.get(named) ?? remediesPence(facts, remedies, figures)
    remediesKnown.set(named, pence)
    placesKnown.set(place, pence)
    return pence
  }
}

/** The labour with the remedies less the labour without, a penny less for rounding; never below 0. */
function remediesPence(facts: JobFacts, remedies: readonly PipeRemedy[], figures: Figures): number {
  const withRemedies = (each: readonly PipeRemedy[]): JobFacts => ({
    ...facts,
    swaps: facts.swaps.map((swap) => ({
      ...swap,
      sides: swap.sides.map((side, at) => ({ ...side, remedy: each[at] ?? 'none' })),
    })),
  })
  const more = labourPence(withRemedies(remedies), figures)
  const less = labourPence(withRemedies(remedies.map(() => 'none')), figures)
  return more === null || less === null ? 0 : Math.max(0, more - less - 1)
}

function labourPence(facts: JobFacts, figures: Figures): number | null {
  const labour = labourFor(jobWork(facts, figures), figures)
  if (!labour.ok) return null
  return penceForMinutes(labour.value.expectedMin, figure(figures, 'money.labourPencePerHour'))
}
