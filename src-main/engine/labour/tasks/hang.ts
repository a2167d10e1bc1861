import { lengthened, work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'
import { given } from '../../../domain/derivation.ts'
import { hangingCrew, liftSettings } from '../crew-lift.ts'

/** Carry in and hang each emitter, two people over the lifting guideline. */
export const hang: TaskRule<'swap'> = {
  id: 'hang',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Hang each emitter, two people over the lifting guideline',
  uses: liftSettings,
  gives: (swap, use) => {
    const { people, whys } = hangingCrew(swap, use)
    const says = `${swap.emitterName} is hung by ${people === 1 ? 'one person' : 'two people'}.`
    const mass = given('Mass, dry', swap.emitterMassKg, 'kg')
    const beyondWaist = people === 2 && swap.emitterMassKg <= use.value('lift.onePersonKg') ? whys : []
    const done = work('hang', people, says, [mass, use.why('lift.onePersonKg'), ...beyondWaist])
    const two = {
      name: 'Two people to lift',
      how: 'times',
      factor: people,
      reason: `${swap.emitterName} is over what one person should lift: both give their time.`,
    } as const
    return [{ ...lengthened(done, 1, [two]), people }]
  },
  examples: [
    { says: 'one person for 18 kg', ask: { emitterMassKg: 18 }, gives: [['hang', 1]] },
    { says: 'two for 38 kg', ask: { emitterMassKg: 38 }, gives: [['hang', 2]] },
    { says: 'two for 22 kg upstairs', ask: { emitterMassKg: 22, storey: 1 }, gives: [['hang', 2]] },
    { says: 'two for 15 kg above the head', ask: { emitterMassKg: 15, handsMm: 1700 }, gives: [['hang', 2]] },
  ],
}
