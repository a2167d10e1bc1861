import { describe, expect, it } from 'vitest'
import { holeLabel } from '../../../../../src-main/engine/wall/drawing/hole-names.ts'
import { boxOf, costApart, settle } from '../../../../../src-main/engine/wall/drawing/labels.ts'
import type { Place } from '../../../../../src-main/engine/wall/drawing/labels.ts'
import { pipeLabel } from '../../../../../src-main/engine/wall/drawing/pipe-names.ts'
import { placesApart, placesBeside, placesIn } from '../../../../../src-main/engine/wall/drawing/places.ts'
import type { WallView } from '../../../../../src-main/engine/wall/drawing/sheet.ts'
import { box, hole, sheet, view } from './drawing-for-tests.ts'
import { floorPipe } from '../walls-for-tests.ts'

const viewWith = (holes: readonly ReturnType<typeof hole>[], more: Partial<WallView> = {}): WallView =>
  view({ setOut: { centreMm: 900, bottomMm: 300, holes, valves: [] }, ...more })
const near = (value: number) => expect.closeTo(value, 6)
const told = (places: readonly Place[]) => places.map(({ x, y, cost }) => [near(x), near(y), near(cost)])

describe('text in the picture', () => {
  it('takes its widest line and a little, and its lines in height', () => {
    // 4 noughts of 0.65 at 2 × 10: 52, and 2; one line 20 high, two 1.15 × 20 more.
    const place = { x: 100, y: 50, size: 2, cost: 0 }
    expect(boxOf(sheet, { ...place, lines: ['0000'] })).toEqual(box(near(73), near(40), near(54), near(20)))
    expect(boxOf(sheet, { ...place, lines: ['0', '0000'] })).toEqual(
      box(near(73), near(28.5), near(54), near(43)),
    )
    expect([costApart(0), costApart(10)]).toEqual([8, 11])
  })

  const text = { lines: ['0000'], size: 2 }
  it('stands within a rectangle that has room, its middle first', () => {
    // 100 - 54 - 6 = 40 to spare across, 46 - 20 - 6 = 20 up.
    const places = placesIn(sheet, text, box(0, 0, 100, 46))
    expect(places).toHaveLength(49)
    expect(told(places.slice(0, 3))).toEqual([
      [near(50), near(23), near(0)],
      [near(42), near(23), near(0.04)],
      [near(58), near(23), near(0.04)],
    ])
    // A fifth of 20 up and of 40 across: hypot(8, 4) × 0.05 / 10.
    expect(places[8]).toMatchObject({ x: near(42), y: near(19), cost: near((0.05 * Math.hypot(8, 4)) / 10) })
    expect([placesIn(sheet, text, box(0, 0, 59.9, 46)), placesIn(sheet, text, box(0, 0, 100, 25.9))]).toEqual(
      [[], []],
    )
    expect(placesIn(sheet, text, box(0, 0, 60.01, 26.01))).toHaveLength(49)
  })

  it('touches a rectangle from above, below, right and left, then slides along it', () => {
    // Half of 46 and of 20, and 6: 39; half of 100 and of 54, and 6: 83. It slides by (100 - 54) / 2 and (46 - 20) / 2.
    const places = placesBeside(sheet, text, box(0, 0, 100, 46))
    expect(told(places.slice(0, 6))).toEqual([
      [near(50), near(-16), near(0)],
      [near(50), near(62), near(0)],
      [near(133), near(23), near(0.2)],
      [near(-33), near(23), near(0.2)],
      [near(61.5), near(-16), near(0.5)],
      [near(38.5), near(-16), near(0.5)],
    ])
    expect(told(places.slice(8, 10))).toEqual([
      [near(133), near(29.5), near(0.7)],
      [near(133), near(16.5), near(0.7)],
    ])
    expect(places).toHaveLength(4 + 8 + 8)
  })

  it('stands apart all round with a line to the rectangle', () => {
    const places = placesApart(sheet, text, { box: box(0, 0, 100, 46), awayMm: 2 })
    // From -20 - 27 to 120 + 27 across, 194: 6 steps of about 30, 7 places above and below; from -30 to 76, 106: 7 steps, 8 each side.
    expect(places).toHaveLength(2 * 7 + 2 * 8)
    expect(places[0]).toMatchObject({ x: near(-47), y: near(-30), lines: ['0000'], size: 2 })
    expect(places[1]).toMatchObject({ x: near(-47), y: near(76) })
    // Its own box ends at -20 and -20: the rectangle's middle (50, 23) is hypot(70, 43) off; the line ends 9 within.
    expect(places[0]?.cost).toBeCloseTo(8.6 + (0.1 * Math.hypot(70, 43)) / 10, 9)
    expect(places[0]?.leadsTo).toEqual([9, 9])
    expect(places.at(-1)).toMatchObject({ x: near(147), y: near(76), leadsTo: [91, 37] })
  })
})

