import { useMemo } from 'react'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { figure } from '../../../src-main/domain/figures.ts'
import type { Figures } from '../../../src-main/domain/figures.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { jobFacts } from '../../../src-main/engine/takeoff/job-facts.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { words } from './house.words.ts'

/** Every figure of the job's day, the job's own in place of the firm's. */
function figuresOf({ settings }: AnswerOf<'figures.inForce'>, { figures = {} }: Job): Figures {
  const own = settings.map(({ id, says, unit, value, source }) => {
    const mine = figures[id]
    const held = mine === undefined ? { value, source } : { value: mine, source: words.water.ownFigure }
    return [id, { says, unit, ...held }] as const
  })
  return { settings: Object.fromEntries(own), tasks: {}, fixings: [] }
}

/** What the desk is asked of a job's water: the same figures that its parts list goes by. */
export function waterAsked(job: Job, figures: Figures) {
  const { contentLitres, boilerKW } = job.survey.system
  const own = (id: string) => job.figures?.[id]
  const kW = boilerKW ?? figure(figures, 'water.defaultBoilerKW')
  const litresPerKW = own('water.litresPerKW')
  return {
    content:
      contentLitres === undefined
        ? { boilerKW: kW, ...(litresPerKW === undefined ? {} : { litresPerKW }) }
        : { surveyedLitres: contentLitres },
    /** The boiler output that was taken, where neither it nor the water was surveyed. */
    assumedKW: contentLitres === undefined && boilerKW === undefined ? kW : null,
    drainedShare: jobFacts(job, [], figures).job.drainedShare,
    inhibitor: own('water.inhibitorLitresPerLitre'),
    cleaner: own('water.cleanerLitresPerLitre'),
  }
}

/** The water in the system and what goes into it, as the desk works it out. */
export function useWater(job: Job) {
  const about = useAsk('app.about', {}, { staleMs: Infinity })
  const on = job.quotedOn ?? about.data?.today ?? ''
  const inForce = useAsk('figures.inForce', { on }, { enabled: on !== '', keepOld: true })
  const figures = inForce.data
  const asked = useMemo(
    () => (figures === undefined ? null : waterAsked(job, figuresOf(figures, job))),
    [figures, job],
  )
  const content = useAsk('system.content', asked?.content ?? {}, { enabled: asked !== null, keepOld: true })
  const contentLitres = content.data?.litres ?? 0
  const drainedShare = asked?.drainedShare ?? 0
  const dosed = content.data !== undefined && asked !== null
  const treats = (each: number | undefined) => (each === undefined ? {} : { treatedLitresPerLitre: each })
  const inhibitor = useAsk(
    'water.dose',
    { product: 'inhibitor', contentLitres, drainedShare, ...treats(asked?.inhibitor) },
    { enabled: dosed, keepOld: true },
  )
  const cleaner = useAsk(
    'water.dose',
    { product: 'cleaner', contentLitres, ...treats(asked?.cleaner) },
    { enabled: dosed && job.survey.system.flush, keepOld: true },
  )
  const error =
    about.error ??
    inForce.error ??
    content.error ??
    inhibitor.error ??
    (job.survey.system.flush ? cleaner.error : null)
  return {
    content: content.data ?? null,
    inhibitor: inhibitor.data ?? null,
    cleaner: job.survey.system.flush ? (cleaner.data ?? null) : null,
    assumedKW: asked?.assumedKW ?? null,
    drainedShare,
    problems: problemsOf(error),
  }
}
