import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { excessTemperatureK } from '../heat/excess-temperature.ts'
import { heatLoad } from '../heat/heat-load.ts'
import { roomHeatOf } from '../quote/warmth.ts'
import { boundPrices } from './bound-prices.ts'
import type { Bounds } from './bound-prices.ts'
import { cheapestFirst } from './cheapest-first.ts'
import type { Cheapest, Priced } from './cheapest-first.ts'
import { emitterStock } from './emitter-stock.ts'
import type { EmitterStock } from './emitter-stock.ts'
import type { Trial } from './fitted-cost.ts'
import { screenEmitters } from './screen-emitters.ts'
import type { Screen, Screened, Wanted } from './screen-emitters.ts'
import { tellChoices } from './tell-choices.ts'
import type { Told } from './tell-choices.ts'
import { trialPrices } from './trial-prices.ts'
import type { TrialPrices } from './trial-prices.ts'
import { wallLimits } from './wall-limits.ts'

export type ChooseInput = {
  readonly trial: Trial
  /** The emitters to look at; all of the shelf when absent. Laid out once, they serve until the shelf changes. */
  readonly stock?: EmitterStock | undefined
  /** What the room's other emitters give, W, with the reasons. */
  readonly othersW: number
  readonly othersWhy: readonly Derivation[]
  readonly want: Wanted
  readonly most: number
  /** How many of the dearer and of the refused ones are told one by one. */
  readonly mostTold: number
  /** One emitter to tell about, wherever it stands. */
  readonly about?: string | undefined
  /** How many are priced to the penny at most, before the search says that it is not sure. */
  readonly mostWorked: number
}

export type ChooseAnswer = Told & {
  readonly needW: number
  readonly rough: boolean
  /** How many emitters were looked at: ranked, dearer and refused together. */
  readonly looked: number
  readonly workedUp: number
  readonly certain: boolean
  readonly why: Derivation
}

/**
 * Ranks every emitter of the catalogue for one place on a wall by what it costs fitted. First one pass over all: what was wanted, the
 * heat W = W rated x (dT / dT rated)^n, the wall. Those that pass get a price below which they cannot be fitted; in that order they are
 * set out, taken off and priced, until no other can be cheaper than the last shown. All are counted, and the nearest told one by one.
 * Refuses temperatures that do not fall from flow to return to room, a centre that the pipes do not give, what `heatLoad` refuses, and
 * to tell about an emitter that is not looked at.
 *
 * @param input the swap without its emitter, the job, the shelf and figures; what other emitters give (W); what was wanted
 * @source EN 442-2 for the heat; EN 12831-1, simplified, for the need; the rest practice, no published source
 * @example chooseEmitter({ trial: { job: { survey: { outsideC: -3, system: { flowC: 30, returnC: 40 } } }, room: { roomC: 20 } } }).problems[0].path // => "flowC"
 */
export function chooseEmitter(input: ChooseInput): Outcome<ChooseAnswer> {
  const { trial, want, othersW, most, mostTold, about } = input
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
  const stock = input.stock ?? emitterStock(shelf)
  if (about !== undefined && !stock.emitters.some(({ itemId }) => itemId === about)) {
    return refuse('not-found', `${about} is not among the emitters that are looked at.`, 'about')
  }
  const screened = screenEmitters(stock, screen)
  const kept = { ...trial, shelf: { ...shelf, bought: new Map() } }
  const prices = trialPrices(kept)
  const more = { limits: limits.value, prices }
  const bounds = boundPrices({ stock, suitable: screened.suitable }, trial, more)
  if (!bounds.ok) return bounds
  const cheapest = cheapestOf(stock, screened, { input, bounds: bounds.value, prices })
  const rest = { screen, trial: kept, most, mostTold, about }
  const told = tellChoices({ stock, screened, bounds: bounds.value, cheapest, ...rest })
  const looked = stock.emitters.length
  const from = [
    load.value.why,
    excess.value.why,
    ...input.othersWhy,
    ...told.ranked.map((choice) => choice.why),
  ]
  const says = `${looked} emitters were looked at; those that heat the room and fit, cheapest fitted first.`
  const { workedUp, certain } = cheapest
  const { watts: needW, rough } = load.value
  return accept({ ...told, needW, rough, looked, workedUp, certain, why: because(says, looked, { from }) })
}

type Searched = { readonly input: ChooseInput; readonly bounds: Bounds; readonly prices: TrialPrices }

function cheapestOf(
  stock: EmitterStock,
  { givesW }: Screened,
  { input, bounds, prices }: Searched,
): Cheapest {
  const { most, mostWorked } = input
  const work = (index: number): Outcome<Omit<Priced, 'index'>> => {
    const at = bounds.places[index] ?? 0
    const emitter = stock.emitters[at]
    if (emitter === undefined) throw new Error('The stock has no emitter there')
    const fitted = prices.costOf(emitter)
    return fitted.ok ? accept({ emitter, givesW: givesW[at] ?? 0, fitted: fitted.value }) : fitted
  }
  return cheapestFirst(bounds.leastPence, { closer: bounds.closer, work }, { most, mostWorked })
}
