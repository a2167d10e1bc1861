import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Emitter } from '../../domain/item.ts'
import { emitterOutput } from '../heat/emitter-output.ts'
import type { Bounds } from './bound-prices.ts'
import { tieInWords } from './cheapest-first.ts'
import type { Cheapest, Priced } from './cheapest-first.ts'
import type { EmitterStock } from './emitter-stock.ts'
import { fittedCost } from './fitted-cost.ts'
import type { Fitted, Trial } from './fitted-cost.ts'
import { leastPlaces } from './least-first.ts'
import { refusalsOf } from './refusals.ts'
import type { Refusal } from './refusals.ts'
import type { Counted, Screen, Screened } from './screen-emitters.ts'

/** An emitter that heats and fits, with its price. */
export type Choice = Omit<Fitted, 'why'> & {
  readonly emitter: Emitter
  readonly rank: number
  readonly givesW: number
  /** What it gives beyond the need, W. */
  readonly spareW: number
  readonly tie?: string
  readonly why: Derivation
}
export type Named = Pick<Emitter, 'itemId' | 'name' | 'widthMm' | 'heightMm' | 'generic'> & {
  readonly givesW: number
}
export type Dearer = Named & { readonly leastPence: number }
export type Refused = Named & { readonly reasons: readonly Refusal[] }

/** How the one emitter that was asked about stands. */
export type Stands = Refused & { readonly stands: 'ranked' | 'dearer' | 'refused' }

export type Told = {
  readonly ranked: readonly Choice[]
  readonly dearer: readonly Dearer[]
  readonly refused: readonly Refused[]
  /** All of them, and how many have at least one reason of each kind against them. */
  readonly counted: Counted & { readonly dearer: number; readonly refused: number }
  readonly asked?: Stands
}

export type Worked = {
  readonly stock: EmitterStock
  readonly screened: Screened
  readonly screen: Screen
  readonly bounds: Bounds
  readonly cheapest: Cheapest
  readonly trial: Trial
  readonly most: number
  /** How many of the dearer and of the refused ones are told one by one. */
  readonly mostTold: number
  readonly about?: string | undefined
}

/**
 * Tells the answer of a search: those to be shown with all that they cost; of the dearer ones those with the lowest least price, of the
 * refused ones those with the fewest reasons and then the most heat, as many as are wanted; all of them counted; and how the one that
 * was asked about stands.
 * @param worked what the screening and the search came to
 * @source practice, no published source
 * @example tellChoices({ stock: { emitters: [] }, screened: { suitable: [], reasons: [], counted: {} }, bounds: { places: [], failed: [] }, cheapest: { ranked: [], failed: [], left: { first: () => null } }, most: 1, mostTold: 1 }).counted.refused // => 0
 */
export function tellChoices(worked: Worked): Told {
  const { screened, stock, cheapest, bounds, most } = worked
  const shown = cheapest.ranked.slice(0, most)
  const ranked = shown.map((one, index) => choiceOf(one, { rank: index + 1, next: shown[index + 1], worked }))
  const failed = failedOf(worked)
  const dearer = screened.suitable.length - failed.size - shown.length
  const refused = stock.emitters.length - screened.suitable.length + failed.size
  const counted = { ...screened.counted, listing: screened.counted.listing + failed.size, dearer, refused }
  const shownAt = new Set(shown.map(({ index }) => bounds.places[index]))
  const asked = standsOf(worked, failed, shownAt)
  const lists = { dearer: dearerOf(worked), refused: refusedOf(worked, failed) }
  return { ranked, ...lists, counted, ...(asked === null ? {} : { asked }) }
}

type Failed = ReadonlyMap<number, readonly Refusal[]>

/** Those that passed the screening and could not be set out after all, by their place in the stock. */
function failedOf({ bounds, cheapest }: Worked): Failed {
  const later = cheapest.failed.map(({ index, problems }) => ({ at: bounds.places[index] ?? 0, problems }))
  return new Map(
    [...bounds.failed, ...later].map(({ at, problems }) => [
      at,
      problems.map(({ message }): Refusal => ({ about: 'listing', says: message })),
    ]),
  )
}

