import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Filler for the holes of the old fixings. */
export const fillOldHoles: Rule<'swap'> = {
  id: 'making-good/fill-old-holes',
  per: 'swap',
  source: 'volume of a cylinder; waste from memory',
  says: 'Filler for the holes of the old fixings',
  uses: ['making.fillerWasteRatio'],
  gives: (swap, use) => {
    if (swap.oldHoles === null || swap.oldHoles.count === 0 || swap.wallFinish === 'tile') return []
    const { count, diameterMm, depthMm } = swap.oldHoles
    const millilitres =
      (count * ((Math.PI / 4) * diameterMm ** 2 * depthMm) * (1 + use.value('making.fillerWasteRatio'))) /
      1000
    return [
      need('filler', { forWall: 'plaster' }, millilitres, {
        says: 'Holes x pi/4 x diameter squared x depth x (1 + waste).',
        from: [
          swap.oldHolesWhy ?? given('Old holes', count, undefined, 'survey'),
          given('Diameter', diameterMm, 'mm', 'survey'),
          given('Depth', depthMm, 'mm', 'survey'),
          use.why('making.fillerWasteRatio'),
        ],
      }),
    ]
  },
  examples: [
    {
      says: 'four holes of 8 x 50 mm take 15 ml with waste',
      ask: { oldHoles: { count: 4, diameterMm: 8, depthMm: 50 } },
      gives: [['filler', 15.08]],
    },
    {
      says: 'holes in tile are not filled with plaster',
      ask: { oldHoles: { count: 4, diameterMm: 8, depthMm: 50 }, wallFinish: 'tile' },
      gives: [],
    },
    { says: 'a bare wall needs none', ask: {}, gives: [] },
  ],
}
