import { describe, expect, it } from 'vitest'
import type { QuickRoomEntry } from '../../../../../src-main/domain/quick-room.ts'
import { outsideWallsM } from '../../../../../src-main/engine/heat/quick/made-walls.ts'
import type { QuickTables } from '../../../../../src-main/engine/heat/quick/quick-tables.ts'
import {
  usualAirChanges,
  usualBridges,
  usualRoomC,
} from '../../../../../src-main/engine/heat/quick/room-figures.ts'
import { quickRoom } from '../../../../../src-main/engine/heat/quick-room.ts'
import { answered, refused } from '../../../../answered.ts'
import { quickEntry } from '../../../../quick-room-for-tests.ts'
import { readOut } from '../../../../why-for-tests.ts'

const countries = ['england'] as const
const alone = (
  tableId: string,
  element: 'window' | 'inside' | 'door',
  rows: readonly (readonly [string, number])[],
) => ({
  tableId,
  element,
  by: 'construction' as const,
  says: tableId,
  source: `table ${tableId}`,
  rows: rows.map(([construction, uWPerM2K]) => ({ construction, says: construction, uWPerM2K })),
})
const byAge = (
  tableId: string,
  element: 'wall' | 'roof' | 'floor',
  construction: string,
  u: readonly number[],
) => ({
  tableId,
  element,
  by: 'ageBand' as const,
  says: tableId,
  source: `table ${tableId}`,
  countries,
  ageBands: ['C', 'E', 'K', 'L'] as const,
  rows: [{ construction, says: construction, uWPerM2K: u }],
})

/** Tables of the test's own with round figures. */
const tables: QuickTables = {
  uValues: [
    alone('glass', 'window', [['double', 3]]),
    alone('doors', 'door', [['doorToOutside', 2.5]]),
    alone('partitions', 'inside', [
      ['blockPartition', 1.5],
      ['intermediateFloor', 1.7],
    ]),
    byAge('walls', 'wall', 'cavity', [1.6, 1, 0.3, 0.2]),
    byAge('roofs', 'roof', 'flat', [2.3, 1.5, 0.25, 0.2]),
    byAge('exposed', 'floor', 'exposedAsBuilt', [1.2, 1.1, 0.5, 0.4]),
  ],
  ageBands: [
    {
      countries,
      source: 'bands',
      bands: [
        { ageBand: 'C', fromYear: 1930, toYear: 1949 },
        { ageBand: 'E', fromYear: null, toYear: 1975 },
        { ageBand: 'F', fromYear: 1976, toYear: 1999 },
        { ageBand: 'J', fromYear: 2000, toYear: 2006 },
        { ageBand: 'K', fromYear: 2006, toYear: 2011 },
        { ageBand: 'L', fromYear: 2007, toYear: null },
      ],
    },
  ],
  airChanges: {
    source: 'air',
    rows: [
      'livingRoom',
      'study',
      'hall',
      'diningRoom',
      'bathroom',
      'bedroom',
      'kitchen',
      'utility',
      'toilet',
    ].map((room) => ({
      room,
      says: room,
      before2000PerHour: 1.5,
      from2000PerHour: 1,
      after2006PerHour: 0.5,
    })),
  },
  roomTemperatures: [
    'livingRoom',
    'other',
    'hall',
    'diningRoom',
    'bathroom',
    'bedroom',
    'kitchen',
    'utility',
    'toilet',
  ].map((room, nth) => ({ room, says: room, roomC: 21 - nth, source: 'comfort' })),
  thermalBridges: {
    source: 'bridges',
    rows: [
      { building: 'other', says: 'Others', thermalBridgeWPerM2K: 0.1 },
      { building: 'newGoodPractice', says: 'New', thermalBridgeWPerM2K: 0.05 },
    ],
  },
  temperatureFactors: {
    source: 'factors',
    rows: [{ space: 'roomThreeOutsideWalls', says: 'Garage', factor: 0.8 }],
  },
  groundFloorInsulation: {
    source: 'ground',
    rows: [{ countries, ageBands: ['C', 'E', 'K'], insulationMm: [null, 35, 70] }],
  },
}
const made = (entry: Partial<QuickRoomEntry> = {}, more: object = {}) =>
  quickRoom({ use: 'living', ...more, entry: quickEntry(entry) }, tables)