function dearerOf(worked: Worked): readonly Dearer[] {
  const { bounds, cheapest, most, mostTold } = worked
  const told = (index: number, pence: number): Dearer => {
    const leastPence = Math.max(0, Math.floor(pence))
    return { ...namedAt(worked, bounds.places[index] ?? 0), leastPence }
  }
  const dearer = cheapest.ranked.slice(most).map(({ index, fitted }) => told(index, fitted.fittedPence))
  const { left } = cheapest
  for (let many = 0; many < mostTold; many += 1) {
    const index = left.first()
    if (index === null) break
    dearer.push(told(index, left.keyOf(index)))
    left.drop()
  }
  return dearer.toSorted((a, b) => a.leastPence - b.leastPence).slice(0, mostTold)
}

/** More than any emitter gives: one reason more weighs more than any heat. */
const moreThanAnyW = 1e7

function refusedOf(worked: Worked, failed: Failed): readonly Refused[] {
  const { screened, stock, mostTold } = worked
  const { reasons, givesW } = screened
  const many = stock.emitters.length - screened.suitable.length + failed.size
  const places = new Uint32Array(many)
  const keys = new Float64Array(many)
  let next = 0
  for (let at = 0; at < reasons.length; at += 1) {
    const count = reasons[at] || (failed.get(at)?.length ?? 0)
    if (count === 0) continue
    places[next] = at
    keys[next] = count * moreThanAnyW - (givesW[at] ?? 0)
    next += 1
  }
  return leastPlaces(keys, mostTold).map((index) => refusedAt(worked, places[index] ?? 0, failed))
}

function refusedAt(worked: Worked, at: number, failed: Failed): Refused {
  const { stock, screened, screen } = worked
  const emitter = stock.emitters[at]
  const shape = stock.shapes[stock.shapeAt[at] ?? 0]
  if (emitter === undefined || shape === undefined) throw new Error('The stock has no emitter there')
  const one = { ...shape, givesW: screened.givesW[at] ?? 0, packPence: stock.packPence[at] ?? -1 }
  const reasons = [...refusalsOf(emitter, one, screen), ...(failed.get(at) ?? [])]
  return { ...namedAt(worked, at), reasons }
}

function standsOf(worked: Worked, failed: Failed, shownAt: ReadonlySet<number | undefined>): Stands | null {
  const { about, stock } = worked
  if (about === undefined) return null
  const at = stock.emitters.findIndex(({ itemId }) => itemId === about)
  if (at === -1) return null
  const one = refusedAt(worked, at, failed)
  const stands = one.reasons.length > 0 ? 'refused' : shownAt.has(at) ? 'ranked' : 'dearer'
  return { ...one, stands }
}

function namedAt({ stock, screened }: Worked, at: number): Named {
  const emitter = stock.emitters[at]
  if (emitter === undefined) throw new Error('The stock has no emitter there')
  const { itemId, name, widthMm, heightMm, generic } = emitter
  return { itemId, name, widthMm, heightMm, generic, givesW: screened.givesW[at] ?? 0 }
}

function choiceOf(
  one: Priced,
  more: { readonly rank: number; readonly next: Priced | undefined; readonly worked: Worked },
): Choice {
  const { screen, trial } = more.worked
  const { emitter, givesW } = one
  const fitted = inFull(emitter, trial)
  const tie = more.next === undefined ? null : tieInWords(one, more.next)
  const spareW = Math.round(screen.othersW + givesW) - Math.round(screen.needW)
  const heat = outputWhy(emitter, screen, trial)
  const says = `${emitter.name}: gives ${Math.round(givesW)} W at ${screen.at.flowC}/${screen.at.returnC}.`
  const why = because(says, fitted.fittedPence, { unit: 'pence', from: [heat, fitted.why] })
  return { ...fitted, emitter, rank: more.rank, givesW, spareW, why, ...(tie === null ? {} : { tie }) }
}

/** Those that are shown, with all their reasons; the price is the one that they were ranked by. */
function inFull(emitter: Emitter, trial: Trial): Fitted {
  const fitted = fittedCost(emitter, trial)
  if (!fitted.ok) throw new Error('An emitter that had a price has none')
  return fitted.value
}

/** The same output, asked of the rule that gives its reasons. */
function outputWhy({ ratedW, exponent, rating }: Emitter, { at }: Screen, { swap }: Trial): Derivation {
  const output = emitterOutput({ ratedW, exponent, rating, factors: swap.factors, ...at })
  return output.ok ? output.value.why : given('Rated output', ratedW, 'W')
}
