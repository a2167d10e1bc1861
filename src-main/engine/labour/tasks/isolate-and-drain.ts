import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Isolate and drain, once a job. */
export const isolateAndDrain: TaskRule<'job'> = {
  id: 'isolate-and-drain',
  per: 'job',
  source: 'practice, no published source',
  says: 'Isolate and drain, once a job',
  uses: [],
  gives: (job) => {
    if (job.drain === 'freeze') return []
    return job.drain === 'wholeSystem'
      ? [work('drain', 1, 'The whole system is drained, once.')]
      : [work('isolate-part', 1, 'A part of the system is isolated and drained, once.')]
  },
  examples: [
    { says: 'the whole system', ask: { drain: 'wholeSystem' }, gives: [['drain', 1]] },
    { says: 'a part of it', ask: { drain: 'isolatedPart' }, gives: [['isolate-part', 1]] },
    { says: 'nothing is drained when pipes are frozen', ask: { drain: 'freeze' }, gives: [] },
  ],
}
