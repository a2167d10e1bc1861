import { describe, expect, it } from 'vitest'
import { uvalueGroundFloor } from '../../../../../src-main/contract/heating/ground-floor.ts'
import { groundFloorUValue } from '../../../../../src-main/engine/heat/ground/ground-floor.ts'
import type { GroundFloorInput } from '../../../../../src-main/engine/heat/ground/ground-floor.ts'
import type { Derivation } from '../../../../../src-main/domain/derivation.ts'
import { answered, leavesOf, refused } from '../../../../answered.ts'

const slab = { kind: 'slab', areaM2: 48, perimeterM: 20 } as const
const timber = { kind: 'suspended', areaM2: 48, perimeterM: 20 } as const
const strip = { lies: 'flat', reachMm: 600, thicknessMm: 50, conductivityWPerMK: 0.025 } as const

const u = (input: GroundFloorInput) => {
  const answer = answered(groundFloorUValue(input))
  expect(uvalueGroundFloor.input.safeParse(input).error).toBeUndefined()
  expect(uvalueGroundFloor.output.safeParse(answer).error).toBeUndefined()
  return answer
}
const saysOf = (why: Derivation): readonly string[] => [why.says, ...why.from.flatMap(saysOf)]

describe('a slab on the ground', () => {
  it('takes the curved path through the ground where it is hardly insulated', () => {
    // B' = 48 / 10 = 4.8 m; d = 0.3 + 1.5 x 0.21 = 0.615 m; 3 / 15.69464 x ln(25.5198) = 0.61921.
    const answer = u(slab)
    expect(answer).toMatchObject({ kind: 'slab', characteristicM: 4.8 })
    expect(answer.equivalentThicknessM).toBeCloseTo(0.615, 12)
    expect(answer.uWPerM2K).toBeCloseTo(0.61921, 4)
    expect(answer).not.toHaveProperty('edgeWPerMK')
    expect(answer).not.toHaveProperty('groundWPerM2K')
  })

  it('takes the straight path from where its equivalent thickness is the characteristic dimension', () => {
    // d = 0.3 + 2 x (0.17 + R + 0.04) is B' = 4.8 m at R = 2.04: 2 / (0.457 x 4.8 + 4.8) = 0.285976.
    const sand = { ...slab, groundConductivityWPerMK: 2 }
    const even = u({ ...sand, wallMm: 380, insulationM2KPerW: 2 })
    expect(even.equivalentThicknessM).toBe(4.8)
    expect(even.uWPerM2K).toBeCloseTo(0.285976, 5)
    expect(even.why.says).toContain('Well insulated, so conductivity / (0.457')
    const hair = u({ ...sand, wallMm: 379, insulationM2KPerW: 2 })
    expect(hair.why.says).toMatch(/^Through the ground: 2 × conductivity \/ \(π × B' \+ d\)/)
  })

  it('says what it assumed, and nothing when all was measured', () => {
    expect(u(slab).assumed).toEqual([
      'Wall at the edge: 300 mm (Approved Document L1 (2002), appendix C, generic).',
      'Conductivity of the ground, clay: 1.5 W/mK (ISO 13370, clay or silt).',
    ])
    expect(u({ ...slab, wallMm: 300, groundConductivityWPerMK: 1.5 }).assumed).toEqual([])
  })

  it('walks back to every figure that went in', () => {
    const { why } = u({ ...slab, wallMm: 260, insulationM2KPerW: 0.7, edge: strip })
    expect(new Set(leavesOf(why))).toEqual(new Set([48, 20, 260, 1.5, 0.7, 0.17, 0.04, 600, 50, 0.025]))
    expect(why).toMatchObject({ unit: 'W/m²K', source: 'ISO 13370' })
    expect(saysOf(why)).toEqual(
      expect.arrayContaining([
        "With the insulated edge: the slab + 2 × the edge's saving / B'",
        'Characteristic dimension: floor area / half of the exposed edge',
        'Equivalent thickness: wall + ground conductivity × (surfaces + insulation)',
        'Insulation and coverings of the slab',
        'Conductivity of the ground, clay, assumed',
        'Wall at the edge',
        'Floor area',
        'Exposed edge',
        'Inside surface of a floor',
        'Outside surface',
        'Width of the edge insulation',
        'Thickness of the edge insulation',
        'Conductivity of the edge insulation',
      ]),
    )
  })

  it('counts a strip that stands in the ground twice as deep as it is', () => {
    const deep = u({ ...slab, edge: { ...strip, lies: 'upright', reachMm: 300 } })
    expect(deep.edgeWPerMK).toBeCloseTo(u({ ...slab, edge: strip }).edgeWPerMK ?? 0, 12)
    const says = saysOf(deep.why)
    expect(says).toContain('Depth of the edge insulation')
    expect(says.some((one) => one.includes('D twice its depth'))).toBe(true)
    expect(saysOf(u({ ...slab, edge: strip }).why).some((one) => one.includes('D its width'))).toBe(true)
  })

  it('works a strip out as the standard writes it', () => {
    // d 0.615 m, d' = 1.5 x (0.05 / 0.025 - 0.05 / 1.5) = 2.95 m, D 0.6 m:
    // psi = -1.5 / pi x (ln(0.6 / 0.615 + 1) - ln(0.6 / 3.565 + 1)) = -0.25082; 2 psi / 4.8 = -0.10451.
    const answer = u({ ...slab, edge: strip })
    expect(answer.edgeWPerMK).toBeCloseTo(-0.25082, 4)
    expect(answer.uWPerM2K).toBeCloseTo(0.61921 - 0.10451, 4)
  })

  it('refuses a strip that insulates no better than ground, or reaches past half of the floor', () => {
    const wide = refused(groundFloorUValue({ ...slab, edge: { ...strip, reachMm: 2401 } }))
    expect(wide).toMatchObject({ code: 'invalid', path: 'edge.reachMm' })
    expect(wide.message).toBe(
      "Edge insulation may reach 2400 mm here, half of the floor's characteristic dimension; it was 2401. Past that, give it as insulation of the whole floor.",
    )
    expect(groundFloorUValue({ ...slab, edge: { ...strip, reachMm: 2400 } }).ok).toBe(true)
    const poor = refused(groundFloorUValue({ ...slab, edge: { ...strip, conductivityWPerMK: 1.5 } }))
    expect(poor).toMatchObject({ code: 'invalid', path: 'edge.conductivityWPerMK' })
    expect(poor.message).toBe(
      'Edge insulation must conduct less than the ground, which has 1.5 W/mK; it was 1.5.',
    )
  })
})

describe('a floor over an aired space', () => {
  it('adds the ground and the space below, and the deck in a row with them', () => {
    // B' 4.8: Ug 0.61921; Ux = 2 x 0.3 x 1.5 / 4.8 + 1450 x 0.003 x 5 x 0.05 / 4.8 = 0.1875 + 0.22656 = 0.41406;
    // U = 1 / (0.34 + 0.2 + 1 / 1.03328) = 0.66322.
    const answer = u(timber)
    expect(answer).toMatchObject({ kind: 'suspended', characteristicM: 4.8 })
    expect(answer.groundWPerM2K).toBeCloseTo(0.61921, 4)
    expect(answer.spaceWPerM2K).toBeCloseTo(0.41406, 4)
    expect(answer.uWPerM2K).toBeCloseTo(0.66322, 4)
  })

  it('adds insulation to the deck', () => {
    // 1 / (1 / 0.66322 + 2.5) = 0.24951.
    expect(u({ ...timber, insulationM2KPerW: 2.5 }).uWPerM2K).toBeCloseTo(0.24951, 4)
    expect(u({ ...timber, deckM2KPerW: 2.7 }).uWPerM2K).toBeCloseTo(0.24951, 4)
  })

  it('lays insulation on the ground below into the path through the ground', () => {
    // d = 0.3 + 1.5 x (0.21 + 1) = 2.115 m: 3 / (15.07964 + 2.115) x ln(7.12985 + 1) = 0.36562.
    const answer = u({ ...timber, baseM2KPerW: 1 })
    expect(answer.equivalentThicknessM).toBeCloseTo(2.115, 12)
    expect(answer.groundWPerM2K).toBeCloseTo(0.36562, 4)
  })

  it('over thick insulation on the ground takes the straight path, as a slab does', () => {
    // d = 0.3 + 1.5 x (0.21 + 4) = 6.615 m, past B' 4.8 m: 1.5 / (0.457 x 4.8 + 6.615) = 0.170288.
    expect(u({ ...timber, baseM2KPerW: 4 }).groundWPerM2K).toBeCloseTo(0.170288, 5)
  })

  it('feels the wind by its place', () => {
    const space = (place: 'sheltered' | 'average' | 'exposed') => u({ ...timber, place }).spaceWPerM2K
    expect(space('sheltered')).toBeCloseTo(0.1875 + 0.090625, 9)
    expect(space('average')).toBeCloseTo(0.1875 + 0.2265625, 9)
    expect(space('exposed')).toBeCloseTo(0.1875 + 0.453125, 9)
  })

  it('says all that it assumed, in the order of the survey', () => {
    expect(u(timber).assumed).toEqual([
      'Wall at the edge: 300 mm (Approved Document L1 (2002), appendix C, generic).',
      'Conductivity of the ground, clay: 1.5 W/mK (ISO 13370, clay or silt).',
      'Resistance of the deck: 0.2 m²K/W (RdSAP 2009 (version 9.90), section S5, generic).',
      'Floor above the ground outside: 300 mm (RdSAP 2009 (version 9.90), section S5, generic).',
      'U-value of the walls below the floor: 1.5 W/m²K (RdSAP 2009 (version 9.90), section S5, generic).',
      'Air bricks for each metre of edge: 0.003 m²/m (RdSAP 2009 (version 9.90), section S5, generic).',
      'Wind, a yearly mean: 5 m/s (RdSAP 2009 (version 9.90), section S5, generic).',
      'Shelter from the wind: average, 0.05 of it felt (ISO 13370:2017, table 8).',
    ])
    const all = {
      ...timber,
      wallMm: 230,
      groundConductivityWPerMK: 2,
      deckM2KPerW: 0.15,
      heightMm: 450,
      wallUWPerM2K: 1.9,
      openingsM2PerM: 0.002,
      windMPerS: 4,
      place: 'exposed',
      baseM2KPerW: 0.3,
      insulationM2KPerW: 0.6,
    } as const
    const answer = u(all)
    expect(answer.assumed).toEqual([])
    expect(new Set(leavesOf(answer.why))).toEqual(
      new Set([48, 20, 230, 2, 0.15, 0.6, 450, 1.9, 0.002, 4, 0.1, 0.3, 0.17, 0.04]),
    )
    expect(saysOf(answer.why)).toEqual(
      expect.arrayContaining([
        'U-value: 1 / (2 surfaces + deck + 1 / (ground + underfloor space))',
        "Out of the underfloor space: 2 × height × U of its walls / B' + 1450 × openings × wind × felt / B'",
        'Deck with its insulation, added',
        'Insulation and coverings of the deck',
        'Insulation on the ground below',
        'Surface above, and below, a floor',
        'Wind felt under the floor, exposed',
      ]),
    )
    expect(saysOf(u(timber).why)).toContain('Wind felt under the floor, average assumed')
  })
})

describe('a ground floor that cannot be', () => {
  it.each([
    ['areaM2', { ...slab, areaM2: 0 }, 'This figure must be more than 0; it was 0.'],
    [
      'perimeterM',
      { ...timber, perimeterM: 0 },
      'This figure must be more than 0; it was 0. A floor without an exposed edge loses no heat by this rule.',
    ],
    [
      'groundConductivityWPerMK',
      { ...slab, groundConductivityWPerMK: -1 },
      'This figure must be more than 0; it was -1.',
    ],
    [
      'edge.reachMm',
      { ...slab, edge: { ...strip, reachMm: 0 } },
      'This figure must be more than 0; it was 0.',
    ],
    [
      'edge.thicknessMm',
      { ...slab, edge: { ...strip, thicknessMm: 0 } },
      'This figure must be more than 0; it was 0.',
    ],
    [
      'edge.conductivityWPerMK',
      { ...slab, edge: { ...strip, conductivityWPerMK: 0 } },
      'This figure must be more than 0; it was 0.',
    ],
    ['wallMm', { ...slab, wallMm: -1 }, 'This figure must be 0 or more; it was -1.'],
    [
      'insulationM2KPerW',
      { ...slab, insulationM2KPerW: -0.1 },
      'This figure must be 0 or more; it was -0.1.',
    ],
    ['heightMm', { ...timber, heightMm: -5 }, 'This figure must be 0 or more; it was -5.'],
  ] as const)('names %s and says what would be right', (path, input, message) => {
    expect(refused(groundFloorUValue(input))).toEqual({ code: 'invalid', message, path })
  })

  it('refuses a figure that is no number, and one that goes past all reckoning', () => {
    expect(refused(groundFloorUValue({ ...slab, areaM2: Number.NaN })).path).toBe('areaM2')
    const past = refused(groundFloorUValue({ ...slab, areaM2: 1e308, perimeterM: 1e-300 }))
    expect(past).toMatchObject({ code: 'impossible' })
    expect(past.message).toBe('These figures go past what can be reckoned; check area and edge.')
  })

  it('takes a wall of no thickness and a space that is sealed', () => {
    expect(u({ ...slab, wallMm: 0 }).equivalentThicknessM).toBeCloseTo(0.315, 12)
    expect(u({ ...timber, openingsM2PerM: 0, heightMm: 0 }).spaceWPerM2K).toBe(0)
  })
})
