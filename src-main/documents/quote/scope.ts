import type { QuoteMaterial } from '../customer-quote-view.ts'
import { counted, degrees, heat, inSentence, listed, mm, printedName, tight } from '../in-words.ts'
import { centreInWords, emitterKind, roomName, wallName, withArticle } from '../things-in-words.ts'
import type { Room, Swap } from '../../domain/job.ts'
import { oldHoleCount } from '../../domain/wall.ts'
import type { Emitter } from '../../domain/item.ts'
import type { PipeRemedy, SetOut } from '../../domain/set-out.ts'
import type { Wall } from '../../domain/wall.ts'

/** What is done in one room, and how warm it will be. */
export type ScopeOfRoom = {
  readonly name: string
  readonly work: readonly string[]
  readonly warmth: readonly string[]
}

type Scope = Pick<QuoteMaterial, 'job' | 'quote' | 'firm' | 'setOuts' | 'emitters'>

/** The work, room by room, in the job's order. */
export function roomsOf(from: Scope): readonly ScopeOfRoom[] {
  return from.job.rooms.flatMap((room) => {
    const swaps = from.job.swaps.filter((swap) => swap.roomId === room.roomId)
    if (swaps.length === 0) return []
    return [
      {
        name: room.name,
        work: swaps.flatMap((swap) => workOfSwap(swap, room, from)),
        warmth: warmthOfRoom(room, swaps, from),
      },
    ]
  })
}

function workOfSwap(swap: Swap, room: Room, { emitters, setOuts }: Scope): readonly string[] {
  const wall = room.walls.find((one) => one.wallId === swap.wallId)
  const emitter = emitters[swap.swapId]
  const setOut = setOuts[swap.swapId]
  if (wall === undefined || emitter === undefined || setOut === undefined) {
    throw new Error(`The swap ${swap.swapId} was not worked up`)
  }
  return [
    ...takeDown(swap, wall),
    putUp({ swap, wall, emitter, setOut }),
    ...(setOut.fixing.needsBoard ? ['Screw a backing board across the studs to carry it.'] : []),
    valves(swap, room),
    ...pipes(setOut),
    ...element(swap),
  ]
}

function takeDown({ existing }: Swap, wall: Wall): readonly string[] {
  if (existing === undefined) return []
  const old = printedName(inSentence(existing.name))
  const down = `Take down the ${old}${old.includes(',') ? ',' : ''} on ${wallName(wall)}`
  const holes = oldHoleCount(existing)
  if (holes > 0) {
    const its = `its ${counted(holes, 'fixing hole')}`
    return [wall.finish === 'tile' ? `${down} and seal ${its} in the tile.` : `${down} and make good ${its}.`]
  }
  return [(existing.brackets ?? 0) > 0 ? `${down} and touch up the marks of its brackets.` : `${down}.`]
}

type OnWall = {
  readonly swap: Swap
  readonly wall: Wall
  readonly emitter: Emitter
  readonly setOut: SetOut
}

function putUp({ swap, wall, emitter, setOut }: OnWall): string {
  const where = swap.existing === undefined ? ` on ${wallName(wall)}` : ''
  const size = `${mm(emitter.widthMm)} wide and ${mm(emitter.heightMm)} high`
  const place = `its centre ${centreInWords(swap, setOut)} and its bottom edge ${mm(setOut.bottomMm)} above the floor`
  return `Fit ${withArticle(emitterKind(emitter))}${where}, ${size}, ${place}.`
}

function valves({ valves: { kind, finish } }: Swap, { holdsThermostat }: Room): string {
  if (kind !== 'keep' && holdsThermostat === true) {
    return `Fit two new manual valves, ${finish}: the room holds the thermostat, so nothing here may close by itself.`
  }
  switch (kind) {
    case 'thermostaticAndLockshield':
      return `Fit a new thermostatic valve and a new lockshield valve, ${finish}.`
    case 'manualPair':
      return `Fit two new manual valves, ${finish}.`
    case 'keep':
      return 'Keep the valves that are there.'
  }
}

