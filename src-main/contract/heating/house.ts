import { z } from 'zod'
import { derivation } from '../../domain/derivation.ts'
import { exponent, rating, ratedW, roomHeat } from '../../domain/room-heat.ts'
import { heatW, key, line, list, ratio, record, temperatureC } from '../../domain/schema.ts'
import { query } from '../request.ts'

const finite = z.number()
const whole = z.int().gte(0)

export const houseHeat = query('house.heat', {
  doc: 'What each room and the whole house needs; what rooms give each other cancels, and the source warms the air once.',
  input: record({ rooms: list(roomHeat, 200, 1), ventilationRatio: ratio.optional() }),
  output: record({
    watts: finite,
    btuPerHour: finite,
    transmissionW: finite,
    betweenRoomsW: finite,
    ventilationW: finite,
    reheatW: finite,
    roughW: finite,
    rough: z.boolean(),
    source: record({ watts: finite, btuPerHour: finite, ventilationW: finite, ventilationRatio: finite }),
    rooms: list(
      record({
        name: line,
        watts: finite,
        btuPerHour: finite,
        transmissionW: finite,
        betweenRoomsW: finite,
        ventilationW: finite,
        reheatW: finite,
        rough: z.boolean(),
      }),
    ),
    warnings: list(z.string()),
    why: derivation,
  }),
})

const emitters = list(record({ ratedW, rating: rating.optional(), exponent }), 100)
/** A room with its survey, or with a load that somebody worked out elsewhere. */
export const flowRoom = z.union([
  record({ room: roomHeat, emitters }),
  record({ name: line, loadW: heatW, roomC: temperatureC, rough: z.boolean().optional(), emitters }),
])
const house = {
  rooms: list(flowRoom, 200, 1),
  spreadK: z.number().gte(0.01).lte(50),
  maxFlowC: temperatureC.optional(),
}
const roomState = z.enum(['warm', 'short', 'noEmitters', 'needsNoHeat', 'rough'])
const roomFlow = record({
  roomIndex: whole,
  name: line,
  loadW: finite,
  state: roomState,
  flowC: finite.optional(),
  returnC: finite.optional(),
  outputAtMaxW: finite.optional(),
  says: z.string(),
})

export const houseFlow = query('house.flow', {
  doc: 'The lowest flow temperature of each room, worst first, and of the house; rough rooms back no claim.',
  input: record(house),
  output: record({
    reachable: z.boolean(),
    backed: z.boolean(),
    flowC: finite.optional(),
    returnC: finite.optional(),
    measuredFlowC: finite.optional(),
    worstRoom: line.optional(),
    roughRooms: list(line),
    rooms: list(roomFlow),
    says: z.string(),
    why: derivation,
  }),
})

export const swapCandidate = record({
  name: line,
  roomIndex: whole.optional(),
  roomName: line.optional(),
  remove: list(whole, 100),
  add: emitters,
})
const reach = record({
  reachable: z.boolean(),
  flowC: finite.optional(),
  worstRoom: line.optional(),
  roomsShort: whole,
  shortW: finite,
})

export const houseSwapEffects = query('house.swapEffects', {
  doc: "Swaps ranked by how far each lowers the house's flow temperature, with ties explained.",
  input: record({ ...house, candidates: list(swapCandidate, 200, 1) }),
  output: record({
    backed: z.boolean(),
    before: reach,
    ranked: list(
      record({
        rank: z.int().gte(1),
        candidateIndex: whole,
        name: line,
        roomIndex: whole,
        roomName: line,
        roomBeforeC: finite.optional(),
        roomAfterC: finite.optional(),
        after: reach,
        lowersK: finite.optional(),
        says: z.string(),
        tie: record({ with: list(line), says: z.string() }).optional(),
      }),
    ),
    notJudged: list(record({ candidateIndex: whole, name: line, roomName: line, says: z.string() })),
    says: z.string(),
    why: derivation,
  }),
})

export const ageBand = z.enum(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'K', 'L'])
export const ukCountry = z.enum(['england', 'wales', 'scotland', 'northernIreland'])
export const uValueElement = z.enum(['wall', 'roof', 'floor', 'window', 'roofWindow', 'door', 'inside'])
const builtYear = z.int().gte(1000).lte(2100)

export const uvalueAgeBand = query('uvalue.ageBand', {
  doc: 'A U-value from the tables: walls and roofs by age, roofs by insulation, windows by their glass.',
  input: record({
    element: uValueElement,
    construction: key,
    ageBand: ageBand.optional(),
    builtYear: builtYear.optional(),
    insulationMm: z.number().gte(0).lte(2000).optional(),
    country: ukCountry.optional(),
  }),
  output: record({
    uWPerM2K: finite,
    ageBand: ageBand.optional(),
    source: line,
    note: line.optional(),
    why: derivation,
  }),
})

