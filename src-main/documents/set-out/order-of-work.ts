import { bareMm, listed, mm } from '../in-words.ts'
import { centreInWords } from '../things-in-words.ts'
import type { Swap } from '../../domain/job.ts'
import type { SetOut } from '../../domain/set-out.ts'
import type { Wall } from '../../domain/wall.ts'

type AtWall = { readonly swap: Swap; readonly wall: Wall; readonly setOut: SetOut }

/** The work at the wall, step by step. */
export function orderOfWork({ swap, wall, setOut }: AtWall): readonly string[] {
  const heights = [...new Set(setOut.holes.map((hole) => hole.yMm))].toSorted((a, b) => b - a)
  const levels =
    heights.length === 0 ? [] : [`Level lines at ${listed(heights.map(bareMm))} mm from finished floor.`]
  return [
    'Detector over the whole area; mark pipes, cables and studs.',
    `Centre line ${mm(setOut.centreMm)} from the wall’s left end${checkOf(swap, setOut)}.`,
    ...levels,
    'Mark every hole, measure again from the other end, tick both boxes.',
    ...(setOut.fixing.needsBoard ? ['Screw the backing board across the studs first.'] : []),
    ...drilling(wall, setOut),
    'Plug, brackets up, check level, hang, then valves and pipes.',
  ]
}

/** A second way to find the centre line, where there is one. */
function checkOf({ centre, pipes }: Swap, setOut: SetOut): string {
  if (centre.kind === 'at') return ''
  return `: ${centreInWords({ centre, pipes }, setOut)}`
}

function drilling({ finish }: Wall, { holes }: SetOut): readonly string[] {
  const sizes = [...new Set(holes.map((hole) => `${bareMm(hole.drillMm)} mm bit, ${mm(hole.depthMm)} deep`))]
  if (sizes.length === 0) return []
  const tile = finish === 'tile' ? ' Through tile: small bit first, no hammer, then up to size.' : ''
  return [`Drill: ${listed(sizes)}.${tile}`]
}
