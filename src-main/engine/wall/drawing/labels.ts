import { drawBox, drawText, textSize, textWidth } from './sheet.ts'
import type { Box, Sheet } from './sheet.ts'

/** A place already used; covering it costs its weight for each square millimetre. */
export type Taken = { readonly box: Box; readonly weight: number }

/** Lines of text about a middle. */
export type Place = {
  readonly lines: readonly string[]
  readonly x: number
  readonly y: number
  /** What it costs to stand there rather than where it belongs. */
  readonly cost?: number
}

/** A label with the places it may take, the best first. */
export type Label = { readonly places: readonly Place[]; readonly size?: number }

/**
 * Labels put where they cover nothing, or the least: each in turn takes the first of its places that is free and inside the frame.
 * @param sheet the frame
 * @param labels the most important first
 * @param taken what must stay readable
 * @source practice, no published source
 * @example drawLabels({ unit: 10, whole: { x: 0, y: 0, width: 900, height: 900 } }, [{ places: placesAt(['A1'], [[100, 100]]) }], []).length // => 2
 */
export function drawLabels(
  sheet: Sheet,
  labels: readonly Label[],
  taken: readonly Taken[],
): readonly string[] {
  const used: Taken[] = [...taken]
  return labels.flatMap(({ places, size }) => {
    const boxes = places.map((place) => boxOf(sheet, place, size))
    const costs = boxes.map((box, nth) => cost(box, sheet, used) + (places[nth]?.cost ?? 0))
    const best = costs.indexOf(Math.min(...costs))
    const box = boxes[best]
    const lines = places[best]?.lines
    if (box === undefined || lines === undefined) return []
    used.push({ box, weight: 40 })
    return [
      drawBox(sheet, box, { thick: 0, fill: '#fff', colour: 'none' }),
      ...linesIn(sheet, box, { lines, size }),
    ]
  })
}

/**
 * The same lines at several middles.
 * @param lines of text
 * @param middles in the picture, the best first
 * @source practice, no published source
 * @example placesAt(['A1'], [[1, 2]]) // => [{ lines: ['A1'], x: 1, y: 2 }]
 */
export function placesAt(
  lines: readonly string[],
  middles: readonly (readonly [x: number, y: number])[],
): readonly Place[] {
  return middles.map(([x, y]) => ({ lines, x, y }))
}

/**
 * A name broken into lines no wider than so much; a longer word stays whole.
 * @param sheet the frame
 * @param name what is written
 * @param most width in millimetres on the wall, and the text's size
 * @source practice, no published source
 * @example brokenInto({ unit: 1 }, 'Double panel radiator', { widthMm: 30 }) // => ["Double panel", "radiator"]
 */
export function brokenInto(
  sheet: Pick<Sheet, 'unit'>,
  name: string,
  { widthMm, size }: { readonly widthMm: number; readonly size?: number },
): readonly string[] {
  return name.split(/\s+/).reduce<readonly string[]>((lines, word) => {
    const last = lines.at(-1)
    const longer = `${last} ${word}`
    return last !== undefined && textWidth(sheet, longer, size) <= widthMm
      ? [...lines.slice(0, -1), longer]
      : [...lines, word]
  }, [])
}

const lineHeight = 1.25

function boxOf(sheet: Sheet, { lines, x, y }: Place, size?: number): Box {
  const width = Math.max(...lines.map((line) => textWidth(sheet, line, size)), 0) + 0.6 * sheet.unit
  const height = lines.length * (size ?? textSize) * lineHeight * sheet.unit
  return { x: x - width / 2, y: y - height / 2, width, height }
}

function linesIn(
  sheet: Sheet,
  box: Box,
  { lines, size }: { readonly lines: readonly string[]; readonly size: number | undefined },
): readonly string[] {
  const step = (size ?? textSize) * lineHeight * sheet.unit
  const words = { x: box.x + box.width / 2, ...(size === undefined ? {} : { size }) }
  return lines.map((text, nth) => drawText(sheet, { ...words, text, y: box.y + (nth + 0.5) * step }))
}

function cost(box: Box, { whole, unit }: Sheet, used: readonly Taken[]): number {
  const outside = box.width * box.height - overlap(box, whole)
  return (
    used.reduce((sum, { box: other, weight }) => sum + weight * overlap(box, other), 100 * outside) /
    unit /
    unit
  )
}

function overlap(a: Box, b: Box): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
  const up = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
  return Math.max(0, across) * Math.max(0, up)
}
