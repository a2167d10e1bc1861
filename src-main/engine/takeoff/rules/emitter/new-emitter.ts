import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** The emitter that was chosen, once for each swap. */
export const newEmitter: Rule<'swap'> = {
  id: 'emitter/new-emitter',
  per: 'swap',
  source: 'practice, no published source',
  says: 'The emitter that was chosen, once for each swap',
  uses: [],
  gives: (swap) => [
    need('emitter', { itemId: swap.emitterId }, 1, {
      says: `${swap.emitterName} goes up in the ${swap.roomName}.`,
      from: [given('Emitters in this swap', 1)],
    }),
  ],
  examples: [
    { says: 'a swap takes one emitter', ask: { emitterId: 'panel-a' }, gives: [['emitter', 1]] },
    {
      says: 'whatever hung there before',
      ask: { emitterId: 'panel-a', oldName: null },
      gives: [['emitter', 1]],
    },
  ],
}
