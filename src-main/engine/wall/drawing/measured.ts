import { roundedMm } from '../in-words.ts'
import { shows } from '../clashes.ts'
import type { Measure, Stop } from './dimensions.ts'
import { emitterBox } from './emitter-shapes.ts'
import type { WallView } from './sheet.ts'

/** A row of dimensions: running from one nought, or each between two stops; its title in one line or two. */
export type Row = { readonly title: readonly [string, ...string[]] } & (
  | { readonly kind: 'running'; readonly stops: readonly Stop[] }
  | { readonly kind: 'between'; readonly measures: readonly Measure[] }
)

/** What is measured on each of the four sides, the nearest to the wall first. */
export type Measured = {
  readonly above: readonly Row[]
  readonly below: readonly Row[]
  readonly left: readonly (readonly Measure[])[]
  readonly right: readonly Stop[]
}

/**
 * What a drawing measures. Below: holes and valves from the centre line, the centre line from both ends, the wall's width. Above:
 * clear space to both ends and to what stands beside. Left: what stands above and below, bottom edge, height and clear space above,
 * the wall's height. Right: every hole and pipe entry from the floor.
 * @param view what is drawn
 * @source practice, no published source
 * @example measuredOf({ wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).left.length // => 2
 */
export function measuredOf(view: WallView): Measured {
  return { above: above(view), below: below(view), left: left(view), right: right(view) }
}

function below({ wall, setOut }: WallView): readonly Row[] {
  const { centreMm } = setOut
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
  const nought: Stop = { place: centreMm, text: '0', reach: 0 }
  const ends: readonly Measure[] = [
    { from: Math.min(0, centreMm), to: Math.max(0, centreMm), reach: [0, 0] },
    { from: Math.min(centreMm, wall.widthMm), to: Math.max(centreMm, wall.widthMm), reach: [0, 0] },
  ]
  const whole: readonly Measure[] = [{ from: 0, to: wall.widthMm, reach: [0, 0] }]
  return [
    ...runningRow(['Holes from', 'centre'], holeStops, nought),
    ...runningRow(['Valves from', 'centre'], valveStops, nought),
    { kind: 'between', title: ['Centre', 'from ends'], measures: ends },
    { kind: 'between', title: ['Wall'], measures: whole },
  ]
}

function runningRow(title: Row['title'], stops: readonly Stop[], nought: Stop): readonly Row[] {
  return stops.length === 0 ? [] : [{ kind: 'running', title, stops: withNought(stops, nought) }]
}

/** A stop on the centre line itself says nought already. */
function withNought(stops: readonly Stop[], nought: Stop): readonly Stop[] {
  return stops.some(({ place }) => roundedMm(place - nought.place) === 0) ? stops : [...stops, nought]
}

function above(view: WallView): readonly Row[] {
  const { wall, envelope } = view
  const edge = -envelope.topMm
  const end = -wall.heightMm
  const clear: readonly Measure[] = [
    { from: 0, to: envelope.leftMm, reach: [end, edge] },
    { from: Math.max(0, envelope.leftMm), to: Math.min(wall.widthMm, envelope.rightMm), reach: [edge, edge] },
    { from: envelope.rightMm, to: wall.widthMm, reach: [edge, end] },
  ]
  const beside = besides(view)
  return [
    { kind: 'between', title: ['Clear', 'to ends'], measures: clear },
    ...(beside.length === 0
      ? []
      : [{ kind: 'between' as const, title: ['Clear', 'beside'] as const, measures: beside }]),
  ]
}

/** Clear space to the nearest thing on each side. */
function besides({ wall, envelope }: WallView): readonly Measure[] {
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
  return [
    ...(nearestLeft === undefined
      ? []
      : [{ from: nearestLeft.at, to: leftMm, reach: [nearestLeft.top, -topMm] as const }]),
    ...(nearestRight === undefined
      ? []
      : [{ from: rightMm, to: nearestRight.at, reach: [-topMm, nearestRight.top] as const }]),
  ]
}

function left(view: WallView): readonly (readonly Measure[])[] {
  const { wall, envelope, setOut } = view
  const edge = emitterBox(view).x
  const chain: readonly Measure[] = [
    { from: 0, to: setOut.bottomMm, reach: [0, edge] },
    { from: setOut.bottomMm, to: envelope.topMm, reach: [edge, edge] },
    { from: envelope.topMm, to: wall.heightMm, reach: [edge, 0] },
  ]
  const whole: readonly Measure[] = [{ from: 0, to: wall.heightMm, reach: [0, 0] }]
  return [aboveAndBelow(view), chain, whole].filter((column) => column.length > 0)
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

function right({ setOut, wall }: WallView): readonly Stop[] {
  const marks = [
    ...setOut.holes.map((hole) => ({ place: hole.yMm, id: hole.id, reach: hole.xMm })),
    ...setOut.valves.map((valve) => ({ place: valve.yMm, id: 'valves', reach: valve.xMm })),
  ]
  const stops = grouped(marks).map(({ place, ids, reach }): Stop => ({
    place,
    reach,
    text: `${roundedMm(place)}  ${ids}`,
  }))
  return [...stops, { place: 0, text: '0  floor', reach: wall.widthMm }]
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
