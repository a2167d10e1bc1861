import type { Content, TableCell } from 'pdfmake/interfaces'
import { bareMm, listed, mm } from '../in-words.ts'
import type { SetOutSheetWords } from '../set-out-view.ts'

type Holes = SetOutSheetWords['holes']
type Hole = Holes[number]
type Measured = Pick<SetOutSheetWords, 'holes' | 'centre'>

/** A sheet has room for so many holes and no more. */
export const mostHoles = 40

/** Up to this many holes stand one under another, up to twice as many in two columns, and more in three. */
const onePast = 8
const twoPast = 24

/** In how many columns side by side the holes stand. */
export function holeColumns({ length }: Holes): 1 | 2 | 3 {
  return length <= onePast ? 1 : length <= twoPast ? 2 : 3
}

type Column = {
  readonly head: string
  readonly width: number
  readonly cell: (hole: Hole) => TableCell
  /** What stands there for the centre line itself. */
  readonly centre?: (centre: Measured['centre']) => string
}

const right = (text: string, bold = false): TableCell => ({ text, bold, alignment: 'right' })

const id: Column = { head: 'Hole', width: 28, cell: (hole) => ({ text: hole.id, bold: true, noWrap: true }) }
const fromCentre: Column = {
  head: 'From\ncentre',
  width: 66,
  cell: (hole) => right(acrossInWords(hole.fromCentreMm), true),
}
const fromCentreShort: Column = {
  head: 'Centre\nL or R',
  width: 54,
  cell: (hole) =>
    right(acrossInWords(hole.fromCentreMm).replace(' left', ' L').replace(' right', ' R'), true),
}
const fromFloor: Column = { head: 'From\nfloor', width: 40, cell: (hole) => right(bareMm(hole.yMm), true) }
const fromLeft: Column = {
  head: 'From\nleft end',
  width: 46,
  cell: (hole) => right(bareMm(hole.xMm)),
  centre: ({ fromLeftMm }) => bareMm(fromLeftMm),
}
const bit: Column = { head: 'Bit', width: 25, cell: (hole) => right(bareMm(hole.drillMm)) }
const deep: Column = { head: 'Deep', width: 32, cell: (hole) => right(bareMm(hole.depthMm)) }

const columnsOf: Readonly<Record<1 | 2 | 3, readonly Column[]>> = {
  1: [id, fromCentre, fromFloor, fromLeft, bit, deep],
  2: [id, fromCentre, fromFloor, fromLeft],
  3: [id, fromCentreShort, fromFloor],
}

/** Every hole from the centre line and the floor, with two boxes to tick once it was measured and measured again. */
export function holeTable({ holes, centre }: Measured): Content {
  const beside = holeColumns(holes)
  const rows = Math.ceil(holes.length / beside)
  const parts = Array.from({ length: beside }, (_, nth) => holes.slice(nth * rows, (nth + 1) * rows))
  const tables = parts.map((some, nth) => oneTable(some, { beside, ...(nth === 0 ? { centre } : {}) }))
  return { columns: tables.map((table) => ({ width: '*', stack: [table] })), columnGap: 12 }
}

/** The two boxes: their heading, how wide the column is and how far in they stand. */
const ticks = {
  1: { head: 'Measured\ntwice', width: 60, inset: 16 },
  2: { head: 'Measured\ntwice', width: 58, inset: 15 },
  3: { head: 'Twice', width: 32, inset: 2 },
} as const

type Layout = { readonly beside: 1 | 2 | 3; readonly centre?: Measured['centre'] }

function oneTable(holes: Holes, { beside, centre }: Layout): Content {
  const columns = columnsOf[beside]
  const tick = ticks[beside]
  const boxes = (): TableCell => ({
    columns: [box(), box()],
    columnGap: 6,
    margin: [tick.inset, 0, 0, 0],
  })
  const head: TableCell[] = [
    ...columns.map(({ head: text }, nth): TableCell => ({
      text,
      alignment: nth === 0 ? 'left' : 'right',
      lineHeight: 1,
    })),
    { text: tick.head, alignment: 'center', lineHeight: 1 },
  ]
  const rows = holes.map((hole): TableCell[] => [...columns.map(({ cell }) => cell(hole)), boxes()])
  const middle = centre === undefined ? [] : [[...centreRow(columns, centre), boxes()]]
  return {
    table: {
      widths: [...columns.map(({ width }) => width), tick.width],
      headerRows: 1,
      dontBreakRows: true,
      body: [head, ...middle, ...rows],
    },
    layout: {
      hLineWidth: (row) => (row === 0 ? 0 : row === 1 ? 1.25 : 0.5),
      vLineWidth: () => 0,
      hLineColor: () => '#000000',
      paddingLeft: () => 0,
      paddingRight: () => 4,
      paddingTop: () => 2,
      paddingBottom: () => 0,
    },
  }
}

/** The centre line is measured twice as well: every hole hangs on it. */
function centreRow(columns: readonly Column[], centre: Measured['centre']): TableCell[] {
  const says = columns.map((column): TableCell => right(column.centre?.(centre) ?? ''))
  const named = columns.some((column) => column.centre !== undefined)
  const words = named ? 'Centre line' : `Centre line ${bareMm(centre.fromLeftMm)}`
  const span = named ? 2 : columns.length
  const empty = Array.from({ length: span - 1 }, (): TableCell => ({}))
  return [{ text: words, bold: true, colSpan: span, noWrap: true }, ...empty, ...says.slice(span)]
}

/** An empty square to tick with a pen, in full black. */
function box(): Content {
  return { canvas: [{ type: 'rect', x: 0, y: 1.5, w: 11, h: 11, lineWidth: 1, lineColor: '#000000' }] }
}

/** `240 left`, `240 right`, `on it`. */
function acrossInWords(distanceMm: number): string {
  if (Math.abs(distanceMm) < 0.05) return 'on it'
  return `${bareMm(Math.abs(distanceMm))} ${distanceMm < 0 ? 'left' : 'right'}`
}

/** Bit and depth where the table has no room for them: once for all holes, or by hole where a few differ from the others. */
export function bitsInWords(holes: Holes): string {
  const bySize = Map.groupBy(holes, (hole) => `${bareMm(hole.drillMm)} mm bit, ${mm(hole.depthMm)} deep`)
  const [most, ...few] = [...bySize].toSorted(([, one], [, other]) => other.length - one.length)
  if (most === undefined) return ''
  if (few.length === 0) return `${most[0]}, all holes.`
  const named = few.map(([size, some]) => `${listed(some.map((hole) => hole.id))}: ${size}`)
  return `${[...named, `all others: ${most[0]}`].join('; ')}.`
}
