import { describe, expect, it } from 'vitest'
import type { Obstacle, Wall } from '../../../../../src-main/domain/wall.ts'
import type { BracketHole } from '../../../../../src-main/engine/wall/bracket-holes.ts'
import { bracketWarnings } from '../../../../../src-main/engine/wall/bracket-warnings.ts'
import { holeWarnings, studWarnings } from '../../../../../src-main/engine/wall/hole-warnings.ts'
import { studPlace, studsWhy } from '../../../../../src-main/engine/wall/on-stud.ts'
import { readOut } from '../../../../why-for-tests.ts'
import { firmOf } from './firm-for-tests.ts'
import { bathroomWall } from '../walls-for-tests.ts'

const figures = firmOf()
const bare: Wall = { ...bathroomWall, finish: 'paint', obstacles: [] }
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

describe('studs', () => {
  const studs = { firstMm: 200, spacingMm: 400, widthMm: 50 }

  it('are met within their width less the edge, missed past it and more, and else met at the edge', () => {
    // Half of 50 less 10 is 15; and 10 more is 35.
    const at = (xMm: number) => studPlace(xMm, studs, figures)
    expect([615, 615.1, 634.9, 635, 585, 584.9, 565.1, 565].map(at)).toEqual([
      'stud',
      'edge',
      'edge',
      'clear',
      'stud',
      'edge',
      'edge',
      'clear',
    ])
    // None stands before the first.
    expect([at(200), at(-200), at(-190)]).toEqual(['stud', 'clear', 'clear'])
  })

  it('are told with how they were surveyed', () => {
    expect(readOut(studsWhy(studs, figures))).toEqual([
      'Studs behind the board, one at each spacing.: 400 mm',
      '  Middle of the first stud, from the left end of the wall: 200 mm (survey)',
      '  Spacing of the studs: 400 mm (survey)',
      '  Width of a stud: 50 mm (survey)',
      '  studEdgeMm: 10 Mm (the firm)',
    ])
  })

  const boarded: Wall = { ...bare, build: 'boardOnStuds', studs }
  const told = (xs: readonly number[], wall = boarded, intoStud = false) =>
    studWarnings(holesAt(...xs.map((xMm) => [xMm, 500] as const)), wall, { intoStud, figures })

  it('are warned of by hole: missed, met, or met at the edge', () => {
    expect(told([400])).toEqual(['Hole A1 misses the studs and is held by the board alone.'])
    expect(told([400, 800])).toEqual(['Holes A1 and A2 miss the studs and are held by the board alone.'])
    expect(told([600])).toEqual([
      'Hole A1 falls on a stud: there a screw into the timber takes the place of the anchor.',
    ])
    expect(told([600, 1000])).toEqual([
      'Holes A1 and A2 fall on a stud: there a screw into the timber takes the place of the anchor.',
    ])
    const edge =
      'at the edge of a stud, where neither an anchor nor a screw is sure: move the emitter a little or fit a backing board.'
    expect(told([620])).toEqual([`Hole A1 falls ${edge}`])
    expect(told([620, 1020])).toEqual([`Holes A1 and A2 fall ${edge}`])
    expect(told([400, 600, 620])).toHaveLength(3)
  })

  it('are nothing to mind where all goes into them, or where the wall has none', () => {
    expect(told([600], boarded, true)).toEqual([])
    expect(told([600], { ...boarded, build: 'solidMasonry' })).toEqual([])
    const { studs: _, ...unknown } = boarded
    expect(told([600], unknown, true)).toEqual([
      'The studs were not surveyed: find them before drilling, for an anchor does not go where a stud stands.',
    ])
  })
})

