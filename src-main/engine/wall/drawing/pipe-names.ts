import type { Pipe } from '../../../domain/wall.ts'
import { boxAt } from './boxes.ts'
import { floorPipeBox, pipeEndMm } from './emitter-shapes.ts'
import { boxOf } from './labels.ts'
import type { Label, Place } from './labels.ts'
import { placesApart } from './places.ts'
import { smallSize } from './sheet.ts'
import type { Sheet, WallView } from './sheet.ts'

/**
 * What a pipe carries, written beside it and low, outwards from the emitter where that side is free; else apart with a thin line.
 * @param sheet the frame
 * @param pipe named
 * @param view what is drawn
 * @source practice, no published source
 * @example pipeLabel({ unit: 10 }, { side: 'left', xMm: 400, yMm: 120, from: 'floor', outsideMm: 15, carries: 'flow' }, { setOut: { valves: [] } }).places[0].x < 400 // => true
 */
export function pipeLabel(sheet: Sheet, pipe: Pipe, { setOut }: WallView): Label {
  const { unit } = sheet
  const text = {
    lines: [pipe.carries === 'unknown' ? `${pipe.side} pipe` : pipe.carries],
    size: smallSize,
  }
  const own = boxOf(sheet, { ...text, x: 0, y: 0, cost: 0 })
  const endMm = pipeEndMm(pipe, setOut.valves)
  const box =
    pipe.from === 'floor' ? floorPipeBox(sheet, pipe, setOut.valves) : boxAt(pipe.xMm, -endMm, 2.4 * unit)
  const outwards = pipe.side === 'left' ? -1 : 1
  const lowest = own.height / 2 + 0.3 * unit
  const heights =
    pipe.from === 'floor'
      ? [lowest, lowest + unit, lowest + 2.95 * unit, lowest + 4.5 * unit]
      : [endMm, endMm - 2 * unit, endMm + 2 * unit]
  const places = heights.flatMap((height, nth) =>
    [outwards, -outwards].flatMap((side) =>
      [0.7, 2.2, 3.6].map((gap): Place => {
        const x = pipe.xMm + side * (box.width / 2 + own.width / 2 + gap * unit)
        return { ...text, x, y: -height, cost: (side === outwards ? 0 : 0.5) + 1.1 * nth + 0.3 * gap }
      }),
    ),
  )
  return { on: [], places, apart: (awayMm) => placesApart(sheet, text, { box, awayMm }) }
}
