import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { houseReach, judgedRooms } from './house-flow.ts'
import type { HouseFlowInput, HouseReach, JudgedHouse } from './house-flow.ts'
import { roomFlow } from './house-room-flow.ts'
import type { JudgedRoom } from './house-room-flow.ts'
import { placeOf, swapped } from './house-swap-candidate.ts'
import type { SwapCandidate } from './house-swap-candidate.ts'
import { ranked } from './house-swap-rank.ts'
import type { RankedSwap } from './house-swap-rank.ts'

export type HouseSwapEffectsInput = HouseFlowInput & {
  readonly candidates: readonly SwapCandidate[]
  /** The house has other rooms, which cannot be judged and so are not in the list. */
  readonly onlyPart?: boolean | undefined
}
export type NotJudged = {
  readonly candidateIndex: number
  readonly name: string
  readonly roomName: string
  readonly says: string
}
export type HouseSwapEffectsAnswer = {
  /** No room is only guessed. */
  readonly backed: boolean
  readonly before: HouseReach
  readonly ranked: readonly RankedSwap[]
  /** Swaps in rooms that are only guessed. */
  readonly notJudged: readonly NotJudged[]
  readonly says: string
  readonly why: Derivation
}
/** What one swap, done alone, does to its room and to the house. */
export type SwapEffect = {
  readonly candidateIndex: number
  readonly name: string
  readonly roomIndex: number
  readonly roomName: string
  readonly roomBeforeC?: number
  readonly roomAfterC?: number
  readonly after: HouseReach
  /** Only where the house is warm at some flow before and after; negative where the swap makes it worse. */
  readonly lowersK?: number
  readonly says: string
  readonly why: Derivation
}

/**
 * What each of several swaps, done alone, does to the house's lowest flow temperature, the best first.
 * lowers = house's flow before - house's flow after, K; the house's flow is its worst room's. First come swaps after which no
 * room is short, by the flow after; then those that leave fewest rooms short, by the watts that are still missing. Swaps that
 * come to the same share a rank and say why: mostly because another room holds the house where it is. Among them the one
 * that helps its own room most stands first.
 * A swap in a room that is only guessed is not judged; with such a room in the house nothing is `backed`.
 * Refuses what `houseFlow` refuses, a room that is not there or whose name is two rooms', and an emitter to remove that is not there.
 *
 * @param input a house as `houseFlow` takes it, and swaps: a room by place (from 0) or name, places of emitters that go, emitters that come
 * @source EN 442-2 characteristic equation, solved for the flow; the ranking: practice, no published source
 * @example houseSwapEffects({ spreadK: 10, rooms: [{ name: 'Bath', loadW: 510.7, roomC: 20, emitters: [{ ratedW: 510.7, exponent: 1.3 }] }], candidates: [{ name: 'Rail', roomIndex: 0, remove: [0], add: [{ ratedW: 1000, exponent: 1.3 }] }] }).value.ranked[0].lowersK // => 20
 */
export function houseSwapEffects(input: HouseSwapEffectsInput): Outcome<HouseSwapEffectsAnswer> {
  const wrong = refuseUnlessFinite(input.candidates)
  if (wrong !== null) return under('candidates', wrong)
  const house = judgedRooms(input)
  if (!house.ok) return house
  const before = houseReach(house.value.judged)
  const measured = house.value.judged.every(({ state }) => state !== 'rough')
  const backed = measured && input.onlyPart !== true
  const who = backed ? 'the house' : 'the measured rooms'
  const effects: SwapEffect[] = []
  const notJudged: NotJudged[] = []
  for (const [candidateIndex, candidate] of input.candidates.entries()) {
    const effect = effectOf({ input, house: house.value, before, who, candidate, candidateIndex })
    if (!effect.ok) return effect
    if ('after' in effect.value) effects.push(effect.value)
    else notJudged.push(effect.value)
  }
  const inOrder = ranked(effects, who)
  const says = answerSays(before, inOrder, { who, measured })
  const why = because(says, inOrder[0]?.lowersK ?? inOrder[0]?.name ?? 'none', {
    source: 'EN 442-2',
    ...(inOrder[0]?.lowersK === undefined ? {} : { unit: 'K' }),
    from: [
      because('Rooms as they are', before.flowC ?? before.roomsShort, {
        from: house.value.judged.map((room) => room.why),
      }),
      ...inOrder.map((one) => one.why),
    ],
  })
  // The reasons are made of answers that were found finite.
  const figures = { backed, before, ranked: inOrder.map(withoutWhy), notJudged, says }
  const sound = acceptFinite(figures, 'These swaps go past what can be reckoned with.')
  return sound.ok ? accept({ ...figures, why }) : sound
}

function withoutWhy(swap: RankedSwap & { readonly why: Derivation }): RankedSwap {
  const { why: _, ...effect } = swap
  return effect
}

/** A flow temperature is said of the house only where no room is guessed. */
type Who = 'the house' | 'the measured rooms'

