import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { FlowEmitter } from './lowest-flow.ts'

/** A swap that might be done: which emitters of a room go, by their place in its list from 0, and which come. */
export type SwapCandidate = {
  readonly name: string
  readonly roomIndex?: number | undefined
  readonly roomName?: string | undefined
  readonly remove: readonly number[]
  readonly add: readonly FlowEmitter[]
}

/**
 * The place of a swap's room in the list of rooms, from 0.
 * Refuses a swap without a room, a place or name that is not there, a name that two rooms have, and a place and a name of
 * different rooms.
 * @param candidate a swap, with its room by place, by name or both
 * @param names the rooms' names in order
 * @source practice, no published source
 * @example placeOf({ name: 'Rail', roomName: 'Bath', remove: [], add: [] }, ['Hall', 'Bath']).value // => 1
 */
export function placeOf({ roomIndex, roomName }: SwapCandidate, names: readonly string[]): Outcome<number> {
  if (roomIndex !== undefined) {
    const there = names[roomIndex]
    if (there === undefined) {
      const message = `There is no room ${roomIndex}; places go from 0 to ${names.length - 1}.`
      return refuse('invalid', message, 'roomIndex')
    }
    if (roomName === undefined || roomName === there) return accept(roomIndex)
    return refuse(
      'invalid',
      `Room ${roomIndex} is ${there}, not ${roomName}; give one of the two.`,
      'roomName',
    )
  }
  if (roomName === undefined) {
    return refuse('invalid', 'Say which room the swap is in: its place from 0, or its name.', 'roomIndex')
  }
  const place = names.indexOf(roomName)
  if (place === -1) {
    return refuse(
      'invalid',
      `There is no room called ${roomName}: it should be ${listed(names)}.`,
      'roomName',
    )
  }
  if (names.lastIndexOf(roomName) === place) return accept(place)
  return refuse('invalid', `Two rooms are called ${roomName}; give the place instead.`, 'roomName')
}

function listed(names: readonly string[]): string {
  return names.slice(0, 10).join(' or ')
}

/**
 * The emitters of a room after a swap: those that stay, then those that come. Refuses the place of an emitter that is not there,
 * and the same place twice.
 * @param candidate a swap
 * @param emitters what stands in the room now
 * @source practice, no published source
 * @example swapped({ name: 'Rail', remove: [0], add: [{ ratedW: 600, exponent: 1.2 }] }, [{ ratedW: 300, exponent: 1.3 }]).value[0].ratedW // => 600
 */
export function swapped(
  { remove, add }: SwapCandidate,
  emitters: readonly FlowEmitter[],
): Outcome<readonly FlowEmitter[]> {
  for (const [at, place] of remove.entries()) {
    if (emitters[place] === undefined) {
      const has =
        emitters.length === 0
          ? 'the room has no emitters'
          : `the room's emitters go from 0 to ${emitters.length - 1}`
      return refuse('invalid', `There is no emitter ${place} to remove: ${has}.`, `remove[${at}]`)
    }
    if (remove.indexOf(place) !== at) {
      return refuse('invalid', `Emitter ${place} is removed twice; name it once.`, `remove[${at}]`)
    }
  }
  return accept([...emitters.filter((_, place) => !remove.includes(place)), ...add])
}
