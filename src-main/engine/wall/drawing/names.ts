import { drawLabels } from './draw-labels.ts'
import type { DrawnLabels } from './draw-labels.ts'
import { emitterLabel, oldLabel } from './emitter-names.ts'
import { emitterBox } from './emitter-shapes.ts'
import { holeLabel } from './hole-names.ts'
import { waysToBreak, settle } from './labels.ts'
import type { Label, Settled } from './labels.ts'
import { obstacleLabel } from './obstacle-names.ts'
import { pipeLabel } from './pipe-names.ts'
import { shared } from './boxes.ts'
import { clashLabels } from './marks/draw-marks.ts'
import { planLabels } from './marks/plan.ts'
import { isIn, seenOn } from './marks/seen.ts'
import { placesApart, placesBeside } from './places.ts'
import { smallSize, textWidth } from './sheet.ts'
import type { Box, Ends, Sheet, WallView } from './sheet.ts'
import { namedObstacles, takenIn } from './taken.ts'

/** The names of a drawing, and where the centre line starts: at its own name, when that stands on it. */
export type Names = DrawnLabels & { readonly centreTop: number }

/**
 * The names in a drawing, placed so that none covers another or a thing that is not its own: holes first, then the
 * centre line, pipes and obstacles, then emitters.
 * @param sheet the frame
 * @param whole what is drawn
 * @param faints faint lines of the dimensions
 * @source practice, no published source
 * @example drawNames({ unit: 20, wall: { x: 0, y: -2400, width: 1800, height: 2400 }, whole: { x: -660, y: -2740, width: 3120, height: 3500 } }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }, []).texts.length // => 2
 */
export function drawNames(sheet: Sheet, whole: WallView, faints: readonly Ends[]): Names {
  const view = seenOn(sheet, whole)
  const emitter = shared(emitterBox(view), sheet.wall)
  const settled = settle(
    sheet,
    [
      clashLabels(sheet, view),
      view.setOut.holes.map((hole) => holeLabel(sheet, hole, view)),
      [
        ...centreLabels(sheet, view),
        ...view.pipes.map((pipe) => pipeLabel(sheet, pipe, view)),
        ...namedObstacles(view).map((obstacle) => obstacleLabel(sheet, obstacle)),
      ],
      [
        ...(emitter === null ? [] : [emitterLabel(sheet, view)]),
        ...oldLabel(sheet, view),
        ...studsLabel(sheet, view),
        ...planLabels(sheet, view),
      ],
    ],
    takenIn(sheet, view, faints),
  )
  return { ...drawLabels(sheet, settled), centreTop: centreTop(sheet, view, settled) }
}

const centreName = 'centre line'
/** How far the centre line reaches above the emitter where its name does not stand on its end, in millimetres of paper. */
const over = 3.2

/** On the top end of the line, outside the emitter; else beside that end, or apart from it. */
function centreLabel(sheet: Sheet, view: WallView): Label {
  const { unit } = sheet
  const { centreMm } = view.setOut
  const top = emitterBox(view).y
  const texts = waysToBreak(sheet, centreName).map((lines) => ({ lines, size: smallSize }))
  const end: Box = { x: centreMm, y: top - over * unit, width: 0, height: (over - 1) * unit }
  const onEnd = texts.flatMap((text) =>
    [1, 0.2, 2.2, 4, 6, 9, 12, 16].flatMap((gap) =>
      placesBeside(sheet, text, { x: centreMm, y: top - gap * unit, width: 0, height: 0 })
        .slice(0, 1)
        .map((place) => ({ ...place, cost: 0.1 * Math.abs(gap - 1) + text.lines.length - 1 })),
    ),
  )
  const beside = texts.flatMap((text) =>
    placesBeside(sheet, text, end)
      .filter((place) => place.x !== centreMm)
      .map((place) => ({ ...place, cost: place.cost + 1.5 })),
  )
  return {
    of: centreName,
    on: ['centre'],
    places: [...onEnd, ...beside],
    apart: (awayMm) =>
      texts.flatMap((text) => placesApart(sheet, text, { box: { ...end, height: 0 }, awayMm })),
  }
}

/** None where the end that it stands on is not in the picture. */
function centreLabels(sheet: Sheet, view: WallView): readonly Label[] {
  const isSeen = view.zoom === undefined || isIn(sheet.wall, view.setOut.centreMm, emitterBox(view).y)
  return isSeen ? [centreLabel(sheet, view)] : []
}

function centreTop({ unit }: Sheet, view: WallView, settled: readonly Settled[]): number {
  const end = emitterBox(view).y - over * unit
  const own = settled.find(({ of, place }) => of === centreName && place.x === view.setOut.centreMm)
  return own === undefined || own.leader !== null ? end : own.box.y + own.box.height
}

function studsLabel(sheet: Sheet, { wall, zoom }: WallView): readonly Label[] {
  if (wall.studs === undefined) return []
  const { firstMm, spacingMm, widthMm } = wall.studs
  const { unit } = sheet
  const across = widthMm / 2 + textWidth(sheet, 'stud', smallSize) / 2 + 0.8 * unit
  const places = [0, 1, 2]
    .flatMap((nth) =>
      [3, 8].map((down) => ({
        lines: ['stud'],
        size: smallSize,
        x: firstMm + nth * spacingMm + across,
        y: -wall.heightMm + down * unit,
        cost: nth,
      })),
    )
    .filter(({ x, y }) => zoom === undefined || isIn(sheet.wall, x, y))
  if (places.length === 0) return []
  return [{ on: [], places }]
}
