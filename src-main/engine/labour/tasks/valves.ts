import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Fit the valve at each pipe. */
export const fitValves: TaskRule<'side'> = {
  id: 'valves',
  per: 'side',
  source: 'practice, no published source',
  says: 'Fit the valve at each pipe',
  uses: [],
  gives: (side) => [
    work('valve', 1, `The ${side.side} valve is fitted${side.role === 'kept' ? ' again' : ''}.`),
  ],
  examples: [
    { says: 'one a side', ask: {}, gives: [['valve', 1]] },
    { says: 'a kept valve is fitted again', ask: { role: 'kept' }, gives: [['valve', 1]] },
  ],
}
