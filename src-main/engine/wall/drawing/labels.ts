import { boxAt, crossing, grown, overlap } from './boxes.ts'
import { smallSize, textSize, textWidth } from './sheet.ts'
import type { Box, Ends, Sheet } from './sheet.ts'

/**
 * A place already used. Covering it costs its weight for each square millimetre of paper, save for labels that stand on it by right:
 * those that name the same thing in `on`.
 */
export type Taken = { readonly box: Box; readonly weight: number; readonly of?: string }

/** Lines of text about a middle. */
export type Place = {
  readonly lines: readonly string[]
  readonly x: number
  readonly y: number
  readonly size: number
  /** What it costs to stand there rather than where it belongs. */
  readonly cost: number
  /** Where a thin line from the label ends, for one that stands apart from its thing. */
  readonly leadsTo?: readonly [x: number, y: number]
  /** True where that is the edge of a ring, which needs no mark at the line's end. */
  readonly toRing?: boolean
}

/** A label with the places it may take; `apart` gives those so many millimetres of paper off, for when none of the others is good. */
export type Label = {
  /** What it names, where that is asked for later. */
  readonly of?: string
  readonly on: readonly string[]
  readonly places: readonly Place[]
  readonly apart?: (awayMm: number) => readonly Place[]
}

/** A label in its place, with its thin line if it has one. */
export type Settled = {
  readonly of?: string | undefined
  readonly place: Place
  readonly box: Box
  readonly leader: Ends | null
}

/**
 * Finds each label a place where it covers nothing, or the least; each keeps clear of those before it. In each group the labels
 * that stand well on or beside their thing come first, then those that must stand apart.
 * @param sheet the frame
 * @param groups of labels, the most important first
 * @param taken what must stay readable
 * @source practice, no published source
 * @example settle({ unit: 10, whole: { x: 0, y: 0, width: 900, height: 900 } }, [[{ on: [], places: [{ lines: ['A1'], x: 100, y: 100, size: 3.2, cost: 0 }] }]], [])[0].place.x // => 100
 */
export function settle(
  sheet: Frame,
  groups: readonly (readonly Label[])[],
  taken: readonly Taken[],
): readonly Settled[] {
  const used: Taken[] = [...taken]
  const take = ({ of }: Label, { settled }: Priced): readonly Settled[] => {
    if (settled === null) return []
    used.push(...takenBy(sheet, settled))
    return [{ of, ...settled }]
  }
  return groups.flatMap((labels) => {
    const late: Label[] = []
    const early = labels.flatMap((label) => {
      const near = cheapest(sheet, label.places, { used: othersThan(label, used) })
      if (near.cost <= goodEnough || label.apart === undefined) return take(label, near)
      late.push(label)
      return []
    })
    return [...early, ...late.flatMap((label) => take(label, farther(sheet, label, othersThan(label, used))))]
  })
}

type Frame = Pick<Sheet, 'unit' | 'whole'>

/** Places beside a thing cost no more than this where they cover nothing. */
const goodEnough = 6
const distancesMm = Array.from({ length: 28 }, (_, nth) => 1.2 + 1.6 * nth)

/**
 * What it costs to stand apart, which grows with the distance.
 * @param awayMm in millimetres of paper
 * @source practice, no published source
 * @example costApart(10) // => 11
 */
export function costApart(awayMm: number): number {
  return 8 + 0.3 * awayMm
}

function othersThan({ on }: Label, used: readonly Taken[]): readonly Taken[] {
  return used.filter(({ of }) => of === undefined || !on.includes(of))
}

/** Farther and farther off, until a greater distance alone would cost more than the best place so far. */
function farther(sheet: Frame, { places, apart }: Label, used: readonly Taken[]): Priced {
  let best = cheapest(sheet, places, { used })
  for (const awayMm of distancesMm) {
    if (costApart(awayMm) >= best.cost) break
    best = cheapest(sheet, apart?.(awayMm) ?? [], { used, best })
  }
  return best
}

type Priced = { readonly settled: Settled | null; readonly cost: number }

const none: Priced = { settled: null, cost: Infinity }

function cheapest(
  sheet: Frame,
  places: readonly Place[],
  { used, best: before = none }: { readonly used: readonly Taken[]; readonly best?: Priced },
): Priced {
  return places.reduce<Priced>((best, place) => {
    if (place.cost >= best.cost) return best
    const box = boxOf(sheet, place)
    const standing = place.cost + coverCost(sheet, box, { used, most: best.cost - place.cost })
    if (standing >= best.cost) return best
    const leader = leaderOf(place, box)
    const cost = standing + (leader === null ? 0 : leaderCost(sheet, leader, used))
    return cost < best.cost ? { settled: { place, box, leader }, cost } : best
  }, before)
}

