import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Sealant for old holes in tile. */
export const sealOldTileHoles: Rule<'swap'> = {
  id: 'making-good/seal-old-tile-holes',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Sealant for old holes in tile',
  uses: ['making.tileSealantMl'],
  gives: (swap, use) =>
    swap.oldHoles === null || swap.oldHoles.count === 0 || swap.wallFinish !== 'tile'
      ? []
      : [
          need(
            'sealant',
            { form: 'sanitarySilicone' },
            swap.oldHoles.count * use.value('making.tileSealantMl'),
            {
              says: 'Old holes in tile are closed with sealant.',
              from: [
                swap.oldHolesWhy ?? given('Old holes', swap.oldHoles.count, undefined, 'survey'),
                use.why('making.tileSealantMl'),
              ],
            },
          ),
        ],
  examples: [
    {
      says: 'four holes take 8 ml',
      ask: { oldHoles: { count: 4, diameterMm: 8, depthMm: 50 }, wallFinish: 'tile' },
      gives: [['sealant', 8]],
    },
    {
      says: 'plaster is filled instead',
      ask: { oldHoles: { count: 4, diameterMm: 8, depthMm: 50 } },
      gives: [],
    },
  ],
}
