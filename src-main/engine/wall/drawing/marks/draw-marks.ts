import { hatch } from '../wall-shapes.ts'
import { waysToBreak } from '../labels.ts'
import type { Label } from '../labels.ts'
import { placesApart, placesBeside, placesIn } from '../places.ts'
import { drawBox, drawLine, smallSize } from '../sheet.ts'
import type { Box, Sheet, WallView } from '../sheet.ts'
import { holding } from '../svg.ts'
import { roundedMm } from '../../in-words.ts'
import type { Area, Looked } from './looked.ts'

/**
 * An area of the wall as a rectangle in the picture.
 * @param area mm from the wall's left end and finished floor
 * @source geometry
 * @example areaBox({ leftMm: 10, rightMm: 30, bottomMm: 100, topMm: 150 }) // => { x: 10, y: -150, width: 20, height: 50 }
 */
export function areaBox({ leftMm, rightMm, bottomMm, topMm }: Area): Box {
  return { x: leftMm, y: -topMm, width: rightMm - leftMm, height: topMm - bottomMm }
}

/**
 * The bands in which cables may run, light under everything else.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawZones({ unit: 10 }, {}) // => []
 */
export function drawZones(sheet: Sheet, { marks }: Pick<WallView, 'marks'>): readonly string[] {
  const zones = marks?.zones ?? []
  if (zones.length === 0) return []
  const boxes = zones.map(({ area }) => areaBox(area))
  return [
    holding('g', { class: 'zones' }, [
      ...boxes.map((box) => drawBox(sheet, box, { thick: 0, fill: '#eee', colour: 'none' })),
      ...boxes.map((box) => drawBox(sheet, box, { thick: 0.14, dash: [0.3, 0.9], colour: '#777' })),
    ]),
  ]
}

/**
 * The clear space that each thing asks, dotted round it; only where asked for.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawAsked({ unit: 10 }, {}) // => []
 */
export function drawAsked(sheet: Sheet, { marks }: Pick<WallView, 'marks'>): readonly string[] {
  if (marks?.showsAsked !== true) return []
  const boxes = (marks.looked ?? []).filter(({ needMm }) => needMm > 0).map(({ asks }) => areaBox(asks))
  return [
    holding(
      'g',
      { class: 'asked' },
      boxes.map((box) => drawBox(sheet, box, { thick: 0.2, dash: [0.5, 0.9], colour: '#555' })),
    ),
  ]
}

/**
 * What the emitter takes of the clear space that others ask: hatched across both ways inside a thick edge.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawClashes({ unit: 10 }, {}) // => []
 */
export function drawClashes(sheet: Sheet, { marks }: Pick<WallView, 'marks'>): readonly string[] {
  return clashesIn(marks).map(({ taken }) => {
    const box = visible(sheet, areaBox(taken))
    const step = 1.6 * sheet.unit
    const pen = { thick: 0.2 }
    return holding('g', { class: 'clash' }, [
      ...hatch(box, step).map((ends) => drawLine(sheet, ends, pen)),
      ...hatch(box, step).map(([x1, y1, x2, y2]) =>
        drawLine(sheet, [mirrored(box, x1), y1, mirrored(box, x2), y2], pen),
      ),
      drawBox(sheet, box, { thick: 0.7 }),
    ])
  })
}

/**
 * What is said of each clash beside it: what there is and what is needed.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example clashLabels({ unit: 10 }, {}) // => []
 */
export function clashLabels(sheet: Sheet, { marks }: Pick<WallView, 'marks'>): readonly Label[] {
  return clashesIn(marks).map((clash) => {
    const box = visible(sheet, areaBox(clash.taken))
    const texts = waysToBreak(sheet, clashWords(clash)).map((lines) => ({ lines, size: smallSize }))
    return {
      of: clashName,
      on: [],
      places: texts.flatMap((text, nth) => [
        ...placesBeside(sheet, text, box).map((place) => ({ ...place, cost: place.cost + nth / 4 })),
        ...placesIn(sheet, text, box).map((place) => ({ ...place, cost: place.cost + 3 })),
      ]),
      apart: (awayMm) => texts.flatMap((text) => placesApart(sheet, text, { box, awayMm })),
    }
  })
}

/** How a clash's label is told from others. */
export const clashName = 'clash'

/**
 * A clash in a few words.
 * @param clash what is needed and what there is, mm
 * @source practice, no published source
 * @example clashWords({ with: 'Window', needMm: 100, haveMm: -20 }) // => "Clash: 20 mm over Window"
 */
export function clashWords({
  with: what,
  needMm,
  haveMm,
}: Pick<Looked, 'with' | 'needMm' | 'haveMm'>): string {
  return haveMm < 0
    ? `Clash: ${roundedMm(-haveMm)} mm over ${what}`
    : `Clash: ${roundedMm(haveMm)} of ${roundedMm(needMm)} mm to ${what}`
}

type Clashing = Looked & { readonly taken: Area }

function clashesIn(marks: WallView['marks']): readonly Clashing[] {
  return (marks?.looked ?? []).flatMap((one) =>
    one.clashes && one.taken !== null ? [{ ...one, taken: one.taken }] : [],
  )
}

/** Never thinner than can be seen. */
function visible({ unit }: Pick<Sheet, 'unit'>, box: Box): Box {
  const width = Math.max(box.width, 0.8 * unit)
  const height = Math.max(box.height, 0.8 * unit)
  return {
    x: box.x - (width - box.width) / 2,
    y: box.y - (height - box.height) / 2,
    width,
    height,
  }
}

function mirrored({ x, width }: Box, at: number): number {
  return 2 * x + width - at
}
