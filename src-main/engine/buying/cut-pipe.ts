import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Branched } from './branched-plan.ts'
import { cheapestPlan, fullEffort } from './cheapest-plan.ts'
import type { Effort } from './cheapest-plan.ts'
import type { Cutting, Plan } from './cutting.ts'
import { commonStep } from './whole-units.ts'

export type CutPiece = { readonly id: string; readonly lengthMm: number; readonly count: number }
export type CutStock = { readonly id: string; readonly lengthMm: number; readonly pence: number }
export type CutInput = {
  readonly pieces: readonly CutPiece[]
  readonly stock: readonly CutStock[]
  readonly kerfMm: number
}
export type CutList = {
  readonly bars: readonly {
    readonly stockId: string
    readonly cuts: readonly { readonly id: string; readonly lengthMm: number }[]
    readonly offcutMm: number
  }[]
  readonly pence: number
  readonly barsUsed: number
  /** No other way to cut costs less, and none that costs the same takes fewer bars. */
  readonly proved: boolean
  /** No way to cut costs less than this; where it is proved, what the list itself costs. */
  readonly leastPence: number
  /** Whether it is the cheapest for certain, and if not by how much it might be beaten. */
  readonly says: string
  readonly why: Derivation
}

const mostPieces = 2_000
const mostLengthMm = 20_000
const mostPence = 1_000_000_00
/** Lengths are told apart to a thousandth of a millimetre. */
const stepsInMm = 1_000

/**
 * How to cut pieces from stock lengths for the least money, and of those with the fewest bars; proven, or marked as
 * not proven with the least that any way could cost. The saw
 * takes its kerf between two pieces, and between the last piece and what is left: n pieces fit a bar when
 * sum(lengths) + kerf (n - 1) <= length, and offcut = length - sum(lengths) - n kerf, or 0 when the last cut eats it.
 * Refuses lengths outside 0 to 20000 mm, more than 2000 pieces, prices that are not whole pence to 1000000 pounds, an id
 * of stock given twice, and a piece longer than every stock length.
 *
 * @param input pieces with counts of 1 or more, stock without limit of number, kerf 0 to 50 mm
 * @source one-dimensional cutting stock (Gilmore and Gomory 1961), exact by branch and bound, then by branch and price
 * @example cutPipe({ pieces: [{ id: 'a', lengthMm: 1000, count: 3 }], stock: [{ id: '3m', lengthMm: 3000, pence: 900 }], kerfMm: 2 }).value.barsUsed // => 2
 */
export function cutPipe(input: CutInput): Outcome<CutList> {
  return cutPipeWithin(input, fullEffort)
}

/**
 * The same with so much work and no more; what is not proven by then is marked so, with the least that any way could cost.
 *
 * @param input as for cutPipe
 * @param effort how much work may be done
 * @source as for cutPipe
 * @example cutPipeWithin({ pieces: [{ id: 'a', lengthMm: 900, count: 3 }], stock: [{ id: '2m', lengthMm: 2000, pence: 700 }], kerfMm: 2 }, { steps: 0, programs: 0 }).value.proved // => true
 */
export function cutPipeWithin(input: CutInput, effort: Effort): Outcome<CutList> {
  const wrong = problemIn(input)
  if (wrong !== null) return wrong
  return accept(cutListOf(input, cheapestPlan(inSteps(input), effort)))
}

/** Different lengths, the longest first. */
function lengthsOf({ pieces }: CutInput): readonly number[] {
  return [...new Set(pieces.map((piece) => steps(piece.lengthMm)))].toSorted((a, b) => b - a)
}

function inSteps(input: CutInput): Cutting {
  const kerf = steps(input.kerfMm, 0)
  const lengths = lengthsOf(input)
  const counts = lengths.map((length) =>
    input.pieces.reduce((sum, piece) => (steps(piece.lengthMm) === length ? sum + piece.count : sum), 0),
  )
  const step = commonStep(lengths.map((length) => length + kerf))
  const grains = grainsOf(input)
  return {
    sizes: lengths.map((length) => (length + kerf) / step),
    counts,
    stock: input.stock.map(({ lengthMm, pence }) => ({
      room: Math.floor((steps(lengthMm) + kerf) / step),
      cost: pence * grains + 1,
    })),
  }
}

/** A penny in grains: more than there can be bars, so that a bar is a grain and never makes up a penny. */
function grainsOf({ pieces }: CutInput): number {
  return pieces.reduce((sum, piece) => sum + piece.count, 1)
}

function steps(lengthMm: number, least = 1): number {
  return Math.max(least, Math.round(lengthMm * stepsInMm))
}

function cutListOf(input: CutInput, { plan, bound }: Branched): CutList {
  const waiting = lengthsOf(input).map((length) =>
    input.pieces
      .filter((piece) => steps(piece.lengthMm) === length)
      .flatMap(({ id, lengthMm, count }) => Array.from({ length: count }, () => ({ id, lengthMm }))),
  )
  const ordered = plan.bars.toSorted((a, b) => a.stock - b.stock || firstDifference(b.taken, a.taken))
  const bars = ordered.map(({ stock, taken }) => {
    const cuts = taken.flatMap((many, place) => (waiting[place] ?? []).splice(0, many))
    return { stockId: input.stock[stock]?.id ?? '', cuts, offcutMm: offcutOf(input, stock, cuts) }
  })
  const pence = plan.bars.reduce((sum, bar) => sum + (input.stock[bar.stock]?.pence ?? 0), 0)
  const proved = bound >= plan.cost
  const leastPence = proved ? pence : Math.floor(bound / grainsOf(input))
  const says = inWords({ proved, pence, leastPence })
  const list = { bars, pence, barsUsed: bars.length, proved, leastPence, says }
  return { ...list, why: whyOf(input, plan, list) }
}