/** Counted no further than `most`, beyond which the place is lost anyway. */
function coverCost(
  { whole, unit }: Frame,
  box: Box,
  { used, most }: { readonly used: readonly Taken[]; readonly most: number },
): number {
  let cost = (100 * (box.width * box.height - overlap(box, whole))) / unit ** 2
  for (const { box: other, weight } of used) {
    cost += (weight * overlap(box, other)) / unit ** 2
    if (cost > most) break
  }
  return cost
}

function leaderCost({ unit }: Pick<Sheet, 'unit'>, leader: Ends, used: readonly Taken[]): number {
  return used.reduce((sum, { box, weight }) => sum + crossedWeight(weight) * crossing(leader, box), 0) / unit
}

/** A thin line may cross a thing, hardly the emitter's edge, and least a ring, a text or another such line. */
function crossedWeight(weight: number): number {
  if (weight >= 30) return 15
  return weight >= 25 ? 8 : Math.min(weight, 4)
}

function takenBy({ unit }: Pick<Sheet, 'unit'>, { box, leader }: Settled): readonly Taken[] {
  const label = { box: grown(box, 0.2 * unit), weight: 40 }
  if (leader === null) return [label]
  const [x1, y1, x2, y2] = leader
  const steps = Math.min(40, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / (1.2 * unit)))
  const dots = Array.from({ length: steps + 1 }, (_, nth) => {
    const share = steps === 0 ? 0 : nth / steps
    return { box: boxAt(x1 + share * (x2 - x1), y1 + share * (y2 - y1), 0.8 * unit), weight: 30 }
  })
  return [label, ...dots]
}

/**
 * The room that lines of text take about their middle, in the picture.
 * @param sheet the frame
 * @param place of the label
 * @source practice, no published source
 * @example boxOf({ unit: 10 }, { lines: ['2400'], x: 0, y: 0, size: 3, cost: 0 }).width // => 80
 */
export function boxOf({ unit }: Pick<Sheet, 'unit'>, { lines, x, y, size }: Place): Box {
  const width = Math.max(...lines.map((line) => textWidth({ unit }, line, size)), 0) + 0.2 * unit
  const height = (1 + (lines.length - 1) * lineHeight) * size * unit
  return { x: x - width / 2, y: y - height / 2, width, height }
}

/** From one line of text to the next, as a share of its height. */
export const lineHeight = 1.15

function leaderOf({ leadsTo }: Place, { x, y, width, height }: Box): Ends | null {
  if (leadsTo === undefined) return null
  const [toX, toY] = leadsTo
  return [Math.min(Math.max(toX, x), x + width), Math.min(Math.max(toY, y), y + height), toX, toY]
}

/**
 * A name broken into lines no wider than so much; a longer word stays whole.
 * @param sheet the frame
 * @param name what is written
 * @param most width in millimetres on the wall, and the text's size
 * @source practice, no published source
 * @example brokenInto({ unit: 1 }, 'Double panel radiator', { widthMm: 30 }) // => ["Double panel", "radiator"]
 */
export function brokenInto(
  sheet: Pick<Sheet, 'unit'>,
  name: string,
  { widthMm, size = textSize }: { readonly widthMm: number; readonly size?: number },
): readonly string[] {
  return name.split(/\s+/).reduce<readonly string[]>((lines, word) => {
    const last = lines.at(-1)
    const longer = `${last} ${word}`
    return last !== undefined && textWidth(sheet, longer, size) <= widthMm
      ? [...lines.slice(0, -1), longer]
      : [...lines, word]
  }, [])
}

/**
 * A name in one line, in about two, and in as many as it has words of its longest word's width.
 * @param sheet the frame
 * @param name what is written
 * @param size in millimetres of paper
 * @source practice, no published source
 * @example waysToBreak({ unit: 1 }, 'Window board', 3) // => [["Window board"], ["Window", "board"]]
 */
export function waysToBreak(
  sheet: Pick<Sheet, 'unit'>,
  name: string,
  size: number = smallSize,
): readonly (readonly string[])[] {
  const widest = Math.max(...name.split(/\s+/).map((word) => textWidth(sheet, word, size)))
  const ways = [Infinity, 0.62 * textWidth(sheet, name, size), widest].map((widthMm) =>
    brokenInto(sheet, name, { widthMm: Math.max(widthMm, widest), size }),
  )
  return ways.filter((way, nth) => nth === 0 || way.length > (ways[nth - 1]?.length ?? 0))
}
