import { describe, expect, it } from 'vitest'
import type { Fixing } from '../../../../../src-main/domain/figures.ts'
import type { Boxed, EmitterShape } from '../../../../../src-main/domain/item.ts'
import { chooseFixing } from '../../../../../src-main/engine/wall/choose-fixing.ts'
import { setOutWall } from '../../../../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../../../../src-main/engine/wall/set-out-wall.ts'
import { surfaceAt, tileWarnings } from '../../../../../src-main/engine/wall/tiles/tile-warnings.ts'
import { answered, refused } from '../../../../answered.ts'
import { readOut } from '../../../../why-for-tests.ts'
import { firmOf, plugOf } from './firm-for-tests.ts'
import { bathroomWall, floorPipe, panelInput, railInput, studWall, towelRail } from '../walls-for-tests.ts'

const plain = { ...bathroomWall, finish: 'paint' as const, obstacles: [] }
/** 4 kg on four holes 1010 apart in height: 39.2266 N, 9.80665 N each; the middle of its mass 80 off the wall. */
const light: EmitterShape = { ...towelRail, dryKg: 3, waterLitres: 1 }
const rail = (more: Partial<SetOutInput> = {}) =>
  railInput({ wall: plain, emitter: light, centre: { kind: 'at', xMm: 900 }, pipes: [], extraKg: 0, ...more })
const setOut = (input: SetOutInput, ...fixings: readonly Fixing[]) =>
  answered(setOutWall(input, firmOf(...fixings)))
/** The lines of the reason that are no deeper than so many steps. */
const fixingLines = (input: SetOutInput, ...fixings: readonly Fixing[]) => {
  const [, , , , why] = setOut(input, ...fixings).why.from
  return why === undefined ? [] : readOut(why).filter((line) => !line.startsWith('      '))
}

describe('the reason of a fixing', () => {
  it('names each that was tried, until one holds', () => {
    const tried = fixingLines(
      rail(),
      plugOf('Thin plug', { allowedShearN: 9 }),
      plugOf('Plug', { allowedShearN: 9.80665 }),
      plugOf('Thick plug'),
    )
    expect(tried).toEqual([
      'The lightest fixing that holds.: Plug',
      '  Thin plug: it does not hold.: does not hold (the maker)',
      '    The fixing does not hold.: does not hold',
      '  Plug: it holds.: holds (the maker)',
      '    The fixing holds in shear and in pull.: holds',
    ])
  })

  it('says that it was packed with the emitter, and calls for a board where none holds', () => {
    const sizes = { plug: { bitMm: 8, lengthMm: 50 }, screw: { diameterMm: 6, lengthMm: 70 } }
    const box: readonly Boxed[] = [
      { kind: 'plug', spec: sizes.plug, count: 4 },
      { kind: 'screw', spec: sizes.screw, count: 4 },
    ]
    const packed = fixingLines(
      rail({ emitter: { ...light, box } }),
      plugOf('Plug'),
      plugOf('Boxed plug', sizes),
    )
    expect(packed.slice(0, 2)).toEqual([
      'It is packed with the emitter, suits this wall and holds.: Boxed plug',
      '  Boxed plug: it holds.: holds (the maker)',
    ])
    const weak = rail()
    expect(fixingLines(weak, plugOf('Plug', { allowedShearN: 1 }))).toEqual([
      'No fixing that suits these holes holds: a backing board is called for.: backing board',
      '  Plug: it does not hold.: does not hold (the maker)',
      '    The fixing does not hold.: does not hold',
    ])
  })

  it('begins with the studs where they were surveyed, and with each place where holes differ', () => {
    const anchor = plugOf('Anchor', { builds: ['boardOnStuds'], allowedShearN: 900, allowedPullN: 900 })
    const screw = { ...anchor, fixingId: 'Screw', name: 'Screw', intoStud: true }
    // Holes 480 each side of 1800: 1320 on a stud, 2280 not.
    const wall = { ...studWall, obstacles: [], studs: { firstMm: 1320, spacingMm: 600, widthMm: 47 } }
    const input = panelInput({ wall, pipes: [], centre: { kind: 'at', xMm: 1800 }, extraKg: 0 })
    const lines = fixingLines(input, anchor, screw)
    expect(lines.filter((line) => !line.startsWith('    '))).toEqual([
      'Each hole takes the fixing that suits its place.: Screw and Anchor',
      '  Studs behind the board, one at each spacing.: 600 mm',
      '  A1 and A2, on a stud, through painted wall.: A1 and A2',
      '  B1 and B2, through painted wall.: B1 and B2',
    ])
    expect(lines.filter((line) => line.startsWith('    The'))).toEqual([
      '    The lightest fixing that holds.: Screw',
      '    The lightest fixing that holds.: Anchor',
    ])
    const even = { ...wall, studs: { ...wall.studs, spacingMm: 960 } }
    expect(fixingLines({ ...input, wall: even }, anchor, screw).slice(0, 3)).toEqual([
      'The lightest fixing that holds.: Screw',
      '  Studs behind the board, one at each spacing.: 960 mm',
      '    Middle of the first stud, from the left end of the wall: 1320 mm (survey)',
    ])
  })

  it.each([
    ['solidMasonry', 'solid masonry'],
    ['hollowBlock', 'hollow block'],
    ['aeratedBlock', 'aerated block'],
    ['boardOnStuds', 'board on studs'],
    ['boardOnDabs', 'board on dabs'],
  ] as const)('is refused for %s where the firm has none', (build, words) => {
    const wall = { ...plain, build }
    expect(refused(setOutWall(rail({ wall }), firmOf(plugOf('Plug', { builds: [] }))))).toEqual({
      code: 'gap',
      path: 'wall.build',
      message: `No fixing for ${words} with a finish of paint is among the firm's figures; add one with the loads it may carry.`,
    })
  })

  it('tells the surface that holes go through, where they differ', () => {
    for (const [finish, words] of [
      ['paint', 'painted wall'],
      ['paper', 'papered wall'],
      ['bare', 'bare wall'],
    ] as const) {
      const wall = {
        ...studWall,
        obstacles: [],
        finish,
        studs: { firstMm: 1320, spacingMm: 600, widthMm: 47 },
      }
      const input = panelInput({ wall, pipes: [], centre: { kind: 'at', xMm: 1800 }, extraKg: 0 })
      const anchor = plugOf('Anchor', { builds: ['boardOnStuds'] })
      expect(fixingLines(input, anchor)).toContain(`  B1 and B2, through ${words}.: B1 and B2`)
    }
  })

  it('needs a hole to go into', () => {
    const input = { wall: plain, holes: [], box: [], load: { ...load } }
    expect(answered(chooseFixing(input, firmOf(plugOf('Plug')))).each.size).toBe(0)
  })
})

