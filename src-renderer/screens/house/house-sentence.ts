import type { FlowAnswer, FlowHouse } from './flow-answer.ts'
import { degrees } from './room-rows.ts'
import { words } from './house.words.ts'

const { sentence: says, compare } = words

/** The house's answer in one sentence. */
export function houseSentence({ after, maxFlowC }: FlowAnswer, swaps: number): string {
  return says.whole(swaps, found(after, maxFlowC))
}

function found({ backed, flowC, worstRoom = '', reachable, roomsShort, rooms }: FlowHouse, maxFlowC: number) {
  const judged = rooms.some(({ state }) => state !== 'rough' && state !== 'notSurveyed')
  if (!judged) return says.notJudged
  if (flowC !== undefined) return says.warm(backed, degrees(flowC), worstRoom)
  if (reachable) return says.noHeat(backed)
  return says.cold(backed, says.short(roomsShort, worstRoom), degrees(maxFlowC))
}

/** How that compares with the house as it is; null without a swap. */
export function compareSentence({ before, after, maxFlowC }: FlowAnswer, swaps: number): string | null {
  if (swaps === 0) return null
  if (before.flowC === undefined) {
    if (before.roomsShort === 0) return compare.notSurveyed
    return compare.cold(before.worstRoom ?? compare.aRoom, degrees(maxFlowC))
  }
  if (!sameRooms(before, after)) return null
  const now = compare.now(degrees(before.flowC), before.worstRoom ?? '')
  if (after.flowC === undefined) return compare.only(now)
  const lowersK = Math.round((before.flowC - after.flowC) * 10) / 10
  if (lowersK === 0) return compare.same(now)
  return compare.moved(now, lowersK > 0, Math.abs(lowersK).toFixed(1))
}

/** Two flow temperatures compare only where they are of the same rooms. */
function sameRooms(before: FlowHouse, after: FlowHouse): boolean {
  const known = ({ rooms }: FlowHouse) =>
    rooms
      .filter(({ state }) => state !== 'rough' && state !== 'notSurveyed')
      .map(({ roomId }) => roomId)
      .toSorted()
      .join(' ')
  return known(before) === known(after)
}
