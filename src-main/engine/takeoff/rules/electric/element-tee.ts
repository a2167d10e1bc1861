import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A T-piece that lets the element and the valve share a tapping. */
export const elementTee: Rule<'swap'> = {
  id: 'electric/element-tee',
  per: 'swap',
  source: 'practice, no published source',
  says: 'A T-piece that lets the element and the valve share a tapping',
  uses: [],
  gives: (swap) =>
    swap.elementW === null
      ? []
      : [
          need('sundry', { what: 'elementTee', thread: swap.tappingThread }, 1, {
            says: 'The element and a valve share one tapping through a T-piece.',
            from: [given('Elements', 1)],
          }),
        ],
  examples: [
    { says: 'with an element', ask: { elementW: 300 }, gives: [['sundry', 1]] },
    { says: 'without', ask: {}, gives: [] },
  ],
}
