import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Set out the brackets of each swap. */
export const setOutBrackets: TaskRule<'swap'> = {
  id: 'set-out-brackets',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Set out the brackets of each swap',
  uses: [],
  gives: (swap) => [work('set-out', 1, `${swap.brackets} brackets are set out.`)],
  examples: [
    { says: 'once a swap', ask: {}, gives: [['set-out', 1]] },
    { says: 'once with three brackets', ask: { brackets: 3 }, gives: [['set-out', 1]] },
  ],
}
