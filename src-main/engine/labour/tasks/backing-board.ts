import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Fix a backing board where the wall wants one. */
export const fixBackingBoard: TaskRule<'swap'> = {
  id: 'backing-board',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Fix a backing board where the wall wants one',
  uses: [],
  gives: (swap) =>
    swap.needsBoard ? [work('backing-board', 1, 'A backing board goes across the studs.')] : [],
  examples: [
    { says: 'a wall that does not hold', ask: { needsBoard: true }, gives: [['backing-board', 1]] },
    { says: 'a wall that does', ask: {}, gives: [] },
  ],
}
