import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Balance each new emitter. */
export const balance: TaskRule<'swap'> = {
  id: 'balance',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Balance each new emitter',
  uses: [],
  gives: (swap) => [work('balance', 1, `${swap.emitterName} is balanced.`)],
  examples: [
    { says: 'once a swap', ask: {}, gives: [['balance', 1]] },
    { says: 'with kept valves too', ask: { valvesKept: true }, gives: [['balance', 1]] },
  ],
}
