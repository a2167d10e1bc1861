import { dayInWords } from '../days.ts'
import { capital, mm } from '../in-words.ts'
import { emitterKind } from '../things-in-words.ts'
import { careSentences, cautionSentences, valveSentences, valveSetOf, ventingSteps } from './care.ts'
import { paperHead } from './material.ts'
import type { AfterMaterial, PaperHead } from './material.ts'

export type HandoverView = PaperHead & {
  readonly fitted: readonly { readonly room: string; readonly what: string }[]
  readonly valves: ReturnType<typeof valveSentences>
  readonly venting: readonly string[]
  readonly care: readonly string[]
  readonly guarantees: readonly { readonly what: string; readonly until: string; readonly says: string }[]
  readonly cautions: readonly string[]
  readonly ring: readonly string[]
}

/** What the customer needs to live with what was fitted, and nothing of what it cost to fit. */
export function handoverView(from: AfterMaterial): HandoverView {
  const { job, firm, after } = from
  const swaps = swapsOf(from)
  const dose = after.commissioning?.dose
  return {
    ...paperHead(from),
    fitted: swaps.map(({ roomName, emitter }) => ({
      room: roomName,
      what: `${capital(emitterKind(emitter))}, ${mm(emitter.widthMm)} wide and ${mm(emitter.heightMm)} high`,
    })),
    valves: valveSentences(swaps),
    venting: swaps.length === 0 ? [] : ventingSteps(job.survey.system.kind, coldFillOf(from)),
    care: careSentences(swaps.map(({ roomName, emitter: { finish } }) => ({ roomName, finish }))),
    guarantees: (after.guarantees ?? []).map(({ what, until, says = '' }) => ({
      what,
      until: dayInWords(until),
      says,
    })),
    cautions: cautionSentences({
      frail: job.survey.frailOrChildren === true,
      element: job.swaps.some(({ elementW }) => elementW !== undefined),
      rail: swaps.some(({ emitter }) => emitter.form.kind === 'towelRail'),
      dosedWith:
        dose === undefined || dose.litres === 0 ? null : dose.product === '' ? 'inhibitor' : dose.product,
    }),
    ring: [
      firm.name,
      ...[firm.phone, firm.email].filter((one) => one !== undefined && one !== ''),
    ] as string[],
  }
}

function coldFillOf({ after }: AfterMaterial): number | undefined {
  return after.commissioning?.pressureTest.coldFillBar
}

function swapsOf({ job, emitters }: AfterMaterial) {
  return job.swaps.flatMap((swap) => {
    const room = job.rooms.find(({ roomId }) => roomId === swap.roomId)
    const emitter = emitters[swap.swapId]
    if (room === undefined || emitter === undefined)
      throw new Error(`The swap ${swap.swapId} was not worked up`)
    const thermostatHere = room.holdsThermostat === true
    return [{ roomName: room.name, emitter, thermostatHere, set: valveSetOf(swap, thermostatHere) }]
  })
}
