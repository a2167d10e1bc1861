import type { AnswerOf } from '../../src-main/contract/requests.ts'
import type { FigureInForce, Figures } from '../../src-main/domain/figures.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Quote } from '../../src-main/domain/quote.ts'
import { repriceQuote, sameWork } from '../../src-main/engine/quote/reprice-quote.ts'

/** A quote, and the job that it was built for. */
export type Built = { readonly job: Job; readonly quote: Quote }
type Settings = AnswerOf<'figures.inForce'>['settings']

const priceFields = jobSchema.unwrap().pick({
  options: true,
  waivers: true,
  overrides: true,
  pricing: true,
  figures: true,
})

/** The quote for the job as it is now; null where it must be built anew, or where what was typed can't be priced yet. */
export function repricedNow(built: Built | null, now: Job, settings: Settings | undefined): Quote | null {
  if (built === null) return null
  if (now === built.job) return built.quote
  if (settings === undefined || !sameWork(built.job, now)) return null
  const { options, waivers, overrides, pricing, figures: own } = now
  const typed = priceFields.safeParse({ options, waivers, overrides, pricing, figures: own })
  if (!typed.success) return null
  const figures = figuresOf(settings, typed.data.figures ?? {})
  if (figures === null || badOverrides(typed.data.overrides ?? [])) return null
  const answer = repriceQuote(built.quote, { ...now, ...typed.data }, figures)
  return answer.ok ? answer.value : null
}

/** One line changed twice, or in nothing: the desk says what is wrong. */
function badOverrides(overrides: NonNullable<Job['overrides']>): boolean {
  const nothing = overrides.some(
    ({ quantity, itemId, netPence }) =>
      quantity === undefined && itemId === undefined && netPence === undefined,
  )
  return nothing || new Set(overrides.map(({ lineKey }) => lineKey)).size < overrides.length
}

/** The figures of the day with the job's own in their place; null where one is out of its range. */
function figuresOf(settings: Settings, own: NonNullable<Job['figures']>): Figures | null {
  const known = new Map(settings.map((setting) => [setting.id, setting]))
  const wrong = Object.entries(own).some(([id, value]) => {
    const setting = known.get(id)
    return setting === undefined || value < setting.least || value > setting.most
  })
  if (wrong) return null
  const inForce = settings.map(({ id, says, unit, value, source }): readonly [string, FigureInForce] => {
    const mine = own[id]
    return [
      id,
      { says, unit, value: mine ?? value, source: mine === undefined ? source : "the firm's own figure" },
    ]
  })
  return { settings: Object.fromEntries(inForce), tasks: {}, fixings: [] }
}
