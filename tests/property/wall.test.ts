import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EmitterShape } from '../../src-main/domain/item.ts'
import type { Fit, SetOut } from '../../src-main/domain/set-out.ts'
import type { Obstacle, Pipe, Side, Wall } from '../../src-main/domain/wall.ts'
import { wallDrawing } from '../../src-main/engine/wall/drawing.ts'
import { fitWall } from '../../src-main/engine/wall/fit-wall.ts'
import { setOutWall } from '../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../figures-for-tests.ts'
import { bathroomWall, towelRail } from '../unit/engine/wall/walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')

const mm = (min: number, max: number) => fc.integer({ min, max })
const obstacles = fc.array(
  fc.record({
    kind: fc.constantFrom<Obstacle['kind']>(
      'window',
      'doorSwing',
      'socket',
      'switch',
      'shelf',
      'cable',
      'pipeInWall',
      'other',
    ),
    xMm: mm(-500, 4000),
    yMm: mm(0, 2400),
    widthMm: mm(0, 1500),
    heightMm: mm(0, 1500),
    leaf: fc.option(
      fc.record({
        in: fc.constant('thisWall' as const),
        hinge: fc.constantFrom<Side>('left', 'right'),
        leafMm: mm(300, 1000),
        opensIntoRoom: fc.boolean(),
        opensDeg: fc.option(mm(1, 180), { nil: undefined }),
      }),
      { nil: undefined },
    ),
  }),
  { maxLength: 4 },
)
const tiles = fc.record({
  widthMm: mm(60, 600),
  heightMm: mm(60, 600),
  jointMm: mm(0, 6),
  xMm: mm(-300, 300),
  yMm: mm(-300, 300),
  halfBond: fc.boolean(),
})

const inputs: fc.Arbitrary<SetOutInput> = fc
  .record({
    widthMm: mm(500, 4000),
    build: fc.constantFrom<Wall['build']>(
      'solidMasonry',
      'hollowBlock',
      'aeratedBlock',
      'boardOnStuds',
      'boardOnDabs',
    ),
    obstacles,
    tiles: fc.option(tiles, { nil: undefined }),
    tiledToMm: fc.option(mm(0, 2400), { nil: undefined }),
    emitterMm: mm(300, 2000),
    centresMm: mm(50, 2200),
    acrossMm: mm(1, 900),
    dryKg: mm(1, 150),
    bottomMm: mm(0, 600),
    leftMm: mm(0, 2000),
    rightMm: mm(0, 2000),
    endMm: mm(0, 300),
    from: fc.constantFrom<Pipe['from']>('floor', 'wall'),
    centre: fc.constantFrom<SetOutInput['centre']>(
      { kind: 'betweenPipes' },
      { kind: 'fromPipe', side: 'left' },
      { kind: 'at', xMm: 900 },
    ),
  })
  .map((some) => ({
    wall: {
      ...bathroomWall,
      widthMm: some.widthMm,
      build: some.build,
      obstacles: some.obstacles.map(({ leaf, ...one }, nth) => ({
        ...one,
        obstacleId: `o${nth}`,
        name: `Thing ${nth}`,
        ...(leaf === undefined ? {} : { leaf }),
      })),
      ...(some.tiles === undefined ? {} : { tiles: some.tiles }),
      ...(some.tiledToMm === undefined ? {} : { tiledToMm: some.tiledToMm }),
      ...(some.build === 'boardOnStuds' ? { studs: { firstMm: 100, spacingMm: 400, widthMm: 47 } } : {}),
    },
    emitter: {
      ...towelRail,
      widthMm: some.emitterMm,
      pipeCentresMm: some.centresMm,
      dryKg: some.dryKg,
      brackets: towelRail.brackets.map((bracket) => ({
        ...bracket,
        holes: bracket.holes.map((hole) => ({ ...hole, acrossMm: Math.sign(hole.acrossMm) * some.acrossMm })),
      })),
    },
    valves: {},
    centre: some.centre,
    bottomMm: some.bottomMm,
    pipes: [pipe('left', some.leftMm, some), pipe('right', some.rightMm, some)],
  }))

function pipe(
  side: Side,
  xMm: number,
  { endMm, from }: { readonly endMm: number; readonly from: Pipe['from'] },
): Pipe {
  return { side, xMm, yMm: endMm, from, material: 'copper', outsideMm: 15, carries: 'unknown' }
}

