import { describe, expect, it } from 'vitest'
import type { EmitterShape } from '../../../../src-main/domain/item.ts'
import type { PipeOffset } from '../../../../src-main/domain/set-out.ts'
import type { Pipe } from '../../../../src-main/domain/wall.ts'
import { pipeOffset } from '../../../../src-main/engine/wall/pipe-offset.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { doublePanel, floorPipe, towelRail } from './walls-for-tests.ts'

const defaults = defaultFigures('2026-11-25')
/** Values of the test's own, so that the geometry is worked by hand. */
const own: Readonly<Record<string, number>> = {
  'wall.valveReachMm': 3,
  'wall.riseReachMm': 5,
  'wall.tailReachMm': 40,
  'wall.pullCopperMm': 15,
  'wall.pullPlasticMm': 30,
  'wall.pullSteelMm': 0,
  'wall.stubMm': 40,
  'wall.leastPieceMm': 50,
  'wall.clipSpacingCopper15Mm': 500,
}
const settings = Object.fromEntries(
  Object.entries(defaults.settings).map(([id, one]) => [id, { ...one, value: own[id] ?? one.value }]),
)
const figures = { ...defaults, settings }

function offset(pipe: Pipe, xMm: number, yMm: number, emitter: EmitterShape = towelRail): PipeOffset {
  return pipeOffset(pipe, { side: pipe.side, xMm, yMm }, { emitter, figures })
}

const wallPipe: Pipe = {
  side: 'left',
  xMm: 500,
  yMm: 200,
  from: 'wall',
  material: 'copper',
  outsideMm: 15,
  carries: 'flow',
}
const nothing = { elbows: 0, couplers: 0, pipeMm: 0, clips: 0, tailMm: 0 }

describe('a pipe from the floor', () => {
  it('within the reach of its valve needs nothing, also when it is too long', () => {
    expect(offset(floorPipe('left', 500, 200), 503, 205)).toMatchObject({
      offsetMm: 3,
      riseMm: 5,
      remedy: 'none',
      ...nothing,
    })
    expect(offset(floorPipe('left', 500, 200), 500, 120)).toMatchObject({ riseMm: -80, remedy: 'none' })
  })

  it('that is a little short under a rail takes a longer tail, for the tail points down', () => {
    expect(offset(floorPipe('left', 500, 200), 500, 230)).toMatchObject({
      remedy: 'longerTail',
      tailMm: 30,
      pipeMm: 0,
    })
  })

  it('beside a rail is eased over, for a tail that points down does not reach sideways', () => {
    expect(offset(floorPipe('left', 500, 200), 510, 200)).toMatchObject({
      offsetMm: 10,
      remedy: 'pull',
      tailMm: 0,
    })
  })

  it('further out than the valve of a panel takes a longer tail; further in, it does not', () => {
    expect(offset(floorPipe('left', 500, 200), 530, 200, doublePanel)).toMatchObject({
      remedy: 'longerTail',
      tailMm: 30,
    })
    expect(offset(floorPipe('right', 500, 200), 470, 200, doublePanel)).toMatchObject({
      remedy: 'longerTail',
      tailMm: 30,
    })
    expect(offset(floorPipe('left', 500, 200), 470, 200, doublePanel)).toMatchObject({ remedy: 'repipe' })
  })

  it('is eased over by as much as its material lets it, and not at all when it is fixed', () => {
    const by20 = (more: Partial<Pipe>) => offset(floorPipe('left', 500, 200, more), 480, 200).remedy
    expect(by20({ material: 'plastic' })).toBe('pull')
    expect(by20({ material: 'copper' })).toBe('repipe')
    expect(by20({ material: 'plastic', fixed: true })).toBe('repipe')
  })

  it('that misses front to back is not taken to meet its valve', () => {
    // Connections 75 off the wall, pipe 65: 10 apart.
    expect(offset(floorPipe('left', 500, 200, { offWallMm: 65 }), 500, 200).remedy).toBe('pull')
  })

  it('is set off with two elbows, a piece across and a riser', () => {
    // Across 300, riser 235 - 40 = 195: 495 of pipe, one clip at each started 500.
    expect(offset(floorPipe('left', 500, 200), 200, 235)).toMatchObject({
      remedy: 'repipe',
      elbows: 2,
      couplers: 0,
      pipeMm: 495,
      clips: 1,
    })
    // Across hypot(300, 400) = 500 where it also misses front to back by 400.
    const deep = { ...towelRail, connectionOffWallMm: 450 }
    expect(offset(floorPipe('left', 500, 200, { offWallMm: 50 }), 200, 235, deep)).toMatchObject({
      pipeMm: 695,
      clips: 2,
    })
  })

  it('a little to one side is bent to a set after a coupler, for two elbows would not go in', () => {
    // Across 25, riser 235 - 40 = 195.
    expect(offset(floorPipe('left', 500, 200, { fixed: true }), 475, 235)).toMatchObject({
      remedy: 'repipe',
      elbows: 0,
      couplers: 1,
      pipeMm: 220,
    })
  })

  it('keeps a shortest riser where the valve is low', () => {
    expect(offset(floorPipe('left', 500, 70), 200, 70)).toMatchObject({ pipeMm: 350, elbows: 2 })
  })

  it('in its place but far too short is lengthened with a coupler', () => {
    expect(offset(floorPipe('left', 500, 100), 500, 235)).toMatchObject({
      remedy: 'repipe',
      elbows: 0,
      couplers: 1,
      pipeMm: 135,
      clips: 1,
    })
  })

  it('as far over as its valve reaches by itself is only lengthened, and a hair more is bent', () => {
    expect(offset(floorPipe('left', 500, 100), 503, 235)).toMatchObject({ couplers: 1, pipeMm: 135 })
    // Across 3.1, riser 235 - 40 = 195.
    expect(offset(floorPipe('left', 500, 100), 503.1, 235)).toMatchObject({
      couplers: 1,
      pipeMm: expect.closeTo(198.1, 9),
    })
  })

  it('whose height nobody measured is taken to reach its valve', () => {
    const { yMm: _, ...unknown } = floorPipe('left', 500, 0)
    expect(offset(unknown, 500, 235)).toMatchObject({ riseMm: 0, remedy: 'none' })
  })
})

