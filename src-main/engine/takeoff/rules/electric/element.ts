import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A heating element in a towel rail, where the customer wants one. */
export const element: Rule<'swap'> = {
  id: 'electric/element',
  per: 'swap',
  source: 'practice, no published source; connection by a qualified electrician',
  says: 'A heating element in a towel rail, where the customer wants one',
  uses: [],
  gives: (swap) =>
    swap.elementW === null
      ? []
      : [
          need('element', { watts: swap.elementW, thread: swap.tappingThread }, 1, {
            says: `An element of ${swap.elementW} W; to be connected by a qualified electrician, which is not in this price.`,
            from: [given('Element', swap.elementW, 'W', 'survey')],
          }),
        ],
  examples: [
    { says: 'an element that was asked for', ask: { elementW: 300 }, gives: [['element', 1]] },
    { says: 'none asked for', ask: {}, gives: [] },
  ],
}
