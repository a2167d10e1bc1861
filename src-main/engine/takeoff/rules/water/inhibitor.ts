import { need } from '../../rule.ts'
import { certain } from '../../../../domain/outcome.ts'
import { doseLitres } from '../../../water/system-dose.ts'
import type { Rule } from '../../rule.ts'

/** Inhibitor for the water that is let out. */
export const inhibitor: Rule<'job'> = {
  id: 'water/inhibitor',
  per: 'job',
  source: 'BS 7593:2019 asks for inhibitor; share: from memory',
  says: 'Inhibitor for the water that is let out',
  uses: ['water.inhibitorLitresPerLitre'],
  gives: (job, use) => {
    const dose = certain(
      doseLitres({
        contentLitres: job.contentLitres,
        contentWhy: job.contentWhy,
        drainedShare: job.drainedShare,
        treatedLitresPerLitre: use.value('water.inhibitorLitresPerLitre'),
        treatedWhy: use.why('water.inhibitorLitresPerLitre'),
      }),
    )
    return [
      need(
        'inhibitor',
        { treatsLitresPerLitre: { atLeast: use.value('water.inhibitorLitresPerLitre') } },
        dose.litres,
        {
          says: 'The water that is let out takes inhibitor anew.',
          from: [dose.why],
        },
      ),
    ]
  },
  examples: [
    {
      says: 'a hundred litres let out take one litre',
      ask: { contentLitres: 100, drainedShare: 1 },
      gives: [['inhibitor', 1]],
    },
    {
      says: 'a tenth let out takes a tenth',
      ask: { contentLitres: 100, drainedShare: 0.1 },
      gives: [['inhibitor', 0.1]],
    },
  ],
}