describe('the reason of a room entered quickly', () => {
  // 4 × 3 × 2.4 m: floor 12, volume 28.8, outside wall 4 × 2.4 = 9.6, the rest 10 × 2.4 = 24; two windows 2.88, a door 1.85.
  it('tells every wall, floor and ceiling with area, U-value and what lies beyond', () => {
    const answer = answered(made({ windowCount: 2, outsideDoorCount: 1, above: 'flatRoof' }))
    expect(answer.heat).toMatchObject({ volumeM3: 28.8, floorAreaM2: 12, airChangesPerHour: 1.5 })
    const floor = ['Floor area: length × width: 12 m²', '  Length: 4 m', '  Width: 3 m']
    const inset = (by: number, lines: readonly string[]) => lines.map((line) => ' '.repeat(by) + line)
    const outside = [
      'Outside walls: so many sides of the room, the longer first: 4 m (practice, no published source)',
      '  Outside walls: 1',
      '  Length: 4 m',
      '  Width: 3 m',
    ]
    const byAgeC = (table: string, construction: string, u: number) => [
      `U-value as printed: ${table}: ${u} W/m²K (table ${table})`,
      `  Construction: ${construction}`,
      '  Country: england',
      '  Age band: 1930 to 1949: C',
    ]
    const plain = (table: string, construction: string, u: number) => [
      `U-value as printed: ${table}: ${u} W/m²K (table ${table})`,
      `  Construction: ${construction}`,
    ]
    expect(readOut(answer.why)).toEqual([
      'Walls, floor and ceiling made from the quick answers and the tables: 4',
      '  Design temperature: livingRoom: 21 °C (comfort)',
      '  Volume: floor area × height: 28.8 m³',
      ...inset(4, floor),
      '    Height: 2.4 m',
      '  Air changes: livingRoom, before 2000: 1.5 an hour (air)',
      '    Used as: living',
      '    Age band: C',
      '    Glazing: double',
      '  Thermal bridges: Others: 0.1 W/m²K (bridges)',
      '    Age band: C',
      '  Outside walls: length × height, windows and doors with it: 9.6 m²',
      ...inset(4, outside),
      '    Height: 2.4 m',
      ...inset(4, byAgeC('walls', 'cavity', 1.6)),
      '    Windows: 2.88 m²',
      '      Windows of the usual size: how many × area of one: 2.88 m²',
      '        Windows of the usual size: 2',
      '        One window, 1.2 by 1.2 m: 1.44 m² (practice, no published source)',
      ...inset(6, plain('glass', 'double', 3)),
      '    Outside doors: 1.85 m²',
      '      Outside doors: how many × area of one: 1.85 m²',
      '        Outside doors: 1',
      '        One outside door: 1.85 m² (RdSAP 2012 (version 9.94))',
      ...inset(6, plain('doors', 'doorToOutside', 2.5)),
      '  Inside walls: what is left of the four walls × height: 24 m²',
      '    Length: 4 m',
      '    Width: 3 m',
      ...inset(4, outside),
      '    Height: 2.4 m',
      ...inset(4, plain('partitions', 'blockPartition', 1.5)),
      '    Rooms beside, as warm as this one: 21 °C',
      '      Design temperature: livingRoom: 21 °C (comfort)',
      '  Roof: as large as the room: 12 m²',
      ...inset(4, floor),
      ...inset(4, byAgeC('roofs', 'flat', 2.3)),
      '    Beyond it: outside air',
      '  Floor: as large as the room: 12 m²',
      ...inset(4, floor),
      ...inset(4, plain('partitions', 'intermediateFloor', 1.7)),
      '    Room below, as warm as this one: 21 °C',
      '      Design temperature: livingRoom: 21 °C (comfort)',
    ])
  })

  it('names what was measured as measured', () => {
    const { why } = answered(
      made({ outsideWallM: 5, glazedM2: 2.5, aboveC: 17, belowC: 16, besideC: 18 }, { roomC: 24 }),
    )
    const lines = readOut(why)
    for (const line of [
      '  Design temperature: 24 °C',
      '    Outside walls, measured: 5 m',
      '      Windows with their frames, measured: 2.5 m²',
      '    Rooms beside: 18 °C',
      '    Room above: 17 °C',
      '    Room below: 16 °C',
    ])
      expect(lines).toContain(line)
  })

  it('says what lies beyond a neighbour’s, an unheated space’s and the ground’s floor', () => {
    const last = (entry: Partial<QuickRoomEntry>) => {
      const { why, heat } = answered(made(entry))
      const floor = why.from.at(-1)
      return { lines: floor === undefined ? [] : readOut(floor), element: heat.elements.at(-1) }
    }
    const neighbour =
      '  Mean outside temperature of the year, about: 10 °C (Domestic Heating Design Guide, for a neighbour; MCS for the ground)'
    expect(last({ below: 'otherDwelling' }).lines.at(-1)).toBe(neighbour)
    expect(last({ below: 'otherDwelling' }).element?.boundary).toEqual({ kind: 'room', roomC: 10 })
    const garage = last({ below: 'unheated', ageBand: 'E' })
    expect(garage.lines.at(-1)).toBe('  Beyond it: Garage: 0.8 Ratio (factors)')
    expect(garage.element).toMatchObject({
      name: 'Floor',
      uWPerM2K: 1.1,
      boundary: { kind: 'unheated', factor: 0.8 },
    })
    expect(last({ below: 'outside', ageBand: 'C' }).element).toMatchObject({ uWPerM2K: 1.2 })
    const slab = last({ below: 'solidGround', ageBand: 'K' })
    // 70 mm / 0.035 W/mK = 2 m²K/W.
    expect(slab.lines.filter((line) => /^ {2}\S|Insulation|conductivity: 0/.test(line))).toEqual(
      expect.arrayContaining([
        '    Insulation of the ground floor: thickness / conductivity: 2 m²K/W',
        '      Insulation assumed for age band K: 70 mm (ground)',
        '      Its conductivity: 0.035 W/mK (RdSAP 2012 (version 9.94), section S5)',
        neighbour,
      ]),
    )
    expect(slab.lines[4]).toMatch(/^ {2}U-value of the ground floor, to two places: 0\.\d\d? W\/m²K$/)
    expect(slab.element?.boundary).toEqual({ kind: 'ground', meanOutsideC: 10 })
    expect(last({ below: 'suspendedGround', ageBand: 'K' }).element?.boundary).toEqual({ kind: 'outside' })
    expect(refused(made({ below: 'solidGround', ageBand: 'C' }))).toEqual({
      code: 'not-found',
      path: 'ageBand',
      message: 'The table of floor insulation prints nothing for age band C.',
    })
  })

  it('takes a roof over another dwelling as a ceiling, and asks a loft by its insulation', () => {
    const ceiling = answered(made({ above: 'otherDwelling' })).heat.elements.at(-2)
    expect(ceiling).toMatchObject({ name: 'Ceiling', uWPerM2K: 1.7, boundary: { kind: 'room', roomC: 10 } })
    expect(refused(made({ above: 'loft', loftInsulationMm: 100 })).path).toBe('construction')
    expect(refused(made({ above: 'flatRoof', loftInsulationMm: 0 })).path).toBe('loftInsulationMm')
  })
})

