import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { pipeJoint } from '../../pipe-joint.ts'
import { timesInWords } from '../../times-in-words.ts'

/** Elbows where the new pipe turns. */
export const elbows: Rule<'side'> = {
  id: 'pipes/elbows',
  per: 'side',
  source: 'practice, no published source',
  says: 'Elbows where the new pipe turns',
  uses: [],
  gives: (side) =>
    side.elbows > 0
      ? [
          need(
            'pipeFitting',
            { shape: 'elbow', joint: pipeJoint(side.pipe.material), outsideMm: side.pipe.outsideMm },
            side.elbows,
            {
              says: `The new run on the ${side.side} turns ${timesInWords(side.elbows)}.`,
              from: [side.offsetWhy],
            },
          ),
        ]
      : [],
  examples: [
    { says: 'a run with two takes two', ask: { remedy: 'repipe', elbows: 2 }, gives: [['pipeFitting', 2]] },
    { says: 'an untouched pipe takes none', ask: {}, gives: [] },
  ],
}
