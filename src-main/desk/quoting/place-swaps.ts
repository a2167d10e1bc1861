import { isEmitter } from '../../domain/catalogue.ts'
import type { Catalogue } from '../../domain/catalogue.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Job, Swap } from '../../domain/job.ts'
import { accept, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { PlacedSwap } from '../../engine/takeoff/job-facts.ts'
import { formOnWall, shapeOf } from '../../engine/wall/emitter-on-wall.ts'
import { oldHolesOnWall } from '../../engine/wall/old-hole-warnings.ts'
import { setOutWall } from '../../engine/wall/set-out-wall.ts'

/** Every swap of a checked job with its room, wall and emitter looked up and its holes set out. */
export function placeSwaps(job: Job, catalogue: Catalogue, figures: Figures): Outcome<readonly PlacedSwap[]> {
  const emitters = new Map(catalogue.items.filter(isEmitter).map((emitter) => [emitter.itemId, emitter]))
  const placed: PlacedSwap[] = []
  for (const [index, swap] of job.swaps.entries()) {
    const looked = lookUp(job, swap, emitters)
    const { pipes, centre, bottomMm } = swap
    const oldHoles = oldHolesOnWall(swap.existing)
    const where = { wall: looked.wall, valves: {}, centre, bottomMm, pipes, oldHoles }
    const out = setOutWall(
      { ...where, emitter: shapeOf(looked.emitter), ...formOnWall(looked.emitter) },
      figures,
    )
    if (!out.ok) return under(`job.swaps[${index}]`, out)
    placed.push({ ...looked, setOut: out.value })
  }
  return accept(placed)
}

/** A checked job has all of these, so that one which is missing is our mistake. */
function lookUp(job: Job, swap: Swap, emitters: ReadonlyMap<string, Emitter>): Omit<PlacedSwap, 'setOut'> {
  const room = job.rooms.find((one) => one.roomId === swap.roomId)
  const wall = room?.walls.find((one) => one.wallId === swap.wallId)
  const emitter = emitters.get(swap.emitterId)
  if (room === undefined || wall === undefined || emitter === undefined) {
    throw new Error(`Swap ${swap.swapId} was not checked before it was placed`)
  }
  return { swap, room, wall, emitter }
}
