import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Children or frail people live here: keep them away from the work, and agree how hot surfaces may get. */
export const frailPeople: CautionRule<'job'> = {
  id: 'frail-people',
  per: 'job',
  source: 'practice, no published source',
  says: 'Children or frail people live here: keep them away from the work, and agree how hot surfaces may get.',
  uses: [],
  when: (job) =>
    job.frailOrChildren ? given('Children or frail people live here', 'yes', undefined, 'survey') : null,
  examples: [
    { says: 'they live here', ask: { frailOrChildren: true }, appears: true },
    { says: 'they do not', ask: {}, appears: false },
  ],
}
