import { describe, expect, it } from 'vitest'
import { bearingOf, bracketHoles } from '../../../../../src-main/engine/wall/bracket-holes.ts'
import type { BracketHole } from '../../../../../src-main/engine/wall/bracket-holes.ts'
import { fixingLoad } from '../../../../../src-main/engine/wall/fixing-load.ts'
import { answered, refused } from '../../../../answered.ts'
import { readOut } from '../../../../why-for-tests.ts'
import { firmOf } from './firm-for-tests.ts'

const figures = firmOf()
function holesAt(...places: readonly (readonly [xMm: number, yMm: number])[]): readonly BracketHole[] {
  return places.map(([xMm, yMm], nth) => ({
    id: `A${nth + 1}`,
    bracket: 'Top',
    upper: yMm > 1000,
    xMm,
    yMm,
    fromCentreMm: xMm - 900,
  }))
}

describe('the holes of brackets', () => {
  const hole = (acrossMm: number, upMm: number) => ({ acrossMm, upMm })
  const place = { centreMm: 900, bottomMm: 100 }

  it('of brackets all upper: those from the middle of their own bracket up, or all where they are level', () => {
    const brackets = [
      { name: 'Strip', upper: true, holes: [hole(-1, 500), hole(-1, 300), hole(-1, 100)] },
      { name: 'Level', upper: true, holes: [hole(1, 400), hole(3, 400)] },
    ]
    expect(answered(bracketHoles({ brackets }, place))).toEqual([
      { id: 'A1', bracket: 'Strip', upper: true, xMm: 899, yMm: 600, fromCentreMm: -1 },
      { id: 'A2', bracket: 'Strip', upper: true, xMm: 899, yMm: 400, fromCentreMm: -1 },
      { id: 'A3', bracket: 'Strip', upper: false, xMm: 899, yMm: 200, fromCentreMm: -1 },
      { id: 'B1', bracket: 'Level', upper: true, xMm: 901, yMm: 500, fromCentreMm: 1 },
      { id: 'B2', bracket: 'Level', upper: true, xMm: 903, yMm: 500, fromCentreMm: 3 },
    ])
  })

  it('of which one bracket is a lower one: every hole counts as its bracket does', () => {
    const brackets = [
      { name: 'Top', upper: true, holes: [hole(0, 500), hole(0, 100)] },
      { name: 'Foot', upper: false, holes: [hole(0, 50)] },
    ]
    expect(answered(bracketHoles({ brackets }, place)).map(({ upper }) => upper)).toEqual([true, true, false])
  })

  it('are refused where there are none, and more than 20 m off', () => {
    expect(refused(bracketHoles({ brackets: [] }, place))).toEqual({
      code: 'invalid',
      path: 'emitter.brackets',
      message: 'The emitter has no bracket holes to set out; give its brackets with their holes.',
    })
    const far = (acrossMm: number, upMm: number) =>
      bracketHoles(
        { brackets: [{ name: 'Top', upper: true, holes: [hole(0, 0), hole(acrossMm, upMm)] }] },
        { centreMm: 0, bottomMm: 0 },
      )
    for (const [x, y] of [
      [20_000, 20_000],
      [-20_000, -20_000],
    ] as const)
      expect(far(x, y).ok).toBe(true)
    for (const [x, y] of [
      [20_000.1, 0],
      [-20_000.1, 0],
      [0, 20_000.1],
      [0, -20_000.1],
    ] as const)
      expect(refused(far(x, y))).toEqual({
        code: 'impossible',
        path: 'emitter.brackets',
        message: 'A bracket hole would lie more than 20 m off; give holes that are on the emitter.',
      })
  })

  it('share the load by how they stand: upper, all, and the rise between', () => {
    const bearing = bearingOf(holesAt([0, 1200], [0, 1400], [0, 400]), figures)
    // (1200 + 1400) / 2 - 400.
    expect(bearing).toMatchObject({ upper: 2, all: 3, riseMm: 900 })
    expect(readOut(bearing.rise)).toEqual([
      'Rise from the lower to the upper fixings.: 900 mm',
      '  Mean height of the upper holes: 1300 mm',
      '  Mean height of the lower holes: 400 mm',
      '  bracketFootMm: 40 Mm (the firm)',
    ])
    for (const level of [holesAt([0, 1200], [9, 1200]), holesAt([0, 200], [9, 200])]) {
      const foot = bearingOf(level, figures)
      expect(foot).toMatchObject({ upper: 2, all: 2, riseMm: 40 })
      expect(readOut(foot.rise)).toEqual(['bracketFootMm: 40 Mm (the firm)'])
    }
    expect(bearingOf(holesAt([0, 1010], [0, 990]), figures).riseMm).toBe(40)
    expect(bearingOf(holesAt([0, 1010], [0, 969]), figures).riseMm).toBe(41)
  })
})

