import { because, given } from '../../../src-main/domain/derivation.ts'
import type { FlowAnswer, FlowHouse, RoomState, When } from './flow-answer.ts'

/** A room as it may stand: a flow temperature, or the state that keeps it from having one. */
type Standing = number | Exclude<RoomState['state'], 'warm'>
type Given = { readonly name: string; readonly before: Standing; readonly after: Standing }

const loadW = 500
const spreadK = 10
const maxFlowC = 75

function stateOf(name: string, roomIndex: number, standing: Standing): RoomState {
  const room = { roomId: `room-${roomIndex}`, roomIndex, name, loadW }
  if (typeof standing === 'number') {
    const says = `${name} is warm from a flow of ${standing} °C.`
    return { ...room, state: 'warm', flowC: standing, returnC: standing - spreadK, outputAtMaxW: 900, says }
  }
  const outputAtMaxW = standing === 'short' ? { outputAtMaxW: 400 } : {}
  return { ...room, state: standing, ...outputAtMaxW, says: `${name} is ${standing}.` }
}

function houseOf(rooms: readonly Given[], when: When): FlowHouse {
  const states = rooms.map((room, at) => stateOf(room.name, at, room[when]))
  const open = states.filter(({ state }) => state === 'rough' || state === 'notSurveyed')
  const short = states.filter(({ state }) => state === 'short' || state === 'noEmitters')
  const warm = states.filter(({ flowC }) => flowC !== undefined)
  const worst = warm.toSorted((a, b) => (b.flowC ?? 0) - (a.flowC ?? 0))[0]
  const worstRoom = short[0]?.name ?? worst?.name
  const found = short.length === 0 && worst?.flowC !== undefined ? { flowC: worst.flowC } : {}
  const backed = open.length === 0
  return {
    reachable: short.length === 0,
    ...found,
    ...(worstRoom === undefined ? {} : { worstRoom }),
    roomsShort: short.length,
    shortW: short.length * 100,
    backed,
    ...(backed && found.flowC !== undefined ? { houseFlowC: found.flowC } : {}),
    rooms: states,
    says: 'The house.',
  }
}

/** An answer of the desk about rooms that stand so, with a reason for each. */
export function answerOf(rooms: readonly Given[]): FlowAnswer {
  const whys = (when: When) =>
    because(`The house ${when}`, 'found', {
      from: rooms.map(({ name }) => given(`${name} ${when}`, name)),
    })
  return {
    spreadK,
    maxFlowC,
    before: houseOf(rooms, 'before'),
    after: houseOf(rooms, 'after'),
    swaps: [],
    notJudged: [],
    heat: {
      watts: rooms.length * loadW,
      sourceW: rooms.length * loadW,
      roughW: 0,
      rough: false,
      warnings: [],
    },
    assumed: [],
    says: 'The house.',
    why: because('The house', 'found', {
      from: [given('Drop', spreadK, 'K'), given('Highest', maxFlowC, '°C'), whys('before'), whys('after')],
    }),
  }
}

/** The house as it may be found, with fixed data. */
export const houseStates = {
  two: answerOf([
    { name: 'Bathroom', before: 59.3, after: 52.5 },
    { name: 'Back bedroom', before: 58.6, after: 45.2 },
  ]),
  one: answerOf([{ name: 'Hall', before: 55, after: 48 }]),
  roughOnly: answerOf([
    { name: 'Hall', before: 'rough', after: 'rough' },
    { name: 'Loft room', before: 'notSurveyed', after: 'notSurveyed' },
  ]),
  partly: answerOf([
    { name: 'Bathroom', before: 59.3, after: 52.5 },
    { name: 'Hall', before: 'rough', after: 'rough' },
  ]),
  short: answerOf([
    { name: 'Lounge', before: 'short', after: 'short' },
    { name: 'Bathroom', before: 'short', after: 52.5 },
    { name: 'Landing', before: 'needsNoHeat', after: 'needsNoHeat' },
  ]),
  notSurveyedBefore: answerOf([
    { name: 'Lounge', before: 'notSurveyed', after: 50 },
    { name: 'Kitchen', before: 48, after: 48 },
  ]),
  tooLong: answerOf(
    Array.from({ length: 30 }, (_, at) => ({
      name: at === 0 ? `Bedroom ${'over the garage '.repeat(6)}`.trim() : `Room ${at + 1}`,
      before: 60 - at / 2,
      after: 55 - at / 2,
    })),
  ),
} as const satisfies Readonly<Record<string, FlowAnswer>>
