import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Caution } from '../../domain/take-off.ts'
import { questions } from '../takeoff/ask-rules.ts'
import type { Per } from '../takeoff/asks.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { named } from '../takeoff/rule.ts'
import { cautionRules } from './caution-list.ts'
import type { CautionRule } from './caution-rule.ts'

/**
 * The cautions that a job calls for, each once, with everything that brought it up.
 * @param facts the job's facts
 * @param figures the firm's figures
 * @source each rule names its own
 * @example cautionsFor({ job: { builtYear: 1936 }, rooms: [], swaps: [] }, { settings: { 'asbestos.beforeYear': { says: 'Limit', value: 2000, unit: 'Year', source: 'HSE' } } })[0].cautionId // => "asbestos"
 */
export function cautionsFor(facts: JobFacts, figures: Figures): readonly Caution[] {
  return cautionRules.flatMap((rule) => {
    const reasons = reasonsOf(rule as CautionRule, facts, figures)
    const first = reasons[0]
    if (first === undefined) return []
    const why =
      reasons.length === 1
        ? first
        : because(`${reasons.length} places call for it.`, reasons.length, {
            from: reasons,
            source: rule.source,
          })
    return [{ cautionId: rule.id, says: rule.says, because: why }]
  })
}

function reasonsOf<P extends Per>(
  rule: CautionRule<P>,
  facts: JobFacts,
  figures: Figures,
): readonly Derivation[] {
  const use = named(figures, rule.uses)
  return questions(rule.per, facts).flatMap((question) => rule.when(question.ask, use) ?? [])
}
