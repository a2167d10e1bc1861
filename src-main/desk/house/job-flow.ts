import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import { isEmitter } from '../../domain/catalogue.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Job, Room, Swap } from '../../domain/job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { RoomHeat } from '../../domain/room-heat.ts'
import { houseHeat } from '../../engine/heat/house-heat.ts'
import { jobFlow as flowOf } from '../../engine/heat/job/job-flow.ts'
import type { JobFlowRoom, JobFlowSwap } from '../../engine/heat/job/job-flow-rooms.ts'
import type { FlowEmitter } from '../../engine/heat/lowest-flow.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'
import { checkJob } from '../jobs/check-job.ts'
import { noSuchJob } from '../jobs/no-such-job.ts'

/** An emitter of which only one output is known: the generic exponent of a radiator. */
const genericExponent = 1.3
const genericSource = 'EN 15316, default table: radiator'

export const jobFlow: UseCase<'job.flow'> = async (input, desk) => {
  const job = await jobOf(input, desk)
  if (!job.ok) return job
  const catalogue = await catalogueOf(desk, job.value.quotedOn ?? desk.today)
  const checked = checkJob(job.value, catalogue)
  if (!checked.ok) return checked
  const emitters = new Map(catalogue.items.filter(isEmitter).map((one) => [one.itemId, one]))
  return flowOfJob(checked.value, emitters, input)
}

async function jobOf(input: InputOf<'job.flow'>, desk: Desk): Promise<Outcome<Job>> {
  if ('job' in input) return accept(input.job)
  const { jobId } = input
  if (desk.store === null) {
    const message = 'No data folder is open, so there are no saved jobs; give the job itself.'
    return refuse('refused', message, 'jobId')
  }
  const { reading } = await import('../../store/store.ts')
  const { readJob } = await import('../../store/jobs.ts')
  const job = await reading(desk.store, (tx) => readJob(tx, jobId))
  return job === null ? noSuchJob(jobId) : accept(job)
}

type Emitters = ReadonlyMap<string, Emitter>
type Asked = Pick<InputOf<'job.flow'>, 'spreadK' | 'maxFlowC'>

function flowOfJob(job: Job, emitters: Emitters, asked: Asked): Outcome<AnswerOf<'job.flow'>> {
  const wrong = temperatureProblem(job, asked)
  if (wrong !== null) return wrong
  const { flowC, returnC } = job.survey.system
  const rooms = job.rooms.map((room) => flowRoom(room, job, emitters))
  const flow = flowOf({ rooms, spreadK: asked.spreadK ?? flowC - returnC, maxFlowC: asked.maxFlowC })
  if (!flow.ok) return inJob(flow)
  const heat = houseHeat({ rooms: rooms.map((one) => one.room) })
  if (!heat.ok) return inJob(heat)
  const { watts, source, roughW, rough, warnings } = heat.value
  return accept({
    ...flow.value,
    heat: { watts, sourceW: source.watts, roughW, rough, warnings },
    assumed: assumedOf(job),
  })
}

/** The survey's temperatures give the drop, and the excess at which emitters that stay were measured. */
function temperatureProblem({ survey, rooms }: Job, { spreadK }: Asked): Outcome<never> | null {
  const { flowC, returnC } = survey.system
  if (spreadK === undefined && flowC - returnC < 0.01) {
    const message = `The survey's flow of ${flowC} °C must be above its return of ${returnC} °C; or give spreadK.`
    return refuse('invalid', message, 'job.survey.system.returnC')
  }
  const room = rooms.find((one) => staysKnown(one) > 0 && (returnC <= one.roomC || flowC <= returnC))
  if (room === undefined) return null
  const message = `Emitters that stay in ${room.name} give ${staysKnown(room)} W at the survey's flow and return, so these must be above the room's ${room.roomC} °C; they were ${flowC} and ${returnC} °C.`
  return refuse('invalid', message, 'job.survey.system.returnC')
}

function staysKnown(room: Room): number {
  return room.otherEmittersW ?? 0
}

function flowRoom(room: Room, job: Job, emitters: Emitters): JobFlowRoom {
  const { roomId, name, roomC, heat } = room
  const roomHeat: RoomHeat = { name, roomC, outsideC: job.survey.outsideC, ...heat }
  const swaps = job.swaps
    .filter((swap) => swap.roomId === roomId)
    .map((swap) => flowSwap(swap, room, emitters))
  return { roomId, room: roomHeat, staying: staying(room, job), swaps }
}

/** Null where nobody said whether others stay: with a swap in the room that counts for none. */
function staying({ otherEmittersW, roomC }: Room, { survey }: Job): JobFlowRoom['staying'] {
  if (otherEmittersW === undefined) return null
  if (otherEmittersW === 0) return []
  const { flowC, returnC } = survey.system
  return [{ ratedW: otherEmittersW, rating: { flowC, returnC, roomC }, exponent: genericExponent }]
}

function flowSwap(swap: Swap, room: Room, emitters: Emitters): JobFlowSwap {
  const emitter = emitters.get(swap.emitterId)
  if (emitter === undefined) throw new Error(`The checked job has no emitter ${swap.emitterId}`)
  const { swapId, factors = [] } = swap
  const ratedW = factors.reduce((watts, { value }) => watts * value, emitter.ratedW)
  const { exponent, rating } = emitter
  const name = `${room.name}: ${emitter.name}`
  const up: FlowEmitter = { ratedW, exponent, ...(rating === undefined ? {} : { rating }) }
  return { swapId, name, old: oldOf(swap), new: up }
}

function oldOf({ existing }: Swap): JobFlowSwap['old'] {
  if (existing === undefined) return 'none'
  const { ratedW } = existing
  return ratedW === undefined ? 'notSurveyed' : { ratedW, exponent: genericExponent }
}

function assumedOf({ rooms, swaps }: Job): readonly string[] {
  const old = swaps.some((swap) => swap.existing?.ratedW !== undefined)
  const stays = rooms.some((room) => staysKnown(room) > 0)
  const which = [...(old ? ['emitters that come down'] : []), ...(stays ? ['emitters that stay'] : [])]
  const alone = rooms.filter(
    ({ roomId, otherEmittersW }) =>
      otherEmittersW === undefined && swaps.some((swap) => swap.roomId === roomId),
  )
  return [
    ...(which.length === 0
      ? []
      : [`The exponent of ${which.join(' and ')} is taken as ${genericExponent} (${genericSource}).`]),
    ...(old ? ['The rated output of emitters that come down is taken as at 75/65/20 °C.'] : []),
    ...alone.map(({ name }) => `No other emitter stays in ${name}: the survey says nothing of one.`),
  ]
}

/** The engine's `rooms[0].room.elements[1]` stands in the job as `job.rooms[0].heat.elements[1]`. */
function inJob(refused: Outcome<unknown> & { readonly ok: false }): Outcome<never> {
  const problems = refused.problems.map((problem) => {
    const { path } = problem
    if (path === undefined || !path.startsWith('rooms')) return problem
    return { ...problem, path: `job.${path.replace(/^(rooms\[\d+\])\.room/, '$1.heat')}` }
  })
  return { ok: false, problems }
}
