import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Insulation where a pipe crosses an unheated void. */
export const insulation: Rule<'side'> = {
  id: 'pipes/insulation',
  per: 'side',
  source: 'practice, no published source',
  says: 'Insulation where a pipe crosses an unheated void',
  uses: ['pipe.insulationWallMm'],
  gives: (side, use) =>
    side.pipe.coldVoidMm > 0
      ? [
          need(
            'insulation',
            { outsideMm: side.pipe.outsideMm, wallMm: { atLeast: use.value('pipe.insulationWallMm') } },
            side.pipe.coldVoidMm / 1000,
            {
              says: `The ${side.side} pipe crosses an unheated void.`,
              from: [
                given('Length in the void', side.pipe.coldVoidMm, 'mm', 'survey'),
                use.why('pipe.insulationWallMm'),
              ],
            },
          ),
        ]
      : [],
  examples: [
    {
      says: 'a metre in a void takes a metre',
      ask: { pipe: { from: 'floor', material: 'copper', outsideMm: 15, coldVoidMm: 1000 } },
      gives: [['insulation', 1]],
    },
    { says: 'a pipe in a warm floor takes none', ask: {}, gives: [] },
  ],
}
