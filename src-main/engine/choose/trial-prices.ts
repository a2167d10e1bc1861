import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { labourFor } from '../labour/job-labour.ts'
import type { JobWork } from '../labour/job-labour.ts'
import { underConditions } from '../labour/modifiers.ts'
import { taskRules } from '../labour/task-list.ts'
import { penceForMinutes } from '../quote/labour-lines.ts'
import { sellingOf, soldFor } from '../quote/selling-price.ts'
import { resolveNeeds } from '../takeoff/buying/share-packs.ts'
import { useBoxes } from '../takeoff/gather-needs.ts'
import type { JobNeed } from '../takeoff/gather-needs.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { specKey } from '../takeoff/match-spec.ts'
import { addedUp } from '../takeoff/merge-needs.ts'
import type { MergedNeed } from '../takeoff/merge-needs.ts'
import { resolveNeed } from '../takeoff/resolve.ts'
import type { ResolvedLine } from '../takeoff/resolve.ts'
import type { Question } from '../takeoff/ask-rules.ts'
import type { Need } from '../takeoff/rule.ts'
import { rules } from '../takeoff/rule-list.ts'
import type { Shelf } from '../takeoff/shelf.ts'
import { answerOnce } from './answer-once.ts'
import type { Answerer } from './answer-once.ts'
import { trialFacts } from './fitted-cost.ts'
import type { Fitted, Trial } from './fitted-cost.ts'

/** What an emitter costs fitted, and what the catalogue cannot supply for it. */
export type Cost = Pick<Fitted, 'fittedPence' | 'gaps'>

/** The rules of one swap, asked about one emitter after another. */
export type TrialPrices = {
  readonly costOf: (emitter: Emitter) => Outcome<Cost>
  readonly needsOf: Answerer<JobNeed>
  /** What the holes alone need. */
  readonly holeNeedsOf: Answerer<JobNeed>
  readonly workPence: (facts: JobFacts) => Outcome<number>
}

/**
 * What one emitter after another costs in the same swap, without the reasons: the pence and the gaps of `fittedCost`, sooner, as each
 * question, each line and each sum of work is worked out once.
 * Refuses what `fittedCost` refuses.
 * @param trial the swap without its emitter
 * @source practice, no published source
 * @example trialPrices({ job: {}, swap: { bottomMm: NaN, pipes: [] }, shelf: {}, figures: { settings: { 'pipe.kerfMm': { value: 3 } } } }).costOf({ form: { kind: 'panel' } }).ok // => false
 */
export function trialPrices(trial: Trial): TrialPrices {
  const { figures, shelf } = trial
  const needsOf = answerOnce(rules, figures, asJobNeed)
  const holeNeedsOf = answerOnce(holeRules, figures, asJobNeed)
  const workPence = workPrices(figures)
  const linesOf = linePrices(shelf, figures)
  const costOf = (emitter: Emitter): Outcome<Cost> => {
    const tried = trialFacts(emitter, trial)
    if (!tried.ok) return tried
    const { facts } = tried.value
    const labour = workPence(facts)
    if (!labour.ok) return labour
    const { pence, gaps } = linesOf(useBoxes(needsOf(facts), facts).remaining)
    return accept({ fittedPence: pence + labour.value, gaps })
  }
  return { costOf, needsOf, holeNeedsOf, workPence }
}

const holeRules = rules.filter(({ per }) => per === 'hole')

function asJobNeed(need: Need, { shared, swapIds }: Question): JobNeed {
  return { ...need, shared, swapIds }
}

/** What work is charged at, pence; the same tasks as often come to the same. */
function workPrices(figures: Figures): TrialPrices['workPence'] {
  const rateId = 'money.labourPencePerHour'
  const works = answerOnce(taskRules, figures, (work, { shared, swapIds }, facts): JobWork =>
    underConditions({ ...work, shared, swapIds }, facts, figures),
  )
  const known = new Map<string, Outcome<number>>()
  return (facts) => {
    const asked = works(facts)
    const name = asked.map(({ taskId, count }) => `${taskId} ${count}`).join()
    const before = known.get(name)
    if (before !== undefined) return before
    const labour = labourFor(asked, figures)
    const pence = labour.ok
      ? accept(penceForMinutes(labour.value.expectedMin, figure(figures, rateId)))
      : labour
    known.set(name, pence)
    return pence
  }
}

