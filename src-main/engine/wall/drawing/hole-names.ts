import { apart, boxAt } from './boxes.ts'
import { holeSize } from './emitter-shapes.ts'
import { boxOf, costApart } from './labels.ts'
import type { Label, Place } from './labels.ts'
import { smallSize, textSize } from './sheet.ts'
import type { Sheet, WallView } from './sheet.ts'

type Hole = WallView['setOut']['holes'][number]

/**
 * A hole's id: beside its ring towards the middle of the emitter, else on another side, and always nearer to its own ring than to any
 * other; where holes stand too close for that, apart with a thin line to the ring.
 * @param sheet the frame
 * @param hole named
 * @param view what is drawn
 * @source practice, no published source
 * @example holeLabel({ unit: 10 }, { id: 'A1', xMm: 400, yMm: 900 }, { setOut: { centreMm: 600, holes: [] } }).places[0].y // => -900
 */
export function holeLabel(sheet: Sheet, { id, ...at }: Hole, { setOut, marks }: WallView): Label {
  const hole: Hole = { id: marks?.holeNames?.[id] ?? id, ...at }
  const { arm, radius } = holeSize(sheet, setOut.holes)
  const others = setOut.holes
    .filter((other) => other.id !== id)
    .map((other) => boxAt(other.xMm, -other.yMm, 2 * radius))
  const own = boxAt(hole.xMm, -hole.yMm, 2 * radius)
  const inwards = hole.xMm > setOut.centreMm ? -1 : 1
  const places = [textSize, smallSize].flatMap((size) => beside(sheet, hole, { size, arm, inwards }))
  const isPlain = (place: Place) => {
    const box = boxOf(sheet, place)
    const away = apart(box, own)
    return others.every((other) => apart(box, other) > away + 0.9 * sheet.unit)
  }
  return {
    on: ['emitter'],
    places: places.map((place) => (isPlain(place) ? place : { ...place, cost: place.cost + 25 })),
    apart: (awayMm) => led(sheet, hole, { radius, awayMm }),
  }
}

/** Beside, above and below, and at the corners. */
function beside(
  sheet: Sheet,
  { id, xMm, yMm }: Hole,
  { size, arm, inwards }: { readonly size: number; readonly arm: number; readonly inwards: number },
): readonly Place[] {
  const own = boxOf(sheet, { lines: [id], size, x: 0, y: 0, cost: 0 })
  const across = inwards * (arm + 0.25 * sheet.unit + own.width / 2)
  const up = arm + 0.25 * sheet.unit + own.height / 2
  const smaller = size === textSize ? 0 : 2
  return [
    [across, 0, 0],
    [-across, 0, 4],
    [across, -0.55 * up, 0.7],
    [across, 0.55 * up, 0.8],
    [-across, -0.55 * up, 4.2],
    [-across, 0.55 * up, 4.3],
    [0, -up, 4.6],
    [0, up, 4.7],
  ].map(([dx = 0, dy = 0, cost = 0]) => ({
    lines: [id],
    size,
    x: xMm + dx,
    y: -yMm + dy,
    cost: cost + smaller,
  }))
}

/** Round the ring, so far off, with a line that ends at the ring. */
function led(
  sheet: Sheet,
  { id, xMm, yMm }: Hole,
  { radius, awayMm }: { readonly radius: number; readonly awayMm: number },
): readonly Place[] {
  const away = radius + (awayMm + 1.6) * sheet.unit
  return Array.from({ length: 24 }, (_, nth): Place => {
    const turn = (nth * Math.PI) / 12
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
    return {
      lines: [id],
      size: textSize,
      x: xMm + away * cos,
      y: -yMm + away * sin,
      cost: costApart(awayMm),
      leadsTo: [xMm + radius * cos, -yMm + radius * sin],
      toRing: true,
    }
  })
}
