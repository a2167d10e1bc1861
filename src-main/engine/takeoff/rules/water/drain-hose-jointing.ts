import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Jointing for the drain hose, where the system is drained. */
export const drainHoseJointing: Rule<'job'> = {
  id: 'water/drain-hose-jointing',
  per: 'job',
  source: 'practice, no published source',
  says: 'Jointing for the drain hose, where the system is drained',
  uses: [],
  gives: (job) =>
    job.drain === 'freeze'
      ? []
      : [
          need('sundry', { what: 'drainHoseJointing' }, 1, {
            says: 'The drain hose is jointed to the drain cock once a job.',
            from: [given('Times drained', 1)],
          }),
        ],
  examples: [
    { says: 'a drained system', ask: { drain: 'wholeSystem' }, gives: [['sundry', 1]] },
    { says: 'frozen pipes need no hose', ask: { drain: 'freeze' }, gives: [] },
  ],
}
