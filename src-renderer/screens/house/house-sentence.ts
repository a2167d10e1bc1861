import type { FlowAnswer, FlowHouse } from './flow-answer.ts'
import { degrees } from './room-rows.ts'

/** The house's answer in one sentence. */
export function houseSentence({ after, maxFlowC }: FlowAnswer, swaps: number): string {
  const start = swaps === 0 ? 'As it is' : swaps === 1 ? 'With this swap' : 'With these swaps'
  return `${start} ${found(after, maxFlowC)}`
}

function found({ backed, flowC, worstRoom = '', reachable, roomsShort, rooms }: FlowHouse, maxFlowC: number) {
  const judged = rooms.some(({ state }) => state !== 'rough' && state !== 'notSurveyed')
  if (!judged) return 'nothing can be said of the house: no room is measured and surveyed yet.'
  const who = backed ? 'the house is' : 'the rooms that are measured are'
  if (flowC !== undefined) return `${who} warm at ${degrees(flowC)} flow; ${worstRoom} decides it.`
  if (reachable) return `${backed ? 'the house needs' : 'the rooms that are measured need'} no heat.`
  const short = roomsShort === 1 ? `${worstRoom} stays` : `${roomsShort} rooms stay`
  return `${who} not warm: ${short} short of heat even at ${degrees(maxFlowC)}.`
}

/** How that compares with the house as it is; null without a swap. */
export function compareSentence({ before, after, maxFlowC }: FlowAnswer, swaps: number): string | null {
  if (swaps === 0) return null
  if (before.flowC === undefined) {
    if (before.roomsShort === 0) return 'What it takes as it is, nobody has surveyed.'
    return `As it is, ${before.worstRoom ?? 'a room'} stays cold even at ${degrees(maxFlowC)}.`
  }
  if (!sameRooms(before, after)) return null
  const now = `As it is, it takes ${degrees(before.flowC)} (${before.worstRoom ?? ''})`
  if (after.flowC === undefined) return `${now}.`
  const lowersK = Math.round((before.flowC - after.flowC) * 10) / 10
  if (lowersK === 0) return `${now}: no lower with the swaps.`
  return `${now}: the swaps ${lowersK > 0 ? 'lower' : 'raise'} it by ${Math.abs(lowersK).toFixed(1)} K.`
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
