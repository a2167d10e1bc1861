import { given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { emitterOutput } from '../../engine/heat/emitter-output.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import type { ChoosingPlace } from './place-from-input.ts'

export type Others = { readonly watts: number; readonly whys: readonly Derivation[] }

/** What the room has without the emitter that is chosen: those that stay, and those of the job's other swaps in it. */
export function othersInRoom(
  { room, job, others }: ChoosingPlace,
  shelf: Pick<Shelf, 'emitters'>,
): Outcome<Others> {
  const { flowC, returnC } = job.survey.system
  const stayingW = room.otherEmittersW ?? 0
  const whys: Derivation[] = stayingW === 0 ? [] : [given('Emitters that stay', stayingW, 'W', 'survey')]
  let watts = stayingW
  for (const { swap, path } of others) {
    const emitter = shelf.emitters.get(swap.emitterId)
    if (emitter === undefined) {
      const says = `Swap ${swap.swapId} in the same room puts up ${swap.emitterId}, which the catalogue does not have: name an emitter that it has.`
      return refuse('not-found', says, `${path}.emitterId`)
    }
    const { ratedW, exponent, rating } = emitter
    const { factors } = swap
    const output = emitterOutput({ ratedW, exponent, rating, factors, flowC, returnC, roomC: room.roomC })
    if (!output.ok) return output
    watts += output.value.watts
    whys.push(output.value.why)
  }
  return accept({ watts, whys })
}
