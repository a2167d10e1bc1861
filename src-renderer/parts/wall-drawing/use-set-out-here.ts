import { useMemo, useRef } from 'react'
import { z } from 'zod'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Job, Swap } from '../../../src-main/domain/job.ts'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import { distanceMm, list } from '../../../src-main/domain/schema.ts'
import { centreChoice, existingEmitter, pipe, wall as wallSchema } from '../../../src-main/domain/wall.ts'
import type { Wall } from '../../../src-main/domain/wall.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { oldOnWall, setOutHere } from './set-out-here.ts'
import type { Answered } from './set-out-here.ts'
import { words } from './wall-drawing.words.ts'

export type Placed = Answered & {
  readonly emitter: Emitter
  readonly wall: Wall
  readonly swap: Swap
  readonly old: ReturnType<typeof oldOnWall>
}

export type OnWall =
  | { readonly kind: 'asking' }
  | {
      readonly kind: 'refused'
      readonly problems: readonly Problem[]
      /** What was last set out, to look at until it is put right. */
      readonly last: Placed | null
    }
  | { readonly kind: 'placed'; readonly placed: Placed }

/** One swap's emitter on its wall, set out here by the desk's own figures and rules: whether it fits and where to drill. */
export function useSetOutHere(job: Job, swap: Swap, given?: Wall): OnWall {
  const found = job.rooms
    .find((room) => room.roomId === swap.roomId)
    ?.walls.find((one) => one.wallId === swap.wallId)
  const wall = given ?? found
  const item = useAsk('catalogue.item', { itemId: swap.emitterId }, { staleMs: Infinity, keepOld: true })
  const figures = useAsk('wall.figures', figuresAsked(job), { keepOld: true })
  const emitter = item.data?.item.kind === 'emitter' ? item.data.item : undefined
  const last = useRef<Placed | null>(null)
  const figuresNow = figures.data
  const answer = useMemo(() => {
    if (wall === undefined || emitter === undefined || figuresNow === undefined) return null
    if (!canBePlaced(wall, swap)) return 'mistyped'
    const outcome = setOutHere({ swap, wall, emitter, figures: figuresNow })
    if (!outcome.ok) return outcome
    return { ok: true, value: { ...outcome.value, emitter, wall, swap, old: oldOnWall(swap) } } as const
  }, [wall, emitter, figuresNow, swap])
  const problems = problemsOf(item.error ?? figures.error)
  if (problems.length > 0) return { kind: 'refused', problems, last: last.current }
  if (answer === null) return { kind: 'asking' }
  if (answer === 'mistyped') {
    return { kind: 'refused', problems: [mistyped], last: last.current }
  }
  if (!answer.ok) return { kind: 'refused', problems: answer.problems, last: last.current }
  last.current = answer.value
  return { kind: 'placed', placed: answer.value }
}

function figuresAsked({ quotedOn, figures }: Job) {
  return {
    ...(quotedOn === undefined ? {} : { on: quotedOn }),
    ...(figures === undefined ? {} : { figures }),
  }
}

const mistyped: Problem = {
  code: 'invalid',
  ...words.mistyped,
}

const { widthMm, heightMm, leftMm, bottomMm, oldHoles } = existingEmitter.unwrap().shape
const placing = z.object({
  centre: centreChoice,
  bottomMm: distanceMm,
  pipes: list(pipe, 4),
  existing: z.object({ widthMm, heightMm, leftMm, bottomMm, oldHoles }).optional(),
})

/** The draft may hold what was mistyped; the desk says so beside the field. */
function canBePlaced(wall: Wall, swap: Swap): boolean {
  return wallSchema.safeParse(wall).success && placing.safeParse(swap).success
}
