import { closest } from './closeness.ts'

const ptPerMm = 72 / 25.4

/** The page of a sheet, in points. */
export const page = { heightPt: 841.89, sidePt: 30, topPt: 28, bottomPt: 42 } as const
export const textWidthPt = 595.28 - 2 * page.sidePt

/** One higher than this would be larger than it need be. */
const mostDrawingPt = 470

/**
 * The drawing is made for a smaller paper and printed so much larger: its smaller text, 2.6 mm as it is made, then stands 11 points
 * high, and its figures 13.5.
 */
const enlarged = 11 / (2.6 * ptPerMm)

/**
 * The scales a drawing is printed at, so that a rule laid on it gives round figures. (ISO 5455 names 1:2, 1:5, 1:10, 1:20, 1:50 and 1:100;
 * the steps between them are practice, no published source.)
 */
const scales = [
  1, 2, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000,
  1500, 2000,
] as const

type Size = { readonly width: number; readonly height: number }
type Paper = { readonly widthMm: number; readonly heightMm: number }
/** As the engine frames a drawing: a millimetre of its paper, the wall and the whole picture in millimetres on the wall. */
type Frame = { readonly unit: number; readonly wall: Size; readonly whole: Size }

/** The paper that a drawing of some height is to be made for, in millimetres. */
export function drawingPaper(heightPt: number): Paper {
  return { widthMm: textWidthPt / ptPerMm / enlarged, heightMm: heightPt / ptPerMm / enlarged }
}

/** A drawing for its place: the round scale, how large it is printed at that scale, and the picture itself. */
export type ScaledDrawing = {
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
  /** So many millimetres on the wall are one on paper. */
  readonly scale: number
  /** False where it shows only the part of the wall about the emitter. */
  readonly whole: boolean
}

/** A part of the wall drawn so many times larger than the whole, about its middle. */
type Zoom = { readonly times: number; readonly xMm: number; readonly yMm: number }
type Looking = { readonly paper: Paper; readonly zoom?: Zoom }

type Drawer = {
  readonly frame: (looking: Looking) => Frame
  readonly draw: (looking: Looking) => string
  /** What a drawing must show, if it can't show all of the wall: the emitter with its valves. */
  readonly envelope: Sides
}

type Sides = {
  readonly leftMm: number
  readonly rightMm: number
  readonly bottomMm: number
  readonly topMm: number
}

/** A whole wall drawn smaller than this has its figures one upon another. */
const smallestWhole = 50

/** Drawn round an emitter where the whole wall would be too small, in millimetres on the wall. */
const aroundMm = 150

/**
 * The largest drawing at a round scale that its place has room for. Where the whole wall would be smaller than 1:50 the drawing shows
 * the part of it about the emitter, down to the floor; its dimensions still tell how far the ends of the wall are.
 */
export function drawnToScale(drawer: Drawer, heightPt: number): ScaledDrawing {
  const whole = wholeWall(drawer, heightPt)
  if (whole.scale <= smallestWhole) return whole
  const part = partOfWall(drawer, heightPt)
  return part === null || part.scale >= whole.scale ? whole : part
}

function wholeWall({ frame, draw }: Drawer, heightPt: number): ScaledDrawing {
  const fitted = frame({ paper: drawingPaper(heightPt) })
  for (const scale of scales) {
    const paper = paperAt(fitted, scale)
    const size = sizeAt(scale, frame({ paper }).whole)
    if (isWithin(size, heightPt)) return { svg: inBlack(draw({ paper })), ...size, scale, whole: true }
  }
  return shrunk({ frame, draw }, heightPt)
}

/** Where the dimensions alone are larger than the place: as small as it must be, at whatever scale that is. */
function shrunk({ frame, draw }: Pick<Drawer, 'frame' | 'draw'>, heightPt: number): ScaledDrawing {
  const looking = { paper: drawingPaper(heightPt) }
  const { width, height } = frame(looking).whole
  const scale = Math.ceil(ptPerMm * Math.max(width / textWidthPt, height / heightPt))
  return { svg: inBlack(draw(looking)), ...sizeAt(scale, { width, height }), scale, whole: true }
}

function isWithin(size: Pick<ScaledDrawing, 'widthPt' | 'heightPt'>, heightPt: number): boolean {
  return size.widthPt <= textWidthPt + 0.01 && size.heightPt <= heightPt + 0.01
}

/** Null where no larger scale has room for the emitter either. */
function partOfWall({ frame, draw, envelope }: Drawer, heightPt: number): ScaledDrawing | null {
  const paper = drawingPaper(heightPt)
  const fitted = frame({ paper })
  const { leftMm, rightMm, topMm } = envelope
  for (const scale of scales) {
    const times = fitted.unit / (scale * enlarged)
    const shown = frame({ paper, zoom: { times, xMm: 0, yMm: 0 } }).wall
    const isRoom = shown.width >= rightMm - leftMm + 2 * aroundMm && shown.height >= topMm + aroundMm
    if (times <= 1 || !isRoom) continue
    // The floor is its lower edge.
    const looking = { paper, zoom: { times, xMm: (leftMm + rightMm) / 2, yMm: shown.height / 2 - scale } }
    const size = sizeAt(scale, frame(looking).whole)
    if (isWithin(size, heightPt)) return { svg: inBlack(draw(looking)), ...size, scale, whole: false }
  }
  return null
}

function sizeAt(scale: number, { width, height }: Size) {
  return { widthPt: (width / scale) * ptPerMm, heightPt: (height / scale) * ptPerMm }
}

/** The paper on which a frame's wall, with the margins that it has, stands at a scale. */
function paperAt({ unit, wall, whole }: Frame, scale: number): Paper {
  const wanted = scale * enlarged
  return {
    widthMm: wall.width / wanted + (whole.width - wall.width) / unit,
    heightMm: wall.height / wanted + (whole.height - wall.height) / unit,
  }
}

/** On a printer that has black alone, a thin grey line breaks into dots: every line is black, told apart by its dashes. */
export function inBlack(svg: string): string {
  return svg.replace(/ (stroke|fill)="#(?!fff\b|ffffff\b)[0-9a-f]{3,6}"/gi, ' $1="#000"')
}

/** The height that a sheet's words leave for its drawing: `leftPt` is what lies under the last of them. */
export function drawingHeightPt(leftPt: number): number {
  return Math.min(mostDrawingPt, Math.max(closest.leastDrawingPt, leftPt))
}
