import type { Derivation } from '../../../domain/derivation.ts'
import { accept } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { houseSwapEffects } from '../house-swap-effects.ts'
import type { RankedSwap } from '../house-swap-rank.ts'
import { emittersBefore, isJudged } from './job-flow-rooms.ts'
import type { JobFlowRoom, JobFlowSwap, JobRoomState } from './job-flow-rooms.ts'

/** What one swap of a job, done alone, does for the house. */
export type JobSwapEffect = Omit<RankedSwap, 'candidateIndex' | 'roomIndex'> & {
  readonly swapId: string
  readonly roomId: string
}
/** A swap in a room that backs no flow temperature, with the reason. */
export type JobSwapNotJudged = {
  readonly swapId: string
  readonly roomId: string
  readonly name: string
  readonly says: string
}
export type JobSwapsInput = {
  readonly rooms: readonly JobFlowRoom[]
  readonly spreadK: number
  readonly maxFlowC?: number | undefined
  /** How the rooms stand before the swaps, in any order. */
  readonly before: readonly JobRoomState[]
}
export type JobSwapEffects = {
  readonly swaps: readonly JobSwapEffect[]
  readonly notJudged: readonly JobSwapNotJudged[]
  /** Null where no swap can be judged. */
  readonly why: Derivation | null
}

type Candidate = {
  readonly roomId: string
  readonly swap: JobFlowSwap
  /** The place of what it takes down among the room's emitters. */
  readonly remove: readonly number[]
}

/**
 * Each swap of a job done alone, the best for the house first, by `houseSwapEffects`. Rooms that cannot be judged before the swaps
 * stand for nothing in it, and swaps in them are listed with the reason.
 * @param input the job's rooms, how each stands, spreadK 0.01 to 50 and maxFlowC (75 when absent)
 * @source as houseSwapEffects
 * @example jobSwapEffects({ rooms: [], before: [], spreadK: 10 }).value.swaps.length // => 0
 */
export function jobSwapEffects(input: JobSwapsInput): Outcome<JobSwapEffects> {
  const { rooms, spreadK, maxFlowC, before } = input
  const standing = new Map(before.map((room) => [room.roomId, room]))
  const candidates: Candidate[] = []
  const notJudged: JobSwapNotJudged[] = []
  for (const room of rooms) {
    const state = standing.get(room.roomId)
    if (state === undefined) throw new Error(`Nobody judged the room ${room.roomId}`)
    if (isJudged(state)) candidates.push(...candidatesOf(room))
    else notJudged.push(...room.swaps.map((swap) => left(room.roomId, swap, state)))
  }
  if (candidates.length === 0) return accept({ swaps: [], notJudged, why: null })
  const judged = rooms.filter(({ roomId }) =>
    before.some((state) => state.roomId === roomId && isJudged(state)),
  )
  const effects = houseSwapEffects({
    rooms: judged.map((room) => ({ room: room.room, emitters: emittersBefore(room) ?? [] })),
    onlyPart: judged.length < rooms.length,
    spreadK,
    maxFlowC,
    candidates: candidates.map(({ swap, roomId, remove }) => ({
      name: swap.name,
      roomIndex: judged.findIndex((room) => room.roomId === roomId),
      remove,
      add: [swap.new],
    })),
  })
  if (!effects.ok) return effects
  const swaps = effects.value.ranked.map((one) => ofJob(one, candidates))
  return accept({ swaps, notJudged, why: effects.value.why })
}

function left(roomId: string, { swapId, name }: JobFlowSwap, state: JobRoomState): JobSwapNotJudged {
  return { swapId, roomId, name, says: `${name} is not judged: ${state.says}` }
}

/**
 * What comes down stands behind what stays, in the order of the swaps, as `emittersBefore` has it. In a room that needs no heat
 * nobody need know what stands there.
 */
function candidatesOf(room: JobFlowRoom): readonly Candidate[] {
  const known = emittersBefore(room) !== null
  let next = room.staying?.length ?? 0
  return room.swaps.map((swap) => {
    const remove = known && swap.old !== 'none' ? [next++] : []
    return { roomId: room.roomId, swap, remove }
  })
}

function ofJob(ranked: RankedSwap, candidates: readonly Candidate[]): JobSwapEffect {
  const { candidateIndex, roomIndex: _, ...effect } = ranked
  const candidate = candidates[candidateIndex]
  if (candidate === undefined) throw new Error(`There is no swap ${candidateIndex}`)
  return { swapId: candidate.swap.swapId, roomId: candidate.roomId, ...effect }
}
