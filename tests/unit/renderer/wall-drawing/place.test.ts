import { describe, expect, it } from 'vitest'
import {
  mmPerPx,
  pannedBy,
  rectangleBetween,
  screenPoint,
  wallPlace,
  zoomedBy,
} from '../../../../src-renderer/parts/wall-drawing/place/geometry.ts'
import { movedTo, stepOf } from '../../../../src-renderer/parts/wall-drawing/place/moving.ts'
import {
  edgeGuides,
  emitterGuides,
  snapped,
} from '../../../../src-renderer/parts/wall-drawing/place/snapping.ts'
import { floorPipe, studWall } from '../../engine/wall/walls-for-tests.ts'

/** A picture of 4000 by 3000 mm whose top left corner is 500 mm left of the wall and 2600 mm up. */
const whole = { x: -500, y: -2600, width: 4000, height: 3000 }

describe('screen and wall', () => {
  it('meet at the corners of a picture that fills the screen', () => {
    const size = { widthPx: 800, heightPx: 600 }
    expect(mmPerPx(whole, size)).toBe(5)
    expect(wallPlace({ x: 0, y: 0 }, whole, size)).toEqual({ xMm: -500, yMm: 2600 })
    expect(wallPlace({ x: 800, y: 600 }, whole, size)).toEqual({ xMm: 3500, yMm: -400 })
  })

  it('meet in the middle of a wider screen, with bands beside the picture', () => {
    const size = { widthPx: 1000, heightPx: 600 }
    expect(mmPerPx(whole, size)).toBe(5)
    expect(wallPlace({ x: 100, y: 0 }, whole, size)).toEqual({ xMm: -500, yMm: 2600 })
  })

  it('lead to each other and back', () => {
    const size = { widthPx: 640, heightPx: 900 }
    const place = { xMm: 1625, yMm: 150 }
    const back = wallPlace(screenPoint(place, whole, size), whole, size)
    expect(back.xMm).toBeCloseTo(1625, 6)
    expect(back.yMm).toBeCloseTo(150, 6)
  })
})

describe('looking closer', () => {
  const fit = { x: 0, y: -2400, width: 3600, height: 2400 }
  const wholeWall = { times: 1, xMm: 1800, yMm: 1200 }

  it('keeps the place under the pointer where it is', () => {
    const zoom = zoomedBy(wholeWall, 2, { about: { xMm: 600, yMm: 300 }, fit })
    // Half the way from the pointer to the old middle.
    expect(zoom).toEqual({ times: 2, xMm: 1200, yMm: 750 })
  })

  it('never shows less than the whole, which is in the middle again, nor more than ten times', () => {
    expect(zoomedBy({ times: 2, xMm: 5, yMm: 5 }, 0.1, { about: { xMm: 0, yMm: 0 }, fit })).toEqual(wholeWall)
    expect(zoomedBy({ times: 8, xMm: 5, yMm: 5 }, 4, { about: { xMm: 5, yMm: 5 }, fit }).times).toBe(10)
  })

  it('goes along the wall and stops at its ends; the whole wall stays put', () => {
    const closer = { times: 3, xMm: 1800, yMm: 1200 }
    expect(pannedBy(closer, { xMm: 100, yMm: -50 }, fit)).toEqual({ times: 3, xMm: 1900, yMm: 1150 })
    expect(pannedBy(closer, { xMm: 9000, yMm: 9000 }, fit)).toEqual({ times: 3, xMm: 3600, yMm: 2400 })
    expect(pannedBy(closer, { xMm: -9000, yMm: -9000 }, fit)).toEqual({ times: 3, xMm: 0, yMm: 0 })
    expect(pannedBy(wholeWall, { xMm: 100, yMm: 0 }, fit)).toBe(wholeWall)
  })

  it('draws a rectangle from any corner to the opposite one, in whole millimetres', () => {
    expect(rectangleBetween({ xMm: 900.4, yMm: 100 }, { xMm: 100.6, yMm: 400.2 })).toEqual({
      xMm: 101,
      yMm: 100,
      widthMm: 799,
      heightMm: 300,
    })
  })
})

