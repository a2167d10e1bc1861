import { roundedMm } from '../in-words.ts'
import { drawBox, drawLine, drawText, smallSize, textSize, textWidth } from './sheet.ts'
import type { Ends, Pen, Sheet, Words } from './sheet.ts'
import { spread } from './spread.ts'

/** Dimensions along a row (`across`: stops are x, the row lies at y) or a column (`up`: stops are heights, the column lies at x). */
export type Way = 'across' | 'up'

const thin: Pen = { thick: 0.18 }
const faint: Pen = { thick: 0.12, colour: '#777' }

/** Lines and numbers apart, so that no line is drawn over a number; and where the faint lines run, for names to keep clear of. */
export type Drawn = {
  readonly lines: readonly string[]
  readonly numbers: readonly string[]
  readonly faints: readonly Ends[]
}

/** The end of a length, unless it was cut off there. */
function endsOf({ from, to, cut }: Omit<Measure, 'reach'>, end: 0 | 1): readonly number[] {
  return cut?.[end] === true ? [] : [end === 0 ? from : to]
}

/** One length between two stops, and where the faint line of each starts. */
export type Measure = {
  readonly from: number
  readonly to: number
  readonly reach: readonly [from: number, to: number]
  /** The length in words where only a part of it is drawn. */
  readonly trueMm?: number
  /** Which of its ends lie outside the drawing, and get no mark. */
  readonly cut?: readonly [from: boolean, to: boolean]
}

/** Where a row or column lies, and between which ends its numbers stay. */
export type Run = {
  readonly way: Way
  readonly at: number
  readonly within?: { readonly from: number; readonly to: number }
}

/**
 * Dimension lines with their numbers in one row or column: each between two stops, with a faint line from where it is measured.
 * @param sheet the frame
 * @param measures from and to in mm on the wall (heights upwards), and where their faint lines start
 * @param run the way they run and where the row or column lies, in the picture
 * @source practice, no published source
 * @example drawMeasures({ unit: 10 }, [{ from: 0, to: 645, reach: [0, 0] }], { way: 'across', at: 100 }).numbers[1].includes('>645<') // => true
 */
export function drawMeasures(sheet: Sheet, measures: readonly Measure[], run: Run): Drawn {
  const long = measures.filter(({ from, to }) => to - from > 0)
  const ordered = long.toSorted((a, b) => a.from + a.to - b.from - b.to)
  const texts = ordered.map(({ from, to, trueMm }) => String(roundedMm(trueMm ?? to - from)))
  const places = spread(
    ordered.map(({ from, to }, nth) => ({
      at: (from + to) / 2,
      length: room(sheet, run.way, { text: texts[nth] ?? '' }),
    })),
    run.within,
  )
  const faints = ordered.flatMap(({ reach, ...one }) => [
    ...endsOf(one, 0).map((stop) => faintLine(sheet, run, { stop, from: reach[0] })),
    ...endsOf(one, 1).map((stop) => faintLine(sheet, run, { stop, from: reach[1] })),
  ])
  const lines = ordered.flatMap((one) => [
    bar(sheet, run, [one.from, one.to]),
    ...[...endsOf(one, 0), ...endsOf(one, 1)].map((stop) => tick(sheet, run, stop)),
  ])
  return {
    lines: [...faints.map((ends) => drawLine(sheet, ends, faint)), ...lines],
    faints,
    numbers: ordered.flatMap((_, nth) =>
      numberAt(sheet, run, { text: texts[nth] ?? '', along: places[nth] ?? 0 }),
    ),
  }
}

/** A stop of running dimensions, with what is written at it, and where its faint line starts. */
export type Stop = {
  readonly place: number
  readonly text: string
  readonly below?: string
  readonly reach: number
}

/**
 * Running dimensions from one nought: a tick at each stop, and beside it the distance from nought and what stands there.
 * @param sheet the frame
 * @param stops nought among them: places in mm on the wall, with their texts and where their faint lines start
 * @param run the way they run and where the row or column lies, in the picture
 * @source practice, no published source
 * @example drawRunning({ unit: 10 }, [{ place: 0, text: '0', reach: 0 }], { way: 'up', at: 100 }).numbers[1].includes('>0<') // => true
 */
