import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Emitter } from '../../domain/item.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { emitterOutput } from '../heat/emitter-output.ts'
import { excessTemperatureK } from '../heat/excess-temperature.ts'
import type { Temperatures } from '../heat/excess-temperature.ts'
import { heatLoad } from '../heat/heat-load.ts'
import { roomHeatOf } from '../quote/warmth.ts'
import { cheapestFirst, tieInWords } from './cheapest-first.ts'
import type { Bounded, Cheapest, Priced } from './cheapest-first.ts'
import { emitterColumns } from './emitter-columns.ts'
import type { EmitterColumns } from './emitter-columns.ts'
import { fittedCost, trialFacts } from './fitted-cost.ts'
import type { Fitted, Trial } from './fitted-cost.ts'
import { boundPrices } from './bound-prices.ts'
import { leastBeside, leastOfNeeds, leastPackPence } from './least-cost.ts'
import { refusalsOf } from './refusals.ts'
import type { Refusal } from './refusals.ts'
import { screenEmitters } from './screen-emitters.ts'
import type { Screen, Screened, Wanted } from './screen-emitters.ts'
import { wallLimits } from './wall-limits.ts'
import type { WallLimits } from './wall-limits.ts'

export type ChooseInput = {
  readonly trial: Trial
  /** What the room's other emitters give, W, with the reasons. */
  readonly othersW: number
  readonly othersWhy: readonly Derivation[]
  readonly want: Wanted
  readonly most: number
  /** How many are looked at closely at most, before the search says that it is not sure. */
  readonly mostWorked: number
}

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
export type Named = { readonly itemId: string; readonly name: string; readonly givesW: number }
export type ChooseAnswer = {
  readonly needW: number
  readonly rough: boolean
  /** How many emitters were looked at: ranked, dearer and refused together. */
  readonly looked: number
  readonly ranked: readonly Choice[]
  /** Those that suit as well and cost more, with the least that they can cost. */
  readonly dearer: readonly (Named & { readonly leastPence: number })[]
  readonly refused: readonly (Named & { readonly reasons: readonly Refusal[] })[]
  readonly workedUp: number
  readonly certain: boolean
  readonly why: Derivation
}

/**
 * Ranks every emitter of the catalogue for one place on a wall by what it costs fitted. First one pass over all: what was wanted, the
 * heat W = W rated x (dT / dT rated)^n, the wall. Those that pass get a price below which they cannot be fitted; in that order they are
 * set out, taken off and priced, until no other can be cheaper than the last shown. Every other one says why it is not offered.
 * Refuses temperatures that do not fall from flow to return to room, a centre that the pipes do not give, and what `heatLoad` refuses.
 *
 * @param input the swap without its emitter, the job, the shelf and figures; what other emitters give (W); what was wanted
 * @source EN 442-2 for the heat; EN 12831-1, simplified, for the need; the rest practice, no published source
 * @example chooseEmitter({ trial: { job: { survey: { outsideC: -3, system: { flowC: 30, returnC: 40 } } }, room: { roomC: 20 } } }).problems[0].path // => "flowC"
 */
export function chooseEmitter(input: ChooseInput): Outcome<ChooseAnswer> {
  const { trial, want, othersW } = input
  const { job, room, wall, swap, figures, shelf } = trial
  const { flowC, returnC } = job.survey.system
  const at = { flowC, returnC, roomC: room.roomC }
  const excess = excessTemperatureK(at)
  if (!excess.ok) return excess
  const load = heatLoad({ room: roomHeatOf(room, job.survey.outsideC) })
  if (!load.ok) return load
  const { pipes, centre, bottomMm } = swap
  const limits = wallLimits({ wall, centre, bottomMm, pipes }, figures)
  if (!limits.ok) return limits
  const share = (swap.factors ?? []).reduce((product, factor) => product * factor.value, 1)
  const screen: Screen = { limits: limits.value, at, needW: load.value.watts, othersW, share, want }
  const columns = emitterColumns([...shelf.emitters.values()])
  const screened = screenEmitters(columns, screen)
  const cheapest = cheapestOf(columns, screened, { input, limits: limits.value })
  if (!cheapest.ok) return cheapest
  const { workedUp, certain } = cheapest.value
  const told = tell({ columns, screened, screen, input, cheapest: cheapest.value })
  const looked = columns.emitters.length
  const why = because(
    `${looked} emitters were looked at; those that heat the room and fit, cheapest fitted first.`,
    looked,
    {
      from: [
        load.value.why,
        excess.value.why,
        ...input.othersWhy,
        ...told.ranked.map((choice) => choice.why),
      ],
    },
  )
  return accept({ needW: load.value.watts, rough: load.value.rough, looked, ...told, workedUp, certain, why })
}