const load = {
  dryKg: 1,
  waterLitres: 0,
  extraKg: 0,
  projectionToCentreMm: 50,
  bracketRiseMm: 500,
  upperFixings: 1,
  allFixings: 2,
}

describe('the reason of a set-out', () => {
  it('goes by centre, width, drop, rise, fixing and pipes; with who leans on it where nobody said', () => {
    const pipes = [floorPipe('left', 675, 235), floorPipe('right', 1125, 235)]
    const firsts = (input: SetOutInput) =>
      setOut(input, plugOf('Plug', { allowedShearN: 900, allowedPullN: 900 })).why
    const why = firsts(rail({ pipes }))
    expect([why.says, why.value, why.unit]).toEqual([
      'Set out from the centre line and finished floor.',
      900,
      'mm',
    ])
    const says = [
      'The centre line is where it was put.',
      'Width on the wall, with the valves.',
      'valveDropUnderMm',
      'Rise from the lower to the upper fixings.',
      'The lightest fixing that holds.',
    ]
    const ends = [
      'The left valve sits over its pipe: it goes straight in.',
      'The right valve sits over its pipe: it goes straight in.',
    ]
    expect(why.from.map((one) => one.says)).toEqual([...says, ...ends])
    const { extraKg: _, ...leaning } = rail({ pipes })
    expect(firsts(leaning).from.map((one) => one.says)).toEqual([...says, 'leanKg', ...ends])
  })

  it('puts a curve’s middle half of its extra further out', () => {
    // 39.2266 N × (60 + 40 / 2) / 1010 / 2, and (60 + 46 / 2).
    const pullOf = (curved: boolean) => setOut(rail({ curved }), plugOf('Plug')).fixing.load.pullN
    expect(pullOf(false)).toBeCloseTo((39.2266 * 80) / 2020, 9)
    expect(pullOf(true)).toBeCloseTo((39.2266 * 83) / 2020, 9)
  })

  it('drills a pilot into a board, and says how the board goes up', () => {
    const board = 'It brings the emitter further off the wall by its thickness.'
    const weak = (build: 'solidMasonry' | 'boardOnStuds') =>
      setOut(rail({ wall: { ...plain, build } }), plugOf('Plug', { builds: [build], allowedShearN: 1 }))
    const masonry = weak('solidMasonry')
    expect(masonry.holes.map(({ drillMm, depthMm }) => [drillMm, depthMm])).toEqual(
      Array.from({ length: 4 }, () => [3, 18]),
    )
    expect(masonry.warnings[0]).toBe(
      `No fixing at these holes carries the load: fit a backing board with more fixings of its own, and drill into that. ${board}`,
    )
    expect(weak('boardOnStuds').warnings[0]).toBe(
      `No fixing at these holes carries the load: fit a backing board across the studs, and drill into that. ${board}`,
    )
    expect(weak('boardOnStuds').warnings.filter((says) => says.includes('studs were not'))).toEqual([])
  })

  it('says nothing of tile where a board goes up', () => {
    const wall = { ...plain, finish: 'tile' as const }
    const about = (allowedShearN: number) =>
      setOut(rail({ wall }), plugOf('Plug', { allowedShearN })).warnings.filter((says) =>
        says.startsWith('Tiled'),
      )
    expect([about(1), about(100)]).toEqual([
      [],
      [
        'Tiled wall: depths are into the wall itself, so add the thickness of the tile, and push each plug in behind it.',
      ],
    ])
  })
})

