import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A board anchor in each hole, where the wall is board and the hole misses the studs. */
export const anchorEachHole: Rule<'hole'> = {
  id: 'fixings/anchor-each-hole',
  per: 'hole',
  source: 'practice, no published source',
  says: 'A board anchor in each hole, where the wall is board and the hole misses the studs',
  uses: [],
  gives: (hole) =>
    hole.fixing.anchor === undefined || hole.needsBoard
      ? []
      : [
          need('anchor', { bitMm: hole.fixing.anchor.bitMm }, 1, {
            says: `Hole ${hole.holeId} of the ${hole.bracket}: ${hole.fixing.name}.`,
            from: [given('Bit', hole.drillMm, 'mm', hole.fixing.source)],
          }),
        ],
  examples: [
    {
      says: 'a hole in board takes one',
      ask: { fixing: { name: 'board anchor', anchor: { bitMm: 13 }, source: 'from memory' } },
      gives: [['anchor', 1]],
    },
    { says: 'a hole in masonry takes none', ask: {}, gives: [] },
  ],
}
