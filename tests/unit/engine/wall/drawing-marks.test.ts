import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Obstacle, Wall } from '../../../../src-main/domain/wall.ts'
import { wallDrawing, wallFrame } from '../../../../src-main/engine/wall/drawing.ts'
import { cableZones } from '../../../../src-main/engine/wall/drawing/marks/cable-zones.ts'
import { alongWall, lookedAt } from '../../../../src-main/engine/wall/drawing/marks/looked.ts'
import { jointsOf } from '../../../../src-main/engine/wall/drawing/marks/tile-joints.ts'
import { holeWarnings } from '../../../../src-main/engine/wall/hole-warnings.ts'
import { placeEmitter } from '../../../../src-main/engine/wall/place-emitter.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { answered } from '../../../answered.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { textsIn } from './pictures-for-tests.ts'
import { viewOf } from './views-for-tests.ts'
import { panelInput, railInput, studWall } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const looked = (input: SetOutInput) => lookedAt(input, answered(placeEmitter(input, figures)), figures)
const door: Obstacle = {
  obstacleId: 'door',
  name: 'Door',
  kind: 'door',
  xMm: 200,
  yMm: 0,
  widthMm: 826,
  heightMm: 2013,
  leaf: { in: 'thisWall', hinge: 'left', leafMm: 762, opensIntoRoom: true },
}

describe('clearances in their places', () => {
  it('take nothing where they are kept', () => {
    const all = looked(panelInput())
    expect(all.map((one) => [one.with, one.obstacleId, one.clashes, one.taken])).toEqual([
      ['floor', null, false, null],
      ['skirting', null, false, null],
      ['ceiling', null, false, null],
      ['left end of the wall', null, false, null],
      ['right end of the wall', null, false, null],
      ['Window', 'window', false, null],
      ['Socket', 'socket', false, null],
    ])
  })

  it('take what the emitter has of the space that a window asks', () => {
    // Panel 600 high from 320: its top at 920, 30 mm under the window at 950, which asks more.
    const window = looked(panelInput({ bottomMm: 320 })).find((one) => one.with === 'Window')
    expect(window?.haveMm).toBe(30)
    expect(window?.asks).toEqual({
      leftMm: 1150 - (window?.needMm ?? 0),
      rightMm: 2450 + (window?.needMm ?? 0),
      bottomMm: 950 - (window?.needMm ?? 0),
      topMm: 2050 + (window?.needMm ?? 0),
    })
    expect(window?.taken).toMatchObject({ bottomMm: 950 - (window?.needMm ?? 0), topMm: 920 })
  })

  it('of floor and skirting lie under the emitter, of ceiling above it', () => {
    const low = looked(panelInput({ bottomMm: 100 })).slice(0, 2)
    const needs = low.map(({ needMm }) => needMm)
    // A panel of 1200 about 1800.
    const across = { leftMm: 1200, rightMm: 2400 }
    expect(low.map(({ asks }) => asks)).toEqual([
      { ...across, bottomMm: 0, topMm: needs[0] },
      { ...across, bottomMm: 0, topMm: 120 + (needs[1] ?? 0) },
    ])
    expect(low[1]?.taken).toEqual({ ...across, bottomMm: 100, topMm: 120 + (needs[1] ?? 0) })
    const high = looked(panelInput({ bottomMm: 1850 })).find((one) => one.with === 'ceiling')
    expect(high?.taken).toMatchObject({ topMm: 2450, bottomMm: 2400 - (high?.needMm ?? 0) })
  })

  it('of the ends reach past them where the emitter does', () => {
    const left = looked(panelInput({ centre: { kind: 'at', xMm: 500 } }))[3]
    expect(left?.haveMm).toBeLessThan(0)
    expect(left?.taken).toMatchObject({ leftMm: left?.haveMm, rightMm: left?.needMm })
    const right = looked(panelInput({ centre: { kind: 'at', xMm: 3200 } }))[4]
    expect(right?.taken).toMatchObject({
      leftMm: 3600 - (right?.needMm ?? 0),
      rightMm: 3600 - (right?.haveMm ?? 0),
    })
  })

  it('of a door are two, its frame and its leaf, and the leaf asks what it passes', () => {
    const wall: Wall = { ...studWall, obstacles: [door] }
    const both = looked(panelInput({ wall })).filter((one) => one.obstacleId === 'door')
    expect(both.map((one) => one.with)).toEqual(['Door', 'the leaf of Door'])
    const leaf = both[1]
    expect(leaf?.asks).toEqual({
      leftMm: 200 - (leaf?.needMm ?? 0),
      rightMm: 200 + 762 + (leaf?.needMm ?? 0),
      bottomMm: -(leaf?.needMm ?? 0),
      topMm: 2013 + (leaf?.needMm ?? 0),
    })
  })
})

