import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'

/** Sealant round the collars on a tiled wall. */
export const sealRoundCollar: Rule<'side'> = {
  id: 'making-good/seal-round-collar',
  per: 'side',
  source: 'practice, no published source',
  says: 'Sealant round the collars on a tiled wall',
  uses: ['making.collarSealantMl'],
  gives: (side, use) =>
    side.wallFinish === 'tile' && side.pipe.from === 'wall'
      ? [
          need('sealant', { form: 'sanitarySilicone' }, use.value('making.collarSealantMl'), {
            says: `Sealant round the ${side.side} collar keeps water out of the tiled wall.`,
            from: [use.why('making.collarSealantMl')],
          }),
        ]
      : [],
  examples: [
    {
      says: 'a pipe out of a tiled wall',
      ask: { wallFinish: 'tile', pipe: { from: 'wall', material: 'copper', outsideMm: 15, coldVoidMm: 0 } },
      gives: [['sealant', 5]],
    },
    { says: 'a pipe out of the floor', ask: { wallFinish: 'tile' }, gives: [] },
  ],
}
