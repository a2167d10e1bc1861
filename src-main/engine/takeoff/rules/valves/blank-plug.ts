import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A blank plug in each tapping that is meant for one. */
export const blankPlug: Rule<'joint'> = {
  id: 'valves/blank-plug',
  per: 'joint',
  source: 'practice, no published source',
  says: 'A blank plug in each tapping that is meant for one',
  uses: [],
  gives: (joint) =>
    joint.holds === 'blank' && !joint.factoryFitted
      ? [
          need('blank', { thread: joint.thread, sealing: joint.sealing, finish: joint.finish }, 1, {
            says: `A blank plug closes the tapping at the ${joint.at}.`,
            from: [given(`Tapping at the ${joint.at}`, joint.thread)],
          }),
        ]
      : [],
  examples: [
    { says: 'an open tapping takes one', ask: { holds: 'blank' }, gives: [['blank', 1]] },
    { says: 'a tapping with a valve takes none', ask: { holds: 'valve' }, gives: [] },
    {
      says: 'one that the works fitted is there already',
      ask: { holds: 'blank', factoryFitted: true },
      gives: [],
    },
  ],
}
