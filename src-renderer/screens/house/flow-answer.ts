import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import type { Derivation } from '../../../src-main/domain/derivation.ts'

export type FlowAnswer = AnswerOf<'job.flow'>
export type FlowHouse = FlowAnswer['after']
export type RoomState = FlowHouse['rooms'][number]
export type When = 'before' | 'after'

/** A guess, or emitters that nobody surveyed, back no flow temperature. */
export function isOpen({ state }: RoomState): boolean {
  return state === 'rough' || state === 'notSurveyed'
}

/** The answer's reasons begin with the drop and the highest flow; then come the house as it is and with the swaps. */
const placeOfHouse = { before: 2, after: 3 } as const
const placeOfSwaps = 4

/** Why the house stands as it does, before or after its swaps. */
export function houseWhy({ why }: FlowAnswer, when: When): Derivation {
  return there(why.from[placeOfHouse[when]], when)
}

/** Why one room stands as it does: the house's reasons are its rooms', in the order of the job. */
export function roomWhy(answer: FlowAnswer, when: When, roomIndex: number): Derivation {
  return there(houseWhy(answer, when).from[roomIndex], `room ${roomIndex}`)
}

/** Why a swap done alone does what it does: behind the rooms as they are, in the order of the ranks. */
export function swapWhy({ why }: FlowAnswer, place: number): Derivation {
  return there(why.from[placeOfSwaps]?.from[place + 1], `swap ${place}`)
}

function there(why: Derivation | undefined, what: string): Derivation {
  if (why === undefined) throw new Error(`The answer has no reasons for ${what}`)
  return why
}
