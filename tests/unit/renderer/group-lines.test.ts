import { describe, expect, it } from 'vitest'
import { given } from '../../../src-main/domain/derivation.ts'
import type { QuoteLine } from '../../../src-main/domain/quote.ts'
import { groupLines } from '../../../src-renderer/screens/price/group-lines.ts'
import { bedroomJob } from '../../job-for-tests.ts'

const line = (lineId: string, rest: Partial<QuoteLine>): QuoteLine => ({
  lineId,
  section: 'parts',
  name: lineId,
  quantity: 1,
  unit: 'each',
  netPence: 100,
  rateKey: 'standard',
  shared: false,
  swapIds: [],
  generic: true,
  why: given('Asked for', 1),
  ...rest,
})

const { rooms, swaps } = bedroomJob()
const twoRooms = {
  rooms: [...rooms, ...rooms.map((room) => ({ ...room, roomId: 'hall', name: 'Hall' }))],
  swaps: [
    ...swaps,
    ...swaps.map((swap) => ({ ...swap, swapId: 'swap-2', roomId: 'hall' })),
    ...swaps.map((swap) => ({ ...swap, swapId: 'swap-3' })),
  ],
}

describe('lines of a quote on the screen', () => {
  const groups = groupLines(twoRooms, [
    line('shared', { shared: true, swapIds: ['swap-1', 'swap-2'] }),
    line('both', { swapIds: ['swap-1', 'swap-2'] }),
    line('hall', { swapIds: ['swap-2'], netPence: 250 }),
    line('bedroom', { swapIds: ['swap-1', 'swap-3'] }),
    line('travel', {}),
  ])
  it('stand room by room in the order of the job, and what is shared comes last', () => {
    expect(groups.map((group) => group.title)).toEqual([
      'Back bedroom',
      'Hall',
      'For more than one room',
      'Once for the whole job',
    ])
  })
  it('are each shown once and only once', () => {
    expect(groups.flatMap((group) => group.lines.map(({ lineId }) => lineId)).toSorted()).toEqual([
      'bedroom',
      'both',
      'hall',
      'shared',
      'travel',
    ])
  })
  it('add up within their group', () => {
    expect(groups.map((group) => group.netPence)).toEqual([100, 250, 100, 200])
  })
})
