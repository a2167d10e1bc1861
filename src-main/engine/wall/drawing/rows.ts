import { drawMeasures, drawRunning } from './dimensions.ts'
import type { Drawn, Run } from './dimensions.ts'
import { marginsOf, titleGap, titleIn } from './frame.ts'
import type { RowPlace } from './frame.ts'
import { measuredOf } from './measured.ts'
import type { Row } from './measured.ts'
import { cutMeasures, cutStops } from './marks/seen.ts'
import type { Stretch } from './marks/seen.ts'
import { drawText, smallSize } from './sheet.ts'
import type { Sheet, WallView } from './sheet.ts'

/**
 * The dimensions round a drawing, in the rows and columns that its frame left room for.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawDimensions({ unit: 20, titleLines: 1, wall: { x: 0, y: -2400, width: 1800, height: 2400 }, whole: { x: -660, y: -2740, width: 3120, height: 3500 } }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).numbers.some((number) => number.includes('>1800<')) // => true
 */
export function drawDimensions(sheet: Sheet, view: WallView): Drawn {
  const measured = measuredOf(view)
  const margins = marginsOf(measured, sheet.titleLines)
  const { x, y, width, height } = sheet.wall
  const foot = y + height
  const { along, up } = stretchesOf(sheet, view)
  const row = (one: Row, place: RowPlace | undefined, at: (paperMm: number) => number) =>
    place === undefined
      ? nothing
      : drawRow(sheet, cutRow(one, along), { line: at(place.line), middle: at(place.middle) })
  const drawn = [
    ...measured.below.map((one, nth) => row(one, margins.below[nth], (mm) => foot + mm * sheet.unit)),
    ...measured.above.map((one, nth) => row(one, margins.above[nth], (mm) => y - mm * sheet.unit)),
    ...measured.left.map((column, nth) =>
      drawMeasures(sheet, cutMeasures(column, up), {
        way: 'up',
        at: x - (margins.left[nth] ?? 0) * sheet.unit,
        ...(up === null ? {} : { within: up }),
      }),
    ),
    drawRunning(sheet, cutStops(measured.right, up), {
      way: 'up',
      at: x + width + margins.right * sheet.unit,
      ...(up === null ? {} : { within: up }),
    }),
  ]
  return {
    lines: drawn.flatMap(({ lines }) => lines),
    numbers: drawn.flatMap(({ numbers }) => numbers),
    faints: drawn.flatMap(({ faints }) => faints),
  }
}

type Stretches = { readonly along: Stretch | null; readonly up: Stretch | null }

/** What a part of the picture shows of rows and columns; a picture that is drawn whole shows all. */
function stretchesOf({ wall: { x, y, width, height } }: Sheet, { zoom }: WallView): Stretches {
  if (zoom === undefined) return { along: null, up: null }
  return {
    along: { from: x, to: x + width, reach: [y, y + height] },
    up: { from: -y - height, to: -y, reach: [x, x + width] },
  }
}

function cutRow(row: Row, along: Stretch | null): Row {
  return row.kind === 'running'
    ? { ...row, stops: cutStops(row.stops, along) }
    : { ...row, measures: cutMeasures(row.measures, along) }
}

const nothing: Drawn = { lines: [], numbers: [], faints: [] }

/** A row between the titles on its left and the edge of the sheet. */
function drawRow(sheet: Sheet, row: Row, { line, middle }: RowPlace): Drawn {
  const { unit, wall, whole } = sheet
  const within = { from: wall.x - unit, to: whole.x + whole.width }
  const run: Run = { way: 'across', at: line, within }
  const drawn =
    row.kind === 'running' ? drawRunning(sheet, row.stops, run) : drawMeasures(sheet, row.measures, run)
  const lines = titleIn(row.title, sheet.titleLines)
  const step = smallSize * 1.15 * unit
  const title = lines.map((text, nth) =>
    drawText(sheet, {
      text,
      x: wall.x - titleGap * unit,
      y: middle + (nth - (lines.length - 1) / 2) * step,
      size: smallSize,
      anchor: 'end',
    }),
  )
  return { ...drawn, numbers: [...drawn.numbers, ...title] }
}
