import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Fit vent and blank plugs. */
export const ventAndBlank: TaskRule<'joint'> = {
  id: 'vent-and-blank',
  per: 'joint',
  source: 'practice, no published source',
  says: 'Fit vent and blank plugs',
  uses: [],
  gives: (joint) =>
    (joint.holds === 'vent' || joint.holds === 'blank') && !joint.factoryFitted
      ? [work('vent-blank', 1, `The ${joint.holds} at the ${joint.at}.`)]
      : [],
  examples: [
    { says: 'a vent', ask: { holds: 'vent' }, gives: [['vent-blank', 1]] },
    { says: 'a valve is fitted with its pipe', ask: { holds: 'valve' }, gives: [] },
  ],
}