describe('what to mind about tiles', () => {
  const tiles = { widthMm: 198, heightMm: 198, jointMm: 2, xMm: 0, yMm: 0 }
  const hole = (id: string, xMm: number, yMm: number) => ({ id, xMm, yMm })
  const told = (
    holes: readonly ReturnType<typeof hole>[],
    wall: Parameters<typeof tileWarnings>[1],
    mayMove: (byMm: number) => boolean = () => true,
  ) => tileWarnings(holes, wall, { figures: firmOf(), mayMove })
  const depth =
    'Tiled wall: depths are into the wall itself, so add the thickness of the tile, and push each plug in behind it.'

  it('nothing where no hole goes through tile', () => {
    expect(told([hole('A1', 5, 5)], { finish: 'paint', tiles })).toEqual([])
    expect(told([hole('A1', 5, 901)], { finish: 'tile', tiles, tiledToMm: 900 })).toEqual([])
    expect(told([], { finish: 'tile', tiles })).toEqual([])
  })

  it('the depth alone where no hole is near an edge, or nobody knows the grid', () => {
    expect(told([hole('A1', 100, 100)], { finish: 'tile', tiles })).toEqual([depth])
    // 21 past a grout line, less 1 of joint: just the 20 that are asked.
    expect(told([hole('A1', 21, 100)], { finish: 'tile', tiles })).toEqual([depth])
    expect(told([hole('A1', 5, 5)], { finish: 'tile' })).toEqual([depth])
  })

  it('each hole near an edge or in a joint, with the moves', () => {
    const pipes = 'but the pipes move away by as much or come nearer.'
    const near = (rest: string) => `Too near the edge of a tile (20 mm is needed): ${rest}`
    expect(told([hole('A1', 16, 100)], { finish: 'tile', tiles })).toEqual([
      near(`A1 15 mm. A move of 37 mm to the left or 5 mm to the right clears them all, ${pipes}`),
      depth,
    ])
    expect(told([hole('A1', 16, 100)], { finish: 'tile', tiles }, (by) => by > 0)[0]).toBe(
      near(`A1 15 mm. A move of 5 mm to the right clears them all, ${pipes}`),
    )
    expect(told([hole('A1', 16, 100)], { finish: 'tile', tiles }, (by) => by < 0)[0]).toBe(
      near(`A1 15 mm. A move of 37 mm to the left clears them all, ${pipes}`),
    )
    // At the very edge it is 0 mm from it, half a millimetre on it is in the joint.
    expect(told([hole('A1', 1, 100), hole('B1', 0.5, 100)], { finish: 'tile', tiles })[0]).toContain(
      'A1 0 mm and B1 in a joint. ',
    )
    expect(told([hole('A1', 100, 5)], { finish: 'tile', tiles })[0]).toBe(
      near('A1 4 mm. No move along the wall clears them all.'),
    )
  })

  it('which holes of a part tiled wall go through what', () => {
    const wall = { finish: 'tile', tiledToMm: 900 } as const
    expect(told([hole('A1', 100, 900), hole('B1', 100, 901)], wall)).toEqual([
      'Part tiled: hole A1 goes through tile, hole B1 through plaster.',
      depth,
    ])
    const four = [hole('A1', 1, 100), hole('A2', 1, 200), hole('B1', 1, 1000), hole('B2', 1, 1100)]
    expect(told(four, wall)[0]).toBe(
      'Part tiled: holes A1 and A2 go through tile, holes B1 and B2 through plaster.',
    )
    expect(surfaceAt(hole('A1', 100, 100), { ...wall, tiles })).toEqual({ finish: 'tile', tileEdgeMm: 99 })
    expect(surfaceAt(hole('A1', 100, 1000), { ...wall, tiles })).toEqual({ finish: 'paint' })
  })
})
