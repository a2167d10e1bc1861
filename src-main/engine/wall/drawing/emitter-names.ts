import { grown, shared } from './boxes.ts'
import { emitterBox, oldEmitterBox } from './emitter-shapes.ts'
import { brokenInto } from './labels.ts'
import type { Label } from './labels.ts'
import { placesApart, placesBeside, placesIn } from './places.ts'
import { smallSize } from './sheet.ts'
import type { Box, Sheet, WallView } from './sheet.ts'

/**
 * The emitter's name: on it to one side of the centre line, else across that line, else apart with a thin line.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example emitterLabel({ unit: 10 }, { emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, setOut: { centreMm: 900, bottomMm: 300 } }).places[0].x < 900 // => true
 */
export function emitterLabel(sheet: Sheet, view: WallView): Label {
  const { unit } = sheet
  const whole = emitterBox(view)
  const box = view.zoom === undefined ? whole : (shared(whole, sheet.wall) ?? whole)
  const inner = grown(box, -0.5 * unit)
  const left = { ...inner, width: inner.width / 2 }
  const right = { ...left, x: box.x + left.width }
  const outside = { lines: linesFor(sheet, view.emitter.name, 24 * unit), size: smallSize }
  const within = (part: Box, cost: number) =>
    [0, 6, 12].flatMap((less, nth) => {
      const lines = linesFor(sheet, view.emitter.name, part.width - (1.2 + less) * unit)
      const more = cost + nth / 2 + lines.length / 5
      return placesIn(sheet, { lines, size: smallSize }, part).map((place) => ({
        ...place,
        cost: place.cost + more,
      }))
    })
  return {
    on: ['emitter', 'centre'],
    places: [...within(left, 0), ...within(right, 0.2), ...within(inner, 1.5)],
    apart: (awayMm) => placesApart(sheet, outside, { box, awayMm }),
  }
}

/**
 * The old emitter's name: within its own rectangle, else touching it, else apart with a thin line; none where its place is not known.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example oldLabel({ unit: 10 }, {}) // => []
 */
export function oldLabel(sheet: Sheet, { old }: WallView): readonly Label[] {
  if (old === undefined) return []
  const box = oldEmitterBox(old)
  const widest = Math.max(box.width / 2, 22 * sheet.unit)
  const text = { lines: linesFor(sheet, old.name, widest), size: smallSize }
  const touching = placesBeside(sheet, text, box).map((place) => ({ ...place, cost: place.cost + 2 }))
  return [
    {
      on: [],
      places: [...placesIn(sheet, text, box), ...touching],
      apart: (awayMm) => placesApart(sheet, text, { box, awayMm }),
    },
  ]
}

function linesFor(sheet: Sheet, name: string, widthMm: number): readonly string[] {
  return brokenInto(sheet, name, { widthMm, size: smallSize })
}
