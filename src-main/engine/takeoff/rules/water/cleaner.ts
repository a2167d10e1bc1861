import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'

/** Cleaner, where the system is flushed. */
export const cleaner: Rule<'job'> = {
  id: 'water/cleaner',
  per: 'job',
  source: 'BS 7593:2019 asks for cleaning; share: from memory',
  says: 'Cleaner, where the system is flushed',
  uses: ['water.cleanerLitresPerLitre'],
  gives: (job, use) =>
    job.flush
      ? [
          need(
            'cleaner',
            { treatsLitresPerLitre: { atLeast: use.value('water.cleanerLitresPerLitre') } },
            job.contentLitres / use.value('water.cleanerLitresPerLitre'),
            {
              says: 'The whole system is cleaned: water in it / litres that one litre treats.',
              from: [job.contentWhy, use.why('water.cleanerLitresPerLitre')],
            },
          ),
        ]
      : [],
  examples: [
    {
      says: 'a flush of a hundred litres',
      ask: { flush: true, contentLitres: 100 },
      gives: [['cleaner', 1]],
    },
    { says: 'no flush, no cleaner', ask: {}, gives: [] },
  ],
}
