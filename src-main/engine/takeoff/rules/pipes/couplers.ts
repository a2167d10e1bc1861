import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { pipeJoint } from '../../pipe-joint.ts'
import { timesInWords } from '../../times-in-words.ts'

/** Couplers where the new pipe joins the old. */
export const couplers: Rule<'side'> = {
  id: 'pipes/couplers',
  per: 'side',
  source: 'practice, no published source',
  says: 'Couplers where the new pipe joins the old',
  uses: [],
  gives: (side) =>
    side.couplers > 0
      ? [
          need(
            'pipeFitting',
            { shape: 'coupler', joint: pipeJoint(side.pipe.material), outsideMm: side.pipe.outsideMm },
            side.couplers,
            {
              says: `The new run on the ${side.side} joins the old pipe ${timesInWords(side.couplers)}.`,
              from: [side.offsetWhy],
            },
          ),
        ]
      : [],
  examples: [
    { says: 'a run with two takes two', ask: { remedy: 'repipe', couplers: 2 }, gives: [['pipeFitting', 2]] },
    { says: 'an untouched pipe takes none', ask: {}, gives: [] },
  ],
}
