import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** An air vent in each tapping that is meant for one. */
export const airVent: Rule<'joint'> = {
  id: 'valves/air-vent',
  per: 'joint',
  source: 'practice, no published source',
  says: 'An air vent in each tapping that is meant for one',
  uses: [],
  gives: (joint) =>
    joint.holds === 'vent' && !joint.factoryFitted
      ? [
          need('vent', { thread: joint.thread, sealing: joint.sealing, finish: joint.finish }, 1, {
            says: `An air vent closes the tapping at the ${joint.at}.`,
            from: [given(`Tapping at the ${joint.at}`, joint.thread)],
          }),
        ]
      : [],
  examples: [
    { says: 'an open tapping takes one', ask: { holds: 'vent' }, gives: [['vent', 1]] },
    { says: 'a tapping with a valve takes none', ask: { holds: 'valve' }, gives: [] },
    {
      says: 'one that the works fitted is there already',
      ask: { holds: 'vent', factoryFitted: true },
      gives: [],
    },
  ],
}
