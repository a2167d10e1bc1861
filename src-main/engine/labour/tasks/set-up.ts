import { lengthened, work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

const settingOf = {
  carpet: 'labour.protectCarpetCount',
  tile: 'labour.protectTileCount',
  timber: 'labour.protectTimberCount',
  vinyl: 'labour.protectVinylCount',
  bare: 'labour.protectBareCount',
} as const

/** Set up and protect each room, with more over a floor that marks. */
export const setUp: TaskRule<'room'> = {
  id: 'set-up',
  per: 'room',
  source: 'practice, no published source',
  says: 'Set up and protect each room, with more over a floor that marks',
  uses: Object.values(settingOf),
  gives: (room, use) => {
    const more = use.value(settingOf[room.floor])
    const setting = work('set-up', 1, `The ${room.roomName} is set up and protected.`)
    if (more === 0) return [setting]
    const reason = `The ${room.floor} floor of the ${room.roomName} marks easily.`
    const boards = work('protect-floor', more, reason, [use.why(settingOf[room.floor])])
    return [
      setting,
      lengthened(boards, more, [{ name: 'Floor covering', how: 'adds', factor: more, reason }]),
    ]
  },
  examples: [
    { says: 'once a room', ask: {}, gives: [['set-up', 1]] },
    { says: 'once a room with two swaps', ask: { swaps: 2 }, gives: [['set-up', 1]] },
    {
      says: 'boards over timber',
      ask: { floor: 'timber' },
      gives: [
        ['set-up', 1],
        ['protect-floor', 1],
      ],
    },
  ],
}