const remedies: Readonly<Record<Exclude<PipeRemedy, 'none'>, readonly [one: string, both: string]>> = {
  longerTail: ['Reach the $ pipe with a longer tail.', 'Reach both pipes with longer tails.'],
  pull: ['Ease the $ pipe across to its valve.', 'Ease both pipes across to their valves.'],
  repipe: ['Cut and re-pipe the $ side to its valve.', 'Cut and re-pipe both sides to their valves.'],
}

function pipes({ pipeOffsets }: SetOut): readonly string[] {
  const [first, second] = pipeOffsets
  if (first !== undefined && first.remedy !== 'none' && second?.remedy === first.remedy) {
    return [remedies[first.remedy][1]]
  }
  return pipeOffsets.flatMap(({ side, remedy }) =>
    remedy === 'none' ? [] : [remedies[remedy][0].replace('$', side)],
  )
}

function element({ elementW }: Swap): readonly string[] {
  if (elementW === undefined) return []
  return [
    `Fit a ${elementW}${tight}W electric heating element. A qualified electrician connects it; that is not in this price.`,
  ]
}

function warmthOfRoom(room: Room, swaps: readonly Swap[], { job, quote, firm }: Scope): readonly string[] {
  const ids = swaps.map((swap) => swap.swapId)
  const warmth = quote.warmth.find((one) => ids.includes(one.swapId))
  if (warmth === undefined) return []
  const { flowC, returnC } = job.survey.system
  const { needW, givesW, rough, enough } = warmth
  const inUnits = (watts: number) => heat(watts, firm.heatFirst)
  const needs = `To stay at ${degrees(room.roomC)} when it is ${degrees(job.survey.outsideC)} outside, ${roomName(room)} needs ${rough ? 'about ' : ''}${inUnits(needW)}.`
  const gives = `At ${degrees(flowC)} flow and ${degrees(returnC)} return it will have ${inUnits(givesW)}.`
  const short = enough
    ? []
    : [
        `That is ${inUnits(needW - givesW)} short: in the coldest weather the room will not reach ${degrees(room.roomC)}.`,
      ]
  const guess = rough
    ? ['The need is a rough estimate from the size of the room; no flow temperature should be settled on it.']
    : []
  return [[needs, gives, ...short, ...guess].join(' ')]
}

/** What the job needs once, whatever the number of rooms. */
export function wholeJobWork({
  job,
  takeOffLines,
  quote,
}: Pick<QuoteMaterial, 'job' | 'takeOffLines' | 'quote'>): readonly string[] {
  const chosen = quote.options.filter((option) => option.chosen).map((one) => printedName(one.name))
  const asked = chosen.length === 0 ? [] : [`As you asked: ${inSentence(listed(chosen))}.`]
  if (job.swaps.length === 0) return asked
  const { drain, flush } = job.survey.system
  const has = (kind: string) => takeOffLines.some((line) => line.itemKind === kind && line.gap === undefined)
  const begin = {
    wholeSystem: 'Protect floors and furniture, turn the heating off and drain the whole system.',
    isolatedPart:
      'Protect floors and furniture, turn the heating off, and isolate and drain the part that is worked on.',
    freeze:
      'Protect floors and furniture, turn the heating off, and freeze the pipes so that the system need not be drained.',
  }[drain]
  const steps = [
    ...(flush ? ['flush it with cleaner'] : []),
    drain === 'wholeSystem' ? 'refill and vent it' : 'top up and vent the system',
    ...(has('inhibitor') ? ['dose it with inhibitor'] : []),
    'check every joint for leaks, cold and hot',
  ]
  return [
    begin,
    `Afterwards ${listed(steps)}.`,
    `Balance the new ${job.swaps.length === 1 ? 'emitter' : 'emitters'}, clear up, and show you how everything works.`,
    ...asked,
  ]
}
