import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Take the filling loop off after filling: a heating circuit is never left joined to the mains. */
export const fillingLoop: CautionRule<'job'> = {
  id: 'filling-loop',
  per: 'job',
  source: 'Water Supply (Water Fittings) Regulations 1999, Schedule 2, from memory',
  says: 'Take the filling loop off after filling: a heating circuit is never left joined to the mains.',
  uses: [],
  when: (job) =>
    job.systemKind === 'sealed' ? given('The system is sealed', 'sealed', undefined, 'survey') : null,
  examples: [
    { says: 'a sealed system', ask: { systemKind: 'sealed' }, appears: true },
    { says: 'an open vented one', ask: { systemKind: 'openVented' }, appears: false },
  ],
}
