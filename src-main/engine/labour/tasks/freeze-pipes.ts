import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Freeze the pipes of each emitter, where nothing is drained. */
export const freezePipes: TaskRule<'swap'> = {
  id: 'freeze-pipes',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Freeze the pipes of each emitter, where nothing is drained',
  uses: [],
  gives: (swap) => (swap.drain === 'freeze' ? [work('freeze', 1, 'Both pipes are frozen.')] : []),
  examples: [
    { says: 'with freezing', ask: { drain: 'freeze' }, gives: [['freeze', 1]] },
    { says: 'without', ask: {}, gives: [] },
  ],
}