describe('the name of a hole', () => {
  // 'A1' at 3.2 × 10: (0.69 + 0.46) × 32 + 2 = 38.8 wide, 32 high. The ring reaches 10, its cross 13.
  const across = 13 + 2.5 + 38.8 / 2
  const up = 13 + 2.5 + 16
  it('stands towards the middle of the emitter first, then on the other sides', () => {
    const { places, on } = holeLabel(sheet, hole('A1', 700, 1400), viewWith([hole('A1', 700, 1400)]))
    expect(on).toEqual(['emitter'])
    expect(places).toHaveLength(16)
    const sides = [
      [across, 0, 0],
      [-across, 0, 4],
      [across, -0.55 * up, 0.7],
      [across, 0.55 * up, 0.8],
      [-across, -0.55 * up, 4.2],
      [-across, 0.55 * up, 4.3],
      [0, -up, 4.6],
      [0, up, 4.7],
    ] as const
    expect(told(places.slice(0, 8))).toEqual(
      sides.map(([dx, dy, cost]) => [near(700 + dx), near(-1400 + dy), near(cost)]),
    )
    expect(places.slice(8).map(({ size, cost }) => [size, near(cost)])).toEqual(
      sides.map(([, , cost]) => [2.6, near(cost + 2)]),
    )
    const right = holeLabel(sheet, hole('A1', 1100, 1400), viewWith([]))
    expect(right.places[0]?.x).toBeCloseTo(1100 - across, 9)
    expect(holeLabel(sheet, hole('A1', 900, 1400), viewWith([])).places[0]?.x).toBeCloseTo(900 + across, 9)
  })

  it('costs more where it would be taken for another hole’s', () => {
    const pair = [hole('A1', 700, 1400), hole('B1', 760, 1400)]
    const { places } = holeLabel(sheet, hole('A1', 700, 1400), viewWith(pair))
    // Towards the middle it would stand by B1 too; on the other side by its own alone.
    expect([places[0]?.cost, places[1]?.cost]).toEqual([25, 4])
  })

  it('is what it is told to be, and stands apart round its ring', () => {
    const named = holeLabel(
      sheet,
      hole('A1', 700, 1400),
      viewWith([], { marks: { holeNames: { A1: 'left top' } } }),
    )
    expect(named.places[0]?.lines).toEqual(['left top'])
    const ring = holeLabel(sheet, hole('A1', 700, 1400), viewWith([])).apart?.(2) ?? []
    expect(ring).toHaveLength(24)
    // 10 of ring and 36 off.
    expect(ring[0]).toMatchObject({
      x: near(746),
      y: -1400,
      cost: near(8.6),
      leadsTo: [710, -1400],
      toRing: true,
      size: 3.2,
    })
    expect(ring[6]).toMatchObject({ x: near(700), y: near(-1354), leadsTo: [near(700), near(-1390)] })
  })
})

describe('the name of a pipe', () => {
  const label = (pipe: Parameters<typeof pipeLabel>[1]) => pipeLabel(sheet, pipe, viewWith([]))
  it('says what it carries, or its side where nobody knows', () => {
    expect(label(floorPipe('left', 420, 100)).places[0]?.lines).toEqual(['flow'])
    expect(label(floorPipe('right', 420, 100, { carries: 'unknown' })).places[0]?.lines).toEqual([
      'right pipe',
    ])
  })

  it('stands low and outwards first', () => {
    // 'flow' at 26: (0.38 + 0.3 + 0.61 + 0.9) × 26 + 2 = 58.94; half of it and of the pipe's 15, and 7: 43.97 off; 13 + 3 up.
    const { places } = label(floorPipe('left', 420, 100))
    expect(places).toHaveLength(4 * 2 * 3)
    const off = (gap: number) => 7.5 + 29.47 + 10 * gap
    expect(told(places.slice(0, 4))).toEqual([
      [near(420 - off(0.7)), near(-16), near(0.21)],
      [near(420 - off(2.2)), near(-16), near(0.66)],
      [near(420 - off(3.6)), near(-16), near(1.08)],
      [near(420 + off(0.7)), near(-16), near(0.71)],
    ])
    expect([6, 12, 18].map((nth) => [places[nth]?.y, places[nth]?.cost])).toEqual([
      [near(-26), near(1.31)],
      [near(-45.5), near(2.41)],
      [near(-61), near(3.51)],
    ])
    expect(label(floorPipe('right', 420, 100)).places[0]?.x).toBeGreaterThan(420)
  })

  it('of one from the wall stands at its end', () => {
    const { places } = label({ ...floorPipe('left', 420, 300), from: 'wall' })
    expect([0, 6, 12].map((nth) => places[nth]?.y)).toEqual([-300, -280, -320])
    expect(places[0]?.x).toBeCloseTo(420 - 12 - 29.47 - 7, 9)
  })
})

describe('labels find their places', () => {
  const label = (places: readonly Partial<Place>[], on: readonly string[] = []) => ({
    on,
    places: places.map((place) => ({ lines: ['00'], size: 2, x: 100, y: 100, cost: 0, ...place })),
  })
  const at = (settled: ReturnType<typeof settle>) => settled.map(({ place }) => [place.x, place.y])

  it('where they cover least, each clear of those before it', () => {
    const two = [label([{}]), label([{}, { x: 400, cost: 1 }])]
    expect(at(settle(sheet, [two], []))).toEqual([
      [100, 100],
      [400, 100],
    ])
    expect(
      at(settle(sheet, [[label([{}, { y: 300, cost: 5 }])]], [{ box: box(90, 90, 20, 20), weight: 3 }])),
    ).toEqual([[100, 300]])
    expect(
      at(
        settle(
          sheet,
          [[label([{}, { y: 300, cost: 5 }], ['x'])]],
          [{ of: 'x', box: box(90, 90, 20, 20), weight: 3 }],
        ),
      ),
    ).toEqual([[100, 100]])
    expect(at(settle(sheet, [[label([{ x: 5000 }, { cost: 90 }])]], []))).toEqual([[100, 100]])
    expect(settle(sheet, [[label([])]], [])).toEqual([])
  })
})
