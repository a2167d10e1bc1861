import { describe, expect, it } from 'vitest'
import { wallDrawing } from '../../../../src-main/engine/wall/drawing.ts'
import { spread } from '../../../../src-main/engine/wall/drawing/spread.ts'
import { boxOf, distance, isApart, isLed, linesIn, nameBox } from './pictures-for-tests.ts'
import { obstacleBox, pointBox, ringsIn, textsIn, unitOf } from './pictures-for-tests.ts'
import type { Box } from './pictures-for-tests.ts'
import { everyView, longInput, narrowInput, viewOf } from './views-for-tests.ts'
import { railInput } from './walls-for-tests.ts'

describe('the drawing', () => {
  it('is to scale: the wall and the emitter have their sizes in millimetres', () => {
    const svg = wallDrawing(viewOf(railInput()))
    expect(svg).toContain('<rect x="0" y="-2400" width="1800" height="2400"')
    expect(svg).toContain('<rect x="395" y="-1500" width="500" height="1200"')
  })

  it('has a ring at every hole', () => {
    const svg = wallDrawing(viewOf(railInput()))
    for (const place of [
      'cx="445" cy="-1405"',
      'cx="845" cy="-1405"',
      'cx="445" cy="-395"',
      'cx="845" cy="-395"',
    ]) {
      expect(svg).toContain(`<circle ${place}`)
    }
  })

  it('writes the distances that a fitter marks from, and names holes and obstacles', () => {
    const texts = textsIn(wallDrawing(viewOf(railInput()))).map(({ text }) => text)
    // Centre from the left end, bottom edge, hole heights with their ids, holes and valves from the centre line.
    for (const text of [
      '645',
      '1155',
      '300',
      '1405  A1 B1',
      '395  C1 D1',
      '200',
      '225',
      'A1',
      'D1',
      'Window',
      'centre line',
    ]) {
      expect(texts).toContain(text)
    }
  })

  it('keeps its texts apart, on every wall and paper', () => {
    for (const view of everyView()) {
      const texts = textsIn(wallDrawing(view))
      const pairs = texts.flatMap((a, nth) => texts.slice(nth + 1).map((b) => [a, b] as const))
      const covered = pairs.filter(([a, b]) => !isApart(boxOf(a), boxOf(b)))
      expect(covered.map(([a, b]) => [a.text, b.text])).toEqual([])
    }
  })

  it('covers no ring of a hole with a text, nor one ring with another', () => {
    for (const view of everyView()) {
      const svg = wallDrawing(view)
      const rings = ringsIn(svg, view)
      expect(rings.every(({ box }) => box.right > box.left)).toBe(true)
      const texts = textsIn(svg).map((text) => ({ id: text.text, box: boxOf(text) }))
      const covered = rings.flatMap((ring, nth) =>
        [...texts, ...rings.slice(nth + 1)]
          .filter(({ box }) => !isApart(ring.box, box))
          .map(({ id }) => [ring.id, id]),
      )
      expect(covered).toEqual([])
    }
  })

  it("writes each hole's id nearer to its own ring than to any other, or leads a line to it", () => {
    for (const view of everyView()) {
      const svg = wallDrawing(view)
      const texts = textsIn(svg)
      const unit = unitOf(texts)
      const rings = ringsIn(svg, view)
      for (const ring of rings) {
        const text = texts.find((one) => one.text === ring.id)
        expect(text, ring.id).toBeDefined()
        if (text === undefined) continue
        const box = boxOf(text)
        const near = distance(box, ring.box)
        const isPlain = rings.every((other) => other === ring || distance(box, other.box) > 1.3 * near)
        expect((isPlain && near < 3 * unit) || isLed(svg, box, ring.box, unit), ring.id).toBe(true)
      }
    }
  })

  it('writes the name of each obstacle on it, touching it, or with a line to it, and never on another thing', () => {
    for (const view of everyView()) {
      const svg = wallDrawing(view)
      const texts = textsIn(svg)
      const unit = unitOf(texts)
      const { emitter, setOut } = view
      const emitterBox: Box = {
        left: setOut.centreMm - emitter.widthMm / 2,
        right: setOut.centreMm + emitter.widthMm / 2,
        top: -setOut.bottomMm - emitter.heightMm,
        bottom: -setOut.bottomMm,
      }
      const obstacles = view.wall.obstacles ?? []
      for (const obstacle of obstacles) {
        const [name, own] = [nameBox(texts, obstacle.name), obstacleBox(obstacle)]
        const isNear = distance(name, own) < 2.5 * unit
        expect(isNear || isLed(svg, name, own, unit), obstacle.name).toBe(true)
        const others = [emitterBox, ...obstacles.filter((other) => other !== obstacle).map(obstacleBox)]
        expect(
          others.every((other) => isApart(name, other)),
          obstacle.name,
        ).toBe(true)
      }
    }
  })

  it('writes "centre line" at the upper end of that line, on neither the emitter nor an obstacle', () => {
    for (const view of everyView()) {
      const svg = wallDrawing(view)
      const texts = textsIn(svg)
      const name = nameBox(texts, 'centre line')
      expect(name.bottom).toBeLessThan(-view.setOut.bottomMm - view.emitter.heightMm)
      const top = linesIn(svg).filter(({ from, to }) => from.left === view.setOut.centreMm && to.bottom === 0)
      expect(top.some(({ from }) => distance(from, name) < 3 * unitOf(texts))).toBe(true)
      expect((view.wall.obstacles ?? []).every((one) => isApart(name, obstacleBox(one)))).toBe(true)
    }
  })

  it('writes flow and return beside their pipes and below the emitter, or leads a line to the pipe', () => {
    for (const view of everyView().filter(({ emitter }) => emitter.heightMm > 1000)) {
      const svg = wallDrawing(view)
      const texts = textsIn(svg)
      const unit = unitOf(texts)
      for (const pipe of view.pipes) {
        const name = nameBox(texts, pipe.carries)
        const foot: Box = { ...pointBox(pipe.xMm, 0, pipe.outsideMm / 2), top: -(pipe.yMm ?? 0) }
        const isBeside = distance(name, foot) < 5 * unit && name.top > -view.setOut.bottomMm
        expect(isBeside || isLed(svg, name, foot, unit), pipe.carries).toBe(true)
      }
    }
  })

  it('draws the wall as large as the paper allows, with narrow margins', () => {
    const wallHeight = 2400
    const paper = { widthMm: 150, heightMm: 105 }
    const unit = unitOf(textsIn(wallDrawing(viewOf(narrowInput(), { paper }))))
    // A tall wall takes two thirds of the height; a wide one takes three fifths of the width.
    expect(wallHeight / unit).toBeGreaterThan(0.63 * paper.heightMm)
    const wide = unitOf(textsIn(wallDrawing(viewOf(longInput(), { paper }))))
    expect(5000 / wide).toBeGreaterThan(0.6 * paper.widthMm)
  })

  it('draws the old emitter dashed where its place is known', () => {
    const old = { name: 'Old one', leftMm: 400, bottomMm: 150, widthMm: 500, heightMm: 600 }
    const svg = wallDrawing(viewOf(railInput(), { old }))
    expect(svg).toMatch(/<rect x="400" y="-750" width="500" height="600" [^>]*stroke-dasharray/)
    expect(wallDrawing(viewOf(railInput()))).not.toContain('x="400" y="-750"')
  })

  it('uses plain shapes only, and escapes what people wrote', () => {
    const input = railInput()
    const obstacles = (input.wall.obstacles ?? []).map((one) => ({ ...one, name: 'A & B <"script">' }))
    const svg = wallDrawing(viewOf({ ...input, wall: { ...input.wall, obstacles } }))
    expect([...new Set([...svg.matchAll(/<([a-z]+)/g)].map(([, name]) => name))].sort()).toEqual([
      'circle',
      'line',
      'path',
      'rect',
      'svg',
      'text',
    ])
    expect(svg).toContain('A &amp; B')
    expect(svg).toContain('&lt;&quot;script&quot;&gt;')
    expect(svg).not.toMatch(/NaN|Infinity|undefined/)
  })

  it('still shows an emitter that lies off the wall', () => {
    const svg = wallDrawing(viewOf(railInput({ centre: { kind: 'at', xMm: -200 } })))
    const [x] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? '').split(' ').map(Number)
    expect(x).toBeLessThan(-450)
    expect(svg).not.toMatch(/NaN|Infinity/)
  })
})

describe('spreading marks', () => {
  it('keeps marks between two ends', () => {
    // By hand: 4 long at -1 and 3 would reach from -3; from 0 on they stand at 2 and 6.
    const marks = [
      { at: -1, length: 4 },
      { at: 3, length: 4 },
    ]
    expect(spread(marks, { from: 0, to: 20 })).toEqual([2, 6])
    expect(spread(marks, { from: -20, to: 4 })).toEqual([-2, 2])
  })

  it('leaves marks alone that do not touch', () => {
    expect(
      spread([
        { at: 0, length: 2 },
        { at: 5, length: 2 },
      ]),
    ).toEqual([0, 5])
  })

  it('moves marks that touch about their own middle', () => {
    // Three marks of 4 wanted at 10: 6, 10 and 14 by hand.
    expect(
      spread([
        { at: 10, length: 4 },
        { at: 10, length: 4 },
        { at: 10, length: 4 },
      ]),
    ).toEqual([6, 10, 14])
  })
})
