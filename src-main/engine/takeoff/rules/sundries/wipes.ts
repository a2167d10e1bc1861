import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Wipes, one pack a job. */
export const wipes: Rule<'job'> = {
  id: 'sundries/wipes',
  per: 'job',
  source: 'practice, no published source',
  says: 'Wipes, one pack a job',
  uses: [],
  gives: () => [
    need('sundry', { what: 'wipes' }, 1, {
      says: 'Hands and finish are wiped clean: one pack a job.',
      from: [given('Packs', 1)],
    }),
  ],
  examples: [
    { says: 'one a job', ask: {}, gives: [['sundry', 1]] },
    { says: 'one a job, however many swaps', ask: { swaps: 9 }, gives: [['sundry', 1]] },
  ],
}
