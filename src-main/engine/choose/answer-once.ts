import type { Figures } from '../../domain/figures.ts'
import { questions } from '../takeoff/ask-rules.ts'
import type { Question } from '../takeoff/ask-rules.ts'
import type { Asks, Per } from '../takeoff/asks.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { named } from '../takeoff/rule.ts'
import type { Named } from '../takeoff/rule.ts'

/** A rule of any list: what it is asked about, the settings that it reads, and what it gives. */
type Asked<G, P extends Per = Per> = {
  readonly per: P
  readonly uses: readonly string[]
  readonly gives: (ask: Asks[P], use: Named) => readonly G[]
}
type AnyAsked<G> = { readonly [P in Per]: Asked<G, P> }[Per]

/** All that the rules give for some facts, in the order of the rules. */
export type Answerer<T> = (facts: JobFacts) => readonly T[]

const kinds: readonly Per[] = ['job', 'room', 'swap', 'side', 'joint', 'hole']

/**
 * Rules that answer a question once: one that was asked before, in the same words, gets the same answer again. Two emitters on one wall
 * put nearly the same questions.
 * @param rules of a list, in its order
 * @param figures the firm's figures
 * @param told makes of each thing that a rule gives what is wanted of it; of the facts it may read only what all of them have alike
 * @source practice, no published source
 * @example answerOnce([{ per: 'job', uses: [], gives: (ask) => [ask.swaps] }], {}, (given) => given + 1)({ job: { swaps: 2 }, rooms: [], swaps: [] }) // => [3]
 */
export function answerOnce<G, T>(
  rules: readonly AnyAsked<G>[],
  figures: Figures,
  told: (given: G, question: Question, facts: JobFacts) => T,
): Answerer<T> {
  const uses = rules.map((rule) => named(figures, rule.uses))
  const byAsk = new WeakMap<object, Answers<T>>()
  const byWords = new Map<string, Answers<T>>()
  const inWords = wordsOfQuestions()
  const afresh = (per: Per, question: Question, facts: JobFacts): Answers<T> =>
    rules.map((rule, at) => {
      const use = uses[at]
      if (rule.per !== per || use === undefined) return []
      return (rule as Asked<G>).gives(question.ask, use).map((given) => told(given, question, facts))
    })
  const answersTo = (per: Per, question: Question, facts: JobFacts): Answers<T> => {
    const seen = byAsk.get(question.ask)
    if (seen !== undefined) return seen
    const words = inWords(per, question)
    const answers = (words === null ? undefined : byWords.get(words)) ?? afresh(per, question, facts)
    if (words !== null) byWords.set(words, answers)
    byAsk.set(question.ask, answers)
    return answers
  }
  return (facts) => {
    const asked = new Map(
      kinds.map((per) => [per, questions(per, facts).map((question) => answersTo(per, question, facts))]),
    )
    const all: T[] = []
    for (const [at, { per }] of rules.entries()) {
      for (const answers of asked.get(per) ?? []) all.push(...(answers[at] ?? []))
    }
    return all
  }
}

/** What each rule of the list gives. */
type Answers<T> = readonly (readonly T[])[]

/** A question in words; null for one about a swap, which names its emitter and so is never asked again. */
function wordsOfQuestions(): (per: Per, question: Question) => string | null {
  const fixings = new Map<unknown, number>()
  return (per, { ask, ...whose }) => {
    if (per === 'swap') return null
    const { fixing, ...rest } = 'fixing' in ask ? ask : { ...ask, fixing: undefined }
    const number = fixings.get(fixing) ?? fixings.size
    fixings.set(fixing, number)
    return `${per} ${number} ${JSON.stringify([rest, whose])}`
  }
}
