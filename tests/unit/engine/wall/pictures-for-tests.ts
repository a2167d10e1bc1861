import type { Obstacle } from '../../../../src-main/domain/wall.ts'
import type { WallView } from '../../../../src-main/engine/wall/drawing/sheet.ts'

type Text = {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size: number
  readonly anchor: string
}

export function textsIn(svg: string): readonly Text[] {
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

export type Box = {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** The room a text takes, with letters half as wide as they are high. */
export function boxOf({ text, x, y, size, anchor }: Text): Box {
  const width = text.length * size * 0.5
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, right: left + width, top: y - size * 0.75, bottom: y }
}

export function isApart(a: Box, b: Box): boolean {
  return a.left >= b.right || b.left >= a.right || a.top >= b.bottom || b.top >= a.bottom
}

export function distance(a: Box, b: Box): number {
  const across = Math.max(a.left - b.right, b.left - a.right, 0)
  const up = Math.max(a.top - b.bottom, b.top - a.bottom, 0)
  return Math.hypot(across, up)
}

export function pointBox(x: number, y: number, half = 0): Box {
  return { left: x - half, right: x + half, top: y - half, bottom: y + half }
}

export function obstacleBox({ xMm, yMm, widthMm, heightMm }: Obstacle): Box {
  return { left: xMm, right: xMm + widthMm, top: -yMm - heightMm, bottom: -yMm }
}

type Ring = { readonly box: Box; readonly id: string }

export function ringsIn(svg: string, { setOut }: WallView): readonly Ring[] {
  return setOut.holes.map(({ id, xMm, yMm }) => {
    const r = Number(new RegExp(`<circle cx="${xMm}" cy="${-yMm}" r="([^"]+)"`).exec(svg)?.[1])
    return { id, box: pointBox(xMm, -yMm, r) }
  })
}

type Line = { readonly from: Box; readonly to: Box }

export function linesIn(svg: string): readonly Line[] {
  return [...svg.matchAll(/<line x1="([^"]+)" y1="([^"]+)" x2="([^"]+)" y2="([^"]+)"/g)].map((found) => {
    const [x1 = NaN, y1 = NaN, x2 = NaN, y2 = NaN] = found.slice(1).map(Number)
    return { from: pointBox(x1, y1), to: pointBox(x2, y2) }
  })
}

/** One millimetre of paper: the larger size of text is 3.2 of them high. */
export function unitOf(texts: readonly Text[]): number {
  return Math.max(...texts.map(({ size }) => size)) / 3.2
}

/** Whether a line runs from a text's edge to a thing. */
export function isLed(svg: string, text: Box, thing: Box, unit: number): boolean {
  return linesIn(svg).some(
    ({ from, to }) => distance(from, text) < 2 * unit && distance(to, thing) < 0.1 * unit,
  )
}

/** The lines of a name, wherever they were broken, as one box. */
export function nameBox(texts: readonly Text[], name: string): Box {
  const own = texts.filter(
    ({ text }) => name === text || name.split(' ').some((word) => text.split(' ').includes(word)),
  )
  const start = own.findIndex((_, nth) => joined(own.slice(nth), name) !== null)
  const boxes = (joined(own.slice(start), name) ?? []).map(boxOf)
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  }
}

/** The first texts that make up the name; null where they do not. */
function joined(texts: readonly Text[], name: string): readonly Text[] | null {
  const count = texts.findIndex(
    (_, nth) =>
      texts
        .slice(0, nth + 1)
        .map(({ text }) => text)
        .join(' ') === name,
  )
  return count < 0 ? null : texts.slice(0, count + 1)
}
