import type { Figures } from '../../domain/figures.ts'
import type { Job } from '../../domain/job.ts'
import type { Problem } from '../../domain/outcome.ts'
import { taxCategory } from '../../domain/pricing.ts'
import type { TaxCategory } from '../../domain/pricing.ts'
import { quoteLine } from '../../domain/quote.ts'
import type { QuoteLine } from '../../domain/quote.ts'
import { takeOffKind } from '../../domain/take-off.ts'
import type { TakeOffKind } from '../../domain/take-off.ts'
import { reverseCharged } from '../money/tax-rates.ts'

/** The category that work and parts bear unless somebody says otherwise. */
export const usualCategory: TaxCategory = 'standard'

/** What a category is chosen by. */
export type Classed = Pick<QuoteLine, 'lineId' | 'section'> & {
  readonly itemKind?: TakeOffKind | undefined
  readonly lineKey?: string | undefined
}

/**
 * The category of tax that a line bears: as the job says for that very part or line; for an option, as the option says; for its
 * kind of part; for its section; otherwise the standard rate. Under the job's reverse charge it is then turned.
 * @param line what the category is chosen by
 * @param job the job with its pricing and options
 * @param figures the firm's figures, as they stand on the day of the quote
 * @source practice, no published source; the firm answers for the category of each line
 * @example categoryOf({ lineId: 'part-1', section: 'parts', itemKind: 'valve' }, { pricing: { taxTreatment: 'usual', lineCategories: { valve: 'energySaving', parts: 'reduced' } } }, { settings: {} }) // => 'energySaving'
 */
export function categoryOf(line: Classed, job: Job, figures: Figures): TaxCategory {
  const said = job.pricing?.lineCategories ?? {}
  const option = job.options?.find(({ optionId }) => line.lineId === `option-${optionId}`)
  const own = taxCategory.safeParse(option?.taxKey)
  const parts = job.pricing?.partCategories ?? {}
  const category =
    (line.lineKey === undefined ? undefined : parts[line.lineKey]) ??
    said[line.lineId] ??
    (own.success ? own.data : undefined) ??
    (line.itemKind === undefined ? undefined : said[line.itemKind]) ??
    said[line.section] ??
    usualCategory
  return job.pricing?.taxTreatment === 'reverseCharge' ? reverseCharged(category, figures) : category
}

/**
 * What is wrong with the categories that a job names: one of a line that is not there, or an option with an unknown one.
 * @param job the job with its pricing and options
 * @param lineIds the lines that the quote has before discounts
 * @source practice, no published source
 * @example categoryProblems({ pricing: { lineCategories: { roof: 'zero' } } }, ['travel'])[0].path // => 'job.pricing.lineCategories.roof'
 */
export function categoryProblems(job: Job, lineIds: readonly string[]): readonly Problem[] {
  const options = (job.options ?? []).map(({ optionId }) => `option-${optionId}`)
  const known = new Set<string>([
    ...lineIds,
    ...options,
    ...takeOffKind.options,
    ...quoteLine.unwrap().shape.section.options,
  ])
  const lost = Object.keys(job.pricing?.lineCategories ?? {}).filter((name) => !known.has(name))
  const unknown = (job.options ?? []).flatMap(({ name, taxKey }, at): readonly Problem[] =>
    taxKey === undefined || taxCategory.safeParse(taxKey).success
      ? []
      : [
          {
            code: 'invalid',
            message: `The option ${name} bears ${taxKey}, which is no category of tax; it should be ${taxCategory.options.join(' or ')}.`,
            path: `job.options[${at}].taxKey`,
          },
        ],
  )
  return [...lost.map(lostProblem), ...unknown]
}

function lostProblem(name: string): Problem {
  return {
    code: 'invalid',
    message: `There is no line, kind of part or section called ${name} to give a category of tax; quote.build names the lines.`,
    path: `job.pricing.lineCategories.${name}`,
  }
}