describe('what to look out for before drilling', () => {
  const told = (holes: readonly (readonly [number, number])[], more: Partial<Wall> = {}) =>
    holeWarnings(holesAt(...holes), { ...bare, ...more }, figures)
  const cables = 'where cables may run in the wall (BS 7671, 522.6.202): look for cables before drilling.'
  const obstacle = (more: Partial<Obstacle>): Obstacle => ({
    obstacleId: 'o',
    name: 'Socket',
    kind: 'socket',
    xMm: 700,
    yMm: 400,
    widthMm: 146,
    heightMm: 86,
    ...more,
  })

  it('corners and ceiling, up to the zone itself', () => {
    expect(told([[900, 1200]])).toEqual([])
    expect(told([[150, 1200]])).toEqual([`Hole A1 is within 150 mm of the left corner, ${cables}`])
    expect(told([[1650, 1200]])).toEqual([`Hole A1 is within 150 mm of the right corner, ${cables}`])
    expect(
      told([
        [900, 2250],
        [800, 2250],
      ]),
    ).toEqual([`Holes A1 and A2 are within 150 mm of the ceiling, ${cables}`])
    expect(
      told([
        [150.1, 1200],
        [1649.9, 2249.9],
      ]),
    ).toEqual([])
  })

  it('off the wall, each way, but not at its very end', () => {
    const off = (x: number, y: number) => told([[x, y]]).filter((says) => says.includes('off the wall'))
    for (const [x, y] of [
      [-0.1, 900],
      [1800.1, 900],
      [900, -0.1],
      [900, 2400.1],
    ] as const)
      expect(off(x, y)).toEqual(['Hole A1 lies off the wall.'])
    for (const [x, y] of [
      [0, 900],
      [1800, 900],
      [900, 0],
      [900, 2400],
    ] as const)
      expect(off(x, y)).toEqual([])
    expect(
      told([
        [-1, 900],
        [-2, 900],
      ])[0],
    ).toBe('Holes A1 and A2 lie off the wall.')
  })

  it('straight above or below a socket and level with it, by half of it or half a single one', () => {
    // Middle 773 along and 443 up; half of 146 is 73; half of 86 is 43, as much as the firm's least.
    const obstacles = [obstacle({})]
    expect(told([[846, 1200]], { obstacles })).toEqual([
      `Hole A1 is straight above or below Socket, ${cables}`,
    ])
    expect(told([[700, 1200]], { obstacles })).toHaveLength(1)
    expect(
      told(
        [
          [846.1, 1200],
          [699.9, 1200],
        ],
        { obstacles },
      ),
    ).toEqual([])
    expect(
      told(
        [
          [1200, 486],
          [1300, 400],
        ],
        { obstacles },
      ),
    ).toEqual([`Holes A1 and A2 are level with Socket, ${cables}`])
    expect(
      told(
        [
          [1200, 486.1],
          [1300, 399.9],
        ],
        { obstacles },
      ),
    ).toEqual([])
    // A small switch, 20 across: 43 each side of its middle at 710 all the same.
    const small = [obstacle({ name: 'Switch', kind: 'switch', widthMm: 20, heightMm: 20 })]
    expect(told([[753, 1200]], { obstacles: small })).toEqual([
      `Hole A1 is straight above or below Switch, ${cables}`,
    ])
    expect(
      told(
        [
          [753.1, 1200],
          [1200, 453.1],
        ],
        { obstacles: small },
      ),
    ).toEqual([])
    expect(told([[1200, 453]], { obstacles: small })).toHaveLength(1)
    expect(told([[750, 1200]], { obstacles: [obstacle({ kind: 'mirror' })] })).toEqual([])
  })

  it('on what stands on the wall, its edge too, but not on a swing or a door round the corner', () => {
    const shelf = obstacle({ name: 'Shelf', kind: 'shelf', xMm: 700, yMm: 1000, widthMm: 200, heightMm: 100 })
    expect(told([[700, 1000]], { obstacles: [shelf] })).toEqual(['Hole A1 falls on Shelf.'])
    expect(
      told(
        [
          [900, 1100],
          [800, 1050],
        ],
        { obstacles: [shelf] },
      ),
    ).toEqual(['Holes A1 and A2 fall on Shelf.'])
    expect(
      told(
        [
          [699.9, 1050],
          [900.1, 1050],
          [800, 999.9],
          [800, 1100.1],
        ],
        { obstacles: [shelf] },
      ),
    ).toEqual([])
    expect(told([[800, 1050]], { obstacles: [{ ...shelf, kind: 'doorSwing' }] })).toEqual([])
    const leaf = {
      in: 'wallAtCorner',
      corner: 'left',
      hinge: 'far',
      jambMm: 20,
      leafMm: 700,
      opensIntoRoom: true,
    } as const
    expect(told([[800, 1050]], { obstacles: [{ ...shelf, kind: 'door', leaf }] })).toEqual([])
  })

  it('near a cable or a pipe in the wall, up to the firm’s distance or its own', () => {
    const cable = obstacle({
      name: 'Cooker cable',
      kind: 'cable',
      xMm: 700,
      yMm: 0,
      widthMm: 10,
      heightMm: 2400,
    })
    const trace = 'in the wall: do not drill there until it is traced.'
    expect(told([[769, 1200]], { obstacles: [cable] })).toEqual([
      `Hole A1 is within 59 mm of Cooker cable, a cable ${trace}`,
    ])
    expect(
      told(
        [
          [769.1, 1200],
          [640.9, 1200],
        ],
        { obstacles: [cable] },
      ),
    ).toEqual([])
    const pipe = { ...cable, name: 'Main', kind: 'pipeInWall' as const, clearanceMm: 5 }
    expect(
      told(
        [
          [715, 1200],
          [695, 1200],
        ],
        { obstacles: [pipe] },
      ),
    ).toEqual([`Holes A1 and A2 are within 5 mm of Main, a pipe ${trace}`])
    // From its corner at (710, 1000): 3 across and 4 up is 5; 5 across and 4 up is more.
    const short = { ...pipe, heightMm: 1000 }
    expect(told([[713, 1004]], { obstacles: [short] })).toHaveLength(1)
    expect(told([[715, 1004]], { obstacles: [short] })).toEqual([])
  })

  it('through a thin wall, what is on its other side', () => {
    const thin =
      'The wall is 100 mm thick: cables may also run in it to sockets and switches on its other side (BS 7671, 522.6.202): look there too.'
    expect(told([[900, 1200]], { thicknessMm: 100 })).toEqual([thin])
    expect(told([[900, 1200]], { thicknessMm: 100.1 })).toEqual([])
    expect(told([], { thicknessMm: 90 })).toEqual([])
    const { obstacles: _, ...unlisted } = bare
    expect(holeWarnings(holesAt([900, 1200]), unlisted, figures)).toEqual([])
  })
})

