import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Set up and protect each room. */
export const setUp: TaskRule<'room'> = {
  id: 'set-up',
  per: 'room',
  source: 'practice, no published source',
  says: 'Set up and protect each room',
  uses: [],
  gives: (room) => [work('set-up', 1, `The ${room.roomName} is set up and protected.`)],
  examples: [
    { says: 'once a room', ask: {}, gives: [['set-up', 1]] },
    { says: 'once a room with two swaps', ask: { swaps: 2 }, gives: [['set-up', 1]] },
  ],
}
