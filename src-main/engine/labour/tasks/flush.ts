import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Clean and flush, where asked for. */
export const flush: TaskRule<'job'> = {
  id: 'flush',
  per: 'job',
  source: 'practice, no published source',
  says: 'Clean and flush, where asked for',
  uses: [],
  gives: (job) => (job.flush ? [work('flush', 1, 'The system is cleaned and flushed.')] : []),
  examples: [
    { says: 'asked for', ask: { flush: true }, gives: [['flush', 1]] },
    { says: 'not asked for', ask: {}, gives: [] },
  ],
}
