import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A wall plug in each hole, where the wall takes plugs. */
export const plugEachHole: Rule<'hole'> = {
  id: 'fixings/plug-each-hole',
  per: 'hole',
  source: 'the plug fixes the bit; sizes: practice, no published source',
  says: 'A wall plug in each hole, where the wall takes plugs',
  uses: [],
  gives: (hole) =>
    hole.fixing.plug === undefined || hole.needsBoard
      ? []
      : [
          need('plug', { bitMm: hole.fixing.plug.bitMm, lengthMm: hole.fixing.plug.lengthMm }, 1, {
            says: `Hole ${hole.holeId} of the ${hole.bracket}: ${hole.fixing.name}.`,
            from: [
              given('Bit', hole.drillMm, 'mm', hole.fixing.source),
              given('Depth', hole.depthMm, 'mm', hole.fixing.source),
            ],
          }),
        ],
  examples: [
    { says: 'a hole in masonry takes one', ask: {}, gives: [['plug', 1]] },
    { says: 'a hole on a backing board takes none', ask: { needsBoard: true }, gives: [] },
  ],
}
