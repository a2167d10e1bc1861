import { roundedMm } from '../in-words.ts'
import { shows } from '../clashes.ts'
import { drawMeasures, drawRunning, smallSize } from './dimensions.ts'
import type { Drawn, Measure, Stop } from './dimensions.ts'
import { emitterBox } from './emitter-shapes.ts'
import { drawText } from './sheet.ts'
import type { Sheet, WallView } from './sheet.ts'

/**
 * The dimensions round a drawing. Below: holes and valves from the centre line, the centre line from both ends, the wall's width.
 * Above: clear space to both ends and to what stands beside. Left: bottom edge, height and clear space above, what stands above and
 * below, the wall's height. Right: every hole and pipe entry from the floor.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawDimensions({ unit: 20, wall: { x: 0, y: -2400, width: 1800, height: 2400 }, whole: { x: -660, y: -2740, width: 3120, height: 3500 } }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).numbers.some((number) => number.includes('>1800<')) // => true
 */
export function drawDimensions(sheet: Sheet, view: WallView): Drawn {
  const drawn = [...below(sheet, view), ...above(sheet, view), ...left(sheet, view), right(sheet, view)]
  return { lines: drawn.flatMap(({ lines }) => lines), numbers: drawn.flatMap(({ numbers }) => numbers) }
}

function below(sheet: Sheet, view: WallView): readonly Drawn[] {
  const { wall, setOut } = view
  const { centreMm } = setOut
  const row = (nth: number) => Math.max(0, sheet.wall.y + sheet.wall.height) + nth * sheet.unit
  const nought = (at: number): Stop => ({ place: centreMm, text: '0', reach: at })
  const holes = grouped(setOut.holes.map((hole) => ({ place: hole.xMm, id: hole.id, reach: -hole.yMm })))
  const holeStops = holes.map(({ place, ids, reach }): Stop => ({
    place,
    reach,
    text: fromCentre(place - centreMm),
    below: ids,
  }))
  const valveStops = setOut.valves.map(({ xMm, yMm }): Stop => ({
    place: xMm,
    reach: -yMm,
    text: fromCentre(xMm - centreMm),
  }))
  const ends: readonly Measure[] = [
    { from: Math.min(0, centreMm), to: Math.max(0, centreMm), reach: [0, 0] },
    { from: Math.min(centreMm, wall.widthMm), to: Math.max(centreMm, wall.widthMm), reach: [0, 0] },
  ]
  return [
    titled(
      sheet,
      { text: 'Holes from centre', y: row(5) },
      drawRunning(sheet, withNought(holeStops, nought(row(5))), { way: 'across', at: row(5) }),
    ),
    titled(
      sheet,
      { text: 'Valves from centre', y: row(16.5) },
      drawRunning(sheet, withNought(valveStops, nought(row(16.5))), { way: 'across', at: row(16.5) }),
    ),
    titled(
      sheet,
      { text: 'Centre from ends', y: row(29) },
      drawMeasures(sheet, ends, { way: 'across', at: row(29) }),
    ),
    titled(
      sheet,
      { text: 'Wall', y: row(35) },
      drawMeasures(sheet, [{ from: 0, to: wall.widthMm, reach: [0, 0] }], { way: 'across', at: row(35) }),
    ),
  ]
}

/** A stop on the centre line itself says nought already. */
function withNought(stops: readonly Stop[], nought: Stop): readonly Stop[] {
  return stops.some(({ place }) => roundedMm(place - nought.place) === 0) ? stops : [...stops, nought]
}

function above(sheet: Sheet, view: WallView): readonly Drawn[] {
  const { wall, envelope } = view
  const row = (nth: number) => sheet.wall.y - nth * sheet.unit
  const edge = -envelope.topMm
  const end = -wall.heightMm
  const clear: readonly Measure[] = [
    { from: 0, to: envelope.leftMm, reach: [end, edge] },
    { from: Math.max(0, envelope.leftMm), to: Math.min(wall.widthMm, envelope.rightMm), reach: [edge, edge] },
    { from: envelope.rightMm, to: wall.widthMm, reach: [edge, end] },
  ]
  return [
    titled(
      sheet,
      { text: 'Clear to ends', y: row(3) },
      drawMeasures(sheet, clear, { way: 'across', at: row(3) }),
    ),
    ...besides(sheet, view, row(10)),
  ]
}