describe('the figures of a use', () => {
  it.each([
    ['living', 21, 'livingRoom'],
    ['study', 20, 'study'],
    ['other', 20, 'livingRoom'],
    ['hall', 19, 'hall'],
    ['dining', 18, 'diningRoom'],
    ['bathroom', 17, 'bathroom'],
    ['bedroom', 16, 'bedroom'],
    ['kitchen', 15, 'kitchen'],
    ['utility', 14, 'utility'],
    ['toilet', 13, 'toilet'],
  ] as const)('of a %s: %d °C, and the air of a %s', (use, roomC, airOf) => {
    expect(answered(usualRoomC(use, tables)).value).toBe(roomC)
    const asked = { use, ageBand: 'C', country: 'england', glazing: 'double' } as const
    expect(answered(usualAirChanges(asked, tables)).why.says).toBe(`Air changes: ${airOf}, before 2000`)
  })

  it.each([
    ['C', 'double', 1.5, 'before 2000'],
    ['E', 'double', 1.5, 'before 2000'],
    ['F', 'double', 1.5, 'before 2000'],
    ['J', 'double', 1, '2000 or later, double glazed'],
    ['J', 'single', 1.5, 'before 2000'],
    ['K', 'double', 1, '2000 or later, double glazed'],
    ['L', 'single', 0.5, 'built after 2006'],
  ] as const)('air of age band %s with %s glazing: %d an hour', (ageBand, glazing, value, column) => {
    const air = answered(usualAirChanges({ use: 'hall', ageBand, country: 'england', glazing }, tables))
    expect([air.value, air.why.says]).toEqual([value, `Air changes: hall, ${column}`])
  })

  it('bridges are those of new buildings from band L', () => {
    expect([answered(usualBridges('K', tables)).value, answered(usualBridges('L', tables)).value]).toEqual([
      0.1, 0.05,
    ])
    const lacking = { thermalBridges: { source: '', rows: [] } }
    expect(refused(usualBridges('L', lacking)).message).toBe(
      'The tables do not have thermal bridges for newGoodPractice.',
    )
    const asked = { use: 'hall', ageBand: 'A', country: 'england', glazing: 'double' } as const
    expect(refused(usualAirChanges(asked, tables)).message).toBe('The tables do not have the age band A.')
    expect(
      refused(usualAirChanges({ ...asked, country: 'wales' }, { ...tables, ageBands: [] })).message,
    ).toBe('The tables do not have the age band A.')
  })

  it('outside walls measured may be all four, to a rounding', () => {
    const lengths = { lengthM: 4, widthM: 3, outsideWallCount: 1 }
    expect(answered(outsideWallsM({ ...lengths, outsideWallM: 14 })).value).toBe(14)
    expect(outsideWallsM({ ...lengths, outsideWallM: 14.001 }).ok).toBe(false)
  })
})
