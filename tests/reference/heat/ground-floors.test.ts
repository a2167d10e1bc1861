import { describe, expect, it } from 'vitest'
import { groundFloorUValue } from '../../../src-main/engine/heat/ground/ground-floor.ts'
import { answered } from '../../answered.ts'

/** Approved Document L1 (2002), appendix C, table C1: one row for each 0.05 m/m² of exposed edge, five resistances. */
const tableC1 = [
  [0.13, 0.11, 0.1, 0.09, 0.08],
  [0.22, 0.18, 0.16, 0.14, 0.13],
  [0.3, 0.24, 0.21, 0.18, 0.17],
  [0.37, 0.29, 0.25, 0.22, 0.19],
  [0.44, 0.34, 0.28, 0.24, 0.22],
  [0.49, 0.38, 0.31, 0.27, 0.23],
  [0.55, 0.41, 0.34, 0.29, 0.25],
  [0.6, 0.44, 0.36, 0.3, 0.26],
  [0.65, 0.47, 0.38, 0.32, 0.27],
  [0.7, 0.5, 0.4, 0.33, 0.28],
  [0.74, 0.52, 0.41, 0.34, 0.28],
  [0.78, 0.55, 0.43, 0.35, 0.29],
  [0.82, 0.57, 0.44, 0.35, 0.3],
  [0.86, 0.59, 0.45, 0.36, 0.3],
  [0.89, 0.61, 0.46, 0.37, 0.31],
  [0.93, 0.62, 0.47, 0.37, 0.32],
  [0.96, 0.64, 0.47, 0.38, 0.32],
  [0.99, 0.65, 0.48, 0.39, 0.32],
  [1.02, 0.66, 0.49, 0.39, 0.33],
  [1.05, 0.68, 0.5, 0.4, 0.33],
] as const
const resistances = [0, 0.5, 1, 1.5, 2] as const
const edgeForM2 = (row: number) => Number((0.05 * (row + 1)).toFixed(2))
/** A print of two places: half of its last one, and a hair. */
const printed = 0.005001

describe('slabs agree with Approved Document L1 (2002), appendix C, table C1 (clay, wall of 300 mm)', () => {
  const cells = tableC1.flatMap((row, at) =>
    row.map((u, column) => ({ ratio: edgeForM2(at), r: resistances[column] ?? 0, u })),
  )

  it.each(cells)('edge $ratio m/m², insulation $r m²K/W: $u W/m²K', ({ ratio, r, u }) => {
    const floor = answered(
      groundFloorUValue({ kind: 'slab', areaM2: 100, perimeterM: 100 * ratio, insulationM2KPerW: r }),
    )
    expect(Math.abs(floor.uWPerM2K - u)).toBeLessThan(printed)
  })

  it('has both of the standard’s formulas in it: the last rows are well insulated', () => {
    const says = (r: number) =>
      answered(groundFloorUValue({ kind: 'slab', areaM2: 100, perimeterM: 100, insulationM2KPerW: r })).why
        .says
    // B' = 2 m; d = 0.3 + 1.5 x (0.21 + R): 1.365 m at R 0.5, 2.115 m at R 1.
    expect(says(0.5)).toMatch(/^Through the ground: 2 × conductivity/)
    expect(says(1)).toMatch(/^Well insulated, so conductivity/)
  })

  it('a textbook’s house on clay with edge 33.8 m and 58.89 m² reads 0.74 in the nearest row, 0.55', () => {
    // briangwilliams.us, “Example solid ground floor over clay subsoil”: P/A 0.57; its rows print 0.74 (0.55) and 0.78 (0.60).
    const u = answered(groundFloorUValue({ kind: 'slab', areaM2: 58.89, perimeterM: 33.8 })).uWPerM2K
    expect(u).toBeGreaterThan(0.74)
    expect(u).toBeLessThan(0.78)
  })
})

