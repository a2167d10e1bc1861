import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A freeze pack for each pipe, where pipes are frozen instead of drained. */
export const freezePacks: Rule<'swap'> = {
  id: 'water/freeze-packs',
  per: 'swap',
  source: 'practice, no published source',
  says: 'A freeze pack for each pipe, where pipes are frozen instead of drained',
  uses: [],
  gives: (swap) =>
    swap.drain === 'freeze'
      ? [
          need('sundry', { what: 'pipeFreezePack' }, 2, {
            says: 'Both pipes are frozen while the emitter is changed.',
            from: [given('Pipes', 2)],
          }),
        ]
      : [],
  examples: [
    { says: 'two a swap', ask: { drain: 'freeze' }, gives: [['sundry', 2]] },
    { says: 'a drained system needs none', ask: {}, gives: [] },
  ],
}
