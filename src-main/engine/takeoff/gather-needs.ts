import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Boxed, WantedSpec } from '../../domain/item.ts'
import { questions } from './ask-rules.ts'
import type { Question } from './ask-rules.ts'
import type { JobFacts } from './job-facts.ts'
import { specMatches } from './match-spec.ts'
import { named } from './rule.ts'
import type { AnyRule, Need, Rule } from './rule.ts'
import type { Per } from './asks.ts'

/** A need and the swaps it belongs to; `shared` for what the job needs once. */
export type JobNeed = Need & { readonly shared: boolean; readonly swapIds: readonly string[] }

/** Something in an emitter's box that met a need. */
export type BoxUse = {
  readonly kind: Boxed['kind']
  readonly spec: WantedSpec
  readonly quantity: number
  readonly swapId: string
  readonly why: Derivation
}

/**
 * What the rules ask for, one by one, before packs, boxes or sums.
 * @param rules the take-off rules; their order never matters
 * @param facts the job's facts
 * @param figures the firm's figures
 * @source practice, no published source
 * @example askedFor([{ per: 'job', uses: [], source: 's', gives: () => [{ kind: 'vent', quantity: 1, why: {} }] }], { job: {}, swaps: [] }, {})[0].shared // => true
 */
export function askedFor(rules: readonly AnyRule[], facts: JobFacts, figures: Figures): readonly JobNeed[] {
  return rules.flatMap((rule) => askOne(rule as Rule, facts, figures))
}

function askOne<P extends Per>(rule: Rule<P>, facts: JobFacts, figures: Figures): readonly JobNeed[] {
  const use = named(figures, rule.uses)
  return questions(rule.per, facts).flatMap((question: Question<P>) =>
    rule.gives(question.ask, use).map((need) => ({
      ...need,
      shared: question.shared,
      swapIds: question.swapIds,
      why: signed(need, rule),
    })),
  )
}

/** The need's reason, carrying the rule's source. */
function signed(need: Need, rule: Pick<Rule, 'source'>): Derivation {
  return need.why.source === undefined ? { ...need.why, source: rule.source } : need.why
}

/**
 * Takes from each emitter's box what suits its wall, before anything is bought.
 * @param needs what the rules ask for
 * @param facts the job's facts, with each swap's box and wall
 * @source practice, no published source
 * @example useBoxes([{ kind: 'vent', spec: {}, quantity: 3, swapIds: ['a'], why: { says: 'one', value: 1, from: [] } }], { swaps: [{ swapId: 'a', box: [{ kind: 'vent', spec: {}, count: 1 }] }] }).remaining[0].quantity // => 2
 */
export function useBoxes(needs: readonly JobNeed[], facts: JobFacts) {
  const left = new Map(
    facts.swaps.map((swap) => [swap.swapId, swap.box.map((boxed) => ({ boxed, count: boxed.count }))]),
  )
  const walls = new Map(facts.swaps.map((swap) => [swap.swapId, swap.wallBuild]))
  const used: BoxUse[] = []
  const remaining = needs.flatMap((need) => {
    const swapId = need.swapIds.length === 1 ? need.swapIds[0] : undefined
    if (swapId === undefined || need.kind === 'emitter') return [need]
    const wall = walls.get(swapId)
    let open = need.quantity
    for (const entry of left.get(swapId) ?? []) {
      const suits =
        entry.boxed.suits === undefined || (wall !== undefined && entry.boxed.suits.includes(wall))
      if (!suits || entry.boxed.kind !== need.kind || !specMatches(entry.boxed.spec, need.spec)) continue
      const taken = Math.min(open, entry.count)
      if (taken <= 0) continue
      entry.count -= taken
      open -= taken
      used.push(boxUse(need, taken, swapId))
    }
    return open > 0 ? [{ ...need, quantity: open, why: lessBox(need, open) }] : []
  })
  return { remaining, used }
}

function boxUse(need: JobNeed, taken: number, swapId: string): BoxUse {
  const why = because(`In the emitter's box, and it suits this wall: ${need.why.says}`, taken, {
    from: [need.why],
  })
  return { kind: need.kind as Boxed['kind'], spec: need.spec, quantity: taken, swapId, why }
}

function lessBox(need: JobNeed, open: number): Derivation {
  if (open === need.quantity) return need.why
  return because(need.why.says, open, {
    unit: need.unit,
    from: [need.why, given("Taken from the emitter's box", need.quantity - open)],
  })
}
