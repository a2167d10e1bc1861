import type { AnswerOf } from '../../src-main/contract/requests.ts'
import { formOnWall, shapeOf } from '../../src-main/engine/wall/emitter-on-wall.ts'
import type { Emitter } from '../../src-main/domain/item.ts'
import type { Job, Swap } from '../../src-main/domain/job.ts'
import type { Problem } from '../../src-main/domain/outcome.ts'
import { list } from '../../src-main/domain/schema.ts'
import { pipe as pipeSchema, wall as wallSchema } from '../../src-main/domain/wall.ts'
import type { Wall } from '../../src-main/domain/wall.ts'
import { wallDrawing } from '../../src-main/engine/wall/drawing.ts'
import { problemsOf } from '../bridge/call.ts'
import { useAsk } from '../bridge/use-ask.ts'

type Fit = AnswerOf<'wall.fit'>
type SetOut = AnswerOf<'wall.setOut'>

export type OnWall =
  | { readonly kind: 'asking' }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | {
      readonly kind: 'placed'
      readonly emitter: Emitter
      readonly wall: Wall
      readonly fit: Fit
      readonly setOut: SetOut
      /** The drawing as an address for an image. */
      readonly picture: string
      readonly pictureInWords: string
    }

/** One swap's emitter on its wall: whether it fits, where to drill, and the drawing. */
export function useSwapOnWall(job: Job, swap: Swap): OnWall {
  const wall = job.rooms
    .find((room) => room.roomId === swap.roomId)
    ?.walls.find((one) => one.wallId === swap.wallId)
  const item = useAsk('catalogue.item', { itemId: swap.emitterId }, { staleMs: Infinity })
  const emitter = item.data?.item.kind === 'emitter' ? item.data.item : undefined
  const input = { wall, emitter, valves: {}, centre: swap.centre, bottomMm: swap.bottomMm, pipes: swap.pipes }
  const ready = wall !== undefined && emitter !== undefined
  const { extraKg, ...form } = emitter === undefined ? { curved: false } : formOnWall(emitter)
  const shape = emitter === undefined ? undefined : shapeOf(emitter)
  const placed = { ...input, emitter: shape, ...form } as Parameters<typeof useAsk<'wall.fit'>>[1]
  const load = extraKg === undefined ? {} : { extraKg }
  const drill = { ...placed, pipes: swap.pipes, ...load } as Parameters<typeof useAsk<'wall.setOut'>>[1]
  const fit = useAsk('wall.fit', placed, { enabled: ready, keepOld: true })
  const setOut = useAsk('wall.setOut', drill, { enabled: ready, keepOld: true })
  const problems = [...problemsOf(item.error), ...problemsOf(fit.error ?? setOut.error)]
  if (problems.length > 0) return { kind: 'refused', problems }
  if (!ready || fit.data === undefined || setOut.data === undefined) return { kind: 'asking' }
  if (!canBeDrawn(wall, swap)) return { kind: 'asking' }
  const answers = { wall, emitter, fit: fit.data, setOut: setOut.data }
  return { kind: 'placed', ...answers, ...drawn(answers, swap) }
}

/** The drawing's text keeps its size on this paper: smaller than a sheet, so that it can be read on a screen. */
const onScreen = { widthMm: 175, heightMm: 125 }

/** The draft may hold what was mistyped; the desk says so in a moment, and nothing is drawn of it until then. */
function canBeDrawn(wall: Wall, { pipes }: Swap): boolean {
  return wallSchema.safeParse(wall).success && list(pipeSchema).safeParse(pipes).success
}

type Answers = { readonly wall: Wall; readonly emitter: Emitter; readonly fit: Fit; readonly setOut: SetOut }

function drawn({ wall, emitter, fit, setOut }: Answers, { pipes }: Swap) {
  const svg = wallDrawing({ wall, emitter, envelope: fit.envelope, setOut, pipes, paper: onScreen })
  return {
    picture: `data:image/svg+xml,${encodeURIComponent(svg)}`,
    pictureInWords:
      `${wall.name}, ${wall.widthMm} by ${wall.heightMm} mm, with ${emitter.name}: ` +
      `centre line ${setOut.centreMm} mm from the left, bottom edge ${setOut.bottomMm} mm above the floor, ` +
      `${setOut.holes.length} holes to drill.`,
  }
}
