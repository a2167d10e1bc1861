import { given } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Job, Room, Swap } from '../../domain/job.ts'
import { certain } from '../../domain/outcome.ts'
import type { SetOut } from '../../domain/set-out.ts'
import { systemContent } from '../water/system-dose.ts'
import type { JobAsk, RoomAsk } from './asks.ts'
import { swapFacts } from './swap-facts.ts'
import type { SwapFacts } from './swap-facts.ts'

/** One swap with everything that was looked up and set out for it. */
export type PlacedSwap = {
  readonly swap: Swap
  readonly room: Room
  readonly wall: Room['walls'][number]
  readonly emitter: Emitter
  readonly setOut: SetOut
}

/** Every question that the rules are asked about a job. */
export type JobFacts = {
  readonly job: JobAsk
  readonly rooms: readonly { readonly roomId: string; readonly ask: RoomAsk }[]
  readonly swaps: readonly SwapFacts[]
}

/**
 * The facts of a job that rules are asked about: from the survey, the choice and the set-out.
 * @param job the surveyed job
 * @param placed its swaps with emitter and set-out, in the job's order
 * @param figures the firm's figures
 * @source practice, no published source
 * @example jobFacts({ rooms: [], survey: { system: { contentLitres: 90, drain: 'wholeSystem' } }, site: {} }, [], { settings: { 'water.litresPerKW': { value: 11 }, 'water.defaultBoilerKW': { value: 18 } } }).job.contentLitres // => 90
 */
export function jobFacts(job: Job, placed: readonly PlacedSwap[], figures: Figures): JobFacts {
  const swaps = placed.map((one) => swapFacts(one, job, figures))
  const rooms = job.rooms.flatMap((room) => {
    const here = placed.filter((one) => one.room.roomId === room.roomId)
    if (here.length === 0) return []
    const tight = room.tightAccess === true ? { tightAccess: true as const } : {}
    const ask: RoomAsk = {
      roomName: room.name,
      use: room.use,
      floor: room.floor,
      swaps: here.length,
      ...tight,
    }
    return [{ roomId: room.roomId, ask }]
  })
  return { job: jobAsk(job, placed.length, figures), rooms, swaps }
}

function jobAsk(job: Job, swaps: number, figures: Figures): JobAsk {
  const { system } = job.survey
  const content = contentOf(system, figures)
  return {
    swaps,
    drain: system.drain,
    systemKind: system.kind,
    flush: system.flush,
    contentLitres: content.litres,
    contentWhy: content.why,
    drainedShare: drainedShare(system, figures),
    hotWork: job.survey.hotWork ?? false,
    builtYear: job.survey.builtYear ?? null,
    frailOrChildren: job.survey.frailOrChildren ?? false,
    travelKm: job.site.travelKm ?? 0,
    ...(job.survey.occupied === true ? { occupied: true as const } : {}),
  }
}

/** A flush changes all of the water, whatever was drained. */
function drainedShare(system: Job['survey']['system'], figures: Figures): number {
  if (system.flush || system.drain === 'wholeSystem') return 1
  if (system.drainedShare !== undefined) return system.drainedShare
  return figure(figures, system.drain === 'freeze' ? 'water.freezeShareRatio' : 'water.drainedShareRatio')
}

function contentOf({ contentLitres, boilerKW }: Job['survey']['system'], figures: Figures) {
  const boilerWhy =
    boilerKW === undefined
      ? figureWhy(figures, 'water.defaultBoilerKW')
      : given('Boiler output', boilerKW, 'kW', 'survey')
  return certain(
    systemContent({
      surveyedLitres: contentLitres,
      boilerKW: boilerKW ?? figure(figures, 'water.defaultBoilerKW'),
      litresPerKW: figure(figures, 'water.litresPerKW'),
      boilerWhy,
      allowanceWhy: figureWhy(figures, 'water.litresPerKW'),
    }),
  )
}
