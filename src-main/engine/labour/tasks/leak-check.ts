import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Check for leaks, cold and hot, once a job. */
export const leakCheck: TaskRule<'job'> = {
  id: 'leak-check',
  per: 'job',
  source: 'practice, no published source',
  says: 'Check for leaks, cold and hot, once a job',
  uses: [],
  gives: () => [work('leak-check', 1, 'Every joint is checked cold and hot.')],
  examples: [
    { says: 'once a job', ask: {}, gives: [['leak-check', 1]] },
    { says: 'once, however many swaps', ask: { swaps: 9 }, gives: [['leak-check', 1]] },
  ],
}