/** The cheapest of those that suit; one that cannot be set out after all is put with the failed. */
function cheapestOf(
  { emitters }: EmitterColumns,
  { suitable, givesW }: Screened,
  { input, limits }: { readonly input: ChooseInput; readonly limits: WallLimits },
): Outcome<Cheapest> {
  const { trial, most, mostWorked } = input
  const { shelf, figures } = trial
  const leastOf = leastOfNeeds(shelf, figures)
  const suits = suitable.flatMap((at) => {
    const emitter = emitters[at]
    return emitter === undefined ? [] : [{ emitter, givesW: givesW[at] ?? 0 }]
  })
  const bounds = boundPrices(suits, trial, { leastOf, limits })
  if (!bounds.ok) return bounds
  const { bounded, failed } = bounds.value
  const closer = ({ emitter, ownPence }: Bounded): Outcome<number> => {
    const tried = trialFacts(emitter, trial)
    if (!tried.ok) return tried
    const beside = leastBeside(tried.value.facts, leastOf, figures)
    return beside.ok ? accept(ownPence + beside.value) : beside
  }
  const work = (emitter: Emitter) => fittedCost(emitter, trial)
  const cheapest = cheapestFirst(bounded, { closer, work }, { most, mostWorked })
  return accept({ ...cheapest, failed: [...failed, ...cheapest.failed] })
}

type Worked = {
  readonly columns: EmitterColumns
  readonly screened: Screened
  readonly screen: Screen
  readonly input: ChooseInput
  readonly cheapest: Cheapest
}

function tell(worked: Worked): Pick<ChooseAnswer, 'ranked' | 'dearer' | 'refused'> {
  const { screened, screen, columns, input, cheapest } = worked
  const shown = cheapest.ranked.slice(0, input.most)
  const ranked = shown.map((one, index) => choiceOf(one, { rank: index + 1, next: shown[index + 1], worked }))
  const known = new Map([
    ...cheapest.left.map((one) => [one.emitter, one.leastPence] as const),
    ...cheapest.ranked.map((one) => [one.emitter, one.fitted.fittedPence] as const),
  ])
  const failed = new Map(cheapest.failed.map((one) => [one.emitter, one.problems]))
  const atTop = new Set(shown.map((one) => one.emitter))
  const suits = new Set(screened.suitable)
  const dearer: ChooseAnswer['dearer'][number][] = []
  const refused: ChooseAnswer['refused'][number][] = []
  for (const [at, emitter] of columns.emitters.entries()) {
    if (atTop.has(emitter)) continue
    const givesW = screened.givesW[at] ?? 0
    const named = { itemId: emitter.itemId, name: emitter.name, givesW }
    const packPence = leastPackPence(input.trial.shelf.prices.get(emitter.itemId) ?? [])
    const problems = failed.get(emitter)
    const leastPence = known.get(emitter)
    if (leastPence !== undefined && problems === undefined) {
      dearer.push({ ...named, leastPence })
      continue
    }
    const reasons = suits.has(at) ? [] : refusalsOf(emitter, sizesAt(columns, at, givesW), screen)
    refused.push({
      ...named,
      reasons: [
        ...reasons,
        ...(problems ?? []).map(({ message }): Refusal => ({ about: 'listing', says: message })),
        ...(packPence === null
          ? [{ about: 'price' as const, says: 'nobody asks a price for it today' }]
          : []),
      ],
    })
  }
  return { ranked, dearer, refused }
}

function sizesAt(columns: EmitterColumns, at: number, givesW: number) {
  return {
    widthMm: columns.widthMm[at] ?? 0,
    heightMm: columns.heightMm[at] ?? 0,
    pipeCentresMm: columns.pipeCentresMm[at] ?? 0,
    valveSides: columns.valveSides[at] ?? 0,
    givesW,
  }
}

function choiceOf(
  one: Priced,
  more: { readonly rank: number; readonly next: Priced | undefined; readonly worked: Worked },
): Choice {
  const { screen, input } = more.worked
  const { emitter, givesW, fitted } = one
  const tie = more.next === undefined ? null : tieInWords(one, more.next)
  const spareW = Math.round(screen.othersW + givesW) - Math.round(screen.needW)
  const heat = outputWhy(emitter, screen.at, input)
  const says = `${emitter.name}: gives ${Math.round(givesW)} W at ${screen.at.flowC}/${screen.at.returnC}.`
  const why = because(says, fitted.fittedPence, { unit: 'pence', from: [heat, fitted.why] })
  return { ...fitted, emitter, rank: more.rank, givesW, spareW, why, ...(tie === null ? {} : { tie }) }
}

/** The same output, asked of the rule that gives its reasons. */
function outputWhy(
  { ratedW, exponent, rating }: Emitter,
  at: Temperatures,
  { trial }: ChooseInput,
): Derivation {
  const { factors } = trial.swap
  const output = emitterOutput({ ratedW, exponent, rating, factors, ...at })
  return output.ok ? output.value.why : given('Rated output', ratedW, 'W')
}
