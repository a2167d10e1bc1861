import type { QuoteMaterial } from '../customer-quote-view.ts'
import { dayInWords } from '../days.ts'
import { capital, degrees, listed } from '../in-words.ts'
import { notSurveyed } from './not-surveyed.ts'
import { roomName, wallBuild, wallName } from '../things-in-words.ts'
import type { Job, Swap } from '../../domain/job.ts'
import { oldHoleCount } from '../../domain/wall.ts'

type Found = Pick<QuoteMaterial, 'job' | 'quote' | 'takeOffLines'>

/** What this price does not hold, as far as the survey tells. */
export function notIncludedOf({ job, quote, takeOffLines }: Found): readonly string[] {
  const leftOut = takeOffLines.filter((line) => line.gap !== undefined).map((line) => line.name)
  const warned = (id: string) => quote.cautions.some((caution) => caution.cautionId === id)
  const holes = job.swaps.some((swap) => oldHoleCount(swap.existing) > 0)
  return [
    ...leftOut.map((name) => `${capital(name)}: not in this price.`),
    ...(holes
      ? [
          'Decorating and new tiles. Old holes are filled or sealed and touched up by hand; some trace may show.',
        ]
      : []),
    ...(job.survey.system.flush ? [] : ['Cleaning or flushing the rest of the heating system.']),
    'Work on the boiler, its controls or its gas supply.',
    ...(job.swaps.some((swap) => swap.elementW !== undefined)
      ? ['Wiring, protecting and testing the electric element, which is for a qualified electrician.']
      : []),
    ...(warned('asbestos') ? ['Testing for asbestos, or removing it.'] : []),
    ...pipesNotShown(job),
    ...untouched(job),
    'Faults in old pipes, valves and walls that could not be seen at the survey. We tell you and agree a price before going on.',
  ]
}

/** Rooms with an emitter to which fewer than two pipes were surveyed. */
function pipesNotShown({ rooms, swaps }: Job): readonly string[] {
  const bare = rooms.filter((room) =>
    swaps.some((swap) => swap.roomId === room.roomId && swap.pipes.length < 2),
  )
  return bare.length === 0
    ? []
    : [`New pipes to the emitter in ${listed(bare.map(roomName))}, where the survey does not show two.`]
}

/** Rooms that were surveyed and stay as they are. */
function untouched({ rooms, swaps }: Job): readonly string[] {
  const left = rooms.filter((room) => !swaps.some((swap) => swap.roomId === room.roomId))
  return left.length === 0 ? [] : [`Work in ${listed(left.map(roomName))}.`]
}

/** What the price rests on: the survey's own findings, so that both sides can see them. */
export function assumptionsOf({ job, setOuts }: Pick<QuoteMaterial, 'job' | 'setOuts'>): readonly string[] {
  const { survey } = job
  const { system } = survey
  return [
    `The survey of ${dayInWords(survey.surveyedOn)}: sizes, walls and pipes are as measured and seen then.`,
    ...wallsFound(job),
    ...pipesFound(job),
    `The heating runs at ${degrees(system.flowC)} flow and ${degrees(system.returnC)} return.`,
    ...(system.contentLitres === undefined
      ? [`The water in the system was not measured; it is reckoned from ${boilerOf(system)}.`]
      : []),
    drainFound(system.drain),
    ...(job.swaps.some((swap) => swap.valves.kind === 'keep')
      ? ['The valves that stay are sound and shut off.']
      : []),
    ...notSurveyed({ job, setOuts }),
  ]
}

function boilerOf({ boilerKW }: Job['survey']['system']): string {
  return boilerKW === undefined ? 'the usual size of a boiler' : `the ${boilerKW} kW boiler`
}

function drainFound(drain: Job['survey']['system']['drain']): string {
  return {
    wholeSystem: 'The system can be shut off, drained and refilled where it is now.',
    isolatedPart: 'The valves that isolate the part worked on hold.',
    freeze: 'The pipes can be frozen: there is room round them, and the water in them can be stopped.',
  }[drain]
}

/** Walls that emitters go on, each once. */
function wallsFound(job: Job): readonly string[] {
  const found = job.rooms.flatMap((room) =>
    room.walls
      .filter((wall) => job.swaps.some((swap) => swap.roomId === room.roomId && swap.wallId === wall.wallId))
      .map((wall) => ({ built: wallBuild(wall), where: `${wallName(wall)} in ${roomName(room)}` })),
  )
  const groups = [...Map.groupBy(found, (one) => one.built)]
  return groups.map(([built, walls]) => {
    if (groups.length === 1 && walls.length > 4) return `The walls worked on are all ${built}.`
    const is = walls.length === 1 ? 'is' : 'are'
    return `${capital(listed(walls.map((one) => one.where)))} ${is} ${built}.`
  })
}

/** Pipes that the survey found cannot be moved, with all rooms of which the same is true in one sentence. */
function pipesFound({ rooms, swaps }: Job): readonly string[] {
  const found = swaps.flatMap((swap) => {
    const room = rooms.find((one) => one.roomId === swap.roomId)
    const fixed = fixedSides(swap)
    if (room === undefined || fixed.length === 0) return []
    const stays = fixed.length === 1 ? 'pipe cannot be moved and stays' : 'pipes cannot be moved and stay'
    return [{ where: roomName(room), says: `the ${listed(fixed)} ${stays} in place` }]
  })
  return [...Map.groupBy(found, (one) => one.says)].map(([says, all]) => {
    const where = [...new Set(all.map((one) => one.where))]
    return `In ${listed(where)} ${says}.`
  })
}

function fixedSides({ pipes }: Swap): readonly string[] {
  return pipes.filter((pipe) => pipe.fixed === true).map((pipe) => pipe.side)
}
