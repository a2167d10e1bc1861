import type { InputOf } from '../../contract/requests.ts'
import type { Job, Room, Survey, Swap } from '../../domain/job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { CentreChoice, Pipe, Side } from '../../domain/wall.ts'

type Input = InputOf<'emitter.choose'>
type OfJob = Extract<Input, { readonly job: unknown }>
type OfRoom = Exclude<Input, OfJob>

/** Where an emitter is chosen for: the job with this place alone, and the room's other swaps. */
export type ChoosingPlace = {
  readonly job: Job
  readonly room: Room
  readonly wall: Room['walls'][number]
  readonly swap: Omit<Swap, 'emitterId'>
  readonly others: readonly { readonly swap: Swap; readonly path: string }[]
  /** Where the engine's words for a field stand in the input. */
  readonly paths: Readonly<Record<string, string>>
}

/** A usual height of the bottom edge above finished floor, where nobody said: practice, no published source. */
const usualBottomMm = 150

export function placeFromInput(input: Input, today: string): Outcome<ChoosingPlace> {
  return 'job' in input ? ofJob(input) : accept(ofRoom(input, today))
}

function ofJob(input: OfJob): Outcome<ChoosingPlace> {
  const { job, roomId, wallId } = input
  const roomAt = job.rooms.findIndex((room) => room.roomId === roomId)
  const room = job.rooms[roomAt]
  if (room === undefined) {
    return refuse(
      'not-found',
      `The job has no room called ${roomId}: ${named(job.rooms.map((one) => one.roomId))}.`,
      'roomId',
    )
  }
  const wall = room.walls.find((one) => one.wallId === wallId)
  if (wall === undefined) {
    const walls = named(room.walls.map((one) => one.wallId))
    return refuse('not-found', `The ${room.name} has no wall called ${wallId}: ${walls}.`, 'wallId')
  }
  const found = swapHere(input)
  if (!found.ok) return found
  const survey = atFlow(job.survey, input)
  const swap = found.value ?? newSwap({ roomId, wallId, swapId: 'choice', kind: input.want?.kind })
  const others = job.swaps.flatMap((one, index) =>
    one.roomId === roomId && one !== found.value ? [{ swap: one, path: `job.swaps[${index}]` }] : [],
  )
  const paths = {
    room: `job.rooms[${roomAt}].heat`,
    ...temperaturePaths(input, 'job.survey.system'),
    wall: `job.rooms[${roomAt}].walls[${room.walls.indexOf(wall)}]`,
    ...(found.value === null ? {} : swapPaths(job.swaps.indexOf(found.value))),
  }
  return accept({ job: { ...job, survey, swaps: [] }, room, wall, swap, others, paths })
}

function swapPaths(at: number): Readonly<Record<string, string>> {
  return { centre: `job.swaps[${at}].centre`, pipes: `job.swaps[${at}].pipes` }
}

/** The swap that was named; else the only one on that wall; null where the wall has none. */
function swapHere({ job, roomId, wallId, swapId }: OfJob): Outcome<Swap | null> {
  const here = job.swaps.filter((swap) => swap.roomId === roomId && swap.wallId === wallId)
  const ids = named(here.map((swap) => swap.swapId))
  if (swapId === undefined) {
    if (here.length < 2) return accept(here[0] ?? null)
    return refuse(
      'invalid',
      `There are ${here.length} swaps on this wall; say which one with swapId: ${ids}.`,
      'swapId',
    )
  }
  const swap = here.find((one) => one.swapId === swapId)
  if (swap !== undefined) return accept(swap)
  return refuse('not-found', `There is no swap called ${swapId} on this wall: ${ids}.`, 'swapId')
}

/** A room, a wall and a survey by themselves: a job that has nothing else. */
function ofRoom(input: OfRoom, today: string): ChoosingPlace {
  const { room, wall, pipes = [], existing, centre, bottomMm, valves } = input
  const survey = atFlow(input.survey, input)
  const bare = newSwap({ roomId: room.roomId, wallId: wall.wallId, swapId: 'choice', kind: input.want?.kind })
  const swap = {
    ...bare,
    pipes,
    centre: centre ?? usualCentre(pipes),
    ...(bottomMm === undefined ? {} : { bottomMm }),
    ...(valves === undefined ? {} : { valves }),
    ...(existing === undefined ? {} : { existing }),
  }
  const job: Job = {
    format: 'tailpiece.job',
    version: 1,
    jobId: 'choice',
    title: room.name,
    createdOn: today,
    customer: { name: room.name, addressLines: [] },
    site: { addressLines: [] },
    survey,
    rooms: [room],
    swaps: [],
  }
  const paths = { room: 'room.heat', ...temperaturePaths(input, 'survey.system') }
  return { job, room, wall, swap, others: [], paths }
}

type Bare = { readonly roomId: string; readonly wallId: string; readonly swapId: string }

function newSwap({ roomId, wallId, swapId, kind }: Bare & { readonly kind: string | undefined }) {
  const finish = kind === 'towelRail' ? ('chrome' as const) : ('white' as const)
  const valves = { kind: 'thermostaticAndLockshield' as const, finish }
  return { swapId, roomId, wallId, pipes: [], valves, centre: usualCentre([]), bottomMm: usualBottomMm }
}

function usualCentre(pipes: readonly Pipe[]): CentreChoice {
  const has = (side: Side) => pipes.some((pipe) => pipe.side === side)
  if (has('left') && has('right')) return { kind: 'betweenPipes' }
  const only = pipes[0]
  return only === undefined ? { kind: 'middleOfWall' } : { kind: 'fromPipe', side: only.side }
}

type Asked = Pick<Input, 'flowC' | 'spreadK'>

function atFlow(survey: Survey, { flowC, spreadK }: Asked): Survey {
  const { system } = survey
  const flow = flowC ?? system.flowC
  const spread = spreadK ?? system.flowC - system.returnC
  return { ...survey, system: { ...system, flowC: flow, returnC: flow - spread } }
}

/** A temperature that cannot be is named where it was given. */
function temperaturePaths({ flowC, spreadK }: Asked, system: string): Readonly<Record<string, string>> {
  const flow = flowC === undefined ? `${system}.flowC` : 'flowC'
  if (spreadK !== undefined) return { flowC: flow, returnC: 'spreadK' }
  return { flowC: flow, returnC: flowC === undefined ? `${system}.returnC` : 'flowC' }
}

function named(ids: readonly string[]): string {
  return ids.length === 0 ? 'it has none yet' : `it should be ${ids.slice(0, 10).join(' or ')}`
}
