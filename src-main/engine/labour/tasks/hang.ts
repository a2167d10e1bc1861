import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Hang each emitter, two people over the lifting guideline. */
export const hang: TaskRule<'swap'> = {
  id: 'hang',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Hang each emitter, two people over the lifting guideline',
  uses: ['lift.onePersonKg'],
  gives: (swap, use) => {
    const people = swap.emitterMassKg > use.value('lift.onePersonKg') ? 2 : 1
    return [
      work('hang', people, `${swap.emitterName} is hung by ${people === 1 ? 'one person' : 'two people'}.`, [
        given('Mass, dry', swap.emitterMassKg, 'kg'),
        use.why('lift.onePersonKg'),
      ]),
    ]
  },
  examples: [
    { says: 'one person for 18 kg', ask: { emitterMassKg: 18 }, gives: [['hang', 1]] },
    { says: 'two for 38 kg', ask: { emitterMassKg: 38 }, gives: [['hang', 2]] },
  ],
}
