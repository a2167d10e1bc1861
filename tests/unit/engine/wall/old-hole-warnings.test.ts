import { describe, expect, it } from 'vitest'
import { oldHolesOnWall, oldHoleWarnings } from '../../../../src-main/engine/wall/old-hole-warnings.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bathroomWall, railInput, studWall } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const leastMm = figures.settings['wall.clearOldHoleMm']?.value ?? Number.NaN

/** One 8 mm hole to drill at 400, 700. */
const hole = (id: string, xMm = 400, yMm = 700) => ({
  id,
  bracket: 'Top left',
  upper: true,
  fromCentreMm: 0,
  drillMm: 8,
  xMm,
  yMm,
})
/** An old hole of 10 mm, so far from the new one that this much wall is left: 4 + 5 mm are the radii of the two. */
const oldAt = (wallMm: number) => [{ xMm: 400, yMm: 700 + wallMm + 9, diameterMm: 10 }]

describe('new holes beside old ones', () => {
  it('are told apart by what is left of the wall between them', () => {
    const into = 'Hole A1 runs into an old hole, where a plug may not hold: move the emitter a little.'
    const near = `Hole A1 leaves less than ${leastMm} mm of wall beside an old hole, which may break out: move the emitter a little.`
    expect(oldHoleWarnings([hole('A1')], oldAt(-9), figures)).toEqual([into])
    expect(oldHoleWarnings([hole('A1')], oldAt(-0.1), figures)).toEqual([into])
    expect(oldHoleWarnings([hole('A1')], oldAt(0), figures)).toEqual([near])
    expect(oldHoleWarnings([hole('A1')], oldAt(leastMm - 0.1), figures)).toEqual([near])
    expect(oldHoleWarnings([hole('A1')], oldAt(leastMm), figures)).toEqual([])
  })

  it('are measured slantwise: 30 across and 40 up are 50 (Pythagoras)', () => {
    const slant = (diameterMm: number) => [{ xMm: 430, yMm: 740, diameterMm }]
    // 50 - (8 + 52) / 2 is 20: just enough.
    expect(oldHoleWarnings([hole('A1')], slant(92 - 2 * leastMm), figures)).toEqual([])
    expect(oldHoleWarnings([hole('A1')], slant(92 - 2 * leastMm + 1), figures)).toHaveLength(1)
  })

  it('go by the nearest old hole, and are named together', () => {
    const old = [...oldAt(500), { xMm: 400, yMm: 700, diameterMm: 8 }, { xMm: 900, yMm: 720, diameterMm: 8 }]
    expect(
      oldHoleWarnings([hole('A1'), hole('B1', 400, 705), hole('C1', 900), hole('D1', 910)], old, figures),
    ).toEqual([
      'Holes A1 and B1 run into an old hole, where a plug may not hold: move the emitter a little.',
      `Holes C1 and D1 leave less than ${leastMm} mm of wall beside an old hole, which may break out: move the emitter a little.`,
    ])
  })

  it('are left alone where no old hole was measured', () => {
    expect(oldHoleWarnings([hole('A1')], [], figures)).toEqual([])
    expect(oldHolesOnWall(undefined)).toEqual([])
    const counted = {
      name: 'Old',
      widthMm: 500,
      heightMm: 600,
      oldHoles: { count: 4, diameterMm: 8, depthMm: 50 },
    }
    expect(oldHolesOnWall(counted)).toEqual([])
    const measured = { ...counted, oldHoles: { ...counted.oldHoles, at: [{ xMm: 1, yMm: 2, count: 3 }] } }
    expect(oldHolesOnWall(measured)).toEqual([{ xMm: 1, yMm: 2, diameterMm: 8 }])
  })
})

describe('a set-out on a wall with old holes', () => {
  const warnings = (input: SetOutInput) => {
    const out = setOutWall(input, figures)
    if (!out.ok) throw new Error(out.problems[0]?.message)
    return out.value.warnings.filter((says) => says.includes('old hole'))
  }
  const paint = { ...bathroomWall, finish: 'paint' as const, obstacles: [] }

  it('warns by the bit of the fixing that was chosen, and says nothing where none was measured', () => {
    const input = railInput({ wall: paint })
    const out = setOutWall(input, figures)
    if (!out.ok) throw new Error('The rail was not set out')
    const first = out.value.holes[0]
    if (first === undefined) throw new Error('The rail has no holes')
    const away = (wallMm: number) => [
      { xMm: first.xMm, yMm: first.yMm + wallMm + (first.drillMm + 6) / 2, diameterMm: 6 },
    ]
    expect(warnings(input)).toEqual([])
    expect(warnings({ ...input, oldHoles: away(-0.5) })[0]).toContain(
      `Hole ${first.id} runs into an old hole`,
    )
    expect(warnings({ ...input, oldHoles: away(leastMm - 0.5) })[0]).toContain(
      `Hole ${first.id} leaves less than`,
    )
    expect(warnings({ ...input, oldHoles: away(leastMm) })).toEqual([])
  })

  it('is not warned of where a backing board goes over them', () => {
    const board = railInput({ wall: { ...studWall, obstacles: [] }, extraKg: 400 })
    const out = setOutWall(board, figures)
    if (!out.ok) throw new Error(out.problems[0]?.message)
    expect(out.value.fixing.needsBoard).toBe(true)
    const oldHoles = out.value.holes.map(({ xMm, yMm }) => ({ xMm, yMm, diameterMm: 8 }))
    expect(warnings({ ...board, oldHoles })).toEqual([])
  })
})
