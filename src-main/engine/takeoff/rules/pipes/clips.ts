import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Clips along new pipe. */
export const clips: Rule<'side'> = {
  id: 'pipes/clips',
  per: 'side',
  source: 'practice, no published source',
  says: 'Clips along new pipe',
  uses: [],
  gives: (side) =>
    side.clips > 0
      ? [
          need('clip', { outsideMm: side.pipe.outsideMm }, side.clips, {
            says: `Clips hold the new run on the ${side.side}.`,
            from: [side.offsetWhy, given('Length of new pipe', side.newPipeMm, 'mm')],
          }),
        ]
      : [],
  examples: [
    {
      says: 'a run with two clips takes two',
      ask: { remedy: 'repipe', clips: 2, newPipeMm: 900 },
      gives: [['clip', 2]],
    },
    { says: 'an untouched pipe takes none', ask: {}, gives: [] },
  ],
}
