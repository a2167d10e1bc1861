import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Explain the valves to the customer, once a job. */
export const explain: TaskRule<'job'> = {
  id: 'explain',
  per: 'job',
  source: 'practice, no published source',
  says: 'Explain the valves to the customer, once a job',
  uses: [],
  gives: () => [work('explain', 1, 'The customer is shown valves and venting.')],
  examples: [
    { says: 'once a job', ask: {}, gives: [['explain', 1]] },
    { says: 'once, however many swaps', ask: { swaps: 9 }, gives: [['explain', 1]] },
  ],
}