type One = {
  readonly input: HouseSwapEffectsInput
  readonly house: JudgedHouse
  readonly before: HouseReach
  readonly who: Who
  readonly candidate: SwapCandidate
  readonly candidateIndex: number
}

function effectOf({
  input,
  house,
  before,
  who,
  candidate,
  candidateIndex,
}: One): Outcome<SwapEffect | NotJudged> {
  const path = `candidates[${candidateIndex}]`
  const place = placeOf(
    candidate,
    house.needs.map(({ name }) => name),
  )
  if (!place.ok) return under(path, place)
  const roomIndex = place.value
  const need = house.needs[roomIndex]
  const room = house.judged[roomIndex]
  if (need === undefined || room === undefined) throw new Error(`There is no room ${roomIndex}`)
  const { name } = candidate
  const emitters = swapped(candidate, input.rooms[roomIndex]?.emitters ?? [])
  if (!emitters.ok) return under(path, emitters)
  if (need.rough) {
    const says = `${name} is not judged: ${room.says}`
    return accept({ candidateIndex, name, roomName: room.name, says })
  }
  const changed = roomFlow(need, emitters.value, house.limits)
  if (!changed.ok) return addedAtFault(changed.problems, path)
  const after = houseReach(house.judged.map((one) => (one.roomIndex === roomIndex ? changed.value : one)))
  return accept(told({ candidateIndex, name, room, changed: changed.value, who, before, after }))
}

/** `roomFlow` speaks of the room's emitters; those that stood there were found sound, so it is one that comes. */
function addedAtFault(
  problems: Extract<Outcome<never>, { readonly ok: false }>['problems'],
  path: string,
): Outcome<never> {
  return { ok: false, problems: problems.map((problem) => ({ ...problem, path: `${path}.add` })) }
}

type Told = {
  readonly candidateIndex: number
  readonly name: string
  readonly room: JudgedRoom
  readonly changed: JudgedRoom
  readonly who: Who
  readonly before: HouseReach
  readonly after: HouseReach
}

function told({ candidateIndex, name, room, changed, who, before, after }: Told): SwapEffect {
  const lowersK =
    before.flowC === undefined || after.flowC === undefined
      ? undefined
      : Math.round((before.flowC - after.flowC) * 1e6) / 1e6
  const says = effectSays({ name, who, before, after, lowersK, room: changed })
  const value = lowersK ?? after.flowC ?? after.roomsShort
  const why = because(says, value, {
    ...(lowersK === undefined ? {} : { unit: 'K' }),
    from: [changed.why],
  })
  return {
    candidateIndex,
    name,
    roomIndex: room.roomIndex,
    roomName: room.name,
    ...(room.flowC === undefined ? {} : { roomBeforeC: room.flowC }),
    ...(changed.flowC === undefined ? {} : { roomAfterC: changed.flowC }),
    after,
    ...(lowersK === undefined ? {} : { lowersK }),
    says,
    why,
  }
}

type Said = {
  readonly name: string
  readonly who: Who
  readonly before: HouseReach
  readonly after: HouseReach
  readonly lowersK: number | undefined
  readonly room: JudgedRoom
}

function effectSays({ name, who, before, after, lowersK, room }: Said): string {
  const { flowC, worstRoom = '', roomsShort } = after
  if (!after.reachable) {
    const rooms = roomsShort === 1 ? 'one room' : `${roomsShort} rooms`
    return `${name} leaves ${rooms} short at the highest flow; the worst is ${worstRoom}.`
  }
  if (flowC === undefined) return `${name}: no room that was judged needs heat.`
  const worst = worstRoom === room.name ? `${worstRoom} itself` : worstRoom
  if (lowersK === undefined) {
    const was = before.roomsShort === 1 ? 'one room' : `${before.roomsShort} rooms`
    return `${name} makes every room${who === 'the house' ? '' : ' that was judged'} warm, where ${was} was short: from a flow of ${flowC} °C, held by ${worst}.`
  }
  if (lowersK === 0) return `${name} leaves ${who} at ${flowC} °C, held by ${worst}.`
  const way = lowersK > 0 ? 'lowers' : 'raises'
  return `${name} ${way} ${who} by ${Math.abs(lowersK)} K to ${flowC} °C, then held by ${worst}.`
}

function answerSays(
  before: HouseReach,
  inOrder: readonly RankedSwap[],
  { who, measured }: { readonly who: Who; readonly measured: boolean },
): string {
  const best = inOrder[0]
  const why = measured ? 'cannot be judged' : 'are only guessed'
  const rough =
    who === 'the house' ? '' : ` Rooms that ${why} are left out, so this is not yet the whole house.`
  if (best === undefined) return `No swap could be judged.${rough}`
  if (before.flowC !== undefined && best.lowersK !== undefined && best.lowersK <= 0) {
    return `No swap here lowers ${who}: ${before.worstRoom} holds it at ${before.flowC} °C.${rough}`
  }
  return `Best: ${best.says}${rough}`
}
