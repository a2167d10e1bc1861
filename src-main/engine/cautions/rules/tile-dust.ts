import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Drilling tile throws sharp chips and fine dust: eye protection, a mask, no hammer action until the bit is through the tile. */
export const tileDust: CautionRule<'hole'> = {
  id: 'tile-dust',
  per: 'hole',
  source: 'practice, no published source',
  says: 'Drilling tile throws sharp chips and fine dust: eye protection, a mask, no hammer action until the bit is through the tile.',
  uses: [],
  when: (hole) =>
    hole.wallFinish === 'tile' ? given('The wall is tiled', 'tile', undefined, 'survey') : null,
  examples: [
    { says: 'tile', ask: { wallFinish: 'tile' }, appears: true },
    { says: 'paint', ask: {}, appears: false },
  ],
}
