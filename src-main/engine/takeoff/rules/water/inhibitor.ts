import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Inhibitor for the water that is let out. */
export const inhibitor: Rule<'job'> = {
  id: 'water/inhibitor',
  per: 'job',
  source: 'BS 7593:2019 asks for inhibitor; share: from memory',
  says: 'Inhibitor for the water that is let out',
  uses: ['water.inhibitorLitresPerLitre'],
  gives: (job, use) => {
    const litres = (job.contentLitres * job.drainedShare) / use.value('water.inhibitorLitresPerLitre')
    return [
      need(
        'inhibitor',
        { treatsLitresPerLitre: { atLeast: use.value('water.inhibitorLitresPerLitre') } },
        litres,
        {
          says: 'Water in the system x share let out / litres that one litre treats.',
          from: [
            job.contentWhy,
            given('Share of the water let out', job.drainedShare),
            use.why('water.inhibitorLitresPerLitre'),
          ],
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
