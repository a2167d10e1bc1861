import { describe, expect, it } from 'vitest'
import type { Obstacle } from '../../../../../src-main/domain/wall.ts'
import { drawMeasures, drawRunning } from '../../../../../src-main/engine/wall/drawing/dimensions.ts'
import { measuredOf } from '../../../../../src-main/engine/wall/drawing/measured.ts'
import { drawBox, drawLine, drawText, textWidth } from '../../../../../src-main/engine/wall/drawing/sheet.ts'
import { box, hole, obstacle, sheet, view } from './drawing-for-tests.ts'
import { bathroomWall } from '../walls-for-tests.ts'

const seen = (obstacles: readonly Obstacle[], skirtingHeightMm = 0) =>
  measuredOf(view({ wall: { ...bathroomWall, obstacles: [...obstacles], skirtingHeightMm } }))

describe('what a drawing measures', () => {
  it('below: holes and valves from the centre, the centre from both ends, and the wall', () => {
    const holes = [hole('A1', 700, 1400), hole('A2', 700.04, 400), hole('B1', 1100, 1400)]
    const valves = [{ side: 'left' as const, xMm: 675, yMm: 235 }]
    const { below } = measuredOf(view({ setOut: { centreMm: 900, bottomMm: 300, holes, valves } }))
    const nought = { place: 900, text: '0', reach: 0 }
    expect(below).toEqual([
      {
        kind: 'running',
        title: ['Holes from', 'centre'],
        stops: [
          { place: 700, reach: -400, text: '200', below: 'A1 A2' },
          { place: 1100, reach: -1400, text: '200', below: 'B1' },
          nought,
        ],
      },
      {
        kind: 'running',
        title: ['Valves from', 'centre'],
        stops: [{ place: 675, reach: -235, text: '225' }, nought],
      },
      {
        kind: 'between',
        title: ['Centre', 'from ends'],
        measures: [
          { from: 0, to: 900, reach: [0, 0] },
          { from: 900, to: 1800, reach: [0, 0] },
        ],
      },
      { kind: 'between', title: ['Wall'], measures: [{ from: 0, to: 1800, reach: [0, 0] }] },
    ])
  })

  it('no second nought where a hole is on the centre line, and a centre off the wall from its end', () => {
    const holes = [hole('A1', 900.04, 1400)]
    const [first] = measuredOf(view({ setOut: { centreMm: 900, bottomMm: 300, holes, valves: [] } })).below
    expect(first?.kind === 'running' ? first.stops.map(({ text }) => text) : []).toEqual(['0'])
    const ends = (centreMm: number) => {
      const row = measuredOf(view({ setOut: { centreMm, bottomMm: 300, holes: [], valves: [] } })).below[0]
      return row?.kind === 'between' ? row.measures.map(({ from, to }) => [from, to]) : []
    }
    expect(ends(-50)).toEqual([
      [-50, 0],
      [-50, 1800],
    ])
    expect(ends(1900)).toEqual([
      [0, 1900],
      [1800, 1900],
    ])
  })

  it('right: every height, holes at one height together, long rows cut short', () => {
    const four = ['A1', 'B1', 'C1', 'D1'].map((id, nth) => hole(id, 700 + nth, 1400))
    const valves = [{ side: 'left' as const, xMm: 675, yMm: 235 }]
    const holes = [...four, hole('E1', 700, 400.26)]
    expect(measuredOf(view({ setOut: { centreMm: 900, bottomMm: 300, holes, valves } })).right).toEqual([
      { place: 1400, reach: 703, text: '1400  A1 … D1' },
      { place: 400.26, reach: 700, text: '400.3  E1' },
      { place: 235, reach: 675, text: '235  valves' },
      { place: 0, text: '0  floor', reach: 1800 },
    ])
  })

  it('above: clear space to the ends, and to the nearest thing beside', () => {
    const ends = {
      kind: 'between',
      title: ['Clear', 'to ends'],
      measures: [
        { from: 0, to: 640, reach: [-2400, -1500] },
        { from: 640, to: 1160, reach: [-1500, -1500] },
        { from: 1160, to: 1800, reach: [-1500, -2400] },
      ],
    }
    expect(seen([]).above).toEqual([ends])
    const beside = seen([
      obstacle('far left', 100, 800),
      obstacle('near left', 300, 900),
      obstacle('near right', 1200, 700),
      obstacle('far right', 1500, 800),
    ])
    expect(beside.above).toEqual([
      ends,
      {
        kind: 'between',
        title: ['Clear', 'beside'],
        measures: [
          { from: 400, to: 640, reach: [-1000, -1500] },
          { from: 1160, to: 1200, reach: [-1500, -800] },
        ],
      },
    ])
    // Not what is hidden, or not level with it, or within its width.
    for (const one of [
      obstacle('cable', 300, 800, { kind: 'cable' }),
      obstacle('over', 300, 1500),
      obstacle('under', 300, 135),
      obstacle('across', 600, 800),
    ])
      expect(seen([one]).above).toEqual([ends])
    expect(seen([obstacle('touching', 540, 1499)]).above).toHaveLength(2)
    expect(seen([obstacle('touching', 1160, 136)]).above).toHaveLength(2)
  })

  it('left: bottom edge, emitter and what is over it; and the nearest thing above and below', () => {
    const chain = [
      { from: 0, to: 300, reach: [0, 650] },
      { from: 300, to: 1500, reach: [650, 650] },
      { from: 1500, to: 2400, reach: [650, 0] },
    ]
    const whole = [{ from: 0, to: 2400, reach: [0, 0] }]
    expect(seen([]).left).toEqual([chain, whole])
    expect(seen([], 120).left[0]).toEqual([{ from: 120, to: 300, reach: [0, 650] }])
    const both = seen([
      obstacle('high', 700, 1800),
      obstacle('near', 800, 1600),
      obstacle('low', 900, 50),
      obstacle('lowest', 900, 0, { heightMm: 20 }),
    ])
    expect(both.left[0]).toEqual([
      { from: 1500, to: 1600, reach: [650, 800] },
      { from: 150, to: 300, reach: [900, 650] },
    ])
    for (const one of [
      obstacle('left', 540, 1600),
      obstacle('right', 1160, 1600),
      obstacle('hidden', 800, 1600, { kind: 'pipeInWall' }),
    ])
      expect(seen([one]).left).toEqual([chain, whole])
    expect(seen([obstacle('just over', 800, 1500)]).left[0]).toEqual([
      { from: 1500, to: 1500, reach: [650, 800] },
    ])
    expect(seen([obstacle('just under', 800, 200)]).left[0]).toEqual([
      { from: 300, to: 300, reach: [800, 650] },
    ])
  })
})

