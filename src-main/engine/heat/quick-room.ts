import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { RoomUse } from '../../domain/job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { QuickRoomEntry } from '../../domain/quick-room.ts'
import type { HeatElement } from '../../domain/room-heat.ts'
import { refuseUnlessFinite } from '../units/finite.ts'
import type { Told } from './ground/ground-floor-paths.ts'
import { toHundredths } from './quick/hundredths.ts'
import { madeAbove, madeBelow } from './quick/made-floors.ts'
import type { MadeElement, QuickSize } from './quick/made-floors.ts'
import { madeWalls, outsideWallsM } from './quick/made-walls.ts'
import type { QuickTables } from './quick/quick-tables.ts'
import { usualAirChanges, usualBridges, usualRoomC } from './quick/room-figures.ts'

export type QuickRoomInput = {
  readonly use: RoomUse
  /** Absent: as the table has it for the use. */
  readonly roomC?: number | undefined
  readonly entry: QuickRoomEntry
}
export type QuickRoomAnswer = {
  readonly roomC: number
  /** The room's heat as a full survey writes it: each wall, floor and ceiling with its U-value. */
  readonly heat: {
    readonly volumeM3: number
    readonly floorAreaM2: number
    readonly airChangesPerHour: number
    readonly thermalBridgeWPerM2K: number
    readonly elements: readonly HeatElement[]
  }
  readonly why: Derivation
}

/**
 * A room's walls, floor and ceiling from a few quick answers, ready for `heatLoad`: areas from length, width and height, U-values
 * by the age of the house, design temperature by use, air changes by use and age. It is a reckoning element by element with
 * assumed figures, each named with its table in `why`; not a guess by volume.
 * Refuses sizes outside 0.5 to 50 m, more outside wall than the room has, windows and doors larger than it, and what no table has.
 *
 * @param input what the room is used as, its temperature in C or none, and the quick answers: sizes in m, areas in m2
 * @param tables the published tables; a firm may bring its own
 * @source EN 12831-1, simplified; RdSAP 2009 and 2012 U-value tables; CIBSE Domestic Heating Design Guide table 3.8; ISO 13370
 * @example quickRoom({ use: 'hall', entry: { lengthM: 0, widthM: 2, heightM: 2.4 } }, {}).problems[0].path // => 'lengthM'
 */
export function quickRoom(input: QuickRoomInput, tables: QuickTables): Outcome<QuickRoomAnswer> {
  const { entry } = input
  const wrong = refuseUnlessFinite(entry) ?? refuseUnlessFinite({ roomC: input.roomC }) ?? wrongSize(entry)
  if (wrong !== null) return wrong
  const roomC = temperatureOf(input, tables)
  if (!roomC.ok) return roomC
  const outsideM = outsideWallsM(entry)
  if (!outsideM.ok) return outsideM
  const size = { floorAreaM2: floorOf(entry), outsideM: outsideM.value, roomC: roomC.value }
  const elements = elementsOf(entry, size, tables)
  if (!elements.ok) return elements
  const figures = airAndBridges(input, tables)
  if (!figures.ok) return figures
  return accept(answerOf(entry, { size, made: elements.value, ...figures.value }))
}

const sizes = ['lengthM', 'widthM', 'heightM'] as const

function wrongSize(entry: QuickRoomEntry): Outcome<never> | null {
  const names = { lengthM: 'Length', widthM: 'Width', heightM: 'Height' }
  const wrong = sizes.find((field) => entry[field] < 0.5 || entry[field] > 50)
  if (wrong === undefined) return null
  return refuse('invalid', `${names[wrong]} must be 0.5 to 50 m; it was ${entry[wrong]}.`, wrong)
}

function temperatureOf({ use, roomC }: QuickRoomInput, tables: QuickTables): Outcome<Told> {
  if (roomC === undefined) return usualRoomC(use, tables)
  return accept({ value: roomC, why: given('Design temperature', roomC, '°C') })
}

function floorOf({ lengthM, widthM }: QuickRoomEntry): Told {
  const value = lengthM * widthM
  const why = because('Floor area: length × width', value, {
    unit: 'm²',
    from: [given('Length', lengthM, 'm'), given('Width', widthM, 'm')],
  })
  return { value, why }
}

function elementsOf(
  entry: QuickRoomEntry,
  size: QuickSize,
  tables: QuickTables,
): Outcome<readonly MadeElement[]> {
  const walls = madeWalls(entry, size, tables)
  if (!walls.ok) return walls
  const over = madeAbove(entry, size, tables)
  if (!over.ok) return over
  const under = madeBelow(entry, size, tables)
  return under.ok ? accept([...walls.value, over.value, under.value]) : under
}

type AirAndBridges = { readonly air: Told; readonly bridges: Told }

function airAndBridges({ use, entry }: QuickRoomInput, tables: QuickTables): Outcome<AirAndBridges> {
  const { ageBand, country = 'england', glazing } = entry
  const air = usualAirChanges({ use, ageBand, country, glazing }, tables)
  if (!air.ok) return air
  const bridges = usualBridges(ageBand, tables)
  return bridges.ok ? accept({ air: air.value, bridges: bridges.value }) : bridges
}

type Parts = AirAndBridges & { readonly size: QuickSize; readonly made: readonly MadeElement[] }

function answerOf({ heightM }: QuickRoomEntry, { size, made, air, bridges }: Parts): QuickRoomAnswer {
  const volumeM3 = toHundredths(size.floorAreaM2.value * heightM)
  const volume = because('Volume: floor area × height', volumeM3, {
    unit: 'm³',
    from: [size.floorAreaM2.why, given('Height', heightM, 'm')],
  })
  return {
    roomC: size.roomC.value,
    heat: {
      volumeM3,
      floorAreaM2: toHundredths(size.floorAreaM2.value),
      airChangesPerHour: air.value,
      thermalBridgeWPerM2K: bridges.value,
      elements: made.map(({ element }) => element),
    },
    why: because('Walls, floor and ceiling made from the quick answers and the tables', made.length, {
      from: [size.roomC.why, volume, air.why, bridges.why, ...made.map(({ why }) => why)],
    }),
  }
}
