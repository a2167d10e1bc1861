import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Drive there and back. */
export const travel: TaskRule<'job'> = {
  id: 'travel',
  per: 'job',
  source: 'practice, no published source',
  says: 'Drive there and back',
  uses: [],
  gives: (job) =>
    job.travelKm > 0
      ? [
          work('travel', job.travelKm * 2, 'There and back.', [
            given('Distance one way', job.travelKm, 'km', 'survey'),
          ]),
        ]
      : [],
  examples: [
    { says: 'eight kilometres away', ask: { travelKm: 8 }, gives: [['travel', 16]] },
    { says: 'next door', ask: { travelKm: 0 }, gives: [] },
  ],
}