describe('edge insulation agrees with Approved Document L1 (2002), appendix C, tables C2 and C3', () => {
  // Reach in m (C2: width; C3: twice the depth), then the saving in W/mK for resistances of 0.5, 1, 1.5 and 2 m²K/W.
  // The table does not say of what the strip is made: 0.04 W/mK, the value from memory of that document's examples.
  const rows = [
    [0.5, 0.13, 0.18, 0.21, 0.22],
    [1, 0.2, 0.27, 0.32, 0.34],
    [1.5, 0.23, 0.33, 0.39, 0.42],
    [2, 0.26, 0.37, 0.43, 0.48],
  ] as const
  const cells = rows.flatMap(([reachM, ...savings]) =>
    savings.map((saving, at) => ({ reachM, r: 0.5 * (at + 1), saving })),
  )
  const strip = (lies: 'flat' | 'upright', reachMm: number, r: number) =>
    answered(
      groundFloorUValue({
        kind: 'slab',
        areaM2: 100,
        perimeterM: 40,
        edge: { lies, reachMm, thicknessMm: 40 * r, conductivityWPerMK: 0.04 },
      }),
    )

  it.each(cells)('reach $reachM m, $r m²K/W: $saving W/mK', ({ reachM, r, saving }) => {
    const flat = strip('flat', reachM * 1000, r)
    expect(Math.abs((flat.edgeWPerMK ?? 0) + saving)).toBeLessThan(printed)
    expect(strip('upright', reachM * 500, r).edgeWPerMK).toBeCloseTo(flat.edgeWPerMK ?? 0, 12)
    // That document: U = U0 - (P/A) x factor; here P/A is 0.4 and U0 is 0.60 in table C1.
    expect(Math.abs(flat.uWPerM2K - (0.6 - 0.4 * saving))).toBeLessThan(0.005 + 0.4 * printed)
  })
})

describe('suspended floors agree with Approved Document L1 (2002), appendix C, table C4', () => {
  // Columns: openings of 0.0015 and 0.003 m² for each metre of edge. The table was seen without its assumptions; these are
  // from memory: floor 0.3 m up, its walls 1.7 W/m²K, wind 3 m/s, average shelter, deck 0.2 m²K/W. All forty cells fit them.
  const tableC4 = [
    [0.15, 0.15],
    [0.25, 0.26],
    [0.33, 0.35],
    [0.4, 0.42],
    [0.46, 0.48],
    [0.51, 0.53],
    [0.55, 0.58],
    [0.59, 0.62],
    [0.63, 0.66],
    [0.66, 0.7],
    [0.69, 0.73],
    [0.72, 0.76],
    [0.75, 0.79],
    [0.77, 0.81],
    [0.8, 0.84],
    [0.82, 0.86],
    [0.84, 0.88],
    [0.86, 0.9],
    [0.88, 0.92],
    [0.89, 0.93],
  ] as const
  const cells = tableC4.flatMap((row, at) =>
    row.map((u, column) => ({ ratio: edgeForM2(at), openings: [0.0015, 0.003][column] ?? 0, u })),
  )

  it.each(cells)('edge $ratio m/m², openings $openings m²/m: $u W/m²K', ({ ratio, openings, u }) => {
    const floor = answered(
      groundFloorUValue({
        kind: 'suspended',
        areaM2: 100,
        perimeterM: 100 * ratio,
        openingsM2PerM: openings,
        wallUWPerM2K: 1.7,
        windMPerS: 3,
      }),
    )
    expect(Math.abs(floor.uWPerM2K - u)).toBeLessThan(printed)
  })
})

describe('the assumptions are those of RdSAP 2009, section S5', () => {
  it('suspended timber: walls 1.5 W/m²K and 0.3 m high, openings 0.003 m²/m, wind 5 m/s × 0.05, deck 0.2 m²K/W', () => {
    // By that section, for A 45 m², P 21.5 m, w 0.22 m: B' 4.186 m, d 0.535 m, Ug 0.7106, Ux 0.2150 + 0.2598 = 0.4748;
    // U = 1 / (0.34 + 0.2 + 1 / 1.1854) = 0.7228 (worked by hand from its formulas).
    const floor = answered(
      groundFloorUValue({ kind: 'suspended', areaM2: 45, perimeterM: 21.5, wallMm: 220 }),
    )
    expect(floor.characteristicM).toBeCloseTo(4.186, 3)
    expect(floor.equivalentThicknessM).toBeCloseTo(0.535, 9)
    expect(floor.groundWPerM2K).toBeCloseTo(0.7106, 3)
    expect(floor.spaceWPerM2K).toBeCloseTo(0.4748, 3)
    expect(floor.uWPerM2K).toBeCloseTo(0.7228, 3)
  })
})
