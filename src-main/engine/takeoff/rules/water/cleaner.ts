import { need } from '../../rule.ts'
import { certain } from '../../../../domain/outcome.ts'
import { doseLitres } from '../../../water/system-dose.ts'
import type { Rule } from '../../rule.ts'

/** Cleaner, where the system is flushed. */
export const cleaner: Rule<'job'> = {
  id: 'water/cleaner',
  per: 'job',
  source: 'BS 7593:2019 asks for cleaning; share: from memory',
  says: 'Cleaner, where the system is flushed',
  uses: ['water.cleanerLitresPerLitre'],
  gives: (job, use) => {
    if (!job.flush) return []
    const dose = certain(
      doseLitres({
        contentLitres: job.contentLitres,
        contentWhy: job.contentWhy,
        drainedShare: 1,
        treatedLitresPerLitre: use.value('water.cleanerLitresPerLitre'),
        treatedWhy: use.why('water.cleanerLitresPerLitre'),
      }),
    )
    return [
      need(
        'cleaner',
        { treatsLitresPerLitre: { atLeast: use.value('water.cleanerLitresPerLitre') } },
        dose.litres,
        {
          says: 'The whole system is cleaned.',
          from: [dose.why],
        },
      ),
    ]
  },
  examples: [
    {
      says: 'a flush of a hundred litres',
      ask: { flush: true, contentLitres: 100 },
      gives: [['cleaner', 1]],
    },
    { says: 'no flush, no cleaner', ask: {}, gives: [] },
  ],
}
