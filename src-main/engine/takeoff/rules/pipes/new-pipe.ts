import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** New pipe where one side is cut and re-piped. */
export const newPipe: Rule<'side'> = {
  id: 'pipes/new-pipe',
  per: 'side',
  source: 'practice, no published source',
  says: 'New pipe where one side is cut and re-piped',
  uses: [],
  gives: (side) =>
    side.remedy === 'repipe' && side.newPipeMm > 0
      ? [
          need(
            'pipe',
            {
              material: side.pipe.material === 'plastic' ? 'plastic' : 'copper',
              outsideMm: side.pipe.outsideMm,
            },
            side.newPipeMm / 1000,
            {
              says: `New pipe brings the ${side.side} side to its valve.`,
              from: [side.offsetWhy, given('Length of new pipe', side.newPipeMm, 'mm')],
              pieces: [{ id: `${side.side} side`, lengthMm: side.newPipeMm, count: 1 }],
            },
          ),
        ]
      : [],
  examples: [
    {
      says: 'a re-piped side takes its length',
      ask: { remedy: 'repipe', newPipeMm: 480 },
      gives: [['pipe', 0.48]],
    },
    { says: 'a pulled pipe takes none', ask: { remedy: 'pull' }, gives: [] },
  ],
}
