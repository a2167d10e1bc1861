import { because, given } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Crew, Lift } from '../../domain/labour.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { named } from '../takeoff/rule.ts'
import type { Named } from '../takeoff/rule.ts'
import { liftLimit, liftSettings } from './crew-lift.ts'
import type { Hold } from './crew-lift.ts'

/** Time by the clock: what two people share, and all of it. */
type Clock = { readonly togetherMin: number; readonly wholeMin: number }
type SwapFacts = JobFacts['swaps'][number]

/**
 * Who has to come: the people that the lift asking for most takes, and what they do together. Each new emitter is carried in
 * and hung, each old one carried out; an old one that nobody weighed is named.
 * @param facts the job's facts
 * @param clock minutes by the clock: those that two share, and all of them
 * @param figures the firm's figures
 * @source HSE lifting and lowering risk filter: guidance, not limits; who does what: practice, no published source
 * @example crewOfJob({ swaps: [] }, { togetherMin: 0, wholeMin: 60 }, { settings: {} }).people // => 1
 */
export function crewOfJob(facts: JobFacts, clock: Clock, figures: Figures): Crew {
  const use = named(figures, liftSettings)
  const found = facts.swaps.flatMap((swap) => liftsOf(swap, use))
  const lifts = found.map(({ lift }) => lift)
  const people = Math.max(1, ...lifts.map((lift) => lift.people))
  const worst = found.filter(({ lift }) => lift.needsAid).toSorted((a, b) => overOf(b) - overOf(a))[0]
  const togetherMin = people === 1 ? 0 : clock.togetherMin
  const aloneMin = clock.wholeMin - togetherMin
  const notWeighed = facts.swaps.flatMap(({ ask }) =>
    ask.oldName !== null && ask.oldMassKg === null ? [`${ask.oldName} in the ${ask.roomName}`] : [],
  )
  const says =
    people === 1
      ? 'One person: no lift is over the guideline for one.'
      : 'Two people for the lifts over the guideline for one; one person works alone for the rest.'
  const why = because(says, people, {
    from: [
      ...lifts.map((lift) => lift.why),
      given('Together, by the clock', togetherMin, 'min'),
      given('Alone, by the clock', aloneMin, 'min'),
    ],
  })
  const aid = worst === undefined ? {} : { aid: aidSentence(worst) }
  return { people, lifts, notWeighed, togetherMin, aloneMin, ...aid, why }
}

type Found = { readonly lift: Lift; readonly threeKg: number }

function liftsOf({ swapId, ask }: SwapFacts, use: Named): readonly Found[] {
  const far = ask.tightAccess
  const stairs = ask.storey !== 0
  const one = (how: Lift['how'], what: { name: string; massKg: number }, hold: Hold): Found => {
    const limit = liftLimit(what.massKg, hold, use)
    const { oneKg, twoKg, people, needsAid } = limit
    const why = because(`${what.name}: ${inWords[how]}.`, people, { from: [limit.why] })
    return { lift: { swapId, how, ...what, oneKg, twoKg, people, needsAid, why }, threeKg: limit.threeKg }
  }
  const fresh = { name: ask.emitterName, massKg: ask.emitterMassKg }
  const old =
    ask.oldName === null || ask.oldMassKg === null
      ? []
      : [one('carryOut', { name: ask.oldName, massKg: ask.oldMassKg }, { stairs })]
  return [...old, one('carryIn', fresh, { stairs }), one('hang', fresh, { handsMm: ask.handsMm, far })]
}

const inWords: Readonly<Record<Lift['how'], string>> = {
  carryIn: 'carried in',
  hang: 'hung on its brackets',
  carryOut: 'carried out',
}

function overOf({ lift }: Found): number {
  return lift.massKg / lift.twoKg
}

function aidSentence({ lift, threeKg }: Found): string {
  const third = lift.massKg <= threeKg ? 'Bring a lifting aid or a third person' : 'Bring a lifting aid'
  return `${third}: ${lift.massKg} kg, ${inWords[lift.how]}, is over the ${Math.floor(lift.twoKg)} kg guideline for two.`
}
