import { brokenInto } from './labels.ts'
import type { Label, Place } from './labels.ts'
import { waysToBreak } from './labels.ts'
import { placesApart, placesBeside, placesIn } from './places.ts'
import { smallSize, textSize } from './sheet.ts'
import type { Sheet } from './sheet.ts'
import type { Named } from './taken.ts'

/**
 * An obstacle's name: on its own rectangle in the larger size, else in the smaller, else touching it, else apart with a thin line.
 * @param sheet the frame
 * @param obstacle its name and its part on the wall
 * @source practice, no published source
 * @example obstacleLabel({ unit: 10 }, { name: 'Window', box: { x: 0, y: -2000, width: 600, height: 900 }, of: 'obstacle 0' }).places[0].y // => -1550
 */
export function obstacleLabel(sheet: Sheet, { name, box, of }: Named): Label {
  const widthMm = box.width - sheet.unit
  const within = [textSize, smallSize].flatMap((size, nth) =>
    placesIn(sheet, { lines: brokenInto(sheet, name, { widthMm, size }), size }, box).map(dearer(nth)),
  )
  const texts = waysToBreak(sheet, name).map((lines) => ({ lines, size: smallSize }))
  const touching = texts.flatMap((text, nth) => placesBeside(sheet, text, box).map(dearer(3 + nth / 2)))
  return {
    on: [of],
    places: [...within, ...touching],
    apart: (awayMm) => texts.flatMap((text) => placesApart(sheet, text, { box, awayMm })),
  }
}

function dearer(by: number): (place: Place) => Place {
  return (place) => ({ ...place, cost: place.cost + by })
}
