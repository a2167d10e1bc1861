import { describe, expect, it } from 'vitest'
import {
  apart,
  boxAt,
  crossing,
  edgesOf,
  grown,
  nearestIn,
  overlap,
  shared,
} from '../../../../../src-main/engine/wall/drawing/boxes.ts'
import { spread } from '../../../../../src-main/engine/wall/drawing/spread.ts'
import { element, escaped, holding, short } from '../../../../../src-main/engine/wall/drawing/svg.ts'
import { namedObstacles } from '../../../../../src-main/engine/wall/drawing/taken.ts'

const box = (x: number, y: number, width: number, height: number) => ({ x, y, width, height })

describe('rectangles of the drawing', () => {
  it('about a middle, grown, and their edges', () => {
    expect(boxAt(5, 8, 4)).toEqual(box(3, 6, 4, 4))
    expect(grown(box(1, 2, 10, 4), 1.5)).toEqual(box(-0.5, 0.5, 13, 7))
    expect(grown(box(1, 2, 10, 4), -1.5)).toEqual(box(2.5, 3.5, 7, 1))
    expect(grown(box(1, 2, 10, 4), -3)).toEqual(box(4, 4, 4, 0))
    expect(grown(box(1, 2, 10, 4), -9)).toEqual(box(6, 4, 0, 0))
    expect(edgesOf(box(1, 2, 10, 4), 2)).toEqual([
      box(1, 1, 10, 2),
      box(1, 5, 10, 2),
      box(0, 2, 2, 4),
      box(10, 2, 2, 4),
    ])
  })

  it('share an area, an edge, a corner or nothing', () => {
    const one = box(0, 0, 4, 3)
    expect(overlap(one, box(1, 1, 9, 9))).toBe(6)
    expect(overlap(box(1, 1, 9, 9), one)).toBe(6)
    expect(overlap(one, box(1, 1, 2, 1))).toBe(2)
    expect([
      overlap(one, box(4, 0, 2, 2)),
      overlap(one, box(5, 9, 2, 2)),
      overlap(one, box(1, 9, 2, 2)),
    ]).toEqual([0, 0, 0])
    expect(shared(one, box(1, 1, 9, 9))).toEqual(box(1, 1, 3, 2))
    expect(shared(one, box(-1, -1, 9, 9))).toEqual(one)
    expect(shared(one, box(4, 3, 2, 2))).toEqual(box(4, 3, 0, 0))
    expect([shared(one, box(4.1, 0, 2, 2)), shared(one, box(0, 3.1, 2, 2))]).toEqual([null, null])
  })

  it('stand apart sideways, in height or by a corner', () => {
    const one = box(10, 10, 4, 3)
    expect([apart(one, box(16, 11, 2, 2)), apart(one, box(5, 11, 2, 2))]).toEqual([2, 3])
    expect([apart(one, box(11, 18, 2, 2)), apart(one, box(11, 4, 2, 2))]).toEqual([5, 4])
    expect([apart(one, box(17, 17, 2, 2)), apart(box(17, 17, 2, 2), one)]).toEqual([5, 5])
    expect([apart(one, box(14, 10, 2, 2)), apart(one, box(11, 11, 1, 1))]).toEqual([0, 0])
  })

  it('hold so much of a line', () => {
    const one = box(2, 2, 6, 4)
    expect(crossing([0, 4, 10, 4], one)).toBeCloseTo(6, 12)
    expect(crossing([10, 4, 0, 4], one)).toBeCloseTo(6, 12)
    expect(crossing([3, 0, 3, 9], one)).toBeCloseTo(4, 12)
    expect(crossing([3, 9, 3, 0], one)).toBeCloseTo(4, 12)
    expect(crossing([3, 3, 5, 3], one)).toBeCloseTo(2, 12)
    // Three across and four up is five long; all of it lies within.
    expect(crossing([3, 2, 6, 6], one)).toBeCloseTo(5, 12)
    // Twice as long, half of it within.
    expect(crossing([3, 2, 9, 10], one)).toBeCloseTo(5, 12)
    expect(crossing([0, 6, 10, 6], one)).toBeCloseTo(6, 12)
    expect(crossing([2, 0, 2, 9], one)).toBeCloseTo(4, 12)
    for (const line of [
      [0, 1.9, 10, 1.9],
      [0, 6.1, 10, 6.1],
      [1.9, 0, 1.9, 9],
      [8.1, 0, 8.1, 9],
      // Past a corner, though each way it comes into range.
      [0, 5, 3, 8],
    ] as const)
      expect(crossing(line, one)).toBe(0)
  })

  it('have a point that is nearest to another', () => {
    const one = box(2, 2, 6, 4)
    expect([nearestIn(one, 0, 0), nearestIn(one, 9, 9), nearestIn(one, 5, 3), nearestIn(one, 5, 7)]).toEqual([
      [2, 2],
      [8, 6],
      [5, 3],
      [5, 6],
    ])
  })
})

