import { describe, expect, it } from 'vitest'
import {
  drawEmitter,
  drawHoles,
  floorPipeBox,
  holeSize,
  oldEmitterBox,
  pipeEndMm,
  valveBox,
} from '../../../../../src-main/engine/wall/drawing/emitter-shapes.ts'
import type { WallView } from '../../../../../src-main/engine/wall/drawing/sheet.ts'
import { drawWall, hatch, onWall } from '../../../../../src-main/engine/wall/drawing/wall-shapes.ts'
import { box, hole, obstacle, sheet, view } from './drawing-for-tests.ts'
import { bathroomWall, floorPipe } from '../walls-for-tests.ts'

describe('the shapes of a wall', () => {
  it('are cut to it', () => {
    const outline = box(0, -2400, 1800, 2400)
    const at = (xMm: number, yMm: number) => onWall({ xMm, yMm, widthMm: 100, heightMm: 100 }, outline)
    expect([at(-50, 0), at(1750, 2350), at(100, -50)]).toEqual([
      box(0, -100, 50, 100),
      box(1750, -2400, 50, 50),
      box(100, -50, 100, 50),
    ])
    expect([at(-100, 0), at(-101, 0), at(1801, 0), at(0, 2401), at(0, -101)]).toEqual([
      box(0, -100, 0, 100),
      null,
      null,
      null,
      null,
    ])
  })

  it('are hatched at a slant', () => {
    expect(hatch(box(10, 20, 20, 10), 10)).toEqual([
      [10, 30, 20, 20],
      [20, 30, 30, 20],
    ])
    expect(hatch(box(0, 0, 4, 4), 10)).toEqual([])
  })

  it('are outline and floor, and skirting, studs and obstacles where there are any', () => {
    const drawn = (more: Partial<WallView['wall']>) =>
      drawWall(sheet, view({ wall: { ...bathroomWall, obstacles: [], ...more } }))
    const bare = drawn({})
    expect(bare).toEqual([
      '<rect x="0" y="-2400" width="1800" height="2400" fill="none" stroke="#000" stroke-width="4"/>',
      '<line x1="-15" y1="5" x2="1815" y2="5" stroke="#000" stroke-width="10"/>',
    ])
    expect(drawn({ skirtingHeightMm: 120 })).toEqual([
      '<line x1="0" y1="-120" x2="1800" y2="-120" stroke="#000" stroke-width="2"/>',
      ...bare,
    ])
    // Studs at 20, 820 and 1620, 50 wide; the first one's left edge is off the wall.
    const studs = { firstMm: 20, spacingMm: 800, widthMm: 50 }
    expect(drawn({ studs }).slice(0, -2)).toEqual(
      [45, 795, 845, 1595, 1645].map(
        (x) =>
          `<line x1="${x}" y1="-2400" x2="${x}" y2="0" stroke="#777" stroke-width="1.2" stroke-dasharray="20.0 12.0"/>`,
      ),
    )
    expect(drawn({ studs: { ...studs, spacingMm: 1 } })).toEqual(bare)
    const cable = obstacle('Cable', 100, 100, { kind: 'cable', widthMm: 10, heightMm: 10 })
    expect(drawn({ obstacles: [cable] })[0]).toBe(
      '<rect x="100" y="-110" width="10" height="10" fill="none" stroke="#000" stroke-width="3" stroke-dasharray="10.0 10.0"/>',
    )
    const shelf = obstacle('Shelf', 100, 100, { widthMm: 20, heightMm: 20 })
    expect(drawn({ obstacles: [shelf] }).slice(0, 2)).toEqual([
      '<line x1="102" y1="-100" x2="120" y2="-118" stroke="#555" stroke-width="1"/>',
      '<rect x="100" y="-120" width="20" height="20" fill="none" stroke="#000" stroke-width="3"/>',
    ])
    expect(drawn({ obstacles: [obstacle('Off', 1900, 0)] })).toEqual(bare)
  })
})

