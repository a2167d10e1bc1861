import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Hot work: agree it with the customer, clear what burns, use a heat mat, keep an extinguisher within reach, and look again an hour after the last flame. */
export const hotWork: CautionRule<'job'> = {
  id: 'hot-work',
  per: 'job',
  source: 'practice, no published source',
  says: 'Hot work: agree it with the customer, clear what burns, use a heat mat, keep an extinguisher within reach, and look again an hour after the last flame.',
  uses: [],
  when: (job) => (job.hotWork ? given('Soldering is planned', 'yes', undefined, 'survey') : null),
  examples: [
    { says: 'soldering planned', ask: { hotWork: true }, appears: true },
    { says: 'none planned', ask: {}, appears: false },
  ],
}
