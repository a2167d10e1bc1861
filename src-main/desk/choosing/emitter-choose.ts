import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { chooseEmitter } from '../../engine/choose/choose-emitter.ts'
import type { Choice, ChooseAnswer } from '../../engine/choose/choose-emitter.ts'
import { shelfOf } from '../../engine/takeoff/shelf.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { othersInRoom } from './others-in-room.ts'
import { placeFromInput } from './place-from-input.ts'
import type { ChoosingPlace } from './place-from-input.ts'

const usualMost = 10
/** Each takes about a millisecond: more of them than this would keep a person waiting. */
const mostWorked = 1000

export const emitterChoose: UseCase<'emitter.choose'> = async (input, desk) => {
  const place = placeFromInput(input, desk.today)
  if (!place.ok) return place
  const { job } = place.value
  const quotedOn = job.quotedOn ?? desk.today
  const figures = await figuresInForce(desk, quotedOn, job.figures)
  if (!figures.ok) return figures
  const shelf = shelfOf(await catalogueOf(desk, quotedOn))
  return choose(input, place.value, { shelf, figures: figures.value })
}

function choose(
  input: InputOf<'emitter.choose'>,
  place: ChoosingPlace,
  { shelf, figures }: { readonly shelf: Shelf; readonly figures: Figures },
): Outcome<AnswerOf<'emitter.choose'>> {
  const others = othersInRoom(place, shelf)
  if (!others.ok) return others
  const { job, swap, room, wall } = place
  const chosen = chooseEmitter({
    trial: { job, swap, room, wall, shelf, figures },
    othersW: others.value.watts,
    othersWhy: others.value.whys,
    want: input.want ?? {},
    most: input.most ?? usualMost,
    mostWorked,
  })
  if (!chosen.ok) return inInput(chosen, place)
  const { flowC, returnC } = job.survey.system
  const { needW, rough, looked, certain, why } = chosen.value
  const told = { needW, rough, looked, certain, why, othersW: others.value.watts, flowC, returnC }
  return accept({ ...told, ...lists(chosen.value), notes: notesOf(chosen.value, place) })
}

function lists(chosen: ChooseAnswer): Pick<AnswerOf<'emitter.choose'>, 'ranked' | 'dearer' | 'refused'> {
  return {
    ranked: chosen.ranked.map(rankedRow),
    dearer: chosen.dearer.toSorted((a, b) => a.leastPence - b.leastPence),
    refused: chosen.refused.toSorted((a, b) => a.reasons.length - b.reasons.length || b.givesW - a.givesW),
  }
}

function rankedRow({ emitter, ...choice }: Choice): AnswerOf<'emitter.choose'>['ranked'][number] {
  const { itemId, name, form, widthMm, heightMm, generic } = emitter
  return { itemId, name, kind: form.kind, widthMm, heightMm, generic, ...choice }
}

function notesOf(chosen: ChooseAnswer, { swap, room }: ChoosingPlace): readonly string[] {
  return [
    ...(chosen.rough
      ? [`What the ${room.name} needs is a rough estimate: measure it before you rely on it.`]
      : []),
    ...(swap.pipes.length === 0
      ? ['No pipe is surveyed here, so valves and pipe work are not in the prices.']
      : []),
    ...(chosen.certain
      ? []
      : [
          `Only ${chosen.workedUp} of them were priced in full, so a cheaper one may be among the rest: say more of what is wanted.`,
        ]),
    ...(chosen.ranked.length === 0
      ? ['No emitter of the catalogue heats this room, fits here and is as wanted.']
      : []),
  ]
}

/** The engine's paths as the input has them: `room.…` in a job stands under its place, temperatures where they were given. */
function inInput<T>(refused: Outcome<T> & { readonly ok: false }, { paths }: ChoosingPlace): Outcome<never> {
  const problems = refused.problems.map((problem) => {
    if (problem.path === undefined) return problem
    const [first = '', ...rest] = problem.path.split(/(?=[.[])/)
    const under = paths[first]
    return under === undefined ? problem : { ...problem, path: `${under}${rest.join('')}` }
  })
  return { ok: false, problems }
}
