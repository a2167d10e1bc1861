import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { accept, assertNever, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { QuickRoomEntry } from '../../../domain/quick-room.ts'
import type { Boundary, HeatElement } from '../../../domain/room-heat.ts'
import type { AgeBand } from '../age-band-tables.ts'
import { ageBandUValue } from '../age-band-u-value.ts'
import type { AgeBandUValueInput } from '../age-band-u-value.ts'
import { groundFloorUValue } from '../ground/ground-floor.ts'
import type { Told } from '../ground/ground-floor-paths.ts'
import { toHundredths } from './hundredths.ts'
import type { QuickTables } from './quick-tables.ts'

/** An element that was made, and the reason for its area, its U-value and what lies beyond it. */
export type MadeElement = { readonly element: HeatElement; readonly why: Derivation }

/** What the room itself brings: its floor, its outside edge and how warm it is. */
export type QuickSize = {
  readonly floorAreaM2: Told
  readonly outsideM: Told
  readonly roomC: Told
}

const guide = 'Domestic Heating Design Guide'
/** The year's mean outside: beside another dwelling, and under the floor. */
const meanOutside: Told = {
  value: 10,
  why: given(
    'Mean outside temperature of the year, about',
    10,
    '°C',
    `${guide}, for a neighbour; MCS for the ground`,
  ),
}
/** Of insulation under a floor. */
const insulationWPerMK = 0.035
const insulationSource = 'RdSAP 2012 (version 9.94), section S5'

/**
 * What lies above a room entered quickly, as an element: a ceiling under a room or another dwelling, or a roof, whose U-value goes
 * to the outside air with its loft. A loft goes by its insulation where that was seen, otherwise by age.
 * Refuses a loft thickness under anything but a loft, and what `ageBandUValue` refuses.
 * @param entry the quick answers
 * @param size the room's floor area in m2, outside edge in m and temperature in C, each with its reason
 * @param tables the published tables
 * @source RdSAP tables S9 and S10; between storeys: schoolphysics.co.uk; another dwelling at the year's mean outside: Domestic Heating Design Guide
 * @example madeAbove({ above: 'flatRoof', loftInsulationMm: 100 }, {}, {}).problems[0].path // => 'loftInsulationMm'
 */
export function madeAbove(entry: QuickRoomEntry, size: QuickSize, tables: QuickTables): Outcome<MadeElement> {
  const { above, loftInsulationMm, ageBand, country = 'england' } = entry
  if (above !== 'loft' && loftInsulationMm !== undefined) {
    const message =
      'A loft’s insulation is asked only where a loft lies above; leave it empty or choose the loft.'
    return refuse('invalid', message, 'loftInsulationMm')
  }
  switch (above) {
    case 'heatedRoom':
      return betweenStoreys({
        name: 'Ceiling',
        size,
        tables,
        beyond: roomBeyond('above', entry.aboveC, size),
      })
    case 'otherDwelling':
      return betweenStoreys({ name: 'Ceiling', size, tables, beyond: meanOutside })
    case 'loft': {
      const how = loftInsulationMm === undefined ? { ageBand } : { insulationMm: loftInsulationMm }
      const asked = { element: 'roof', construction: 'slatesOrTiles', country, ...how } as const
      return fromTable(asked, { name: 'Roof', size, boundary: outside, tables })
    }
    case 'flatRoof': {
      const asked = { element: 'roof', construction: 'flat', country, ageBand } as const
      return fromTable(asked, { name: 'Roof', size, boundary: outside, tables })
    }
    default:
      return assertNever(above)
  }
}

/**
 * What lies below a room entered quickly, as an element. A floor on the ground goes by its area and outside edge, with the
 * insulation that its age assumes: a solid one against the ground at the year's mean, a suspended one against the outside air.
 * With no outside wall a tenth of a metre of edge stands in. Over unheated space or outside air the
 * exposed floor of the tables is taken, which prints nothing for band F; E beside it does.
 * Refuses what `ageBandUValue` and `groundFloorUValue` refuse.
 * @param entry the quick answers
 * @param size the room's floor area in m2, outside edge in m and temperature in C, each with its reason
 * @param tables the published tables
 * @source ISO 13370; RdSAP tables S11 and S12; unheated space: EN 12831-1:2017 table B.2
 * @example madeBelow({ below: 'otherDwelling' }, { floorAreaM2: { value: 12 } }, { uValues: [], ageBands: [] }).problems[0].code // => 'not-found'
 */
export function madeBelow(entry: QuickRoomEntry, size: QuickSize, tables: QuickTables): Outcome<MadeElement> {
  const { below } = entry
  switch (below) {
    case 'heatedRoom':
      return betweenStoreys({ name: 'Floor', size, tables, beyond: roomBeyond('below', entry.belowC, size) })
    case 'otherDwelling':
      return betweenStoreys({ name: 'Floor', size, tables, beyond: meanOutside })
    case 'solidGround':
    case 'suspendedGround':
      return onTheGround(entry, size, tables)
    case 'unheated': {
      const factor = unheatedBelow(tables)
      return factor.ok ? exposedFloor(entry, size, { tables, boundary: factor.value }) : factor
    }
    case 'outside':
      return exposedFloor(entry, size, { tables, boundary: outside })
    default:
      return assertNever(below)
  }
}

type Behind = { readonly boundary: Boundary; readonly why: Derivation }

const outside: Behind = {
  boundary: { kind: 'outside' },
  why: given('Beyond it', 'outside air'),
}

/** A room next to this one: as warm as it is said to be, or as this one. */
function roomBeyond(where: string, neighbourC: number | undefined, { roomC }: QuickSize): Told {
  if (neighbourC !== undefined) return { value: neighbourC, why: given(`Room ${where}`, neighbourC, '°C') }
  const why = because(`Room ${where}, as warm as this one`, roomC.value, { unit: '°C', from: [roomC.why] })
  return { value: roomC.value, why }
}

type Between = {
  readonly name: string
  readonly size: QuickSize
  readonly tables: QuickTables
  readonly beyond: Told
}

function betweenStoreys({ name, size, tables, beyond }: Between): Outcome<MadeElement> {
  const boundary: Behind = { boundary: { kind: 'room', roomC: beyond.value }, why: beyond.why }
  const asked = { element: 'inside', construction: 'intermediateFloor' } as const
  return fromTable(asked, { name, size, boundary, tables })
}

type Place = {
  readonly name: string
  readonly size: QuickSize
  readonly boundary: Behind
  readonly tables: QuickTables
}

function fromTable(asked: AgeBandUValueInput, { name, size, boundary, tables }: Place): Outcome<MadeElement> {
  const u = ageBandUValue(asked, tables)
  if (!u.ok) return u
  return accept(flatElement(name, size, { u: { value: u.value.uWPerM2K, why: u.value.why }, boundary }))
}

type Flat = { readonly u: Told; readonly boundary: Behind }

function flatElement(name: string, { floorAreaM2 }: QuickSize, { u, boundary }: Flat): MadeElement {
  const areaM2 = toHundredths(floorAreaM2.value)
  const element = { name, areaM2, uWPerM2K: u.value, boundary: boundary.boundary }
  const why = because(`${name}: as large as the room`, areaM2, {
    unit: 'm²',
    from: [floorAreaM2.why, u.why, boundary.why],
  })
  return { element, why }
}

function onTheGround(entry: QuickRoomEntry, size: QuickSize, tables: QuickTables): Outcome<MadeElement> {
  const insulation = groundInsulation(entry, tables)
  if (!insulation.ok) return insulation
  const kind = entry.below === 'solidGround' ? 'slab' : 'suspended'
  const edge = exposedEdge(size)
  const found = groundFloorUValue({
    kind,
    areaM2: size.floorAreaM2.value,
    perimeterM: edge.value,
    insulationM2KPerW: insulation.value.value,
  })
  if (!found.ok) return found
  const uWPerM2K = toHundredths(found.value.uWPerM2K)
  const why = because('U-value of the ground floor, to two places', uWPerM2K, {
    unit: 'W/m²K',
    from: [found.value.why, insulation.value.why, edge.why],
  })
  const ground: Behind = {
    boundary: { kind: 'ground', meanOutsideC: meanOutside.value },
    why: meanOutside.why,
  }
  const boundary = kind === 'slab' ? ground : outside
  return accept(flatElement('Ground floor', size, { u: { value: uWPerM2K, why }, boundary }))
}

const leastEdgeM = 0.1

function exposedEdge({ outsideM }: QuickSize): Told {
  if (outsideM.value > leastEdgeM) return outsideM
  const why = because('Edge of a floor with no outside wall, taken as', leastEdgeM, {
    unit: 'm',
    source: 'practice, no published source',
    from: [outsideM.why],
  })
  return { value: leastEdgeM, why }
}

/** As resistance; what the tables assume for the age. */
function groundInsulation(
  { ageBand, country = 'england' }: QuickRoomEntry,
  { groundFloorInsulation: { rows, source } }: QuickTables,
): Outcome<Told> {
  const row = rows.find(({ countries }) => countries.includes(country))
  const mm = row?.insulationMm[row.ageBands.indexOf(ageBand)]
  if (mm === undefined || mm === null) {
    const message = `The table of floor insulation prints nothing for age band ${ageBand}.`
    return refuse('not-found', message, 'ageBand')
  }
  const value = mm / 1000 / insulationWPerMK
  const why = because('Insulation of the ground floor: thickness / conductivity', value, {
    unit: 'm²K/W',
    from: [
      given(`Insulation assumed for age band ${ageBand}`, mm, 'mm', source),
      given('Its conductivity', insulationWPerMK, 'W/mK', insulationSource),
    ],
  })
  return accept({ value, why })
}

type Exposed = { readonly tables: QuickTables; readonly boundary: Behind }

function exposedFloor(entry: QuickRoomEntry, size: QuickSize, { tables, boundary }: Exposed) {
  const ageBand: AgeBand = entry.ageBand === 'F' ? 'E' : entry.ageBand
  const { country = 'england' } = entry
  const asked = { element: 'floor', construction: 'exposedAsBuilt', ageBand, country } as const
  return fromTable(asked, { name: 'Floor', size, boundary, tables })
}

/** A garage or a passage: the table's room with three outside walls or more. */
function unheatedBelow({ temperatureFactors: { rows, source } }: QuickTables): Outcome<Behind> {
  const row = rows.find(({ space }) => space === 'roomThreeOutsideWalls')
  if (row === undefined) return refuse('not-found', 'The tables do not have a factor for unheated space.')
  return accept({
    boundary: { kind: 'unheated', factor: row.factor },
    why: given(`Beyond it: ${row.says}`, row.factor, 'Ratio', source),
  })
}