type Worked = { readonly fit: Fit; readonly out: SetOut }

function worked(input: SetOutInput): Worked {
  const fit = fitWall(input, figures)
  const out = setOutWall(input, figures)
  if (!fit.ok) throw new Error(fit.problems[0]?.message)
  if (!out.ok) throw new Error(out.problems[0]?.message)
  return { fit: fit.value, out: out.value }
}

/** Everything that was put on the wall moved along it; the centre line follows the pipes, or is moved itself. */
function moved(input: SetOutInput, byMm: number): SetOutInput {
  const { wall, pipes, centre } = input
  return {
    ...input,
    wall: {
      ...wall,
      obstacles: (wall.obstacles ?? []).map((one) => ({ ...one, xMm: one.xMm + byMm })),
      ...(wall.tiles === undefined ? {} : { tiles: { ...wall.tiles, xMm: wall.tiles.xMm + byMm } }),
    },
    pipes: pipes.map((one) => ({ ...one, xMm: one.xMm + byMm })),
    centre: centre.kind === 'at' ? { ...centre, xMm: centre.xMm + byMm } : centre,
  }
}

const other = { left: 'right', right: 'left' } as const

function mirrored(input: SetOutInput): SetOutInput {
  const { wall, pipes, centre, emitter } = input
  const { studs: _, ...plain } = wall
  return {
    ...input,
    wall: {
      ...plain,
      obstacles: (wall.obstacles ?? []).map((one) => ({
        ...one,
        xMm: wall.widthMm - one.xMm - one.widthMm,
        ...(one.leaf?.in === 'thisWall' ? { leaf: { ...one.leaf, hinge: other[one.leaf.hinge] } } : {}),
      })),
      ...(wall.tiles === undefined ? {} : { tiles: { ...wall.tiles, xMm: wall.widthMm - wall.tiles.xMm } }),
    },
    emitter: mirroredEmitter(emitter),
    pipes: pipes.map((one) => ({ ...one, side: other[one.side], xMm: wall.widthMm - one.xMm })),
    centre:
      centre.kind === 'at'
        ? { ...centre, xMm: wall.widthMm - centre.xMm }
        : centre.kind === 'fromPipe'
          ? { ...centre, side: other[centre.side] }
          : centre,
  }
}

function mirroredEmitter(emitter: EmitterShape): EmitterShape {
  const at = {
    bottomLeft: 'bottomRight',
    bottomRight: 'bottomLeft',
    topLeft: 'topRight',
    topRight: 'topLeft',
    bottomMiddle: 'bottomMiddle',
  } as const
  return {
    ...emitter,
    tappings: emitter.tappings.map((tapping) => ({ ...tapping, at: at[tapping.at] })),
    brackets: emitter.brackets.map((bracket) => ({
      ...bracket,
      holes: bracket.holes.map((hole) => ({ ...hole, acrossMm: -hole.acrossMm })),
    })),
  }
}

