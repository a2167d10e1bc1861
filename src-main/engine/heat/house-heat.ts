import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { RoomHeat } from '../../domain/room-heat.ts'
import { btuPerHourFromW } from '../units/exact-units.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { heatLoad } from './heat-load.ts'
import type { HeatLoadAnswer } from './heat-load.ts'
import { betweenRoomsW, exchangeWarnings } from './house-exchange.ts'

export type HouseHeatInput = {
  readonly rooms: readonly RoomHeat[]
  readonly ventilationRatio?: number | undefined
}
type Parts = {
  readonly watts: number
  readonly btuPerHour: number
  /** To all that is no room: outside, unheated spaces, the ground. */
  readonly transmissionW: number
  readonly betweenRoomsW: number
  readonly ventilationW: number
  readonly reheatW: number
  readonly rough: boolean
}
export type HouseHeatAnswer = Parts & {
  /** What rough rooms need, which is in no other part. */
  readonly roughW: number
  /** What the boiler or heat pump must give: the same, with the air from outside warmed once. */
  readonly source: {
    readonly watts: number
    readonly btuPerHour: number
    readonly ventilationW: number
    readonly ventilationRatio: number
  }
  readonly rooms: readonly (Parts & { readonly name: string })[]
  readonly warnings: readonly string[]
  readonly why: Derivation
}

/** EN 12831-1:2017 table B.5: one room with air from outside takes all of it; of two or more, half at once. */
const airOfOneRoom = 1
const airOfSeveralRooms = 0.5

/**
 * What each room and the whole house needs, W.
 * House = sum over the rooms of (transmission to outside, unheated spaces and the ground + ventilation + reheat) + rough rooms
 * + what rooms pass each other. That last sum is 0 when each wall between two rooms stands in both lists; what is left
 * over (`betweenRoomsW`) is kept in the house's figure, because it leaves the listed rooms, and is told in a warning.
 * The house's watts are what its emitters give together. The source needs less: air that leaves one room enters the next, so
 * not every room takes its full air from outside at once. Source = house - ventilation + ratio x ventilation, with a ratio
 * of 0.5 for two or more rooms with air from outside, otherwise 1, unless one is given. Rough rooms are not split, so
 * their air is not halved, and a house with one is rough.
 * Refuses no rooms, a ratio outside 0 to 1, and rooms that `heatLoad` refuses.
 *
 * @param input rooms as `heatLoad` takes them; ventilationRatio 0 to 1
 * @source EN 12831-1:2017 building heat load; eq. 12 and 13 with table B.5 for the air of several rooms
 * @example houseHeat({ rooms: [{ name: 'Store', roomC: 18, outsideC: -3, volumeM3: 30, roughWPerM3: 40 }, { name: 'Hall', roomC: 18, outsideC: -2, volumeM3: 50, floorAreaM2: 20, airChangesPerHour: 1, elements: [] }] }).value.watts // => 1540
 */
export function houseHeat(input: HouseHeatInput): Outcome<HouseHeatAnswer> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const loads: HeatLoadAnswer[] = []
  for (const [index, room] of input.rooms.entries()) {
    const load = heatLoad({ room })
    if (!load.ok) return atRoom(index, load.problems)
    loads.push(load.value)
  }
  const rooms = input.rooms.map((room, index) => partsOf(room, loads[index] as HeatLoadAnswer))
  const sum = (part: (room: (typeof rooms)[number]) => number) =>
    rooms.reduce((total, room) => total + part(room), 0)
  const watts = sum((room) => room.watts)
  const ventilationW = sum((room) => room.ventilationW)
  const ventilationRatio = input.ventilationRatio ?? ratioOf(input.rooms)
  const sourceW = watts - ventilationW + ventilationRatio * ventilationW
  const house = {
    watts,
    btuPerHour: btuPerHourFromW(watts),
    transmissionW: sum((room) => room.transmissionW),
    betweenRoomsW: sum((room) => room.betweenRoomsW),
    ventilationW,
    reheatW: sum((room) => room.reheatW),
    roughW: sum((room) => (room.rough ? room.watts : 0)),
    rough: rooms.some((room) => room.rough),
  }
  const source = {
    watts: sourceW,
    btuPerHour: btuPerHourFromW(sourceW),
    ventilationW: ventilationRatio * ventilationW,
    ventilationRatio,
  }
  const why = whyOf(input, loads, { watts, ventilationW, sourceW, ventilationRatio })
  const warnings = [...exchangeWarnings(input.rooms, loads), ...otherWarnings(input.rooms)]
  // The reasons are made of heat loads that were found finite.
  const figures = { ...house, source, rooms, warnings }
  const sound = acceptFinite(figures, 'These rooms need more heat together than can be reckoned with.')
  return sound.ok ? accept({ ...figures, why }) : sound
}

