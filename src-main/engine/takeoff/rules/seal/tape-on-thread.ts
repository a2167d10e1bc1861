import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'
import { threadMajorMm } from '../../thread-sizes.ts'

/** Thread-seal tape on every joint that seals on its thread. */
export const tapeOnThread: Rule<'joint'> = {
  id: 'seal/tape-on-thread',
  per: 'joint',
  source: 'geometry of the thread (ISO 228 major diameter); turns: practice, no published source',
  says: 'Thread-seal tape on every joint that seals on its thread',
  uses: ['seal.tapeTurnsCount', 'seal.tapeOverlapRatio'],
  gives: (joint, use) => {
    if (joint.factoryFitted || joint.sealing === 'oRing') return []
    const diameterMm = threadMajorMm[joint.thread]
    const turns = use.value('seal.tapeTurnsCount')
    const metres = (turns * Math.PI * diameterMm * (1 + use.value('seal.tapeOverlapRatio'))) / 1000
    return [
      need('seal', { form: 'tape' }, metres, {
        says: `Tape on the ${joint.holds} at the ${joint.at}: turns x pi x thread diameter x (1 + overlap).`,
        from: [
          use.why('seal.tapeTurnsCount'),
          given(
            `Major diameter of ${joint.thread}`,
            diameterMm,
            'mm',
            'ISO 228, as tabulated by threadchart.net',
          ),
          use.why('seal.tapeOverlapRatio'),
        ],
      }),
    ]
  },
  examples: [
    {
      says: 'a valve tail takes 12 turns and the overlap',
      ask: { holds: 'valve' },
      gives: [['seal', 0.9085]],
    },
    { says: 'a vent on an O-ring takes none', ask: { holds: 'vent', sealing: 'oRing' }, gives: [] },
    {
      says: 'a joint made at the works is no joint of ours',
      ask: { holds: 'blank', factoryFitted: true },
      gives: [],
    },
  ],
}
