import { describe, expect, it } from 'vitest'
import { groundFloorUValue } from '../../../../../src-main/engine/heat/ground/ground-floor.ts'
import { answered } from '../../../../answered.ts'
import { readOut } from '../../../../why-for-tests.ts'

const size = { areaM2: 48, perimeterM: 20 }
const inset = (by: number, lines: readonly string[]) => lines.map((line) => ' '.repeat(by) + line)
/** B' = 48 / 10. */
const characteristic = [
  'Characteristic dimension: floor area / half of the exposed edge: 4.8 m (ISO 13370)',
  '  Floor area: 48 m²',
  '  Exposed edge: 20 m',
]
const thickness = (says: string, value: number, insulation: number) => [
  `Equivalent thickness: wall + ground conductivity × (surfaces + insulation): ${value} m (ISO 13370)`,
  '  Wall at the edge, assumed: 300 mm (Approved Document L1 (2002), appendix C, generic)',
  '  Conductivity of the ground, clay, assumed: 1.5 W/mK (ISO 13370, clay or silt)',
  `  ${says}: ${insulation} m²K/W`,
  '  Inside surface of a floor: 0.17 m²K/W (ISO 6946)',
  '  Outside surface: 0.04 m²K/W (ISO 6946)',
]
/** The figure itself aside, which is worked by hand in the test of the ground floors. */
const unvalued = (lines: readonly string[], starts: readonly string[]) =>
  lines.map((line) =>
    starts.some((start) => line.trim().startsWith(start))
      ? line.replace(/: -?[\d.]+ (W\S+) \(/, ': … $1 (')
      : line,
  )

describe('the reason of a ground floor', () => {
  // d = 0.3 + 1.5 × 0.21 = 0.615; d' of a strip of 50 mm at 0.025 W/mK is 2.95.
  it('of a slab with a strip along its edge', () => {
    const edge = { lies: 'flat', reachMm: 600, thicknessMm: 50, conductivityWPerMK: 0.025 } as const
    const { why } = answered(groundFloorUValue({ kind: 'slab', ...size, edge }))
    const slab = thickness('Insulation and coverings of the slab', 0.615, 0)
    expect(unvalued(readOut(why), ['With', 'Through', 'Edge'])).toEqual([
      "With the insulated edge: the slab + 2 × the edge's saving / B': … W/m²K (ISO 13370)",
      "  Through the ground: 2 × conductivity / (π × B' + d) × ln(π × B' / d + 1), B' the characteristic dimension, d the equivalent thickness: … W/m²K (ISO 13370)",
      '    Conductivity of the ground, clay, assumed: 1.5 W/mK (ISO 13370, clay or silt)',
      ...inset(4, characteristic),
      ...inset(4, slab),
      "  Edge insulation saves: conductivity / π × (ln(D / (d + d') + 1) - ln(D / d + 1)), D its width, d' the ground it stands for: … W/mK (ISO 13370)",
      '    Conductivity of the ground, clay, assumed: 1.5 W/mK (ISO 13370, clay or silt)',
      ...inset(4, slab),
      '    Width of the edge insulation: 600 mm',
      '    Thickness of the edge insulation: 50 mm',
      '    Conductivity of the edge insulation: 0.025 W/mK',
      ...inset(2, characteristic),
    ])
  })

  // d = 0.3 + 1.5 × (0.21 + 4) = 6.615, past B' 4.8: 1.5 / (0.457 × 4.8 + 6.615) = 1.5 / 8.8086 = 0.170288.
  it('of a slab that is well insulated', () => {
    const { why } = answered(groundFloorUValue({ kind: 'slab', ...size, insulationM2KPerW: 4 }))
    expect(readOut(why)).toEqual([
      "Well insulated, so conductivity / (0.457 × B' + d), B' the characteristic dimension, d the equivalent thickness: 0.170288 W/m²K (ISO 13370)",
      '  Conductivity of the ground, clay, assumed: 1.5 W/mK (ISO 13370, clay or silt)',
      ...inset(2, characteristic),
      ...inset(2, thickness('Insulation and coverings of the slab', 6.615, 4)),
    ])
  })

  it('of a floor over an aired space, all assumed', () => {
    const { why } = answered(groundFloorUValue({ kind: 'suspended', ...size, insulationM2KPerW: 2.5 }))
    const rdsap = '(RdSAP 2009 (version 9.90), section S5, generic)'
    // 2 × 0.3 × 1.5 / 4.8 + 1450 × 0.003 × 5 × 0.05 / 4.8 = 0.1875 + 0.2265625.
    expect(unvalued(readOut(why), ['U-value: 1', 'Through'])).toEqual([
      'U-value: 1 / (2 surfaces + deck + 1 / (ground + underfloor space)): … W/m²K (ISO 13370)',
      '  Surface above, and below, a floor: 0.17 m²K/W (ISO 6946)',
      '  Deck with its insulation, added: 2.7 m²K/W',
      `    Resistance of the deck, assumed: 0.2 m²K/W ${rdsap}`,
      '    Insulation and coverings of the deck: 2.5 m²K/W',
      "  Through the ground: 2 × conductivity / (π × B' + d) × ln(π × B' / d + 1), B' the characteristic dimension, d the equivalent thickness: … W/m²K (ISO 13370)",
      '    Conductivity of the ground, clay, assumed: 1.5 W/mK (ISO 13370, clay or silt)',
      ...inset(4, characteristic),
      ...inset(4, thickness('Insulation on the ground below', 0.615, 0)),
      "  Out of the underfloor space: 2 × height × U of its walls / B' + 1450 × openings × wind × felt / B': 0.414063 W/m²K (ISO 13370)",
      `    Floor above the ground outside, assumed: 300 mm ${rdsap}`,
      `    U-value of the walls below the floor, assumed: 1.5 W/m²K ${rdsap}`,
      `    Air bricks for each metre of edge, assumed: 0.003 m²/m ${rdsap}`,
      `    Wind, a yearly mean, assumed: 5 m/s ${rdsap}`,
      '    Wind felt under the floor, average assumed: 0.05 (ISO 13370:2017, table 8)',
      ...inset(4, characteristic),
    ])
  })

  it('names what was measured without a source of its own', () => {
    const input = { kind: 'suspended', ...size, wallMm: 230, windMPerS: 4, place: 'exposed' } as const
    const lines = readOut(answered(groundFloorUValue(input)).why)
    for (const line of [
      '      Wall at the edge: 230 mm',
      '    Wind, a yearly mean: 4 m/s',
      '    Wind felt under the floor, exposed: 0.1 (ISO 13370:2017, table 8)',
    ])
      expect(lines).toContain(line)
  })
})