describe('what to mind about brackets', () => {
  const hung = { widthMm: 600, heightMm: 600, bottomMm: 150 }
  const told = (holes: readonly BracketHole[], more: Partial<typeof hung> = {}) =>
    bracketWarnings(holes, { ...hung, ...more }, figures)

  it('outside the outline, each way, but not on it', () => {
    const outside = 'outside the emitter: check its brackets in the catalogue before drilling.'
    expect(told(holesAt([600, 150], [1200, 750]))).toEqual([])
    for (const [x, y] of [
      [599.9, 300],
      [1200.1, 300],
      [1000, 149.9],
      [1000, 750.1],
    ] as const)
      expect(told(holesAt([900, 300], [x, y]))).toEqual([`Hole A2 lies ${outside}`])
    expect(told(holesAt([590, 300], [900, 300], [1210, 300]))).toEqual([`Holes A1 and A3 lie ${outside}`])
  })

  it('in one upright line, or at two places under a long one', () => {
    expect(told(holesAt([900, 200], [900, 700]))).toEqual([
      'All its brackets stand in one upright line, so that it can tip sideways: check them in the catalogue.',
    ])
    const long = { widthMm: 1800 }
    expect(told(holesAt([300, 300], [1500, 300]), long)).toEqual([
      'It is 1800 mm long and hangs on brackets at 2 places; from 1800 mm a third in the middle is usual.',
    ])
    expect(told(holesAt([300, 300], [1500, 300]), { widthMm: 1799 })).toEqual([])
    expect(told(holesAt([300, 300], [900, 300], [1500, 300]), long)).toEqual([])
  })
})