describe('lines and words of a drawing', () => {
  it('are as thick and as high on paper as they are told', () => {
    expect(drawLine(sheet, [1, 2, 3, 4], { thick: 0.5, dash: [1, 0.25], colour: '#777' })).toBe(
      '<line x1="1" y1="2" x2="3" y2="4" stroke="#777" stroke-width="5" stroke-dasharray="10.0 2.5"/>',
    )
    expect(drawBox(sheet, box(1, 2, 3, 4), { thick: 0.1, fill: '#fff' })).toBe(
      '<rect x="1" y="2" width="3" height="4" fill="#fff" stroke="#000" stroke-width="1"/>',
    )
    // 32 high, its foot 0.36 of that below its middle.
    expect(drawText(sheet, { text: 'A1', x: 5, y: 10 })).toBe(
      '<text x="5" y="21.52" font-size="32" text-anchor="middle" font-family="Inter, sans-serif" fill="#000">A1</text>',
    )
    expect(drawText(sheet, { text: 'A1', x: 5, y: 0, size: 2.5, anchor: 'start' })).toBe(
      '<text x="5" y="9" font-size="25" text-anchor="start" font-family="Inter, sans-serif" fill="#000">A1</text>',
    )
    // One sign of each group: 0.3 + 0.38 + 0.46 + 0.57 + 0.61 + 0.65 + 0.69 + 0.76 + 0.9 + 1 = 6.32, at 2 by 10.
    expect(textWidth(sheet, 'if1ab0ACm€', 2)).toBeCloseTo(126.4, 9)
    expect(textWidth(sheet, '0')).toBeCloseTo(20.8, 9)
  })

  it('measure between two stops, but nothing that has no length', () => {
    const measures = [
      { from: 500, to: 900, reach: [-50, 0] as const },
      { from: 0, to: 500, reach: [0, -50] as const },
      { from: 900, to: 900, reach: [0, 0] as const },
    ]
    const { lines, numbers, faints } = drawMeasures(sheet, measures, { way: 'across', at: 100 })
    // Faint lines go 8 past the row, from where each is measured.
    expect(faints).toEqual([
      [0, 0, 0, 108],
      [500, -50, 500, 108],
      [500, -50, 500, 108],
      [900, 0, 900, 108],
    ])
    expect(lines[4]).toBe('<line x1="0" y1="100" x2="500" y2="100" stroke="#000" stroke-width="1.8"/>')
    expect(lines[5]).toBe('<line x1="-5" y1="105" x2="5" y2="95" stroke="#000" stroke-width="3.5"/>')
    expect(lines).toHaveLength(4 + 2 * 3)
    // The number stands 6 and half of 32 over the line: its middle at 78.
    expect(
      numbers.filter((one) => one.startsWith('<text')).map((one) => one.replace(/ font-.*fill="#000"/, '')),
    ).toEqual(['<text x="250" y="89.52">500</text>', '<text x="700" y="89.52">400</text>'])
    const up = drawMeasures(sheet, [{ from: 0, to: 300, reach: [0, 650], trueMm: 310, cut: [true, false] }], {
      way: 'up',
      at: -100,
    })
    expect(up.faints).toEqual([[650, -300, -108, -300]])
    expect(up.numbers[1]).toContain('x="-91" y="-138.48"')
    expect(up.numbers[1]).toContain('text-anchor="start"')
    expect(up.numbers[1]).toContain('>310<')
    expect(up.lines).toHaveLength(3)
  })

  it('run from one nought, with what stands at each stop', () => {
    expect(drawRunning(sheet, [], { way: 'across', at: 100 })).toEqual({ lines: [], numbers: [], faints: [] })
    const stops = [
      { place: 900, text: '0', reach: 0 },
      { place: 400, text: '500', below: 'A1', reach: -300 },
    ]
    const { lines, numbers, faints } = drawRunning(sheet, stops, { way: 'across', at: 100 })
    expect(faints).toEqual([
      [400, -300, 400, 108],
      [900, 0, 900, 108],
    ])
    expect(lines[2]).toBe('<line x1="400" y1="100" x2="900" y2="100" stroke="#000" stroke-width="1.8"/>')
    expect(lines[4]).toBe('<line x1="400" y1="100" x2="400" y2="118" stroke="#777" stroke-width="1.2"/>')
    const texts = numbers.filter((one) => one.startsWith('<text'))
    // 18 of lead and half of 32 below the row: 134; its id at 118 + 32 × 1.02 + 13 = 163.64, 26 high.
    expect(texts.map((one) => one.replace(/ text-anchor.*fill="#000"/, ''))).toEqual([
      '<text x="400" y="145.52" font-size="32">500</text>',
      '<text x="400" y="173" font-size="26">A1</text>',
      '<text x="900" y="145.52" font-size="32">0</text>',
    ])
    const up = drawRunning(sheet, [{ place: 300, text: '300  A1', reach: 700 }], { way: 'up', at: 1830 })
    expect(up.faints).toEqual([[700, -300, 1838, -300]])
    expect(up.numbers[1]).toContain('x="1852" y="-288.48"')
  })
})
