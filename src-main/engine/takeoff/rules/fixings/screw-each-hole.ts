import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'
import { boardScrew } from '../../board-screws.ts'

/** A screw in each hole. */
export const screwEachHole: Rule<'hole'> = {
  id: 'fixings/screw-each-hole',
  per: 'hole',
  source: 'the screw goes with the plug; sizes: practice, no published source',
  says: 'A screw in each hole',
  uses: [],
  gives: (hole) => {
    const screw = hole.needsBoard ? boardScrew : hole.fixing.screw
    if (screw === undefined) return []
    return [
      need('screw', { diameterMm: screw.diameterMm, lengthMm: screw.lengthMm }, 1, {
        says: `Hole ${hole.holeId} of the ${hole.bracket}: ${hole.needsBoard ? 'into the backing board' : hole.fixing.name}.`,
        from: [given('Screw', `${screw.diameterMm} x ${screw.lengthMm} mm`, undefined, hole.fixing.source)],
      }),
    ]
  },
  examples: [
    { says: 'a plugged hole takes its screw', ask: {}, gives: [['screw', 1]] },
    {
      says: 'an anchor with a bolt of its own takes none',
      ask: { fixing: { name: 'board anchor', anchor: { bitMm: 13 }, source: 'from memory' } },
      gives: [],
    },
  ],
}
