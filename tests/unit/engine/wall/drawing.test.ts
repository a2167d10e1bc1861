import { describe, expect, it } from 'vitest'
import { wallDrawing } from '../../../../src-main/engine/wall/drawing.ts'
import type { WallView } from '../../../../src-main/engine/wall/drawing/sheet.ts'
import { spread } from '../../../../src-main/engine/wall/drawing/spread.ts'
import { fitWall } from '../../../../src-main/engine/wall/fit-wall.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { panelInput, railInput } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')

function viewOf(input: SetOutInput, more: Partial<WallView> = {}): WallView {
  const fit = fitWall(input, figures)
  const out = setOutWall(input, figures)
  if (!fit.ok || !out.ok) throw new Error('The test wall does not work')
  const { widthMm, heightMm } = input.emitter
  const emitter = { name: 'Towel rail', widthMm, heightMm }
  return {
    wall: input.wall,
    emitter,
    envelope: fit.value.envelope,
    setOut: out.value,
    pipes: input.pipes,
    ...more,
  }
}

type Text = {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size: number
  readonly anchor: string
}

function textsIn(svg: string): readonly Text[] {
  return [
    ...svg.matchAll(/<text x="([^"]+)" y="([^"]+)" font-size="([^"]+)" text-anchor="([^"]+)"[^>]*>([^<]*)</g),
  ].map(([, x, y, size, anchor, text]) => ({
    text: text ?? '',
    x: Number(x),
    y: Number(y),
    size: Number(size),
    anchor: anchor ?? '',
  }))
}

/** Whether two texts cover each other, with letters half as wide as they are high. */
function collide(a: Text, b: Text): boolean {
  const [first, second] = [a, b].map(({ text, x, y, size, anchor }) => {
    const width = text.length * size * 0.5
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
    return { left, right: left + width, top: y - size * 0.75, bottom: y }
  })
  if (first === undefined || second === undefined) return false
  return (
    first.left < second.right &&
    second.left < first.right &&
    first.top < second.bottom &&
    second.top < first.bottom
  )
}

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

  it('keeps its texts apart, on a narrow and on a wide wall', () => {
    for (const input of [railInput(), panelInput()]) {
      const texts = textsIn(wallDrawing(viewOf(input)))
      const pairs = texts.flatMap((a, nth) => texts.slice(nth + 1).map((b) => [a, b] as const))
      expect(pairs.filter(([a, b]) => collide(a, b)).map(([a, b]) => [a.text, b.text])).toEqual([])
    }
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