describe('snapping', () => {
  const guides = [
    { mm: 1800, says: 'middle of the wall', line: 1800 },
    { mm: 1815, says: 'left pipe', line: 1815 },
  ]

  it('goes to the nearest line within reach, the reach itself counted in', () => {
    expect(snapped(1809, guides, 10).guide?.says).toBe('left pipe')
    expect(snapped(1806, guides, 10)).toEqual({ mm: 1800, guide: guides[0] })
    expect(snapped(1825, guides, 10).mm).toBe(1815)
    expect(snapped(1825.6, guides, 10)).toEqual({ mm: 1826, guide: null })
  })

  it('gives whole millimetres without a line, and never minus nothing', () => {
    expect(snapped(-0.3, [], 8)).toEqual({ mm: 0, guide: null })
    expect(Object.is(snapped(-0.3, [], 8).mm, 0)).toBe(true)
  })

  it('knows the lines of an emitter: pipes, its valves on them, the wall and its windows', () => {
    const pipes = [floorPipe('left', 1265, 130), floorPipe('right', 2335, 130)]
    const found = emitterGuides(studWall, pipes, { pipeCentresMm: 1100 })
    expect(found.map(({ mm, says }) => [mm, says])).toEqual([
      [1800, 'between the pipes'],
      [1815, 'left valve on its pipe'],
      [1265, 'left pipe'],
      [1785, 'right valve on its pipe'],
      [2335, 'right pipe'],
      [1800, 'middle of the wall'],
      [1800, 'middle of Window'],
    ])
    expect(found[1]?.line).toBe(1265)
    expect(emitterGuides(studWall, [], { pipeCentresMm: 1100 }).map(({ says }) => says)).toEqual([
      'middle of the wall',
      'middle of Window',
    ])
  })

  it('knows the lines of a thing by its left edge, and leaves out the thing itself', () => {
    const window = { widthMm: 1300, obstacleId: 'window' }
    expect(edgeGuides(studWall, window)).toEqual([
      { mm: 1150, says: 'middle of the wall', line: 1800 },
      { mm: 0, says: 'left end of the wall', line: 0 },
      { mm: 2300, says: 'right end of the wall', line: 3600 },
    ])
  })
})

describe('moving', () => {
  const swap = {
    swapId: 'swap-1',
    roomId: 'room-1',
    wallId: 'bedroom',
    pipes: [],
    emitterId: 'emitter',
    valves: { kind: 'manualPair', finish: 'white' },
    centre: { kind: 'middleOfWall' },
    bottomMm: 150,
    existing: { name: 'Old', widthMm: 800, heightMm: 600 },
  } as const

  it('puts an emitter where it was let go, never below the floor', () => {
    const moved = movedTo({ swap, wall: studWall }, 'emitter', { xMm: 1625, yMm: -4 })
    expect(moved.swap.centre).toEqual({ kind: 'at', xMm: 1625 })
    expect(moved.swap.bottomMm).toBe(0)
    expect(moved.wall).toBe(studWall)
  })

  it('moves one obstacle and leaves the others', () => {
    const moved = movedTo({ swap, wall: studWall }, { obstacleId: 'socket' }, { xMm: 7, yMm: 9 })
    expect(moved.wall.obstacles?.map(({ xMm, yMm }) => [xMm, yMm])).toEqual([
      [1150, 950],
      [7, 9],
    ])
    expect(moved.swap).toBe(swap)
  })

  it('gives the old emitter a measured place', () => {
    const moved = movedTo({ swap, wall: studWall }, 'old', { xMm: 700, yMm: 120 })
    expect(moved.swap.existing).toEqual({ ...swap.existing, leftMm: 700, bottomMm: 120 })
  })

  it('goes by 1 mm a key, with Shift by 10', () => {
    expect(stepOf({ key: 'ArrowLeft', shiftKey: false })).toEqual({ xMm: -1, yMm: 0 })
    expect(stepOf({ key: 'ArrowRight', shiftKey: true })).toEqual({ xMm: 10, yMm: 0 })
    expect(stepOf({ key: 'ArrowUp', shiftKey: false })).toEqual({ xMm: 0, yMm: 1 })
    expect(stepOf({ key: 'ArrowDown', shiftKey: true })).toEqual({ xMm: 0, yMm: -10 })
    expect(stepOf({ key: 'a', shiftKey: false })).toBe(null)
  })
})
