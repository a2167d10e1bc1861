import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A cap for each open tail, where only a part is isolated. */
export const isolatingCaps: Rule<'swap'> = {
  id: 'water/isolating-caps',
  per: 'swap',
  source: 'practice, no published source',
  says: 'A cap for each open tail, where only a part is isolated',
  uses: [],
  gives: (swap) =>
    swap.drain === 'isolatedPart'
      ? [
          need('sundry', { what: 'isolatingCap', thread: swap.tappingThread }, 2, {
            says: 'Both open ends are capped while the emitter is off.',
            from: [given('Pipes', 2)],
          }),
        ]
      : [],
  examples: [
    { says: 'two a swap', ask: { drain: 'isolatedPart' }, gives: [['sundry', 2]] },
    { says: 'a drained system needs none', ask: {}, gives: [] },
  ],
}
