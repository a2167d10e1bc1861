import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { QuickRoomEntry } from '../../../domain/quick-room.ts'
import { ageBandUValue } from '../age-band-u-value.ts'
import type { AgeBandUValueInput } from '../age-band-u-value.ts'
import type { Told } from '../ground/ground-floor-paths.ts'
import { toHundredths } from './hundredths.ts'
import type { MadeElement, QuickSize } from './made-floors.ts'
import type { QuickTables } from './quick-tables.ts'

/** A window 1.2 m wide and 1.2 m high. */
const usualWindowM2 = 1.44
/** An outside door with its frame. */
const usualDoorM2 = 1.85

type Lengths = Pick<QuickRoomEntry, 'lengthM' | 'widthM' | 'outsideWallCount' | 'outsideWallM'>

/**
 * The outside walls of a room together, m: as measured; otherwise so many of its four sides, the longer ones first, so that the
 * loss is never too small.
 * Refuses more outside wall than the room has walls.
 * @param lengths length and width in m, how many walls are outside walls (0 to 4), and their length in m where it was measured
 * @source geometry; the longer walls first: practice, no published source
 * @example outsideWallsM({ lengthM: 4, widthM: 3, outsideWallCount: 2 }).value.value // => 7
 */
export function outsideWallsM(lengths: Lengths): Outcome<Told> {
  const { lengthM, widthM, outsideWallCount, outsideWallM } = lengths
  const roundM = 2 * (lengthM + widthM)
  if (outsideWallM !== undefined) {
    if (outsideWallM <= roundM + 1e-9)
      return accept({ value: outsideWallM, why: given('Outside walls, measured', outsideWallM, 'm') })
    const message = `The outside walls come to ${outsideWallM} m, but all four walls are ${toHundredths(roundM)} m; give less, or a larger room.`
    return refuse('impossible', message, 'outsideWallM')
  }
  const longer = Math.max(lengthM, widthM)
  const shorter = Math.min(lengthM, widthM)
  const upTo = [0, longer, longer + shorter, 2 * longer + shorter, roundM] as const
  const value = upTo[outsideWallCount]
  if (value === undefined) {
    const message = `A room has 0 to 4 outside walls; it was ${outsideWallCount}.`
    return refuse('invalid', message, 'outsideWallCount')
  }
  const why = because('Outside walls: so many sides of the room, the longer first', value, {
    unit: 'm',
    source: 'practice, no published source',
    from: [
      given('Outside walls', outsideWallCount),
      given('Length', lengthM, 'm'),
      given('Width', widthM, 'm'),
    ],
  })
  return accept({ value, why })
}

/**
 * The walls of a room entered quickly: its outside walls with windows and outside doors, and its inside walls with the rooms
 * beside behind them. A wall that is not there is left out.
 * Refuses windows and doors where there is no outside wall, or larger together than it, and what `ageBandUValue` refuses.
 * @param entry the quick answers
 * @param size the room's outside edge in m and temperature in C, each with its reason
 * @param tables the published tables
 * @source walls and doors by age: RdSAP tables S6 to S8 and S15a; glass: table S14; outside door 1.85 m2: RdSAP 2012 (version 9.94); window of 1.2 by 1.2 m: practice, no published source; partitions: schoolphysics.co.uk
 * @example madeWalls({ windowCount: 1, outsideDoorCount: 0 }, { outsideM: { value: 0 } }, {}).problems[0].path // => 'outsideWallCount'
 */
export function madeWalls(
  entry: QuickRoomEntry,
  size: QuickSize,
  tables: QuickTables,
): Outcome<readonly MadeElement[]> {
  const openings = openingsOf(entry, size, tables)
  if (!openings.ok) return openings
  const outer =
    size.outsideM.value > 0 ? outsideWalls(entry, size, { tables, openings: openings.value }) : null
  if (outer !== null && !outer.ok) return outer
  const inner = insideWalls(entry, size, tables)
  if (inner !== null && !inner.ok) return inner
  return accept([...(outer === null ? [] : [outer.value]), ...(inner === null ? [] : [inner.value])])
}

type Opening = {
  readonly opening: { readonly name: string; readonly areaM2: number; readonly uWPerM2K: number }
  readonly why: Derivation
}

function openingsOf(
  entry: QuickRoomEntry,
  { outsideM }: QuickSize,
  tables: QuickTables,
): Outcome<readonly Opening[]> {
  const glass = glassOf(entry)
  const doors = doorsOf(entry)
  if (glass.value + doors.value === 0) return accept([])
  if (outsideM.value === 0) {
    const message = 'Windows and outside doors want an outside wall: give one, or take them away.'
    return refuse('impossible', message, 'outsideWallCount')
  }
  const { ageBand, country = 'england', glazing } = entry
  const asked = [
    ['Windows', glass, { element: 'window', construction: glazing }],
    ['Outside doors', doors, { element: 'door', construction: 'doorToOutside', ageBand, country }],
  ] as const
  const made: Opening[] = []
  for (const [name, area, u] of asked) {
    if (area.value === 0) continue
    const one = openingOf(name, area, ageBandUValue(u, tables))
    if (!one.ok) return one
    made.push(one.value)
  }
  return accept(made)
}