describe('a pipe from the wall', () => {
  it('to one side is carried along the wall between two elbows, and out to the valve', () => {
    // 300 along and 75 out.
    expect(offset(wallPipe, 800, 200)).toMatchObject({
      remedy: 'repipe',
      elbows: 2,
      couplers: 0,
      pipeMm: 375,
      clips: 1,
    })
  })

  it('to one side and lower takes a third elbow at the turn', () => {
    // 300 along, 100 up and 75 out.
    expect(offset(wallPipe, 800, 300)).toMatchObject({ elbows: 3, pipeMm: 475 })
  })

  it('goes straight at a slant where one of the two ways is too short for two elbows', () => {
    // 120 along, 50 up is as short as a piece may be: three elbows, 120 + 50 + 75. At 35 up: hypot(120, 35) = 125, and 75 out.
    expect(offset(wallPipe, 620, 250)).toMatchObject({ elbows: 3, couplers: 0, pipeMm: 245 })
    expect(offset(wallPipe, 620, 235)).toMatchObject({ elbows: 2, couplers: 0, pipeMm: 200, clips: 1 })
    expect(offset({ ...wallPipe, side: 'right' }, 465, 80)).toMatchObject({ elbows: 2, pipeMm: 200 })
    // 49.9 is too short; with 3 across, which the valve reaches by itself, only the height counts.
    expect(offset(wallPipe, 503, 249.9)).toMatchObject({ elbows: 0, couplers: 1 })
    expect(offset(wallPipe, 503, 250)).toMatchObject({ elbows: 2, couplers: 0, pipeMm: 125 })
  })

  it('that misses by less than any piece is bent to a set after a coupler', () => {
    // hypot(24, 32) = 40, and 75 out.
    const set = offset({ ...wallPipe, fixed: true }, 524, 232)
    expect(set).toMatchObject({ remedy: 'repipe', elbows: 0, couplers: 1, pipeMm: 115, clips: 1 })
    const says = [...set.why.from, ...set.why.from.flatMap((one) => one.from)].map((one) => one.says)
    expect(says).toContain('Straight from the old pipe to the valve, for two elbows do not go in.')
    // hypot(30, 40) = 50: as long as a piece must be.
    expect(offset({ ...wallPipe, fixed: true }, 530, 240)).toMatchObject({
      elbows: 2,
      couplers: 0,
      pipeMm: 125,
    })
  })

  it('must meet its valve in height both ways', () => {
    expect(offset(wallPipe, 500, 190)).toMatchObject({ riseMm: -10, remedy: 'pull' })
    expect(offset(wallPipe, 500, 100)).toMatchObject({ remedy: 'repipe', elbows: 2, pipeMm: 175 })
  })
})

it('every remedy has a sentence with its figures', () => {
  expect(offset(floorPipe('left', 500, 200), 200, 235).why.says).toBe(
    'The left valve sits 300 mm left of its pipe and 35 mm above its end: it is cut and re-piped with 2 elbows, 495 mm of pipe.',
  )
})