describe('a leaf along the wall', () => {
  const hinge = { xMm: 1000, outMm: 0 }
  it('reaches its own length open at a right angle, and as far on the other side half round', () => {
    expect(alongWall({ hinge, leafMm: 762, closedDeg: 0, turnDeg: 180 })).toEqual({
      fromMm: 238,
      toMm: 1762,
      outMm: 762,
    })
    const turned = alongWall({ hinge, leafMm: 762, closedDeg: 180, turnDeg: -60 })
    // 762 sin 60 = 659.91 out.
    expect([turned.fromMm, turned.toMm]).toEqual([238, 1000])
    expect(turned.outMm).toBeCloseTo(659.91, 2)
  })
})

describe('cable zones', () => {
  const place = fc.record({
    xMm: fc.integer({ min: 0, max: 3600 }),
    yMm: fc.integer({ min: 0, max: 2400 }),
  })
  it('are where a hole is warned of cables, and nowhere else', () => {
    const switchAt: Obstacle = {
      obstacleId: 'switch',
      name: 'Switch',
      kind: 'switch',
      xMm: 700,
      yMm: 1100,
      widthMm: 86,
      heightMm: 86,
    }
    const wall = { ...studWall, obstacles: [...(studWall.obstacles ?? []), switchAt] }
    const zones = cableZones(wall, figures)
    expect(zones).toHaveLength(7)
    fc.assert(
      fc.property(place, ({ xMm, yMm }) => {
        const hole = { id: 'A1', bracket: 'One', upper: true, xMm, yMm, fromCentreMm: 0 }
        const warned = holeWarnings([hole], wall, figures).filter((one) => one.includes('522.6.202'))
        const within = zones.filter(
          ({ area }) =>
            xMm >= area.leftMm && xMm <= area.rightMm && yMm >= area.bottomMm && yMm <= area.topMm,
        )
        expect(within.length).toBe(warned.length)
      }),
      { numRuns: 400 },
    )
  })
})

describe('tile joints', () => {
  const tiles = { widthMm: 298, heightMm: 198, jointMm: 2, xMm: 0, yMm: 0 }
  it('stand at every pitch, row by row', () => {
    expect(jointsOf(tiles, { widthMm: 700, topMm: 400, leastMm: 1 })).toEqual([
      [300, 0, 300, -200],
      [600, 0, 600, -200],
      [0, -200, 700, -200],
      [300, -200, 300, -400],
      [600, -200, 600, -400],
    ])
  })
  it('are half a tile over in every second row of a half bond, counted from the crossing', () => {
    const half = jointsOf({ ...tiles, yMm: 200, halfBond: true }, { widthMm: 700, topMm: 400, leastMm: 1 })
    expect(half.filter(([x1, , x2]) => x1 === x2)).toEqual([
      [150, 0, 150, -200],
      [450, 0, 450, -200],
      [300, -200, 300, -400],
      [600, -200, 600, -400],
    ])
  })
  it('are left out where they would lie too close', () => {
    expect(jointsOf(tiles, { widthMm: 700, topMm: 400, leastMm: 201 })).toEqual([])
    expect(jointsOf(tiles, { widthMm: 700, topMm: 400, leastMm: 200 })).not.toEqual([])
  })
})

