import type { Job } from '../../../src-main/domain/job.ts'
import { emitterOutput } from '../../../src-main/engine/heat/emitter-output.ts'
import { stayingExponent } from './room-output.ts'

/** What the emitters that stay in a room gave at the old temperatures, and give at the new. */
export type Stays = {
  readonly name: string
  readonly at: number
  readonly oldW: number
  readonly newW: number
}

/**
 * The heat of emitters that stay is surveyed at the job's flow and return: at others they give less or more. It is reckoned
 * anew, to the watt, by the exponent that the desk takes for them.
 */
export function staysAt({ rooms, survey }: Job, flowC: number, spreadK: number): readonly Stays[] {
  const { flowC: oldFlowC, returnC: oldReturnC } = survey.system
  return rooms.flatMap(({ name, roomC, otherEmittersW = 0 }, at) => {
    if (otherEmittersW <= 0) return []
    const output = emitterOutput({
      ratedW: otherEmittersW,
      rating: { flowC: oldFlowC, returnC: oldReturnC, roomC },
      exponent: stayingExponent,
      flowC,
      returnC: flowC - spreadK,
      roomC,
    })
    return [{ name, at, oldW: otherEmittersW, newW: output.ok ? Math.round(output.value.watts) : 0 }]
  })
}

/** The job with another flow temperature, the drop to the return kept; one change, so one step of undo. */
export function withFlow(job: Job, flowC: number, spreadK: number): Job {
  const stays = new Map(staysAt(job, flowC, spreadK).map((one) => [one.at, one.newW]))
  const returnC = Math.round((flowC - spreadK) * 1e6) / 1e6
  return {
    ...job,
    survey: { ...job.survey, system: { ...job.survey.system, flowC, returnC } },
    rooms: job.rooms.map((room, at) => {
      const otherEmittersW = stays.get(at)
      return otherEmittersW === undefined ? room : { ...room, otherEmittersW }
    }),
  }
}
