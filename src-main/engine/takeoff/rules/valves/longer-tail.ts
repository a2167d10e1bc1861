import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'

/** A tail extension where the pipe is a little short of the valve. */
export const longerTail: Rule<'side'> = {
  id: 'valves/longer-tail',
  per: 'side',
  source: 'practice, no published source',
  says: 'A tail extension where the pipe is a little short of the valve',
  uses: [],
  gives: (side) =>
    side.remedy === 'longerTail' && side.tailMm > 0
      ? [
          need('tail', { thread: side.thread, lengthMm: { atLeast: side.tailMm } }, 1, {
            says: `The ${side.side} valve sits ${side.tailMm} mm further out than its own tail reaches.`,
            from: [side.offsetWhy],
          }),
        ]
      : [],
  examples: [
    {
      says: 'an offset within a longer tail takes one',
      ask: { remedy: 'longerTail', tailMm: 20 },
      gives: [['tail', 1]],
    },
    { says: 'a pipe that meets its valve takes none', ask: {}, gives: [] },
  ],
}
