import type { MeasuredRoomHeat, RoomHeat } from '../../domain/room-heat.ts'
import type { HeatLoadAnswer } from './heat-load.ts'

/** A side of an exchange: what a room passes to a room behind its walls; negative where it is given heat. */
type Passed = {
  readonly name: string
  readonly roomC: number
  readonly behindC: number
  readonly watts: number
}

const leastW = 1

/**
 * What a room passes to the heated rooms behind its walls, W: the sum over its elements (and their openings) whose boundary
 * is a room. It is part of the room's transmission.
 * @param room the room, as `heatLoad` takes it
 * @param losses the elements of its heat load, in `heatLoad`'s order: each element, then its openings
 * @source EN 12831-1 transmission to adjacent heated rooms
 * @example betweenRoomsW({ elements: [{ name: 'Wall', boundary: { kind: 'room', roomC: 18 } }] }, [{ name: 'Wall', netAreaM2: 10, watts: 36 }]) // => 36
 */
export function betweenRoomsW(room: MeasuredRoomHeat, losses: HeatLoadAnswer['elements']): number {
  return passedBy(room, losses).reduce((sum, one) => sum + one.watts, 0)
}

/**
 * Where what rooms pass each other does not cancel, in sentences. Heat from a room at one temperature to a room at another
 * must stand in both rooms' lists, once as a loss and once as a gain; what differs by 1 W or less is rounding.
 * @param rooms every room of the house
 * @param loads its heat load, one for each room in the same order
 * @source practice, no published source
 * @example exchangeWarnings([{ name: 'A', roomC: 21, outsideC: 0, elements: [{ name: 'Wall', boundary: { kind: 'room', roomC: 10 } }] }], [{ elements: [{ name: 'Wall', netAreaM2: 5, watts: 55 }] }])[0] // => 'A passes 55 W to a room at 10 °C that is not in this list: it leaves the house.'
 */
export function exchangeWarnings(
  rooms: readonly RoomHeat[],
  loads: readonly Pick<HeatLoadAnswer, 'elements'>[],
): readonly string[] {
  const passed = rooms.flatMap((room, index) =>
    'elements' in room ? passedBy(room, loads[index]?.elements ?? []) : [],
  )
  const temperatures = new Set(rooms.map((room) => room.roomC))
  const apart = passed.filter((one) => !temperatures.has(one.behindC) && Math.abs(one.watts) > leastW)
  const within = passed.filter((one) => temperatures.has(one.behindC) && one.roomC !== one.behindC)
  return [...apart.map(leavingSentence), ...unmatched(within)]
}

function passedBy(room: MeasuredRoomHeat, losses: HeatLoadAnswer['elements']): readonly Passed[] {
  let next = 0
  return room.elements.flatMap((element): readonly Passed[] => {
    const first = next
    next += 1 + (element.openings?.length ?? 0)
    if (element.boundary.kind !== 'room') return []
    const watts = losses.slice(first, next).reduce((sum, loss) => sum + loss.watts, 0)
    return [{ name: room.name, roomC: room.roomC, behindC: element.boundary.roomC, watts }]
  })
}

function leavingSentence({ name, behindC, watts }: Passed): string {
  const w = Math.round(Math.abs(watts))
  return watts > 0
    ? `${name} passes ${w} W to a room at ${behindC} °C that is not in this list: it leaves the house.`
    : `${name} is given ${w} W by a room at ${behindC} °C that is not in this list: it comes from outside the house.`
}

/** One sentence for each pair of temperatures whose two sides do not cancel. */
function unmatched(within: readonly Passed[]): readonly string[] {
  const differences = new Map<string, { warmC: number; coolC: number; watts: number }>()
  for (const { roomC, behindC, watts } of within) {
    const [coolC, warmC] = roomC < behindC ? [roomC, behindC] : [behindC, roomC]
    const key = `${coolC} ${warmC}`
    const so = differences.get(key)?.watts ?? 0
    differences.set(key, { warmC, coolC, watts: so + watts })
  }
  return [...differences.values()]
    .filter(({ watts }) => Math.abs(watts) > leastW)
    .map(({ warmC, coolC, watts }) => {
      const [more, w] = [watts > 0 ? 'lose' : 'are given', Math.round(Math.abs(watts))]
      return (
        `Between rooms at ${warmC} °C and at ${coolC} °C the lists ${more} ${w} W more on one side than on the other: ` +
        'each wall between two rooms should stand in both, with the same area and U-value.'
      )
    })
}
