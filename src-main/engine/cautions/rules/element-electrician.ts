import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** The heating element is to be connected, protected and tested by a qualified electrician under the local wiring rules; it is not in this price. */
export const elementElectrician: CautionRule<'swap'> = {
  id: 'element-electrician',
  per: 'swap',
  source: 'BS 7671 section 701 for rooms with a bath or shower',
  says: 'The heating element is to be connected, protected and tested by a qualified electrician under the local wiring rules; it is not in this price.',
  uses: [],
  when: (swap) => (swap.elementW === null ? null : given('Element', swap.elementW, 'W', 'survey')),
  examples: [
    { says: 'an element', ask: { elementW: 300 }, appears: true },
    { says: 'none', ask: {}, appears: false },
  ],
}