describe('the load of a fixing', () => {
  const input = {
    dryKg: 8,
    waterLitres: 1,
    extraKg: 1,
    projectionToCentreMm: 100,
    bracketRiseMm: 500,
    upperFixings: 2,
    allFixings: 4,
    allowedShearN: 49.03325,
    allowedPullN: 98.0665,
  }

  // 10 kg × 9.80665 = 98.0665 N; a quarter is 24.516625; pull 98.0665 × 100 / 500 / 2 = 9.80665.
  it('tells weight, shear and pull beside what is allowed', () => {
    const load = answered(fixingLoad(input))
    expect(load).toMatchObject({
      shearUse: expect.closeTo(0.5, 12),
      pullUse: expect.closeTo(0.1, 12),
      holds: true,
    })
    const weight = [
      '      Weight of the emitter, its water and whoever leans on it.: 98.0665 N',
      '        Dry mass: 8 kg',
      '        Water content, a kilogram to the litre: 1 L',
      '        Extra mass: 1 kg',
      '        Standard gravity: 9.80665 m/s2 (3rd CGPM (1901))',
    ]
    expect(readOut(load.why)).toEqual([
      'The fixing holds in shear and in pull.: holds',
      '  Shear against what is allowed.: 0.5',
      '    Every fixing carries its share of the weight.: 24.5166 N',
      ...weight,
      '      Fixings: 4',
      '    Allowed shear: 49.0333 N',
      '  Pull against what is allowed.: 0.1',
      '    The upper fixings hold against tipping forward about the lower ones.: 9.80665 N',
      ...weight,
      '      From the wall to the middle of the mass: 100 mm',
      '      Rise from the lower to the upper fixings: 500 mm',
      '      Upper fixings: 2',
      '    Allowed pull: 98.0665 N',
    ])
  })

  it('holds at just what is allowed, and says when it does not', () => {
    const just = {
      ...input,
      dryKg: 0,
      waterLitres: 0,
      extraKg: 4,
      projectionToCentreMm: 500,
      upperFixings: 1,
    }
    // 4 kg: 39.2266 N; a quarter 9.80665; pull 39.2266 × 500 / 500 / 1.
    const bearable = { allowedShearN: 9.80665, allowedPullN: 39.2266 }
    expect(answered(fixingLoad({ ...just, ...bearable })).holds).toBe(true)
    for (const weaker of [{ allowedShearN: 9.8 }, { allowedPullN: 39.2 }]) {
      const load = answered(fixingLoad({ ...just, ...bearable, ...weaker }))
      expect([load.holds, load.why.says, load.why.value]).toEqual([
        false,
        'The fixing does not hold.',
        'does not hold',
      ])
    }
  })

  it.each([
    [{ bracketRiseMm: 0 }, 'bracketRiseMm', 'bracketRiseMm must be more than 0; it was 0.'],
    [{ allowedShearN: 0 }, 'allowedShearN', 'allowedShearN must be more than 0; it was 0.'],
    [{ allowedPullN: -1 }, 'allowedPullN', 'allowedPullN must be more than 0; it was -1.'],
    [{ dryKg: -1 }, 'dryKg', 'dryKg must be 0 or more; it was -1.'],
    [{ waterLitres: -1 }, 'waterLitres', 'waterLitres must be 0 or more; it was -1.'],
    [{ extraKg: -1 }, 'extraKg', 'extraKg must be 0 or more; it was -1.'],
    [
      { projectionToCentreMm: -1 },
      'projectionToCentreMm',
      'projectionToCentreMm must be 0 or more; it was -1.',
    ],
    [{ upperFixings: 0 }, 'upperFixings', 'upperFixings must be a whole number from 1; it was 0.'],
    [{ allFixings: 4.5 }, 'allFixings', 'allFixings must be a whole number from 1; it was 4.5.'],
    [
      { upperFixings: 5 },
      'upperFixings',
      'There cannot be more upper fixings (5) than fixings (4); count the upper ones among all.',
    ],
  ])('is refused for %j', (change, path, message) => {
    expect(refused(fixingLoad({ ...input, ...change }))).toEqual({ code: 'invalid', path, message })
  })

  it('of nothing, all upper, is nothing; past all measure it is refused', () => {
    const nothing = { dryKg: 0, waterLitres: 0, extraKg: 0, projectionToCentreMm: 0, upperFixings: 4 }
    expect(answered(fixingLoad({ ...input, ...nothing }))).toMatchObject({ shearN: 0, pullN: 0, holds: true })
    expect(answered(fixingLoad({ ...input, upperFixings: 1, allFixings: 1 })).shearN).toBeCloseTo(98.0665, 9)
    expect(refused(fixingLoad({ ...input, bracketRiseMm: 1e-320 }))).toEqual({
      code: 'impossible',
      path: 'bracketRiseMm',
      message: 'The load comes out beyond all measure; give sizes of a real bracket.',
    })
    expect(refused(fixingLoad({ ...input, dryKg: NaN })).path).toBe('dryKg')
  })
})