function problemIn({ rooms, ventilationRatio = 1 }: HouseHeatInput): Outcome<never> | null {
  if (rooms.length === 0) return refuse('invalid', 'There are no rooms; give at least one.', 'rooms')
  if (ventilationRatio >= 0 && ventilationRatio <= 1) return null
  const message = `The share of the rooms' air must be 0 to 1; it was ${ventilationRatio}.`
  return refuse('invalid', message, 'ventilationRatio')
}

/** `heatLoad` speaks of `room`; here it is one of `rooms`. */
function atRoom(
  index: number,
  problems: Extract<Outcome<never>, { readonly ok: false }>['problems'],
): Outcome<never> {
  const moved = problems.map((problem) => ({
    ...problem,
    path: (problem.path ?? 'room').replace(/^room/, `rooms[${index}]`),
  }))
  return { ok: false, problems: moved }
}

function partsOf(room: RoomHeat, load: HeatLoadAnswer): Parts & { readonly name: string } {
  const { watts, btuPerHour, transmissionW, ventilationW, reheatW, rough } = load
  const between = 'elements' in room ? betweenRoomsW(room, load.elements) : 0
  const parts = { transmissionW: transmissionW - between, betweenRoomsW: between, ventilationW, reheatW }
  return { name: room.name, watts, btuPerHour, ...parts, rough }
}

function ratioOf(rooms: readonly RoomHeat[]): number {
  const aired = rooms.filter((room) => 'elements' in room && room.airChangesPerHour > 0)
  return aired.length > 1 ? airOfSeveralRooms : airOfOneRoom
}

function otherWarnings(rooms: readonly RoomHeat[]): readonly string[] {
  const rough = rooms.filter((room) => 'roughWPerM3' in room).map((room) => room.name)
  const outside = [...new Set(rooms.map((room) => room.outsideC))]
  return [
    ...(rough.length === 0
      ? []
      : [`Only guessed by volume: ${rough.join(', ')}. The house's figure is rough with them.`]),
    ...(outside.length === 1
      ? []
      : [`The rooms differ in the temperature outside (${outside.join(', ')} °C): a house has one.`]),
  ]
}

type Sums = {
  readonly watts: number
  readonly ventilationW: number
  readonly sourceW: number
  readonly ventilationRatio: number
}

function whyOf(input: HouseHeatInput, loads: readonly HeatLoadAnswer[], sums: Sums): Derivation {
  const { watts, ventilationW, sourceW, ventilationRatio } = sums
  const rooms = loads.map((load, index) =>
    because(`${input.rooms[index]?.name ?? ''} needs`, load.watts, { unit: 'W', from: [load.why] }),
  )
  const ratio =
    input.ventilationRatio === undefined
      ? given(
          'Share of the rooms’ air that comes from outside at once',
          ventilationRatio,
          undefined,
          'EN 12831-1:2017 table B.5',
        )
      : given('Share of the rooms’ air that comes from outside at once, as given', ventilationRatio)
  const source = because('The source gives: the rooms together, with the air from outside once', sourceW, {
    unit: 'W',
    source: 'EN 12831-1:2017, building heat load',
    from: [given('Ventilation of all rooms', ventilationW, 'W'), ratio],
  })
  return because('Heat the house needs: its rooms together, and what they pass each other cancels', watts, {
    unit: 'W',
    source: 'EN 12831-1, simplified',
    from: [...rooms, source],
  })
}
