import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Tool } from '../../domain/take-off.ts'
import { questions } from '../takeoff/ask-rules.ts'
import type { Per } from '../takeoff/asks.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { named } from '../takeoff/rule.ts'
import { toolRules } from './tool-list.ts'
import type { ToolRule } from './tool-rule.ts'

/**
 * The tools that a job's own numbers call for, each once.
 * @param facts the job's facts
 * @param figures the firm's figures
 * @source each rule names its own
 * @example toolsFor({ job: { drain: 'freeze', drainedShare: 1 }, rooms: [], swaps: [] }, { settings: {} })[1].name // => "Pipe freezing kit, with gloves"
 */
export function toolsFor(facts: JobFacts, figures: Figures): readonly Tool[] {
  const asked = toolRules.flatMap((rule) => wanted(rule as ToolRule, facts, figures))
  return [...Map.groupBy(asked, (tool) => tool.name)]
    .map(([name, group]) => ({ toolId: toolId(name), name, why: whyOf(group.map((tool) => tool.why)) }))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
}

function wanted<P extends Per>(rule: ToolRule<P>, facts: JobFacts, figures: Figures) {
  const use = named(figures, rule.uses)
  return questions(rule.per, facts).flatMap((question) => rule.gives(question.ask, use))
}

function whyOf(reasons: readonly Derivation[]): Derivation {
  const first = reasons[0]
  return reasons.length === 1 && first !== undefined
    ? first
    : because(`${reasons.length} places call for it.`, reasons.length, { from: reasons })
}

function toolId(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/-$/, '')
}
