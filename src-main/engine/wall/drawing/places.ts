import { apart, boxAt, grown, nearestIn } from './boxes.ts'
import { boxOf, costApart } from './labels.ts'
import type { Place } from './labels.ts'
import type { Box, Sheet } from './sheet.ts'

/** Lines of text in a size. */
export type Text = { readonly lines: readonly string[]; readonly size: number }

type Unit = Pick<Sheet, 'unit'>

const shares = [0.5, 0.3, 0.7, 0.1, 0.9, 0, 1] as const

/**
 * Places within a rectangle, its middle first; none where the text does not fit.
 * @param sheet the frame
 * @param text lines and size
 * @param box in the picture
 * @source practice, no published source
 * @example placesIn({ unit: 1 }, { lines: ['A1'], size: 3 }, { x: 0, y: 0, width: 40, height: 10 })[0].x // => 20
 */
export function placesIn(sheet: Unit, { lines, size }: Text, box: Box): readonly Place[] {
  const { unit } = sheet
  const middle = { lines, size, x: box.x + box.width / 2, y: box.y + box.height / 2, cost: 0 }
  const { width, height } = boxOf(sheet, middle)
  const free = { across: box.width - width - 0.6 * unit, up: box.height - height - 0.6 * unit }
  if (free.across < 0 || free.up < 0) return []
  return shares.flatMap((up) =>
    shares.map((across): Place => {
      const x = middle.x + (across - 0.5) * free.across
      const y = middle.y + (up - 0.5) * free.up
      return { lines, size, x, y, cost: (0.05 * Math.hypot(x - middle.x, y - middle.y)) / unit }
    }),
  )
}

/**
 * Places that touch a rectangle from outside: above, below, right and left.
 * @param sheet the frame
 * @param text lines and size
 * @param box in the picture
 * @source practice, no published source
 * @example placesBeside({ unit: 1 }, { lines: ['A1'], size: 3 }, { x: 0, y: 0, width: 40, height: 10 })[0].y // => -2.1
 */
export function placesBeside(sheet: Unit, { lines, size }: Text, box: Box): readonly Place[] {
  const gap = 0.6 * sheet.unit
  const [middleX, middleY] = [box.x + box.width / 2, box.y + box.height / 2]
  const own = boxOf(sheet, { lines, size, x: 0, y: 0, cost: 0 })
  const across = box.width / 2 + own.width / 2 + gap
  const up = box.height / 2 + own.height / 2 + gap
  const slideX = Math.abs(box.width - own.width) / 2
  const slideY = Math.abs(box.height - own.height) / 2
  return [0, 0.5, 1].flatMap((slide) =>
    [
      [middleX, -up],
      [middleX, up],
      [middleX + across, 0],
      [middleX - across, 0],
    ].flatMap(([x = 0, dy = 0]) =>
      (slide === 0 ? [0] : [slide, -slide]).map((by): Place => {
        const isAcross = dy === 0
        return {
          lines,
          size,
          x: isAcross ? x : x + by * slideX,
          y: isAcross ? middleY + by * slideY : middleY + dy,
          cost: (isAcross ? 0.2 : 0) + slide,
        }
      }),
    ),
  )
}

type Target = { readonly box: Box; readonly awayMm: number }

/** How finely places are tried, in millimetres of paper. */
const step = { across: 3, up: 1.5 } as const

/**
 * Places round a rectangle, so far off, with a thin line to it.
 * @param sheet the frame
 * @param text lines and size
 * @param target the rectangle in the picture, and how far off, in millimetres of paper
 * @source practice, no published source
 * @example placesApart({ unit: 1 }, { lines: ['A1'], size: 3 }, { box: { x: 0, y: 0, width: 4, height: 4 }, awayMm: 2 }).every((place) => place.leadsTo[0] >= 0 && place.leadsTo[0] <= 4) // => true
 */
export function placesApart({ unit }: Unit, text: Text, { box, awayMm }: Target): readonly Place[] {
  const { width, height } = boxOf({ unit }, { ...text, x: 0, y: 0, cost: 0 })
  const inner = grown(box, -0.9 * unit)
  const left = box.x - awayMm * unit - width / 2
  const right = box.x + box.width + awayMm * unit + width / 2
  const top = box.y - awayMm * unit - height / 2
  const low = box.y + box.height + awayMm * unit + height / 2
  const middles = [
    ...steps(left, right, step.across * unit).flatMap((x) => [[x, top] as const, [x, low] as const]),
    ...steps(top, low, step.up * unit).flatMap((y) => [[left, y] as const, [right, y] as const]),
  ]
  const [middleX, middleY] = [box.x + box.width / 2, box.y + box.height / 2]
  return middles.map(([x, y]): Place => {
    const own: Box = { x: x - width / 2, y: y - height / 2, width, height }
    const [nearX, nearY] = nearestIn(own, middleX, middleY)
    const cost = costApart(awayMm) + (0.1 * apart(own, boxAt(middleX, middleY, 0))) / unit
    return { ...text, x, y, cost, leadsTo: nearestIn(inner, nearX, nearY) }
  })
}

/** Even steps from one end to the other, few enough for a thing of any size. */
function steps(from: number, to: number, length: number): readonly number[] {
  const count = Math.min(80, Math.max(1, Math.round((to - from) / length)))
  return Array.from({ length: count + 1 }, (_, nth) => from + (nth * (to - from)) / count)
}
