import type { InputOf } from '../../../src-main/contract/requests.ts'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { because, given } from '../../../src-main/domain/derivation.ts'
import type { HousePipes, RunEnd } from '../../../src-main/domain/house-pipes.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Job, Room } from '../../../src-main/domain/job.ts'
import { emitterOutput } from '../../../src-main/engine/heat/emitter-output.ts'
import { waterFlow } from '../../../src-main/engine/water/water-flow.ts'
import { words as all } from './house.words.ts'

const words = all.balance

/** An emitter of the house as the water meets it. */
export type Circuit = {
  readonly id: string
  readonly end: RunEnd
  readonly roomName: string
  readonly name: string
  readonly watts: number
  readonly litresPerMinute: number
  readonly why: Derivation
}
export type Circuits = {
  readonly circuits: readonly Circuit[]
  /** Rooms of which nobody surveyed an emitter: their water is not counted. */
  readonly notCounted: readonly string[]
  /** Emitters that give nothing at the job's temperatures, or are not in the catalogue. */
  readonly without: readonly string[]
}

type Given = {
  readonly end: RunEnd
  readonly roomName: string
  readonly name: string
  readonly watts: number
  readonly why: Derivation
}

/** Every emitter of the job once its swaps are done, with the water that brings its heat at the job's flow and return. */
export function circuitsOf(job: Job, items: ReadonlyMap<string, Emitter>): Circuits {
  const { flowC, returnC } = job.survey.system
  const circuits: Circuit[] = []
  const without: string[] = []
  const take = (one: Given | null, what: string) => {
    const flow = one === null ? null : waterFlow({ watts: one.watts, flowC, returnC })
    if (one === null || flow === null || !flow.ok) {
      without.push(what)
      return
    }
    const { litresPerMinute, why } = flow.value
    const says = words.through(one.name, one.roomName)
    circuits.push({
      ...one,
      id: idOf(one.end),
      litresPerMinute,
      why: because(says, litresPerMinute, { unit: 'LPerMin', from: [one.why, why] }),
    })
  }
  for (const room of job.rooms) {
    for (const swap of job.swaps.filter(({ roomId }) => roomId === room.roomId)) {
      const emitter = items.get(swap.emitterId)
      take(emitter === undefined ? null : upIn(job, room, { swap, emitter }), room.name)
    }
    if ((room.otherEmittersW ?? 0) > 0) take(stayingIn(room), room.name)
  }
  return {
    circuits,
    notCounted: job.rooms.filter((room) => isBare(job, room)).map(({ name }) => name),
    without,
  }
}

type Up = { readonly swap: Job['swaps'][number]; readonly emitter: Emitter }

function upIn({ survey }: Job, room: Room, { swap, emitter }: Up): Given | null {
  const { flowC, returnC } = survey.system
  const { ratedW, exponent, rating, name } = emitter
  const { swapId, factors } = swap
  const output = emitterOutput({ ratedW, exponent, rating, factors, flowC, returnC, roomC: room.roomC })
  if (!output.ok) return null
  const { watts, why } = output.value
  return { end: { swapId }, roomName: room.name, name, watts, why }
}

function stayingIn({ roomId, name, otherEmittersW = 0 }: Room): Given {
  const why = given(words.staying(name), otherEmittersW, 'W', 'survey')
  return { end: { roomId }, roomName: name, name: words.stays, watts: otherEmittersW, why }
}

function isBare({ swaps }: Job, { roomId, otherEmittersW }: Room): boolean {
  return otherEmittersW === undefined && swaps.every((swap) => swap.roomId !== roomId)
}

/** The name of a circuit in what the desk is asked; a swap and a room may share one. */
export function idOf(end: RunEnd): string {
  return 'swapId' in end ? end.swapId : `stays.${end.roomId}`.slice(0, 80)
}

/** Drawn copper or brass tube, new (Idelchik); plastic is as smooth. */
export const smoothMm = 0.0015

export type ToBalance = {
  readonly input: InputOf<'house.balance'> | null
  /** What has to be given first, in sentences. */
  readonly wanted: readonly string[]
  /** Emitters on no run of pipe, which are left out. */
  readonly loose: readonly Circuit[]
}

/** What the desk is asked about the pipes; null while something is wanted. */
export function toBalance(job: Job, circuits: readonly Circuit[]): ToBalance {
  const { legs, lockshield } = job.house ?? nothing
  const legOf = new Map(
    legs.flatMap(({ legId, to }) => (to === undefined ? [] : [[idOf(to), legId] as const])),
  )
  const loose = circuits.filter(({ id }) => !legOf.has(id))
  const placed = circuits.flatMap(({ id, watts }) => {
    const legId = legOf.get(id)
    return legId === undefined
      ? []
      : [{ id, legId, watts, ...(lockshield === undefined ? {} : { lockshield }) }]
  })
  const wanted = wantedOf(legs, placed.length)
  const { flowC, returnC } = job.survey.system
  const runs = legs.map(({ legId, from, lengthM = 0, insideMm, zeta }) => ({
    id: legId,
    from,
    pipe: { insideMm, lengthM, roughnessMm: smoothMm },
    ...(zeta === undefined ? {} : { zetas: [zeta] }),
  }))
  const input = wanted.length > 0 ? null : { legs: runs, circuits: placed, flowC, returnC }
  return { input, wanted, loose }
}

const nothing: HousePipes = { legs: [] }

function wantedOf(legs: HousePipes['legs'], placed: number): readonly string[] {
  if (legs.length === 0) return [words.wantedRun]
  return [
    ...legs.filter(({ lengthM }) => lengthM === undefined).map(({ name }) => words.wantedLength(name)),
    ...(placed === 0 ? [words.wantedEnd] : []),
    ...ends(legs),
  ]
}

/** Two runs to one emitter would count its water twice. */
function ends(legs: HousePipes['legs']): readonly string[] {
  const seen = new Map<string, string>()
  return legs.flatMap(({ name, to }) => {
    if (to === undefined) return []
    const before = seen.get(idOf(to))
    seen.set(idOf(to), name)
    return before === undefined ? [] : [words.twoRuns(before, name)]
  })
}

/** The desk's sentences name legs and circuits by their ids: here by what they are called, and a leg is a run. */
export function called(text: string, names: ReadonlyMap<string, string>): string {
  const named = text.replaceAll(
    /[A-Za-z0-9](?:[A-Za-z0-9._-]*[A-Za-z0-9])?/g,
    (word) => names.get(word) ?? word,
  )
  return named.replaceAll(/\b([Ll])eg (?=“)/g, (_, first: string) =>
    first === 'L' ? words.run.first : words.run.within,
  )
}

export function calledWhy(why: Derivation, names: ReadonlyMap<string, string>): Derivation {
  return {
    ...why,
    says: called(why.says, names),
    value: typeof why.value === 'string' ? called(why.value, names) : why.value,
    from: why.from.map((one) => calledWhy(one, names)),
  }
}

/** What each run and circuit is called. */
export function namesOf(job: Job, circuits: readonly Circuit[]): ReadonlyMap<string, string> {
  return new Map([
    ...(job.house?.legs ?? []).map(({ legId, name }) => [legId, words.quoted(name)] as const),
    ...circuits.map(({ id, roomName, name }) => [id, words.quoted(words.emitterIn(roomName, name))] as const),
  ])
}
