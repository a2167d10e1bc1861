import type { Item } from '../../domain/item.ts'
import type { Job, Swap } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'

type Known = { readonly items: readonly Item[] }

/** The job itself when it hangs together: no id twice, and every swap's room, wall and emitter are there. */
export function checkJob(job: Job, catalogue: Known): Outcome<Job> {
  const kinds = new Map(catalogue.items.map(({ itemId, kind }) => [itemId, kind]))
  const problems = [
    ...twice(job.rooms, 'rooms', 'roomId'),
    ...job.rooms.flatMap((room, at) => twice(room.walls, `rooms[${at}].walls`, 'wallId')),
    ...twice(job.swaps, 'swaps', 'swapId'),
    ...twice(job.options ?? [], 'options', 'optionId'),
    ...twice(job.fills ?? [], 'fills', 'gapKey'),
    ...job.swaps.flatMap((swap, at) => [
      ...placeProblems(job, swap, at),
      ...emitterProblems(kinds, swap, at),
    ]),
  ]
  return problems.length === 0 ? accept(job) : { ok: false, problems }
}

function placeProblems(job: Job, { swapId, roomId, wallId }: Swap, at: number): readonly Problem[] {
  const room = job.rooms.find((one) => one.roomId === roomId)
  if (room === undefined) {
    const rooms = oneOf(job.rooms.map((one) => one.roomId))
    const message = `Swap ${swapId} is in room ${roomId}, which the job does not have: ${rooms}.`
    return [{ code: 'invalid', message, path: `job.swaps[${at}].roomId` }]
  }
  if (room.walls.some((wall) => wall.wallId === wallId)) return []
  const walls = oneOf(room.walls.map((wall) => wall.wallId))
  const message = `Swap ${swapId} is on wall ${wallId}, which ${room.name} does not have: ${walls}.`
  return [{ code: 'invalid', message, path: `job.swaps[${at}].wallId` }]
}

function emitterProblems(
  kinds: ReadonlyMap<string, Item['kind']>,
  { swapId, emitterId }: Swap,
  at: number,
): readonly Problem[] {
  const kind = kinds.get(emitterId)
  if (kind === 'emitter') return []
  const path = `job.swaps[${at}].emitterId`
  const next = 'Look for one with catalogue.search.'
  if (kind === undefined) {
    const message = `Swap ${swapId} puts up ${emitterId}, which the catalogue does not have: name an emitter that it has.`
    return [{ code: 'not-found', message, path, next }]
  }
  const message = `Swap ${swapId} puts up ${emitterId}, which is no emitter: name an emitter of the catalogue.`
  return [{ code: 'invalid', message, path, next }]
}

/** What would be right. */
function oneOf(ids: readonly string[]): string {
  return ids.length === 0 ? 'it has none yet' : `it should be ${ids.slice(0, 10).join(' or ')}`
}

function twice<K extends string>(
  things: readonly Readonly<Record<K, string>>[],
  place: string,
  field: K,
): readonly Problem[] {
  const seen = new Set<string>()
  return things.flatMap((thing, at): readonly Problem[] => {
    const id = thing[field]
    if (seen.has(id)) {
      const message = `${id} is the ${field} of two ${place.split('.').at(-1)}: each should have its own.`
      return [{ code: 'invalid', message, path: `job.${place}[${at}].${field}` }]
    }
    seen.add(id)
    return []
  })
}
