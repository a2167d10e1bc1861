import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Hose and bucket to drain, or a freezing kit. */
export const drainGear: ToolRule<'job'> = {
  id: 'drain-gear',
  per: 'job',
  source: 'practice, no published source',
  says: 'Hose and bucket to drain, or a freezing kit',
  uses: [],
  gives: (job) => [
    {
      name: job.drain === 'freeze' ? 'Pipe freezing kit, with gloves' : 'Drain hose, bucket and towels',
      why: given('How the water is dealt with', job.drain, undefined, 'survey'),
    },
  ],
  examples: [
    { says: 'a drained system', ask: { drain: 'wholeSystem' }, gives: ['Drain hose, bucket and towels'] },
    { says: 'frozen pipes', ask: { drain: 'freeze' }, gives: ['Pipe freezing kit, with gloves'] },
  ],
}
