import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A sack for dust, packing and rubble from each room. */
export const rubbleSack: Rule<'room'> = {
  id: 'sundries/rubble-sack',
  per: 'room',
  source: 'practice, no published source',
  says: 'A sack for dust, packing and rubble from each room',
  uses: [],
  gives: (room) => [
    need('sundry', { what: 'rubbleSack' }, 1, {
      says: `Dust and packing from the ${room.roomName} go into a sack.`,
      from: [given('Rooms', 1)],
    }),
  ],
  examples: [
    { says: 'one a room', ask: {}, gives: [['sundry', 1]] },
    { says: 'one a room with two swaps', ask: { swaps: 2 }, gives: [['sundry', 1]] },
  ],
}
