import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { chooseEmitter } from '../../engine/choose/choose-emitter.ts'
import type { ChooseAnswer } from '../../engine/choose/choose-emitter.ts'
import { emitterStock } from '../../engine/choose/emitter-stock.ts'
import type { Choice } from '../../engine/choose/tell-choices.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { catalogueSearch } from '../catalogue/catalogue-search.ts'
import type { Desk, UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { stockOn } from './kept-stock.ts'
import type { Stocked } from './kept-stock.ts'
import { othersInRoom } from './others-in-room.ts'
import { placeFromInput } from './place-from-input.ts'
import type { ChoosingPlace } from './place-from-input.ts'

const usualMost = 10
const usualTold = 500
/** Each takes about a millisecond: more of them than this would keep a person waiting. */
const mostWorked = 1000
/** As many as a search gives at most. */
const mostFound = 1000

export const emitterChoose: UseCase<'emitter.choose'> = async (input, desk) => {
  const place = placeFromInput(input, desk.today)
  if (!place.ok) return place
  const { job } = place.value
  const quotedOn = job.quotedOn ?? desk.today
  const figures = await figuresInForce(desk, quotedOn, job.figures)
  if (!figures.ok) return figures
  const { shelf, stock } = await stockOn(quotedOn, desk)
  const among = await foundBy(input.text ?? '', shelf, desk)
  if (!among.ok) return among
  return choose(input, place.value, {
    shelf,
    stock: among.value === null ? stock : emitterStock({ ...shelf, emitters: among.value }),
    figures: figures.value,
  })
}

/** The emitters that a search finds; null when there is nothing to search for. */
async function foundBy(
  text: string,
  { emitters }: Shelf,
  desk: Desk,
): Promise<Outcome<Shelf['emitters'] | null>> {
  if (text.trim() === '') return accept(null)
  const found = await catalogueSearch({ text, kind: 'emitter', most: mostFound }, desk)
  if (!found.ok) return found
  const named = found.value.items.flatMap(({ item: { itemId } }) => {
    const emitter = emitters.get(itemId)
    return emitter === undefined ? [] : [[itemId, emitter] as const]
  })
  return accept(new Map(named))
}

function choose(
  input: InputOf<'emitter.choose'>,
  place: ChoosingPlace,
  { shelf, stock, figures }: Stocked & { readonly figures: Figures },
): Outcome<AnswerOf<'emitter.choose'>> {
  const others = othersInRoom(place, shelf)
  if (!others.ok) return others
  const { job, swap, room, wall } = place
  const chosen = chooseEmitter({
    trial: { job, swap, room, wall, shelf, figures },
    othersW: others.value.watts,
    othersWhy: others.value.whys,
    stock,
    want: input.want ?? {},
    most: input.most ?? usualMost,
    mostTold: input.mostTold ?? usualTold,
    about: input.about,
    mostWorked,
  })
  if (!chosen.ok) return inInput(chosen, place)
  const { flowC, returnC } = job.survey.system
  const { ranked, dearer, refused, counted, asked, needW, rough, looked, certain, why } = chosen.value
  const at = { othersW: others.value.watts, flowC, returnC }
  const told = { dearer, refused, counted, needW, rough, looked, certain, why, ...at }
  return accept({
    ...told,
    ...(asked === undefined ? {} : { asked }),
    ranked: ranked.map(rankedRow),
    notes: notesOf(chosen.value, place),
  })
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
