import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A vent key left with the customer for each emitter with a vent. */
export const ventKey: Rule<'swap'> = {
  id: 'sundries/vent-key',
  per: 'swap',
  source: 'practice, no published source',
  says: 'A vent key left with the customer for each emitter with a vent',
  uses: [],
  gives: (swap) =>
    swap.hasVent
      ? [
          need('sundry', { what: 'ventKey' }, 1, {
            says: `A key for the vent stays with the ${swap.roomName}.`,
            from: [given('Vents', 1)],
          }),
        ]
      : [],
  examples: [
    { says: 'an emitter with a vent', ask: {}, gives: [['sundry', 1]] },
    { says: 'one without', ask: { hasVent: false }, gives: [] },
  ],
}