type Proof = Pick<CutList, 'proved' | 'pence' | 'leastPence'>

function inWords({ proved, pence, leastPence }: Proof): string {
  if (proved) return 'No other way to cut costs less, and none at that cost takes fewer lengths.'
  if (leastPence === pence) return 'No other way to cut costs less; one with fewer lengths was not ruled out.'
  return `The cheapest way found; one that costs up to ${pence - leastPence}p less was not ruled out.`
}

function firstDifference(a: readonly number[], b: readonly number[]): number {
  const place = a.findIndex((many, index) => many !== b[index])
  return place < 0 ? 0 : (a[place] as number) - (b[place] as number)
}

function offcutOf(input: CutInput, stock: number, cuts: readonly { readonly lengthMm: number }[]): number {
  const used = cuts.reduce((sum, cut) => sum + steps(cut.lengthMm), 0) + cuts.length * steps(input.kerfMm, 0)
  return Math.max(0, steps(input.stock[stock]?.lengthMm ?? 0) - used) / stepsInMm
}

function whyOf(input: CutInput, plan: Plan, { pence, proved, leastPence }: Proof): Derivation {
  const used = input.stock.map((_, place) => plan.bars.filter((bar) => bar.stock === place).length)
  const says = proved
    ? 'The cheapest way to cut the pieces, then the fewest lengths'
    : 'The cheapest way to cut the pieces that was found; a cheaper one was not ruled out'
  return because(says, pence, {
    unit: 'pence',
    from: [
      ...(proved ? [] : [because('No way to cut them costs less than this', leastPence, { unit: 'pence' })]),
      ...input.stock.map(({ id, lengthMm, pence: price }, place) =>
        because(`Lengths taken of ${id}`, used[place] ?? 0, {
          from: [given(`${id} is long`, lengthMm, 'mm'), given(`${id} costs`, price, 'pence')],
        }),
      ),
      ...input.pieces.map(({ id, lengthMm, count }) =>
        because(`Piece ${id}`, count, {
          from: [given('How many', count), given('How long', lengthMm, 'mm')],
        }),
      ),
      given('What the saw takes at each cut', input.kerfMm, 'mm'),
    ],
  })
}

function problemIn({ pieces, stock, kerfMm }: CutInput): Outcome<never> | null {
  if (pieces.length === 0)
    return refuse('invalid', 'There are no pieces to cut; give at least one.', 'pieces')
  if (stock.length === 0) return refuse('invalid', 'There are no stock lengths; give at least one.', 'stock')
  if (!(kerfMm >= 0 && kerfMm <= 50)) {
    return refuse('invalid', `The saw cut must be 0 to 50 mm wide; it was ${kerfMm}.`, 'kerfMm')
  }
  return problemInStock(stock) ?? problemInPieces(pieces, Math.max(...stock.map((bar) => bar.lengthMm)))
}

function problemInStock(stock: readonly CutStock[]): Outcome<never> | null {
  for (const [index, { id, lengthMm, pence }] of stock.entries()) {
    if (!isLength(lengthMm)) return wrongLength(id, lengthMm, `stock[${index}].lengthMm`)
    if (!Number.isSafeInteger(pence) || pence < 0 || pence > mostPence) {
      const message = `Stock length ${id} must cost whole pence from 0 to ${mostPence}; it costs ${pence}.`
      return refuse('invalid', message, `stock[${index}].pence`)
    }
  }
  const again = stock.findIndex(({ id }, place) => stock.findIndex((other) => other.id === id) !== place)
  if (again < 0) return null
  return refuse('invalid', `${stock[again]?.id} is there twice; give each its own id.`, `stock[${again}].id`)
}

function problemInPieces(pieces: readonly CutPiece[], longestMm: number): Outcome<never> | null {
  for (const [index, { id, lengthMm, count }] of pieces.entries()) {
    if (!isLength(lengthMm)) return wrongLength(id, lengthMm, `pieces[${index}].lengthMm`)
    if (!Number.isSafeInteger(count) || count < 1) {
      return refuse(
        'invalid',
        `How many of ${id} must be 1 or more; it was ${count}.`,
        `pieces[${index}].count`,
      )
    }
    if (lengthMm > longestMm) {
      const message = `Piece ${id} is ${lengthMm} mm, longer than the longest stock length of ${longestMm} mm; join it or stock longer.`
      return refuse('impossible', message, `pieces[${index}].lengthMm`)
    }
  }
  const all = pieces.reduce((sum, piece) => sum + piece.count, 0)
  if (all > mostPieces) {
    return refuse(
      'invalid',
      `A cut list takes up to ${mostPieces} pieces; this one has ${all}. Split it.`,
      'pieces',
    )
  }
  return null
}

function isLength(lengthMm: number): boolean {
  return lengthMm > 0 && lengthMm <= mostLengthMm
}

function wrongLength(id: string, lengthMm: number, path: string): Outcome<never> {
  return refuse(
    'invalid',
    `${id} must be more than 0 and up to ${mostLengthMm} mm long; it was ${lengthMm}.`,
    path,
  )
}
