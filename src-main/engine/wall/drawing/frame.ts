import { roundedMm } from '../in-words.ts'
import { lead } from './dimensions.ts'
import { planDepthMm } from './marks/plan.ts'
import { measuredOf } from './measured.ts'
import type { Measured, Row } from './measured.ts'
import { smallSize, textSize, textWidth } from './sheet.ts'
import type { Box, Sheet, WallView } from './sheet.ts'

/** Where a row's line and the middle of its title lie, in millimetres of paper from the wall. */
export type RowPlace = { readonly line: number; readonly middle: number }

/** Where a drawing's dimensions lie, in millimetres of paper from the wall's edges, and how much room they take. */
export type Margins = {
  readonly above: readonly RowPlace[]
  readonly below: readonly RowPlace[]
  /** Lines of the columns on the left. */
  readonly left: readonly number[]
  /** Line of the heights on the right. */
  readonly right: number
  readonly takes: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
}

/**
 * The frame of a drawing: what lies on the wall in true proportion, and round it the margins that its dimensions need, which are as
 * wide on paper however large the wall is. unit = the larger of width / (paper width - margins) and height / (paper height -
 * margins), with the titles in one line or in two, whichever draws the wall larger.
 * @param view what is drawn
 * @source practice, no published source
 * @example sheetOf({ wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).wall.height // => 2400
 */
export function sheetOf(view: WallView): Sheet {
  const { wall, envelope, setOut } = view
  const xs = [0, wall.widthMm, envelope.leftMm, envelope.rightMm, ...setOut.holes.map((hole) => hole.xMm)]
  const heights = [0, wall.heightMm, envelope.bottomMm, envelope.topMm, -planDepthMm(view)]
  const ys = [...heights, ...setOut.holes.map((hole) => hole.yMm)]
  const left = Math.min(...xs)
  const top = Math.max(...ys)
  const shown: Box = { x: left, y: -top, width: Math.max(...xs) - left, height: top - Math.min(...ys) }
  const paper = view.paper ?? { widthMm: 180, heightMm: 165 }
  const measured = measuredOf(view)
  const [oneLine, twoLines] = ([1, 2] as const).map((titleLines) => {
    const { takes } = marginsOf(measured, titleLines)
    const across = shown.width / Math.max(20, paper.widthMm - takes.left - takes.right)
    const up = shown.height / Math.max(20, paper.heightMm - takes.top - takes.bottom)
    return framed(shown, takes, { unit: Math.max(across, up), titleLines })
  }) as [Sheet, Sheet]
  const fit = oneLine.unit <= twoLines.unit ? oneLine : twoLines
  return view.zoom === undefined ? fit : zoomed(fit, { paper, zoom: view.zoom, measured })
}

type Zoomed = {
  readonly paper: NonNullable<WallView['paper']>
  readonly zoom: NonNullable<WallView['zoom']>
  readonly measured: Measured
}

/** The same paper filled with a part of the picture, its dimensions round that part. */
function zoomed({ unit: fit, titleLines }: Sheet, { paper, zoom, measured }: Zoomed): Sheet {
  const { takes } = marginsOf(measured, titleLines)
  const unit = fit / zoom.times
  const width = Math.max(20, paper.widthMm - takes.left - takes.right) * unit
  const height = Math.max(20, paper.heightMm - takes.top - takes.bottom) * unit
  const part: Box = { x: zoom.xMm - width / 2, y: -zoom.yMm - height / 2, width, height }
  return framed(part, takes, { unit, titleLines })
}

function framed(
  shown: Box,
  { left, right, top, bottom }: Margins['takes'],
  { unit, titleLines }: Pick<Sheet, 'unit' | 'titleLines'>,
): Sheet {
  const whole: Box = {
    x: shown.x - left * unit,
    y: shown.y - top * unit,
    width: shown.width + (left + right) * unit,
    height: shown.height + (top + bottom) * unit,
  }
  return { unit, wall: shown, whole, titleLines }
}

const paper = { unit: 1 } as const
const aLittle = 0.8

/**
 * The room that dimensions need round a drawing, each row and column only as wide as its texts.
 * @param measured what is measured
 * @param titleLines 1 or 2
 * @source practice, no published source
 * @example marginsOf({ above: [], below: [], left: [], right: [] }, 1).takes.top // => 1.4
 */
export function marginsOf(measured: Measured, titleLines: 1 | 2): Margins {
  const above = stacked(measured.above, titleLines, 0.6)
  const below = stacked(measured.below, titleLines, 1)
  const titles = [...measured.above, ...measured.below].flatMap(({ title }) => titleIn(title, titleLines))
  const columns = measured.left.reduce<readonly number[]>((lines, column) => {
    const numbers = column.map(({ from, to }) => textWidth(paper, String(roundedMm(to - from))))
    return [...lines, (lines.at(-1) ?? 0) + Math.max(...numbers) + 1.7]
  }, [])
  const right = 3
  const heights = measured.right.map(({ text }) => textWidth(paper, text))
  const widest = Math.max(0, ...titles.map((title) => textWidth(paper, title, smallSize)))
  return {
    above: above.places.map(({ from, depth, inset }) => ({
      line: from + inset + 0.9,
      middle: from + depth / 2,
    })),
    below: below.places.map(({ from, depth, inset, kind }) => ({
      line: from + inset + (kind === 'running' ? 0.9 : 0.9 + textSize),
      middle: from + depth / 2,
    })),
    left: columns,
    right,
    takes: {
      left: Math.max(columns.at(-1) ?? 0, widest + titleGap) + aLittle,
      right: right + lead + Math.max(0, ...heights) + aLittle,
      top: above.depth + aLittle,
      bottom: below.depth + aLittle,
    },
  }
}

/** From a row's title to the wall's edge, in millimetres of paper. */
export const titleGap = 2

/**
 * A row's title in one line or in two.
 * @param title its parts
 * @param lines 1 or 2
 * @source practice, no published source
 * @example titleIn(['Clear', 'to ends'], 1) // => ["Clear to ends"]
 */
export function titleIn(title: readonly string[], lines: 1 | 2): readonly string[] {
  return lines === 1 ? [title.join(' ')] : title
}

type Stacked = {
  readonly from: number
  readonly depth: number
  readonly inset: number
  readonly kind: Row['kind']
}

function stacked(rows: readonly Row[], titleLines: 1 | 2, start: number) {
  return rows.reduce<{ readonly places: readonly Stacked[]; readonly depth: number }>(
    ({ places, depth: from }, row) => {
      const own = depthOf(row)
      const depth = Math.max(own, titleIn(row.title, titleLines).length * smallSize * 1.2)
      const place = { from, depth, inset: (depth - own) / 2, kind: row.kind }
      return { places: [...places, place], depth: from + depth }
    },
    { places: [], depth: start },
  )
}

/** What a row takes of its own: its line and number, and below a running dimension's number what stands there. */
function depthOf(row: Row): number {
  if (row.kind === 'between') return 0.9 + textSize + 0.9
  const hasBelow = row.stops.some(({ below }) => below !== undefined)
  return 0.9 + lead + textSize * 1.1 + (hasBelow ? smallSize * 1.1 : 0)
}