/** What some lines of the list are sold for, and what is missing from it. */
type Lines = { readonly pence: number; readonly gaps: readonly string[] }
type Line = { readonly name: string; readonly need: MergedNeed; readonly itemId: string | null }

/** As `mergeNeeds`, `resolveNeeds` and `partLines` one after the other; lines that were looked up before are not looked up again. */
function linePrices(shelf: Shelf, figures: Figures): (needs: readonly JobNeed[]) => Lines {
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const nameOf = needNames()
  const lines = new Map<string, Line>()
  const prices = new Map<string, Lines>()
  const lineOf = (lineKey: string, group: readonly JobNeed[]): Line => {
    const name = `${lineKey}|${nameOf(group)}`
    const known = lines.get(name)
    if (known !== undefined) return known
    const need = addedUp(lineKey, group)
    const { purchase } = resolveNeed(need, shelf, { lineId: 'alone', kerfMm })
    const line = { name, need, itemId: purchase?.oneOff === true ? null : (purchase?.itemId ?? null) }
    lines.set(name, line)
    return line
  }
  const priceOf = (group: readonly Line[]): Lines => {
    const name = group.map((line) => line.name).join('\n')
    const known = prices.get(name)
    if (known !== undefined) return known
    const needs = group.map(({ need }) => need).toSorted((a, b) => (a.lineKey < b.lineKey ? -1 : 1))
    const resolved = resolveNeeds(needs, shelf, kerfMm)
    const price = {
      pence: resolved.reduce((sum, one) => sum + soldPence(one, figures), 0),
      gaps: resolved.flatMap(({ line }) => line.gap ?? []),
    }
    prices.set(name, price)
    return price
  }
  return (needs) => {
    const merged = [...Map.groupBy(needs, lineKeyOf)].map(([lineKey, group]) => lineOf(lineKey, group))
    const bought = Map.groupBy(merged, ({ name, itemId }) => itemId ?? `line ${name}`)
    const priced = [...bought.values()].map(priceOf)
    return {
      pence: priced.reduce((sum, { pence }) => sum + pence, 0),
      gaps: priced.flatMap(({ gaps }) => gaps),
    }
  }
}

function soldPence({ line, purchase }: ResolvedLine, figures: Figures): number {
  if (purchase === null) return 0
  return Number(soldFor(purchase.costPence, sellingOf(line.itemKind, figures, undefined), []).value)
}

/** A name for needs of one thing: the same name, the same purchase. Only whole numbers add up to the same in whatever order. */
function needNames(): (group: readonly JobNeed[]) => string {
  const numbers = new WeakMap<object, number>()
  let next = 0
  const numberOf = (why: object) => {
    const number = numbers.get(why) ?? (next += 1)
    numbers.set(why, number)
    return number
  }
  return (group) => {
    const [first] = group
    if (group.length === 1 && first !== undefined) {
      return `${first.quantity} ${first.pieces === undefined ? '' : JSON.stringify(first.pieces)}`
    }
    const whole = group.every(({ quantity, pieces }) => Number.isInteger(quantity) && pieces === undefined)
    if (whole) return `${group.reduce((sum, { quantity }) => sum + quantity, 0)} `
    return group.map(({ why, quantity }) => `${numberOf(why)}x${quantity}`).join()
  }
}

const lineKeys = new WeakMap<object, string>()

/**
 * The key of the line that a need goes into, as `mergeNeeds` has it; of one spec it is worked out once.
 * @param need its kind and what it must be
 * @source practice, no published source
 * @example lineKeyOf({ kind: 'vent', spec: { thread: 'G1/2' } }) // => "vent thread=\"G1/2\""
 */
export function lineKeyOf({ kind, spec }: Pick<JobNeed, 'kind' | 'spec'>): string {
  const known = lineKeys.get(spec) ?? specKey(spec)
  lineKeys.set(spec, known)
  return `${kind} ${known}`
}
