import { describe, expect, it } from 'vitest'
import { ageBandOf } from '../../../../src-main/engine/heat/age-band.ts'
import type { AgeBandYears, UValueTables } from '../../../../src-main/engine/heat/age-band-tables.ts'
import { ageBandUValue } from '../../../../src-main/engine/heat/age-band-u-value.ts'
import { layersUValue } from '../../../../src-main/engine/heat/u-value.ts'
import { answered, refused } from '../../../answered.ts'
import { readOut } from '../../../why-for-tests.ts'

const block = { name: 'Block', thicknessMm: 100, conductivityWPerMK: 0.5 }
const studs = {
  name: 'Wool',
  thicknessMm: 100,
  conductivityWPerMK: 0.04,
  bridge: { fraction: 0.2, conductivityWPerMK: 0.125 },
}

describe('the reason of a U-value from layers', () => {
  // 0.13 + 0.1 / 0.5 + 0.13 + 0.04 = 0.5; 1 / 0.5 = 2.
  it('adds surfaces and layers', () => {
    const layers = [block, { name: 'Air', resistanceM2KPerW: 0.13 }]
    expect(readOut(answered(layersUValue({ rsi: 0.13, rse: 0.04, layers })).why)).toEqual([
      'U-value: 1 / resistance: 2 W/m²K (ISO 6946)',
      '  Surfaces and layers, added: 0.5 m²K/W',
      '    Inside surface: 0.13 m²K/W',
      '    Block: thickness / conductivity: 0.2 m²K/W',
      '      Thickness: 100 mm',
      '      Conductivity: 0.5 W/mK',
      '    Air: 0.13 m²K/W',
      '    Outside surface: 0.04 m²K/W',
    ])
  })

  // Wool 0.1 / 0.04 = 2.5, timber 0.1 / 0.125 = 0.8; in parallel 1 / (0.8 / 2.5 + 0.2 / 0.8) = 1 / 0.57 = 1.75439.
  // Upper with surfaces 0.2: 1 / (0.8 / 2.7 + 0.2 / 1.0) = 1 / 0.496296 = 2.01493. Lower: 1.95439. Mean: 1.98466; U 0.503866.
  it('of a bridged layer stands between its two limits', () => {
    const found = answered(layersUValue({ rsi: 0.13, rse: 0.07, layers: [studs] }))
    const parts = [
      '      Inside surface: 0.13 m²K/W',
      '      Wool with its bridge, in parallel: 1.75439 m²K/W',
      '        Wool: thickness / conductivity: 2.5 m²K/W',
      '          Thickness: 100 mm',
      '          Conductivity: 0.04 W/mK',
      '        Bridge through Wool: thickness / conductivity: 0.8 m²K/W',
      '          Thickness: 100 mm',
      '          Conductivity: 0.125 W/mK',
      "        The bridge's share of the area: 0.2",
      '      Outside surface: 0.07 m²K/W',
    ]
    expect(readOut(found.why)).toEqual([
      'U-value: 1 / resistance: 0.503866 W/m²K (ISO 6946)',
      '  Mean of the upper and the lower limit: 1.98466 m²K/W',
      '    Upper limit: every path side by side: 2.01493 m²K/W',
      ...parts,
      '    Lower limit: each bridged layer made one, then added: 1.95439 m²K/W',
      ...parts,
    ])
    expect(found.uWPerM2K).toBeCloseTo(0.503866, 6)
  })

  it.each([
    [{ rsi: -0.01 }, 'rsi', 'The inside surface resistance must be 0 or more; it was -0.01.'],
    [{ rse: -0.01 }, 'rse', 'The outside surface resistance must be 0 or more; it was -0.01.'],
  ])('is refused for %j', (change, path, message) => {
    const input = { rsi: 0.13, rse: 0.04, layers: [block], ...change }
    expect(refused(layersUValue(input))).toEqual({ code: 'invalid', path, message })
  })

  it.each([
    { ...block, thicknessMm: 0 },
    { ...block, conductivityWPerMK: 0 },
    { name: 'Block', resistanceM2KPerW: 0 },
    { ...studs, name: 'Block', thicknessMm: 0 },
    { ...studs, name: 'Block', bridge: { fraction: -0.01, conductivityWPerMK: 0.1 } },
    { ...studs, name: 'Block', bridge: { fraction: 1.01, conductivityWPerMK: 0.1 } },
    { ...studs, name: 'Block', bridge: { fraction: 0.5, conductivityWPerMK: 0 } },
  ])('is refused for a second layer of %j', (odd) => {
    expect(refused(layersUValue({ rsi: 0.13, rse: 0.04, layers: [block, odd] }))).toEqual({
      code: 'invalid',
      path: 'layers[1]',
      message:
        "The layer “Block” must have a thickness and conductivities, or a resistance, of more than 0, and a bridge's share of 0 to 1.",
    })
  })

  it('takes surfaces of nothing and a bridge that is nowhere or everywhere', () => {
    expect(answered(layersUValue({ rsi: 0, rse: 0, layers: [block] })).uWPerM2K).toBe(5)
    for (const [fraction, m2KPerW] of [
      [0, 2.5],
      [1, 0.8],
    ] as const) {
      const layer = { ...studs, bridge: { ...studs.bridge, fraction } }
      const found = answered(layersUValue({ rsi: 0, rse: 0, layers: [layer] }))
      expect(found.resistanceM2KPerW).toBeCloseTo(m2KPerW, 12)
    }
  })

  it('is refused past twelve bridged layers, under a millionth of resistance, and without end', () => {
    const many = Array.from({ length: 13 }, () => studs)
    expect(refused(layersUValue({ rsi: 0.1, rse: 0, layers: many }))).toEqual({
      code: 'impossible',
      path: 'layers',
      message: 'At most 12 layers may be bridged; there are 13. Make some of them one layer.',
    })
    const thin = (resistanceM2KPerW: number) =>
      layersUValue({ rsi: 0, rse: 0, layers: [{ name: 'Foil', resistanceM2KPerW }] })
    expect(answered(thin(1e-6)).resistanceM2KPerW).toBe(1e-6)
    expect(refused(thin(0.99e-6))).toEqual({
      code: 'impossible',
      path: 'layers',
      message: 'These layers resist next to nothing; check thicknesses and surfaces.',
    })
    const endless = { name: 'Wool', thicknessMm: 100, conductivityWPerMK: Number.MIN_VALUE }
    expect(refused(layersUValue({ rsi: 0, rse: 0, layers: [endless] }))).toEqual({
      code: 'impossible',
      message: 'A layer here resists without end; check its thickness and conductivity.',
    })
  })
})

