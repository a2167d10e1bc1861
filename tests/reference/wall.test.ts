import { describe, expect, it } from 'vitest'
import { fixingLoad } from '../../src-main/engine/wall/fixing-load.ts'
import { setOutWall } from '../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../figures-for-tests.ts'
import { bathroomWall, floorPipe, railInput, towelRail } from '../unit/engine/wall/walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')

function setOutOf(input: SetOutInput) {
  const out = setOutWall(input, figures)
  if (!out.ok) throw new Error(out.problems[0]?.message)
  return out.value
}

/** A rail of 600 with pipe centres of 550 and a bracket spread of 480, the lowest bracket 95 above its bottom edge. */
const rail600 = {
  ...towelRail,
  widthMm: 600,
  pipeCentresMm: 550,
  brackets: [
    {
      name: 'Top',
      upper: true,
      holes: [
        { acrossMm: -240, upMm: 1105 },
        { acrossMm: 240, upMm: 1105 },
      ],
    },
    {
      name: 'Bottom',
      upper: false,
      holes: [
        { acrossMm: -240, upMm: 95 },
        { acrossMm: 240, upMm: 95 },
      ],
    },
  ],
}

describe('check values of the trade (practice, no published source)', () => {
  const out = setOutOf(
    railInput({
      emitter: rail600,
      centre: { kind: 'fromPipe', side: 'left' },
      pipes: [floorPipe('left', 500, 235, { fixed: true })],
    }),
  )

  it('a 600 mm rail with 550 mm pipe centres sits 275 mm from a fixed pipe', () => {
    expect(out.centreMm - 500).toBe(275)
    const right = setOutOf(
      railInput({
        emitter: rail600,
        centre: { kind: 'fromPipe', side: 'right' },
        pipes: [floorPipe('right', 1300, 235, { fixed: true })],
      }),
    )
    expect(right.centreMm - 1300).toBe(-275)
  })

  it('a 480 mm bracket spread marks 240 mm each side of the centre line', () => {
    expect(out.holes.map((hole) => hole.xMm - out.centreMm)).toEqual([-240, 240, -240, 240])
    expect(out.holes.map((hole) => hole.fromCentreMm)).toEqual([-240, 240, -240, 240])
  })

  it("the lowest bracket sits 95 mm above the rail's bottom edge", () => {
    expect(Math.min(...out.holes.map((hole) => hole.yMm)) - out.bottomMm).toBe(95)
  })
})

describe('cable safe zones (BS 7671 regulation 522.6.202, as the-regs.co.uk and owelectric.co.uk summarise it)', () => {
  const wall = { ...bathroomWall, finish: 'paint' as const, obstacles: [] }
  const oneHole = {
    ...towelRail,
    brackets: [{ name: 'Only', upper: true, holes: [{ acrossMm: 0, upMm: 600 }] }],
  }
  const zonesAt = (xMm: number, bottomMm: number) =>
    setOutOf(railInput({ wall, emitter: oneHole, centre: { kind: 'at', xMm }, bottomMm })).warnings.filter(
      (says) => says.includes('522.6.202'),
    )

  it('reach 150 mm from an internal corner, and no further', () => {
    expect(zonesAt(149, 300)).toHaveLength(1)
    expect(zonesAt(151, 300)).toEqual([])
    expect(zonesAt(1800 - 149, 300)).toHaveLength(1)
    expect(zonesAt(1800 - 151, 300)).toEqual([])
  })

  it('reach 150 mm down from the ceiling, and no further', () => {
    // The hole is 600 above the bottom edge, the wall 2400 high.
    expect(zonesAt(900, 2400 - 149 - 600)).toHaveLength(1)
    expect(zonesAt(900, 2400 - 151 - 600)).toEqual([])
  })
})

describe('cables to a socket or switch (BS 7671 regulation 522.6.202, as the-regs.co.uk and a trade forum quote it)', () => {
  // A zone runs level or upright to an accessory, from either side; this one is 100 wide and high about (1000, 1200).
  const socket = {
    obstacleId: 's',
    name: 'Socket',
    kind: 'socket' as const,
    xMm: 950,
    yMm: 1150,
    widthMm: 100,
    heightMm: 100,
  }
  const wall = { ...bathroomWall, finish: 'paint' as const, widthMm: 4000, obstacles: [socket] }
  const oneHole = {
    ...towelRail,
    brackets: [{ name: 'Only', upper: true, holes: [{ acrossMm: 0, upMm: 600 }] }],
  }
  const warnedAt = (xMm: number, yMm: number, thicknessMm?: number) =>
    setOutOf(
      railInput({
        wall: thicknessMm === undefined ? wall : { ...wall, thicknessMm },
        emitter: oneHole,
        centre: { kind: 'at', xMm },
        bottomMm: yMm - 600,
      }),
    ).warnings.filter((says) => says.includes('522.6.202')).length

  it('may run straight up and straight down from it', () => {
    expect([warnedAt(1049, 2000), warnedAt(951, 700)]).toEqual([1, 1])
    expect([warnedAt(1051, 2000), warnedAt(949, 700)]).toEqual([0, 0])
  })

  it('may run level with it to both sides', () => {
    expect([warnedAt(3000, 1249), warnedAt(300, 1151)]).toEqual([1, 1])
    expect([warnedAt(3000, 1251), warnedAt(300, 1149)]).toEqual([0, 0])
  })

  it('may come from the other side of a wall that is 100 mm thick or less', () => {
    expect([warnedAt(3000, 700, 100), warnedAt(3000, 700, 101), warnedAt(3000, 700)]).toEqual([1, 0, 0])
  })
})

