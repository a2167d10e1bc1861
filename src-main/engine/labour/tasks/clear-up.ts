import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Clear up each room. */
export const clearUp: TaskRule<'room'> = {
  id: 'clear-up',
  per: 'room',
  source: 'practice, no published source',
  says: 'Clear up each room',
  uses: [],
  gives: (room) => [work('clear-up', 1, `The ${room.roomName} is cleared up.`)],
  examples: [
    { says: 'once a room', ask: {}, gives: [['clear-up', 1]] },
    { says: 'once a room with two swaps', ask: { swaps: 2 }, gives: [['clear-up', 1]] },
  ],
}
