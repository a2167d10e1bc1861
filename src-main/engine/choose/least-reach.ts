import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Pipe } from '../../domain/wall.ts'
import type { SideAsk } from '../takeoff/asks.ts'
import { useBoxes } from '../takeoff/gather-needs.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { pipeOn } from '../wall/centre-line.ts'
import { pipeOffset } from '../wall/pipe-offset.ts'
import { apartFrom } from './least-make-up.ts'
import type { Least } from './least-make-up.ts'
import { dropMm } from './wall-limits.ts'
import type { WallLimits } from './wall-limits.ts'

/** How one pipe is brought to its valve, with its new pipe in whole steps. */
export type Reach = Pick<
  SideAsk,
  'side' | 'remedy' | 'elbows' | 'couplers' | 'newPipeMm' | 'clips' | 'tailMm'
>

/** New pipe is counted in steps of this, downwards: fewer cases to price, and never more pipe than there is. */
const stepMm = 200

/**
 * How the pipes would be brought to an emitter's valves, as `setOutWall` has it, with new pipe in whole steps downwards.
 * @param emitter its width, its pipe centres and how far its connections are off the wall, mm
 * @param reach the wall's limits and the pipes
 * @param figures the firm's figures: wall.… for the remedy
 * @source practice, no published source; the remedy as `pipeOffset`
 * @example reachOn({ widthMm: 600, pipeCentresMm: 550 }, { limits: {}, pipes: [] }, { settings: {} }) // => []
 */
export function reachOn(
  emitter: Emitter,
  { limits, pipes }: { readonly limits: WallLimits; readonly pipes: readonly Pipe[] },
  figures: Figures,
): readonly Reach[] {
  const drop = dropMm(limits, emitter)
  const { pipeCentresMm } = emitter
  return (['left', 'right'] as const).flatMap((side): readonly Reach[] => {
    const pipe = pipeOn(pipes, side)
    if (pipe === undefined) return []
    const half = side === 'left' ? -pipeCentresMm / 2 : pipeCentresMm / 2
    const xMm = limits.centreMm + limits.centrePerPipeCentres * pipeCentresMm + half
    const valve = { side, xMm, yMm: limits.bottomMm - drop }
    const { remedy, elbows, couplers, clips, pipeMm, tailMm } = pipeOffset(pipe, valve, { emitter, figures })
    const newPipeMm = Math.floor(pipeMm / stepMm) * stepMm
    return [{ side, remedy, elbows, couplers, clips, newPipeMm, tailMm }]
  })
}

/**
 * What bringing the pipes to the valves costs at the least beside all else, pence before tax: the time, a penny less for rounding, and
 * those parts that nothing else of the swap could be met with.
 * @param bare the facts of the swap with pipes that meet their valves, and the items that anything in it could be met with
 * @param reach how each pipe is brought there
 * @param least what needs cost at the least, the shelf and the firm's figures
 * @source practice, no published source
 * @example leastReachPence({}, [], {}) // => 0
 */
export function leastReachPence(
  { facts, items }: { readonly facts: JobFacts; readonly items: ReadonlySet<string> },
  reach: readonly Reach[],
  { leastOf, itemsOf, needsOf, workPence }: Omit<Least, 'figures'>,
): number {
  if (reach.every(({ remedy }) => remedy === 'none')) return 0
  const reached = withReach(facts, reach)
  const longer = workPence(reached)
  const shorter = workPence(facts)
  const time = longer.ok && shorter.ok ? Math.max(0, longer.value - shorter.value - 1) : 0
  const { remaining } = useBoxes(needsOf(reached), reached)
  return time + leastOf(apartFrom(items, remaining, { itemsOf }))
}

function withReach(facts: JobFacts, reach: readonly Reach[]): JobFacts {
  return {
    ...facts,
    swaps: facts.swaps.map((swap) => {
      const sides = swap.sides.map((side) => ({ ...side, ...reach.find((one) => one.side === side.side) }))
      const extensions = sides.flatMap((side) =>
        side.remedy === 'longerTail'
          ? [{ ...extension, at: `${side.side} valve`, thread: side.thread, finish: side.finish }]
          : [],
      )
      return { ...swap, sides, joints: [...swap.joints, ...extensions] }
    }),
  }
}

/** The joint behind a longer tail. */
const extension = { holds: 'extension', sealing: 'none', factoryFitted: false } as const
