import { because } from '../../domain/derivation.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { TakeOff, TakeOffLine } from '../../domain/take-off.ts'
import { cautionsFor } from '../cautions/cautions-for.ts'
import { toolsFor } from '../tools/tools-for.ts'
import { askedFor, useBoxes } from './gather-needs.ts'
import type { BoxUse } from './gather-needs.ts'
import type { JobFacts } from './job-facts.ts'
import { mergeNeeds } from './merge-needs.ts'
import { needInWords } from './resolve.ts'
import { rules } from './rule-list.ts'
import { resolveNeeds } from './buying/share-packs.ts'
import type { Shelf } from './shelf.ts'

/** The parts list and how each line is bought. */
export type PricedTakeOff = {
  readonly takeOff: TakeOff
  readonly purchases: readonly Purchase[]
  readonly boxUses: readonly BoxUse[]
}

/**
 * Everything that the swaps of a job need, rule by rule: asked for, taken from the boxes first, put together, and found in
 * the catalogue; with the cautions and tools that the same facts call for.
 * @param facts the job's facts
 * @param shelf the catalogue with the prices in force
 * @param figures the firm's figures
 * @source practice, no published source
 * @example takeOff({ job: { swaps: 0, drain: 'freeze', contentLitres: 0, drainedShare: 0, builtYear: 2020, contentWhy: { says: 'None', value: 0, from: [] } }, rooms: [], swaps: [] }, { parts: new Map(), prices: new Map() }, { settings: { 'pipe.kerfMm': { value: 1 }, 'seal.tapeTurnsCount': { value: 12 }, 'water.inhibitorLitresPerLitre': { value: 100 }, 'asbestos.beforeYear': { value: 2000 } }, tasks: {} }).takeOff.lines.map((line) => line.itemKind) // => ["inhibitor","testKit","sundry"]
 */
export function takeOff(facts: JobFacts, shelf: Shelf, figures: Figures): PricedTakeOff {
  const { remaining, used } = useBoxes(askedFor(rules, facts, figures), facts)
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const needs = mergeNeeds(remaining).toSorted(
    (a, b) => kindOrder(a.kind) - kindOrder(b.kind) || (a.lineKey < b.lineKey ? -1 : 1),
  )
  const resolved = resolveNeeds(needs, shelf, kerfMm)
  const lines = resolved.map(({ line }) => line)
  const answer: TakeOff = {
    lines,
    fromBox: boxLines(used),
    cautions: cautionsFor(facts, figures),
    tools: toolsFor(facts, figures),
    why: because(`${rules.length} rules were asked about ${swapsInWords(facts)}.`, lines.length, {
      unit: 'lines',
      from: lines.map((line) => line.why),
    }),
  }
  return { takeOff: answer, purchases: resolved.flatMap(({ purchase }) => purchase ?? []), boxUses: used }
}

function swapsInWords({ swaps }: JobFacts): string {
  return swaps.length === 1 ? '1 swap' : `${swaps.length} swaps`
}

/** The order in which a fitter reads a parts list: the emitter, its valves, then what it hangs on, then the rest. */
const reading: readonly TakeOffLine['itemKind'][] = [
  'emitter',
  'valve',
  'tail',
  'vent',
  'blank',
  'element',
  'plug',
  'anchor',
  'screw',
  'board',
  'pipe',
  'pipeFitting',
  'clip',
  'collar',
  'insulation',
  'seal',
  'filler',
  'sealant',
  'paint',
  'inhibitor',
  'cleaner',
  'testKit',
  'sundry',
]

function kindOrder(kind: TakeOffLine['itemKind']): number {
  return reading.indexOf(kind)
}

function boxLines(used: readonly BoxUse[]): TakeOff['fromBox'] {
  const groups = Map.groupBy(used, (use) => `${use.swapId} ${needInWords(use)}`)
  return [...groups.values()].flatMap((group) => {
    const first = group[0]
    if (first === undefined) return []
    const quantity = group.reduce((sum, use) => sum + use.quantity, 0)
    const why =
      group.length === 1
        ? first.why
        : because("In the emitter's box.", quantity, { from: group.map((use) => use.why) })
    return [{ name: needInWords(first), itemKind: first.kind, quantity, why }]
  })
}