/** Fields that hold a number which is not finite. */
function notFinite(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`))
}

/** To a thousandth of a millimetre, for a mirrored sum may differ in its last place. */
const printed = (some: number | undefined) =>
  some === undefined ? 'none' : (some + 0).toFixed(3).replace('-0.000', '0.000')
const rooms = (fit: Fit) => new Set(fit.clashes.map((clash) => printed(clash.haveMm)))
const edges = (out: SetOut) => out.holes.map((hole) => printed(hole.tileEdgeMm))

describe('set-out and fit, for any wall', () => {
  it('move along with everything that was moved', () => {
    fc.assert(
      fc.property(inputs, mm(-300, 300), (input, byMm) => {
        const before = worked(input)
        const after = worked(moved(input, byMm))
        expect(after.out.centreMm).toBeCloseTo(before.out.centreMm + byMm, 6)
        expect(after.fit.envelope.leftMm).toBeCloseTo(before.fit.envelope.leftMm + byMm, 6)
        after.out.holes.forEach((hole, nth) =>
          expect(hole.xMm).toBeCloseTo((before.out.holes[nth]?.xMm ?? Number.NaN) + byMm, 6),
        )
        expect(edges(after.out)).toEqual(edges(before.out))
        expect(after.out.pipeOffsets.map(({ remedy, offsetMm }) => [remedy, offsetMm])).toEqual(
          before.out.pipeOffsets.map(({ remedy, offsetMm }) => [remedy, offsetMm]),
        )
      }),
    )
  })

  it('are mirrored by a mirrored wall', () => {
    fc.assert(
      fc.property(inputs, (some) => {
        const { studs: _, ...wall } = some.wall
        const input = { ...some, wall }
        const one = worked(input)
        const two = worked(mirrored(input))
        expect(two.out.centreMm).toBeCloseTo(wall.widthMm - one.out.centreMm, 6)
        expect(two.fit.envelope.rightMm).toBeCloseTo(wall.widthMm - one.fit.envelope.leftMm, 6)
        expect(two.fit.fits).toBe(one.fit.fits)
        expect(rooms(two.fit)).toEqual(rooms(one.fit))
        expect(edges(two.out).toSorted()).toEqual(edges(one.out).toSorted())
        for (const offset of one.out.pipeOffsets) {
          const twin = two.out.pipeOffsets.find(({ side }) => side === other[offset.side])
          expect(twin).toMatchObject({ remedy: offset.remedy, pipeMm: offset.pipeMm, elbows: offset.elbows })
          expect(twin?.offsetMm).toBeCloseTo(-offset.offsetMm, 6)
        }
      }),
    )
  })

  it('fit exactly when there is no clash, and a clash has less than it needs', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { fit } = worked(input)
        expect(fit.fits).toBe(fit.clashes.length === 0)
        expect(fit.clashes.every((clash) => clash.haveMm < clash.needMm)).toBe(true)
      }),
    )
  })

  it('never hold a number that is not finite, nor does the drawing', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { fit, out } = worked(input)
        expect(notFinite({ fit, out })).toEqual([])
        const { widthMm, heightMm } = input.emitter
        const emitter = { name: 'Emitter', widthMm, heightMm }
        const svg = wallDrawing({
          wall: input.wall,
          emitter,
          envelope: fit.envelope,
          setOut: out,
          pipes: input.pipes,
        })
        expect(svg).not.toMatch(/NaN|Infinity|undefined/)
      }),
    )
  })

  it('choose a fixing that holds, or call for a backing board', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { fixing } = worked(input).out
        expect(fixing.load.holds || fixing.needsBoard).toBe(true)
      }),
    )
  })

  it('use no hole more than the fixing that speaks for all, and give each the drill of its own', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { holes, fixing } = worked(input).out
        const mostUsed = Math.max(fixing.load.shearUse, fixing.load.pullUse)
        for (const hole of holes) {
          if (fixing.needsBoard) {
            expect(hole.fixing).toBeUndefined()
            continue
          }
          const own = figures.fixings.find((one) => one.fixingId === hole.fixing?.fixingId)
          expect(own?.builds).toContain(input.wall.build)
          expect([hole.drillMm, hole.depthMm]).toEqual([own?.holeMm, own?.depthMm])
          expect(hole.fixing?.useRatio).toBeGreaterThanOrEqual(
            fixing.load.shearN / (own?.allowedShearN ?? 0) - 1e-9,
          )
          expect(hole.fixing?.useRatio).toBeLessThanOrEqual(Math.min(1, mostUsed) + 1e-9)
        }
      }),
    )
  })

  it('name every hole that lies outside the emitter, and no other', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { out } = worked(input)
        const { widthMm, heightMm } = input.emitter
        const outside = out.holes.filter(
          ({ fromCentreMm, yMm }) =>
            Math.abs(fromCentreMm) > widthMm / 2 || yMm < input.bottomMm || yMm > input.bottomMm + heightMm,
        )
        const said = out.warnings.filter((says) => says.includes('outside the emitter'))
        expect(said.length).toBe(outside.length > 0 ? 1 : 0)
        for (const { id } of outside) expect(said[0]).toContain(id)
      }),
    )
  })

  it('answer or refuse, and never throw or give a number that is not finite, for any numbers at all', () => {
    fc.assert(
      fc.property(inputs, fc.double(), fc.double(), (input, strange, stranger) => {
        const odd = { ...input, bottomMm: strange, emitter: { ...input.emitter, depthMm: stranger } }
        for (const outcome of [fitWall(odd, figures), setOutWall(odd, figures)]) {
          if (outcome.ok) expect(notFinite(outcome.value)).toEqual([])
          else expect(outcome.problems[0]?.message).not.toBe('')
        }
      }),
    )
  })
})