describe('the shapes of an emitter', () => {
  it('are rings no larger than a millimetre of paper, smaller where holes stand close', () => {
    const at = (...xs: readonly number[]) =>
      holeSize(
        sheet,
        xs.map((x) => hole('A', x, 0)),
      )
    expect([at(), at(0), at(0, 25), at(0, 20), at(0, 5)]).toEqual([
      { radius: 10, arm: 13 },
      { radius: 10, arm: 13 },
      { radius: 10, arm: 13 },
      { radius: 8, arm: 10.4 },
      { radius: 3, arm: expect.closeTo(3.9, 9) },
    ])
    expect(drawHoles(sheet, [hole('A1', 100, 200)])).toEqual([
      '<circle cx="100" cy="-200" r="10" fill="#fff" stroke="#000" stroke-width="3.5"/>',
      '<line x1="87" y1="-200" x2="113" y2="-200" stroke="#000" stroke-width="2.2"/>',
      '<line x1="100" y1="-213" x2="100" y2="-187" stroke="#000" stroke-width="2.2"/>',
    ])
  })

  it('are valves that fit under it, and pipes up to their ends', () => {
    const emitter = box(650, -1500, 500, 1200)
    const at = (xMm: number, yMm: number) => valveBox(sheet, { xMm, yMm }, emitter)
    // 65 of room takes the full 26; 20 is as much as there is; 14 is the least. Beside it there is room for all.
    expect([at(700, 235), at(700, 280), at(700, 295)]).toEqual([
      box(687, -261, 26, 26),
      box(690, -300, 20, 20),
      box(693, -309, 14, 14),
    ])
    for (const x of [650, 1150, 600]) expect(at(x, 295).width).toBe(26)
    const valves = [{ side: 'left' as const, xMm: 675, yMm: 235 }]
    const { yMm: _, ...unmeasured } = floorPipe('left', 420, 0)
    expect([
      pipeEndMm(floorPipe('left', 420, 0), valves),
      pipeEndMm(unmeasured, valves),
      pipeEndMm({ ...unmeasured, side: 'right' }, valves),
    ]).toEqual([0, 235, 0])
    expect(floorPipeBox(sheet, floorPipe('left', 420, 100), [])).toEqual(box(412.5, -100, 15, 100))
    expect(floorPipeBox({ unit: 15 }, floorPipe('left', 420, -5, { outsideMm: 8 }), []).width).toBe(12)
    expect(floorPipeBox(sheet, floorPipe('left', 420, -5), []).height).toBe(0)
    expect(oldEmitterBox({ name: 'Old', leftMm: 400, bottomMm: 150, widthMm: 500, heightMm: 600 })).toEqual(
      box(400, -750, 500, 600),
    )
  })

  it('are drawn: old one, centre line, outline, pipes, valves', () => {
    const old = {
      name: 'Old',
      leftMm: 700,
      bottomMm: 150,
      widthMm: 300,
      heightMm: 600,
      holes: [{ xMm: 750, yMm: 700 }],
    }
    const valves = [
      { side: 'left' as const, xMm: 700, yMm: 235 },
      { side: 'right' as const, xMm: 1200, yMm: 320 },
    ]
    const pipes = [floorPipe('left', 700, 100), { ...floorPipe('right', 1200, 320), from: 'wall' as const }]
    const drawn = drawEmitter(
      sheet,
      view({ old, pipes, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves } }),
      -1600,
    )
    expect(drawn).toEqual([
      '<rect x="700" y="-750" width="300" height="600" fill="none" stroke="#000" stroke-width="3" stroke-dasharray="15.0 10.0"/>',
      '<circle cx="750" cy="-700" r="7" fill="none" stroke="#000" stroke-width="2.5" stroke-dasharray="5.0 4.0"/>',
      '<line x1="900" y1="-1600" x2="900" y2="0" stroke="#000" stroke-width="2.2" stroke-dasharray="50.0 10.0 10.0 10.0"/>',
      '<rect x="650" y="-1500" width="500" height="1200" fill="none" stroke="#000" stroke-width="7"/>',
      '<rect x="692.5" y="-100" width="15" height="100" fill="#fff" stroke="#000" stroke-width="2.5"/>',
      '<circle cx="1200" cy="-320" r="12" fill="none" stroke="#000" stroke-width="5"/>',
      // Its square is 26 high from the entry at 235: up to 261, and a line from there to the edge at 300.
      '<line x1="700" y1="-261" x2="700" y2="-300" stroke="#000" stroke-width="5"/>',
      '<path d="M687 -261 L713 -261 L687 -235 L713 -235 Z" fill="#000" stroke="#000" stroke-width="2"/>',
      // Beside it: a level line from the middle of its square to the nearest edge.
      '<line x1="1200" y1="-333" x2="1150" y2="-333" stroke="#000" stroke-width="5"/>',
      '<path d="M1187 -346 L1213 -346 L1187 -320 L1213 -320 Z" fill="#000" stroke="#000" stroke-width="2"/>',
    ])
  })
})