const years: readonly AgeBandYears[] = [
  { countries: ['scotland'], source: 'table T', bands: [{ ageBand: 'A', fromYear: null, toYear: null }] },
  {
    countries: ['england', 'wales'],
    source: 'table S',
    bands: [
      { ageBand: 'A', fromYear: null, toYear: 1899 },
      { ageBand: 'B', fromYear: 1900, toYear: 1929 },
      { ageBand: 'D', fromYear: 1950, toYear: null },
    ],
  },
]

describe('the reason of an age band', () => {
  it.each([
    [1899, 'A', 'up to 1899'],
    [1900, 'B', '1900 to 1929'],
    [1929, 'B', '1900 to 1929'],
    [1950, 'D', 'from 1950'],
  ] as const)('a dwelling of %d is in band %s', (builtYear, ageBand, span) => {
    const found = answered(ageBandOf({ builtYear, country: 'wales' }, years))
    expect(found.ageBand).toBe(ageBand)
    expect(readOut(found.why)).toEqual([`Age band: ${span}: ${ageBand} (table S)`, `  Built: ${builtYear}`])
    expect(readOut(answered(ageBandOf({ ageBand, country: 'wales' }, years)).why)).toEqual([
      `Age band: ${span}: ${ageBand}`,
    ])
  })

  it('may be any year', () => {
    expect(readOut(answered(ageBandOf({ ageBand: 'A', country: 'scotland' }, years)).why)).toEqual([
      'Age band: any year: A',
    ])
  })

  it.each([
    [
      { country: 'northernIreland', ageBand: 'A' },
      'not-found',
      'country',
      'There are no age bands for northernIreland.',
    ],
    [
      { country: 'england', builtYear: 1930 },
      'not-found',
      'builtYear',
      'No age band holds the year 1930; name the band.',
    ],
    [
      { country: 'england', builtYear: 1929, ageBand: 'D' },
      'invalid',
      'ageBand',
      'A dwelling of 1929 is in age band B, not D; give one of the two.',
    ],
    [
      { country: 'england' },
      'invalid',
      'builtYear',
      'This table goes by age: give the age band or the year it was built.',
    ],
    [
      { country: 'england', ageBand: 'C' },
      'not-found',
      'ageBand',
      'There is no age band C in this country; it has A, B, D.',
    ],
  ] as const)('is refused for %j', (input, code, path, message) => {
    expect(refused(ageBandOf(input, years))).toEqual({ code, path, message })
  })
})

