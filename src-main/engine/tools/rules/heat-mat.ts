import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Heat mat and extinguisher for hot work. */
export const heatMat: ToolRule<'job'> = {
  id: 'heat-mat',
  per: 'job',
  source: 'practice, no published source',
  says: 'Heat mat and extinguisher for hot work',
  uses: [],
  gives: (job) =>
    job.hotWork
      ? [
          {
            name: 'Heat mat and fire extinguisher',
            why: given('Soldering is planned', 'yes', undefined, 'survey'),
          },
        ]
      : [],
  examples: [
    { says: 'soldering', ask: { hotWork: true }, gives: ['Heat mat and fire extinguisher'] },
    { says: 'none', ask: {}, gives: [] },
  ],
}
