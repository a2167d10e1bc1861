import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Job, Room } from '../../domain/job.ts'
import { accept, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Quote } from '../../domain/quote.ts'
import type { RoomHeat } from '../../domain/room-heat.ts'
import { emitterOutput } from '../heat/emitter-output.ts'
import { heatLoad } from '../heat/heat-load.ts'
import type { PlacedSwap } from '../takeoff/job-facts.ts'

export type Warmth = Quote['warmth'][number]

/**
 * A room of a job as the heat-load rule takes it.
 * @param room the surveyed room
 * @param outsideC the design temperature outside, degrees Celsius
 * @source practice, no published source
 * @example roomHeatOf({ name: 'Hall', roomC: 18, heat: { volumeM3: 20, roughWPerM3: 40 } }, -3).outsideC // => -3
 */
export function roomHeatOf(room: Room, outsideC: number): RoomHeat {
  return { name: room.name, roomC: room.roomC, outsideC, ...room.heat }
}

/**
 * Whether each swap's room is warm at the temperatures the system runs at, with every emitter in the room counted.
 * @param job the surveyed job
 * @param placed its swaps with their emitters
 * @source EN 442 for what emitters give; EN 12831-1, simplified, for what rooms need
 * @example warmthOf({ rooms: [] }, []).value // => []
 */
export function warmthOf(job: Job, placed: readonly PlacedSwap[]): Outcome<readonly Warmth[]> {
  const answers: Warmth[] = []
  for (const one of placed) {
    const answer = warmthOfSwap(job, one, placed)
    if (!answer.ok) return answer
    answers.push(answer.value)
  }
  return accept(answers)
}

function warmthOfSwap(job: Job, one: PlacedSwap, placed: readonly PlacedSwap[]): Outcome<Warmth> {
  const roomIndex = job.rooms.findIndex((room) => room.roomId === one.room.roomId)
  const load = heatLoad({ room: roomHeatOf(one.room, job.survey.outsideC) })
  if (!load.ok) return inJob(`job.rooms[${roomIndex}]`, load)
  const inRoom = placed.filter((other) => other.room.roomId === one.room.roomId)
  const outputs: { readonly watts: number; readonly why: Derivation }[] = []
  for (const other of inRoom) {
    const output = outputOf(job, other)
    if (!output.ok) return under('job.survey.system', output)
    outputs.push(output.value)
  }
  const others = one.room.otherEmittersW ?? 0
  const givesW = outputs.reduce((sum, output) => sum + output.watts, others)
  return accept(judged(one, load.value, { givesW, others, reasons: outputs.map((output) => output.why) }))
}

/** A room's problem under its place in the job: what stands in `room.elements` there stands in `heat.elements` here. */
function inJob(place: string, refused: Outcome<never> & { readonly ok: false }): Outcome<never> {
  const problems = refused.problems.map((problem) => ({
    ...problem,
    path: `${place}${problem.path === undefined ? '' : problem.path.replace(/^room(\.|$)/, '.heat$1')}`,
  }))
  return { ok: false, problems }
}

function outputOf(job: Job, { swap, room, emitter }: PlacedSwap) {
  const { flowC, returnC } = job.survey.system
  const { ratedW, exponent } = emitter
  return emitterOutput({
    ratedW,
    exponent,
    flowC,
    returnC,
    roomC: room.roomC,
    ...(emitter.rating === undefined ? {} : { rating: emitter.rating }),
    ...(swap.factors === undefined ? {} : { factors: swap.factors }),
  })
}

function judged(
  { swap, room }: PlacedSwap,
  load: { readonly watts: number; readonly rough: boolean; readonly why: Derivation },
  gives: { readonly givesW: number; readonly others: number; readonly reasons: readonly Derivation[] },
): Warmth {
  const needW = Math.round(load.watts)
  const givesW = Math.round(gives.givesW)
  const enough = givesW >= needW
  const rough = load.rough ? ', by a rough estimate' : ''
  const says = enough
    ? `Gives ${givesW} W where the ${room.name} needs ${needW} W${rough}.`
    : `${needW - givesW} W short: gives ${givesW} W where the ${room.name} needs ${needW} W${rough}.`
  const staying = gives.others === 0 ? [] : [given('Emitters that stay', gives.others, 'W', 'survey')]
  const why = because(says, givesW - needW, { unit: 'W', from: [load.why, ...gives.reasons, ...staying] })
  return { swapId: swap.swapId, roomName: room.name, needW, givesW, rough: load.rough, enough, says, why }
}
