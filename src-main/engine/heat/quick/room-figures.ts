import { because, given } from '../../../domain/derivation.ts'
import type { RoomUse } from '../../../domain/job.ts'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { AgeBand, UkCountry } from '../age-band-tables.ts'
import type { Told } from '../ground/ground-floor-paths.ts'
import type { QuickTables } from './quick-tables.ts'

/** Where a use stands in the table of temperatures. */
const temperatureRow: Readonly<Record<RoomUse, string>> = {
  bathroom: 'bathroom',
  bedroom: 'bedroom',
  living: 'livingRoom',
  kitchen: 'kitchen',
  hall: 'hall',
  dining: 'diningRoom',
  study: 'other',
  utility: 'utility',
  toilet: 'toilet',
  other: 'other',
}

/** Where a use stands in the table of air changes. It has no row for any other room: a living room's is taken. */
const airRow: Readonly<Record<RoomUse, string>> = {
  bathroom: 'bathroom',
  bedroom: 'bedroom',
  living: 'livingRoom',
  kitchen: 'kitchen',
  hall: 'hall',
  dining: 'diningRoom',
  study: 'study',
  utility: 'utility',
  toilet: 'toilet',
  other: 'livingRoom',
}

/**
 * The design temperature of a room by its use, C, as the table prints it. A study stands there among all other rooms.
 * Refuses tables that lack the row.
 * @param use what the room is used as
 * @param tables the published tables
 * @source NHBC Standards 8.1.10 table 7; MCS standard set for bathrooms and all other rooms; bedroom, kitchen, toilet and utility room: from memory
 * @example usualRoomC('hall', { roomTemperatures: [{ room: 'hall', says: 'Hall', roomC: 18, source: 'table 7' }] }).value.value // => 18
 */
export function usualRoomC(use: RoomUse, tables: Pick<QuickTables, 'roomTemperatures'>): Outcome<Told> {
  const row = tables.roomTemperatures.find(({ room }) => room === temperatureRow[use])
  if (row === undefined) return lacking(`a temperature for ${temperatureRow[use]}`)
  return accept({
    value: row.roomC,
    why: given(`Design temperature: ${row.says}`, row.roomC, '°C', row.source),
  })
}

export type AirAsked = {
  readonly use: RoomUse
  readonly ageBand: AgeBand
  readonly country: UkCountry
  readonly glazing: string
}

/**
 * Air changes of a room, an hour: the table's column by the age of the house. Its newest column begins after 2006, the one before
 * it in 2000 and wants double glazing; an age band that lies across a year takes the older, leakier column.
 * Refuses tables that lack the row or the age band.
 * @param asked what the room is used as, age band A to L, country and glazing
 * @param tables the published tables
 * @source CIBSE Domestic Heating Design Guide table 3.8
 * @example usualAirChanges({ use: 'hall', ageBand: 'A', country: 'wales', glazing: 'single' }, { ageBands: [{ countries: ['wales'], source: 'S1', bands: [{ ageBand: 'A', fromYear: null, toYear: 1899 }] }], airChanges: { source: '3.8', rows: [{ room: 'hall', says: 'Hall', before2000PerHour: 2, from2000PerHour: 1, after2006PerHour: 0.5 }] } }).value.value // => 2
 */
export function usualAirChanges(
  asked: AirAsked,
  tables: Pick<QuickTables, 'airChanges' | 'ageBands'>,
): Outcome<Told> {
  const { use, ageBand, country, glazing } = asked
  const row = tables.airChanges.rows.find(({ room }) => room === airRow[use])
  if (row === undefined) return lacking(`air changes for ${airRow[use]}`)
  const years = tables.ageBands.find(({ countries }) => countries.includes(country))
  const band = years?.bands.find((one) => one.ageBand === ageBand)
  if (band === undefined) return lacking(`the age band ${ageBand}`)
  const fromYear = band.fromYear ?? -Infinity
  const [column, value] =
    fromYear > 2006
      ? (['built after 2006', row.after2006PerHour] as const)
      : fromYear >= 2000 && glazing !== 'single'
        ? (['2000 or later, double glazed', row.from2000PerHour] as const)
        : (['before 2000', row.before2000PerHour] as const)
  const why = because(`Air changes: ${row.says}, ${column}`, value, {
    unit: 'an hour',
    source: tables.airChanges.source,
    from: [given('Used as', use), given('Age band', ageBand), given('Glazing', glazing)],
  })
  return accept({ value, why })
}

/**
 * The allowance for thermal bridges, W/m2K: the table's row for all others, and from age band L on the one for new buildings of
 * normal good practice (which band that begins with: practice, no published source).
 * Refuses tables that lack the row.
 * @param ageBand A to L
 * @param tables the published tables
 * @source EN 12831-1:2017 table B.1
 * @example usualBridges('C', { thermalBridges: { source: 'B.1', rows: [{ building: 'other', says: 'All others', thermalBridgeWPerM2K: 0.1 }] } }).value.value // => 0.10
 */
export function usualBridges(ageBand: AgeBand, tables: Pick<QuickTables, 'thermalBridges'>): Outcome<Told> {
  const building = ageBand === 'L' ? 'newGoodPractice' : 'other'
  const { rows, source } = tables.thermalBridges
  const row = rows.find((one) => one.building === building)
  if (row === undefined) return lacking(`thermal bridges for ${building}`)
  const value = row.thermalBridgeWPerM2K
  const why = because(`Thermal bridges: ${row.says}`, value, {
    unit: 'W/m²K',
    source,
    from: [given('Age band', ageBand)],
  })
  return accept({ value, why })
}

function lacking(what: string): Outcome<never> {
  return refuse('not-found', `The tables do not have ${what}.`)
}