describe('the reason of a U-value from a table', () => {
  const tables: UValueTables = {
    ageBands: years,
    uValues: [
      {
        tableId: 'roofs',
        element: 'roof',
        by: 'insulationMm',
        says: 'Roofs by insulation',
        source: 'table R',
        insulationMm: [50, 100, 200],
        rows: [{ construction: 'slates', says: 'Slates', uWPerM2K: [0.7, 0.4, 0.2] }],
      },
      {
        tableId: 'walls',
        element: 'wall',
        by: 'ageBand',
        says: 'Walls by age',
        source: 'table W',
        countries: ['england'],
        ageBands: ['A', 'B'],
        rows: [
          { construction: 'stone', says: 'Stone', note: 'from memory', uWPerM2K: [2, null] },
          { construction: 'brick', says: 'Brick', uWPerM2K: [2.5, 2.1] },
        ],
      },
      {
        tableId: 'panes',
        element: 'window',
        by: 'construction',
        says: 'Windows',
        source: 'table P',
        rows: [
          { construction: 'single', says: 'Single', uWPerM2K: 4.8 },
          { construction: 'double', says: 'Double', uWPerM2K: 2.8 },
        ],
      },
    ],
  }
  const roof = { element: 'roof', construction: 'slates' } as const
  const wall = { element: 'wall', construction: 'stone' } as const

  it('by thickness takes the printed one that is not above it', () => {
    for (const [insulationMm, printed, u] of [
      [50, 50, 0.7],
      [99.9, 50, 0.7],
      [100, 100, 0.4],
      [350, 200, 0.2],
    ] as const) {
      expect(readOut(answered(ageBandUValue({ ...roof, insulationMm }, tables)).why)).toEqual([
        `U-value as printed: Roofs by insulation: ${u} W/m²K (table R)`,
        '  Construction: Slates',
        `  Read at the printed thickness not above it: ${printed} mm`,
        `    Insulation: ${insulationMm} mm`,
      ])
    }
  })

  it('by age names country and band, and the row’s note beside it', () => {
    const found = answered(ageBandUValue({ ...wall, builtYear: 1850 }, tables))
    expect(found).toMatchObject({ uWPerM2K: 2, ageBand: 'A', source: 'table W', note: 'from memory' })
    expect(readOut(found.why)).toEqual([
      'U-value as printed: Walls by age: 2 W/m²K (table W)',
      '  Construction: Stone',
      '  Country: england',
      '  Age band: up to 1899: A (table S)',
      '    Built: 1850',
    ])
    const plain = answered(ageBandUValue({ element: 'wall', construction: 'brick', ageBand: 'B' }, tables))
    expect(plain).not.toHaveProperty('note')
    expect(plain.uWPerM2K).toBe(2.1)
  })

  it('by construction alone has nothing more to tell', () => {
    const found = answered(ageBandUValue({ element: 'window', construction: 'double' }, tables))
    expect(found).not.toHaveProperty('ageBand')
    expect(readOut(found.why)).toEqual([
      'U-value as printed: Windows: 2.8 W/m²K (table P)',
      '  Construction: Double',
    ])
  })

  it.each([
    [
      { ...roof, insulationMm: 49.9 },
      'not-found',
      'insulationMm',
      'The table begins at 50 mm of insulation.',
    ],
    [roof, 'invalid', 'insulationMm', 'The roof slates goes by its insulation: give its thickness in mm.'],
    [
      { ...wall, ageBand: 'A', insulationMm: 50 },
      'invalid',
      'insulationMm',
      'No table of stone goes by thickness; leave it out and name the insulated construction.',
    ],
    [{ ...wall, ageBand: 'B' }, 'not-found', 'ageBand', 'The table prints nothing for Stone in age band B.'],
    [{ ...wall, ageBand: 'D' }, 'not-found', 'ageBand', 'The table prints nothing for stone in age band D.'],
  ] as const)('is refused for %j', (input, code, path, message) => {
    expect(refused(ageBandUValue(input, tables))).toEqual({ code, path, message })
  })

  it('of a construction that no table has names those of that element and country', () => {
    const fix = 'heat.tables lists them all.'
    const unknown = (element: 'wall' | 'door' | 'window', country?: 'wales') =>
      refused(
        ageBandUValue(
          { element, construction: 'straw', ...(country === undefined ? {} : { country }) },
          tables,
        ),
      )
    expect(unknown('wall')).toMatchObject({
      code: 'not-found',
      path: 'construction',
      message: 'There is no wall called straw in the tables: it should be one of stone, brick.',
    })
    expect(Object.values(unknown('wall'))).toContain(fix)
    expect(unknown('door').message).toBe('There is no door called straw in the tables: there is none here.')
    expect(unknown('wall', 'wales').message).toBe(
      'There is no wall called straw in the tables: there is none here.',
    )
  })
})
