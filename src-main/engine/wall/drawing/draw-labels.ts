import { lineHeight } from './labels.ts'
import type { Place, Settled } from './labels.ts'
import { drawBox, drawLine, drawText } from './sheet.ts'
import { clashName } from './marks/draw-marks.ts'
import type { Ends, Sheet } from './sheet.ts'
import { holding } from './svg.ts'

/** Labels in two layers: the white they stand on with their thin lines, and their texts. */
export type DrawnLabels = { readonly under: readonly string[]; readonly texts: readonly string[] }

/**
 * Labels as they are drawn: white under each, a thin line with a short blunt end to the thing named, the text.
 * @param sheet the frame
 * @param settled labels in their places
 * @source practice, no published source
 * @example drawLabels({ unit: 10 }, []).texts.length // => 0
 */
export function drawLabels(sheet: Sheet, settled: readonly Settled[]): DrawnLabels {
  return {
    under: [
      ...settled.map(({ box }) => drawBox(sheet, box, { thick: 0, fill: '#fff', colour: 'none' })),
      ...settled.flatMap(({ leader, place }) => (leader === null ? [] : drawLeader(sheet, leader, place))),
    ],
    texts: settled.flatMap(({ of, place: { lines, size, x }, box }) => {
      const texts = lines.map((text, nth) =>
        drawText(sheet, { text, x, size, y: box.y + (0.5 + nth * lineHeight) * size * sheet.unit }),
      )
      return of === clashName ? [holding('g', { class: 'clashWords' }, texts)] : texts
    }),
  }
}

function drawLeader(sheet: Sheet, leader: Ends, { toRing }: Place): readonly string[] {
  const line = drawLine(sheet, leader, { thick: 0.22 })
  return toRing === true ? [line] : [line, drawEnd(sheet, leader[2], leader[3])]
}

/** A small square, which nobody takes for a hole. */
function drawEnd(sheet: Sheet, x: number, y: number): string {
  const side = 0.7 * sheet.unit
  return drawBox(
    sheet,
    { x: x - side / 2, y: y - side / 2, width: side, height: side },
    { thick: 0, fill: '#000', colour: 'none' },
  )
}
