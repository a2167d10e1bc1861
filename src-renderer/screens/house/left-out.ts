import { because } from '../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { isOpen, roomWhy } from './flow-answer.ts'
import type { FlowAnswer, RoomState } from './flow-answer.ts'
import { degrees } from './room-rows.ts'
import { words } from './house.words.ts'

const says = words.leftOut

/** What it does to the house when one room keeps what it has and every other swap is done. */
export type LeftOut = {
  readonly roomId: string
  readonly name: string
  /** `cold`: the room itself then stays cold; `held`: another does either way; `notKnown`: nobody surveyed what is there. */
  readonly kind: 'known' | 'cold' | 'held' | 'notKnown'
  /** Null but where it is known. */
  readonly raisesK: number | null
  readonly says: string
  readonly why: Derivation
}

/** The rooms with a swap, the one that would be missed most first. */
export function leftOut(answer: FlowAnswer, swappedRooms: ReadonlySet<string>): readonly LeftOut[] {
  const effects = answer.after.rooms
    .filter((room) => swappedRooms.has(room.roomId) && !isOpen(room))
    .map((room) => withoutRoom(answer, room))
  return effects.toSorted((a, b) => weight(b) - weight(a))
}

/** A room that then stays cold weighs more than any rise; one that nobody can judge stands last. */
function weight({ kind, raisesK }: LeftOut): number {
  if (kind === 'cold') return 1000
  return kind === 'notKnown' ? -1000 : (raisesK ?? 0)
}

function withoutRoom(answer: FlowAnswer, room: RoomState): LeftOut {
  const { after, before, maxFlowC } = answer
  const old = before.rooms.find(({ roomId }) => roomId === room.roomId) ?? room
  const found = (kind: LeftOut['kind'], text: string, raisesK: number | null = null): LeftOut => ({
    roomId: room.roomId,
    name: room.name,
    kind,
    raisesK,
    says: text,
    why: because(text, raisesK ?? old.says, {
      ...(raisesK === null ? {} : { unit: 'K' }),
      from: [
        because(says.asItIs, old.flowC ?? old.says, {
          ...(old.flowC === undefined ? {} : { unit: '°C' }),
          from: [roomWhy(answer, 'before', room.roomIndex)],
        }),
        ...others(answer, room).map((other) => roomWhy(answer, 'after', other.roomIndex)),
      ],
    }),
  })
  if (isOpen(old)) return found('notKnown', says.notKnown(room.name))
  if (old.flowC === undefined && old.state !== 'needsNoHeat')
    return found('cold', says.cold(room.name, degrees(maxFlowC)))
  const kept = warmest([old, ...others(answer, room)])
  if (after.flowC === undefined || kept === null) return found('held', says.held(room.name))
  const raisesK = Math.round((kept.flowC - after.flowC) * 10) / 10
  return found('known', saysOf(room.name, raisesK, kept), raisesK)
}

function others({ after }: FlowAnswer, room: RoomState): readonly RoomState[] {
  return after.rooms.filter((other) => other.roomId !== room.roomId && !isOpen(other))
}

/** The room that asks most; null where one stays cold or none asks anything. */
function warmest(rooms: readonly RoomState[]): { readonly name: string; readonly flowC: number } | null {
  if (rooms.some(({ state }) => state === 'short' || state === 'noEmitters')) return null
  return rooms.reduce<{ readonly name: string; readonly flowC: number } | null>(
    (most, { name, flowC }) =>
      flowC !== undefined && (most === null || flowC > most.flowC) ? { name, flowC } : most,
    null,
  )
}

function saysOf(name: string, raisesK: number, kept: { readonly name: string; readonly flowC: number }) {
  if (raisesK === 0) return says.same(name, kept.name)
  const flow = degrees(kept.flowC)
  const then = kept.name === name ? says.itself(flow) : says.another(flow, kept.name)
  return says.moved(name, raisesK > 0, { byK: Math.abs(raisesK).toFixed(1), says: then })
}