const tableU = z.number().gt(0).lte(10)
const uTable = { tableId: key, element: uValueElement, says: line, source: line }
const uRow = { construction: key, says: line, note: line.optional() }
const year = builtYear.nullable()
const perHour = z.number().gte(0).lte(30)
/** The simplified defaults of the standard's annex B, for whom no national figure binds. */
const standardDefaults = record({
  airChanges: record({ source: line, rows: list(record({ building: key, says: line, perHour })) }),
  wholeBuildingFactors: record({
    source: line,
    rows: list(record({ behind: key, says: line, factor: ratio })),
  }),
  indoorTemperatures: record({
    source: line,
    rows: list(record({ building: key, says: line, roomC: temperatureC })),
  }),
  /** By the drop of the room's temperature, then by the hours in which it is to be warm again. */
  reheat: record({
    source: line,
    dropK: list(z.number().gt(0).lte(20), 10, 1),
    rows: list(
      record({
        hours: z.number().gt(0).lte(24),
        reheatWPerM2: list(z.number().gte(0).lte(200), 10, 1),
      }),
    ),
  }),
  uValues: record({
    source: line,
    spans: list(line, 20, 1),
    rows: list(
      record({
        element: z.enum(['wall', 'floor', 'roof', 'ceiling', 'window', 'door']),
        construction: key,
        says: line,
        uWPerM2K: list(tableU.nullable(), 20, 1),
      }),
    ),
  }),
})
export const heatTables = record({
  uValues: list(
    z.discriminatedUnion('by', [
      record({
        ...uTable,
        by: z.literal('ageBand'),
        countries: list(ukCountry, 4, 1),
        ageBands: list(ageBand, 12, 1),
        rows: list(record({ ...uRow, uWPerM2K: list(tableU.nullable(), 12, 1) })),
      }),
      record({
        ...uTable,
        by: z.literal('insulationMm'),
        insulationMm: list(z.number().gte(0), 50, 1),
        rows: list(record({ ...uRow, uWPerM2K: list(tableU, 50, 1) })),
      }),
      record({
        ...uTable,
        by: z.literal('construction'),
        rows: list(record({ ...uRow, uWPerM2K: tableU })),
      }),
    ]),
  ),
  ageBands: list(
    record({
      countries: list(ukCountry, 4, 1),
      source: line,
      bands: list(record({ ageBand, fromYear: year, toYear: year })),
    }),
  ),
  temperatureFactors: record({
    source: line,
    rows: list(record({ space: key, says: line, factor: ratio })),
  }),
  thermalBridges: record({
    source: line,
    rows: list(record({ building: key, says: line, thermalBridgeWPerM2K: ratio })),
  }),
  /** What SAP adds by age for bridges, in W/K for each m² of outside surface. */
  thermalBridgesByAge: record({
    source: line,
    note: line,
    ageBands: list(ageBand, 12, 1),
    thermalBridgeWPerM2K: list(ratio.nullable(), 12, 1),
  }),
  /** Insulation under a solid ground floor where nobody saw it. */
  groundFloorInsulation: record({
    source: line,
    rows: list(
      record({
        countries: list(ukCountry, 4, 1),
        ageBands: list(ageBand, 12, 1),
        insulationMm: list(z.number().gte(0).nullable(), 12, 1),
      }),
    ),
  }),
  standardDefaults,
  ventilationRatios: record({ source: line, rows: list(record({ zone: key, says: line, ratio })) }),
  airChanges: record({
    source: line,
    rows: list(
      record({
        room: key,
        says: line,
        before2000PerHour: z.number().gte(0).lte(30),
        from2000PerHour: z.number().gte(0).lte(30),
        after2006PerHour: z.number().gte(0).lte(30),
      }),
    ),
  }),
  roomTemperatures: list(record({ room: key, says: line, roomC: temperatureC, source: line })),
  outsideTemperatures: record({
    source: line,
    rows: list(
      record({
        place: line,
        altitudeM: z.number().gte(0).lte(2000),
        exceeded99C: temperatureC,
        exceeded996C: temperatureC,
      }),
    ),
  }),
})

export const heatTablesListed = query('heat.tables', {
  doc: 'Every table behind heat loads, each with its source: U-values, age bands, air changes, temperatures.',
  input: record({}),
  output: heatTables,
})