/** Clear space to the nearest thing on each side. */
function besides(sheet: Sheet, { wall, envelope }: WallView, at: number): readonly Drawn[] {
  const { leftMm, rightMm, topMm, bottomMm } = envelope
  const level = (wall.obstacles ?? []).filter(
    (one) => shows(one) && one.yMm < topMm && one.yMm + one.heightMm > bottomMm,
  )
  const lefts = level
    .map((one) => ({ at: one.xMm + one.widthMm, top: -one.yMm - one.heightMm }))
    .filter((one) => one.at <= leftMm)
  const rights = level
    .map((one) => ({ at: one.xMm, top: -one.yMm - one.heightMm }))
    .filter((one) => one.at >= rightMm)
  const nearestLeft = lefts.toSorted((a, b) => b.at - a.at)[0]
  const nearestRight = rights.toSorted((a, b) => a.at - b.at)[0]
  const measures: readonly Measure[] = [
    ...(nearestLeft === undefined
      ? []
      : [{ from: nearestLeft.at, to: leftMm, reach: [nearestLeft.top, -topMm] as const }]),
    ...(nearestRight === undefined
      ? []
      : [{ from: rightMm, to: nearestRight.at, reach: [-topMm, nearestRight.top] as const }]),
  ]
  return measures.length === 0
    ? []
    : [titled(sheet, { text: 'Clear beside', y: at }, drawMeasures(sheet, measures, { way: 'across', at }))]
}

function left(sheet: Sheet, view: WallView): readonly Drawn[] {
  const { wall, envelope, setOut } = view
  const column = (nth: number) => sheet.wall.x - nth * sheet.unit
  const edge = emitterBox(view).x
  const chain: readonly Measure[] = [
    { from: 0, to: setOut.bottomMm, reach: [0, edge] },
    { from: setOut.bottomMm, to: envelope.topMm, reach: [edge, edge] },
    { from: envelope.topMm, to: wall.heightMm, reach: [edge, 0] },
  ]
  return [
    drawMeasures(sheet, aboveAndBelow(view), { way: 'up', at: column(10) }),
    drawMeasures(sheet, chain, { way: 'up', at: column(20) }),
    drawMeasures(sheet, [{ from: 0, to: wall.heightMm, reach: [0, 0] }], { way: 'up', at: column(30) }),
  ]
}

/** Clear space to the nearest thing above and below. */
function aboveAndBelow(view: WallView): readonly Measure[] {
  const { wall, envelope, setOut } = view
  const over = (wall.obstacles ?? [])
    .filter((one) => shows(one) && one.xMm < envelope.rightMm && one.xMm + one.widthMm > envelope.leftMm)
    .map((one) => ({ bottom: one.yMm, top: one.yMm + one.heightMm, x: one.xMm }))
  const skirtingMm = wall.skirtingHeightMm ?? 0
  const under = skirtingMm === 0 ? over : [...over, { bottom: 0, top: skirtingMm, x: 0 }]
  const edge = emitterBox(view).x
  const high = over.filter((one) => one.bottom >= envelope.topMm).toSorted((a, b) => a.bottom - b.bottom)[0]
  const low = under.filter((one) => one.top <= setOut.bottomMm).toSorted((a, b) => b.top - a.top)[0]
  return [
    ...(high === undefined
      ? []
      : [{ from: envelope.topMm, to: high.bottom, reach: [edge, high.x] as const }]),
    ...(low === undefined ? [] : [{ from: low.top, to: setOut.bottomMm, reach: [low.x, edge] as const }]),
  ]
}

function right(sheet: Sheet, view: WallView): Drawn {
  const { setOut, wall } = view
  const at = sheet.wall.x + sheet.wall.width + 4 * sheet.unit
  const marks = [
    ...setOut.holes.map((hole) => ({ place: hole.yMm, id: hole.id, reach: hole.xMm })),
    ...setOut.valves.map((valve) => ({ place: valve.yMm, id: 'valves', reach: valve.xMm })),
  ]
  const stops = grouped(marks).map(({ place, ids, reach }): Stop => ({
    place,
    reach,
    text: `${roundedMm(place)}  ${ids}`,
  }))
  return drawRunning(sheet, [...stops, { place: 0, text: '0  floor', reach: wall.widthMm }], {
    way: 'up',
    at,
  })
}

type Mark = { readonly place: number; readonly id: string; readonly reach: number }

/** Marks at the same place, to a tenth of a millimetre, as one stop; its faint line starts at the mark nearest to the dimension. */
function grouped(
  marks: readonly Mark[],
): readonly { readonly place: number; readonly ids: string; readonly reach: number }[] {
  const groups = Map.groupBy(marks, ({ place }) => roundedMm(place))
  return [...groups.values()].map((group) => ({
    place: group[0]?.place ?? 0,
    ids: shortened([...new Set(group.map(({ id }) => id))]),
    reach: Math.max(...group.map(({ reach }) => reach)),
  }))
}

/** Long rows of ids are cut to the first and the last, for the list beside the drawing has them all. */
function shortened(ids: readonly string[]): string {
  return ids.length <= 3 ? ids.join(' ') : `${ids[0]} … ${ids.at(-1)}`
}

function fromCentre(distanceMm: number): string {
  return String(Math.abs(roundedMm(distanceMm)))
}

function titled(sheet: Sheet, title: { readonly text: string; readonly y: number }, drawn: Drawn): Drawn {
  const text = drawText(sheet, { ...title, x: sheet.wall.x - 4 * sheet.unit, size: smallSize, anchor: 'end' })
  return { lines: drawn.lines, numbers: [...drawn.numbers, text] }
}
