import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A collar where each pipe leaves the floor or the wall. */
export const collar: Rule<'side'> = {
  id: 'pipes/collar',
  per: 'side',
  source: 'practice, no published source',
  says: 'A collar where each pipe leaves the floor or the wall',
  uses: [],
  gives: (side) => [
    need(
      'collar',
      { outsideMm: side.pipe.outsideMm, finish: side.finish === 'chrome' ? 'chrome' : 'white' },
      1,
      {
        says: `A collar covers the hole where the ${side.side} pipe leaves the ${side.pipe.from}.`,
        from: [given(`Pipe on the ${side.side}`, side.pipe.outsideMm, 'mm', 'survey')],
      },
    ),
  ],
  examples: [
    { says: 'one a pipe', ask: {}, gives: [['collar', 1]] },
    {
      says: 'a kept valve has its pipe collared all the same',
      ask: { role: 'kept' },
      gives: [['collar', 1]],
    },
  ],
}