function openingOf(name: string, area: Told, u: ReturnType<typeof ageBandUValue>): Outcome<Opening> {
  if (!u.ok) return { ok: false, problems: u.problems.map((one) => ({ ...one, path: 'glazing' })) }
  const areaM2 = toHundredths(area.value)
  const why = because(name, areaM2, { unit: 'm²', from: [area.why, u.value.why] })
  return accept({ opening: { name, areaM2, uWPerM2K: u.value.uWPerM2K }, why })
}

function glassOf({ glazedM2, windowCount }: QuickRoomEntry): Told {
  if (glazedM2 !== undefined)
    return { value: glazedM2, why: given('Windows with their frames, measured', glazedM2, 'm²') }
  return counted('Windows of the usual size', windowCount, {
    says: 'One window, 1.2 by 1.2 m',
    areaM2: usualWindowM2,
    source: 'practice, no published source',
  })
}

function doorsOf({ outsideDoorCount }: QuickRoomEntry): Told {
  return counted('Outside doors', outsideDoorCount, {
    says: 'One outside door',
    areaM2: usualDoorM2,
    source: 'RdSAP 2012 (version 9.94)',
  })
}

type One = { readonly says: string; readonly areaM2: number; readonly source: string }

function counted(says: string, count: number, one: One): Told {
  const value = count * one.areaM2
  const why = because(`${says}: how many × area of one`, value, {
    unit: 'm²',
    from: [given(says, count), given(one.says, one.areaM2, 'm²', one.source)],
  })
  return { value, why }
}

type Outer = { readonly tables: QuickTables; readonly openings: readonly Opening[] }

function outsideWalls(
  entry: QuickRoomEntry,
  { outsideM }: QuickSize,
  { tables, openings }: Outer,
): Outcome<MadeElement> {
  const { wall, ageBand, country = 'england', heightM } = entry
  const u = ageBandUValue({ element: 'wall', construction: wall, ageBand, country }, tables)
  if (!u.ok) return { ok: false, problems: u.problems.map((one) => ({ ...one, path: 'wall' })) }
  const areaM2 = toHundredths(outsideM.value * heightM)
  const openM2 = openings.reduce((sum, { opening }) => sum + opening.areaM2, 0)
  if (openM2 > areaM2) {
    const message = `The windows and doors come to ${toHundredths(openM2)} m², more than the ${areaM2} m² of outside wall; give less glass or more wall.`
    return refuse('impossible', message, entry.glazedM2 === undefined ? 'windowCount' : 'glazedM2')
  }
  const name = 'Outside walls'
  const bare = { name, areaM2, uWPerM2K: u.value.uWPerM2K, boundary: { kind: 'outside' } } as const
  const element = openings.length === 0 ? bare : { ...bare, openings: openings.map(({ opening }) => opening) }
  const why = because(`${name}: length × height, windows and doors with it`, areaM2, {
    unit: 'm²',
    from: [outsideM.why, given('Height', heightM, 'm'), u.value.why, ...openings.map((one) => one.why)],
  })
  return accept({ element, why })
}

function insideWalls(
  entry: QuickRoomEntry,
  { outsideM, roomC }: QuickSize,
  tables: QuickTables,
): Outcome<MadeElement> | null {
  const asked: AgeBandUValueInput = { element: 'inside', construction: 'blockPartition' }
  const restM = 2 * (entry.lengthM + entry.widthM) - outsideM.value
  if (restM < 1e-6) return null
  const u = ageBandUValue(asked, tables)
  if (!u.ok) return u
  const areaM2 = toHundredths(restM * entry.heightM)
  const besideC = entry.besideC ?? roomC.value
  const beside =
    entry.besideC === undefined
      ? because('Rooms beside, as warm as this one', besideC, { unit: '°C', from: [roomC.why] })
      : given('Rooms beside', besideC, '°C')
  const name = 'Inside walls'
  const why = because(`${name}: what is left of the four walls × height`, areaM2, {
    unit: 'm²',
    from: [
      given('Length', entry.lengthM, 'm'),
      given('Width', entry.widthM, 'm'),
      outsideM.why,
      given('Height', entry.heightM, 'm'),
      u.value.why,
      beside,
    ],
  })
  const boundary = { kind: 'room', roomC: besideC } as const
  return accept({ element: { name, areaM2, uWPerM2K: u.value.uWPerM2K, boundary }, why })
}