export function drawRunning(sheet: Sheet, stops: readonly Stop[], run: Run): Drawn {
  if (stops.length === 0) return { lines: [], numbers: [], faints: [] }
  const ordered = stops.toSorted((a, b) => a.place - b.place)
  const places = spread(
    ordered.map(({ place, text, below }) => ({
      at: place,
      length: Math.max(
        room(sheet, run.way, { text }),
        run.way === 'across' ? room(sheet, run.way, { text: below ?? '', size: smallSize }) : 0,
      ),
    })),
    run.within,
  )
  const ends = ordered.map(({ place }) => place)
  const faints = ordered.map(({ place, reach }) => faintLine(sheet, run, { stop: place, from: reach }))
  const lines = ordered.flatMap(({ place }, nth) => [
    tick(sheet, run, place),
    leader(sheet, run, [place, places[nth] ?? place]),
  ])
  return {
    lines: [
      ...faints.map((one) => drawLine(sheet, one, faint)),
      bar(sheet, run, [Math.min(...ends), Math.max(...ends)]),
      ...lines,
    ],
    faints,
    numbers: ordered.flatMap((stop, nth) =>
      textAt(sheet, run, { ...stop, along: places[nth] ?? stop.place }),
    ),
  }
}

/** From a running dimension's tick to its text, in millimetres of paper. */
export const lead = 1.8

function bar(sheet: Sheet, { way, at }: Run, [from, to]: readonly [number, number]): string {
  return drawLine(sheet, way === 'across' ? [from, at, to, at] : [at, -from, at, -to], thin)
}

/** A faint line from the thing measured out to the dimension line, and a little past it. */
function faintLine(
  sheet: Sheet,
  { way, at }: Run,
  { stop, from }: { readonly stop: number; readonly from: number },
): Ends {
  const past = at + Math.sign(at - from) * 0.8 * sheet.unit
  return way === 'across' ? [stop, from, stop, past] : [from, -stop, past, -stop]
}

/** A short slanted stroke at the end of a dimension line. */
function tick(sheet: Sheet, { way, at }: Run, stop: number): string {
  const [x, y] = way === 'across' ? [stop, at] : [at, -stop]
  const half = sheet.unit / 2
  return drawLine(sheet, [x - half, y + half, x + half, y - half], { thick: 0.35 })
}

function leader(sheet: Sheet, { way, at }: Run, [stop, written]: readonly [number, number]): string {
  const end = at + lead * sheet.unit
  return drawLine(sheet, way === 'across' ? [stop, at, written, end] : [at, -stop, end, -written], faint)
}

type Written = { readonly text: string; readonly along: number; readonly below?: string }

function numberAt(sheet: Sheet, { way, at }: Run, { text, along }: Written): readonly string[] {
  const gap = 0.6 * sheet.unit
  return way === 'across'
    ? backed(sheet, { text, x: along, y: at - gap - (textSize * sheet.unit) / 2 })
    : backed(sheet, { text, x: at + 1.5 * gap, y: -along, anchor: 'start' })
}

function textAt(sheet: Sheet, { way, at }: Run, { text, along, below }: Written): readonly string[] {
  const start = at + lead * sheet.unit
  if (way === 'up') return backed(sheet, { text, x: start + 0.4 * sheet.unit, y: -along, anchor: 'start' })
  const high = textSize * sheet.unit
  const number = backed(sheet, { text, x: along, y: start + high * 0.5 })
  return below === undefined
    ? number
    : [
        ...number,
        ...backed(sheet, {
          text: below,
          x: along,
          y: start + high * 1.02 + smallSize * 0.5 * sheet.unit,
          size: smallSize,
        }),
      ]
}

/** Text on white, so that lines end at it. */
function backed(sheet: Sheet, words: Words): readonly string[] {
  const width = textWidth(sheet, words.text, words.size)
  const height = (words.size ?? textSize) * sheet.unit
  const x = words.anchor === 'start' ? words.x - 0.2 * sheet.unit : words.x - width / 2
  return [
    drawBox(sheet, { x, y: words.y - height / 2, width, height }, { thick: 0, fill: '#fff', colour: 'none' }),
    drawText(sheet, words),
  ]
}

/** What a number takes along its row or column. */
function room(sheet: Sheet, way: Way, { text, size }: Pick<Words, 'text' | 'size'>): number {
  return way === 'across' ? textWidth(sheet, text, size) + 1.4 * sheet.unit : textSize * 1.25 * sheet.unit
}
