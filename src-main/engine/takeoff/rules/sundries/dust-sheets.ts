import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'

/** A dust sheet in each room. */
export const dustSheets: Rule<'room'> = {
  id: 'sundries/dust-sheets',
  per: 'room',
  source: 'practice, no published source',
  says: 'A dust sheet in each room',
  uses: ['sundry.dustSheetsPerRoomCount'],
  gives: (room, use) => {
    const sheets = use.value('sundry.dustSheetsPerRoomCount')
    if (sheets === 0) return []
    return [
      need('sundry', { what: 'dustSheet' }, sheets, {
        says: `The ${room.floor} floor of the ${room.roomName} is covered.`,
        from: [use.why('sundry.dustSheetsPerRoomCount')],
      }),
    ]
  },
  examples: [
    { says: 'one a room', ask: {}, gives: [['sundry', 1]] },
    { says: 'one a room with two swaps', ask: { swaps: 2 }, gives: [['sundry', 1]] },
  ],
}