describe('clips on plastic pipe (The City & Guilds Textbook: Plumbing Book 1, 2019, table 2.36, polybutylene run level)', () => {
  it('stand as far apart as the table says', () => {
    // Printed in metres: 10 mm 0.3, 15 mm 0.3, 22 mm 0.5.
    for (const [outsideMm, spacingM] of [
      [10, 0.3],
      [15, 0.3],
      [22, 0.5],
    ] as const) {
      const pipe = floorPipe('left', 300, 235, { material: 'plastic', outsideMm, fixed: true })
      const [offset] = setOutOf(railInput({ centre: { kind: 'at', xMm: 1400 }, pipes: [pipe] })).pipeOffsets
      expect(offset?.remedy).toBe('repipe')
      expect(offset?.clips).toBe(Math.ceil((offset?.pipeMm ?? 0) / (spacingM * 1000)))
      expect(offset?.pipeMm).toBeGreaterThan(2 * spacingM * 1000)
    }
  })
})

describe('load on fixings, worked by hand with g = 9.80665 m/s2 (3rd CGPM, 1901)', () => {
  it('a rail of 8 kg with 4 litres and 20 kg leaning on it', () => {
    // m = 8 + 4 + 20 = 32 kg; weight 32 x 9.80665 = 313.8128 N.
    // Shear: 313.8128 / 4 = 78.4532 N; of 150 N allowed: 0.523021.
    // Pull: 313.8128 x 80 / (1000 x 2) = 12.552512 N; of 100 N allowed: 0.125525.
    const load = fixingLoad({
      dryKg: 8,
      waterLitres: 4,
      extraKg: 20,
      projectionToCentreMm: 80,
      bracketRiseMm: 1000,
      upperFixings: 2,
      allFixings: 4,
      allowedShearN: 150,
      allowedPullN: 100,
    })
    if (!load.ok) throw new Error(load.problems[0]?.message)
    expect(load.value.shearN).toBeCloseTo(78.4532, 9)
    expect(load.value.pullN).toBeCloseTo(12.552512, 9)
    expect(load.value.shearUse).toBeCloseTo(0.523021, 6)
    expect(load.value.pullUse).toBeCloseTo(0.125525, 6)
    expect(load.value.holds).toBe(true)
  })

  const heavy = {
    dryKg: 45,
    waterLitres: 15,
    extraKg: 0,
    projectionToCentreMm: 120,
    bracketRiseMm: 150,
    upperFixings: 2,
    allFixings: 6,
    allowedShearN: 100,
    allowedPullN: 200,
  }

  it('a heavy panel on a short bracket fails in pull though it holds in shear', () => {
    // m = 60 kg; weight 588.399 N; shear 588.399 / 6 = 98.0665 N of 100; pull 588.399 x 120 / (150 x 2) = 235.3596 N of 200.
    const load = fixingLoad(heavy)
    if (!load.ok) throw new Error(load.problems[0]?.message)
    expect(load.value.shearN).toBeCloseTo(98.0665, 9)
    expect(load.value.pullN).toBeCloseTo(235.3596, 9)
    expect(load.value).toMatchObject({ holds: false })
  })

  it('is refused with the field at fault', () => {
    const pathOf = (changes: Partial<typeof heavy>) => {
      const load = fixingLoad({ ...heavy, ...changes })
      return load.ok ? null : load.problems[0]?.path
    }
    expect(pathOf({ bracketRiseMm: 0 })).toBe('bracketRiseMm')
    expect(pathOf({ dryKg: -1 })).toBe('dryKg')
    expect(pathOf({ upperFixings: 7 })).toBe('upperFixings')
    expect(pathOf({ allFixings: 2.5 })).toBe('allFixings')
    expect(pathOf({ allowedPullN: Number.NaN })).toBe('allowedPullN')
  })

  it('is what the set-out works with: brackets 1010 apart, e = 60 + 40/2 = 80 mm', () => {
    // m = 9 + 5 + 0 = 14 kg; weight 137.2931 N; shear 34.323275 N; pull 137.2931 x 80 / (1010 x 2) = 5.43735 N.
    const { load } = setOutOf(railInput({ extraKg: 0 })).fixing
    expect(load.shearN).toBeCloseTo(34.323275, 9)
    expect(load.pullN).toBeCloseTo(5.43735, 4)
  })
})