describe('marks along a line', () => {
  it('that touch are kept about their own middle, in their order', () => {
    expect(spread([])).toEqual([])
    expect(spread([{ at: 5, length: 9 }])).toEqual([5])
    expect(
      spread([
        { at: 0, length: 4 },
        { at: 4, length: 4 },
      ]),
    ).toEqual([0, 4])
    expect(
      spread([
        { at: 0, length: 4 },
        { at: 3, length: 4 },
      ]),
    ).toEqual([-0.5, 3.5])
    // Three of 4 at 0, 0 and 0: one middle, each 4 on; and of two lengths, half of each between.
    expect(spread([0, 0, 0].map((at) => ({ at, length: 4 })))).toEqual([-4, 0, 4])
    expect(
      spread([
        { at: 0, length: 2 },
        { at: 0, length: 6 },
      ]),
    ).toEqual([-2, 2])
    // The first two touch, and pushed apart they come to touch the third too: 0, 2 and 4.5 about a mean of 13 / 6 less 4.
    const three = spread([
      { at: 0, length: 4 },
      { at: 2, length: 4 },
      { at: 4.5, length: 4 },
    ])
    expect(three.map((at) => Number(at.toFixed(6)))).toEqual([-1.833333, 2.166667, 6.166667])
    expect(
      spread([
        { at: 0, length: 4 },
        { at: 1, length: 4 },
        { at: 50, length: 4 },
      ]),
    ).toEqual([-1.5, 2.5, 50])
  })

  it('keep between two ends, near end first where there is no room', () => {
    const two = [
      { at: 1, length: 4 },
      { at: 9, length: 4 },
    ]
    expect(spread(two, { from: 0, to: 10 })).toEqual([2, 8])
    expect(spread(two, { from: 0, to: 9 })).toEqual([2, 7])
    expect(spread(two, { from: 3, to: 20 })).toEqual([5, 9])
    expect(spread(two, { from: 0, to: 6 })).toEqual([2, 6])
  })
})

describe('the picture’s own writing', () => {
  it('is safe, with no sign that the format does not hold', () => {
    expect(escaped('a < b > c & "d" \t\u0001\u0000é')).toBe('a &lt; b &gt; c &amp; &quot;d&quot; \té')
    expect(escaped('&&<<>>""')).toBe('&amp;&amp;&lt;&lt;&gt;&gt;&quot;&quot;')
  })

  it('has elements with attributes, text and others inside', () => {
    expect(element('line', { x1: 0, y1: 1.239, class: 'a"b' })).toBe(
      '<line x1="0" y1="1.24" class="a&quot;b"/>',
    )
    expect(element('text', {}, 'a<b')).toBe('<text>a&lt;b</text>')
    expect(element('text', { x: 1 }, '')).toBe('<text x="1"></text>')
    expect(holding('g', { id: 'a' }, ['<b/>', '<c/>'])).toBe('<g id="a"><b/><c/></g>')
    expect(holding('g', {}, [])).toBe('<g></g>')
  })

  it('has numbers of two places at most, and never less than nothing', () => {
    expect([1.005, 1.239, -1.239, -0.001, 0.004, 12].map(short)).toEqual([
      '1',
      '1.24',
      '-1.24',
      '0',
      '0',
      '12',
    ])
  })
})

describe('obstacles that are named', () => {
  it('are those on the wall, each cut to it', () => {
    const obstacle = (name: string, xMm: number, yMm: number) => ({
      obstacleId: name,
      name,
      kind: 'other' as const,
      xMm,
      yMm,
      widthMm: 400,
      heightMm: 600,
    })
    const wall = {
      widthMm: 1000,
      heightMm: 2400,
      obstacles: [obstacle('Mirror', 100, 1000), obstacle('Off', 1100, 0), obstacle('Half', 800, 2000)],
    } as unknown as Parameters<typeof namedObstacles>[0]['wall']
    expect(namedObstacles({ wall })).toEqual([
      { name: 'Mirror', box: box(100, -1600, 400, 600), of: 'obstacle 0' },
      { name: 'Half', box: box(800, -2400, 200, 400), of: 'obstacle 2' },
    ])
    const { obstacles: _, ...bare } = wall
    expect(namedObstacles({ wall: bare })).toEqual([])
  })
})