describe('the drawing for the window', () => {
  const paper = { widthMm: 140, heightMm: 95 }
  it('is the sheet’s own drawing where nothing more is asked', () => {
    const view = viewOf(railInput())
    expect(wallDrawing({ ...view, marks: {} })).toBe(wallDrawing(view))
  })

  it('hatches a clash and says what there is and what is needed', () => {
    const input = panelInput({ bottomMm: 320 })
    const svg = wallDrawing(viewOf(input, { marks: { looked: looked(input) }, paper }))
    expect(svg).toContain('<g class="clash">')
    const words = textsIn(svg)
      .map(({ text }) => text)
      .join(' ')
    expect(words).toContain('Clash: 30 of')
    expect(words).toContain('mm to Window')
    const fits = panelInput()
    expect(wallDrawing(viewOf(fits, { marks: { looked: looked(fits) }, paper }))).not.toContain('clash')
  })

  it('draws zones, clear space and joints only where they are asked for', () => {
    const wall: Wall = {
      ...railInput().wall,
      tiles: { widthMm: 298, heightMm: 198, jointMm: 2, xMm: 0, yMm: 0 },
    }
    const input = railInput({ wall })
    const bare = wallDrawing(viewOf(input))
    const full = wallDrawing(
      viewOf(input, {
        marks: {
          zones: cableZones(wall, figures),
          looked: looked(input),
          showsAsked: true,
          showsTiles: true,
        },
      }),
    )
    for (const name of ['zones', 'asked', 'tiles']) {
      expect(bare).not.toContain(`class="${name}"`)
      expect(full).toContain(`<g class="${name}">`)
    }
  })

  it('shows a leaf from above below the floor, with room made for it', () => {
    const wall: Wall = { ...studWall, obstacles: [door] }
    const view = viewOf(panelInput({ wall }), { paper })
    const above = { ...view, marks: { showsPlan: true } }
    const foot = (sheet: { y: number; height: number }) => sheet.y + sheet.height
    expect(foot(wallFrame(view).wall)).toBe(0)
    expect(foot(wallFrame(above).wall)).toBeGreaterThan(762)
    expect(wallDrawing(above)).toContain('A762 762 0 0 1')
    expect(wallDrawing(view)).not.toContain('class="leaf"')
  })

  it('is the same paper filled with a part, so many times as large', () => {
    const view = viewOf(panelInput(), { paper })
    const fit = wallFrame(view)
    const closer = wallFrame({ ...view, zoom: { times: 4, xMm: 1800, yMm: 450 } })
    expect(closer.unit).toBeCloseTo(fit.unit / 4, 9)
    expect(closer.wall.x + closer.wall.width / 2).toBeCloseTo(1800, 6)
    expect(closer.wall.y + closer.wall.height / 2).toBeCloseTo(-450, 6)
    expect(closer.whole.width / closer.unit).toBeCloseTo(paper.widthMm, 6)
    expect(closer.whole.height / closer.unit).toBeCloseTo(paper.heightMm, 6)
  })

  it('keeps the numbers of what it shows in the margins, with their whole length, and drops the rest', () => {
    const view = viewOf(panelInput(), { paper })
    const texts = textsIn(wallDrawing({ ...view, zoom: { times: 4, xMm: 1300, yMm: 450 } })).map(
      ({ text }) => text,
    )
    // The wall is 3600 wide and its middle 1800 from both ends, of which only the left is in sight.
    expect(texts).toContain('3600')
    expect(texts.filter((text) => text === '1800')).toHaveLength(1)
    expect(texts).toContain('A1')
    expect(texts).not.toContain('B1')
    expect(texts).not.toContain('Socket')
  })

  it('writes what it is told beside a hole, and its id in the rows', () => {
    const view = viewOf(railInput(), { marks: { holeNames: { A1: 'A1: 7 mm bit' } } })
    const texts = textsIn(wallDrawing(view)).map(({ text }) => text)
    expect(texts).toContain('A1: 7 mm bit')
    expect(texts).toContain('1405  A1 B1')
  })

  it('rings the holes that the old emitter leaves, where they are known', () => {
    const old = { name: 'Old', leftMm: 300, bottomMm: 150, widthMm: 600, heightMm: 600 }
    const rings = (svg: string) => svg.split('<circle').length
    const bare = wallDrawing(viewOf(railInput(), { old }))
    const holed = wallDrawing(viewOf(railInput(), { old: { ...old, holes: [{ xMm: 350, yMm: 700 }] } }))
    expect(rings(holed) - rings(bare)).toBe(1)
  })
})
