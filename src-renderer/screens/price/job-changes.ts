import type { Fill, Job, Override } from '../../../src-main/domain/job.ts'
import type { CategoryPrice, Discount, Pricing, TaxCategory } from '../../../src-main/domain/pricing.ts'

/** How a job is priced where nobody said anything. */
export const usualPricing: Pricing = { taxTreatment: 'usual', rounding: 'document' }

/** The job with its way of pricing changed. */
export function withPricing(job: Job, change: (pricing: Pricing) => Pricing): Job {
  return { ...job, pricing: change(job.pricing ?? usualPricing) }
}

/** One change by hand in place of whatever was changed on that line before; null takes it off. */
export function withOverride(job: Job, lineKey: string, override: Omit<Override, 'lineKey'> | null): Job {
  const others = (job.overrides ?? []).filter((one) => one.lineKey !== lineKey)
  return { ...job, overrides: override === null ? others : [...others, { lineKey, ...override }] }
}

/** A gap filled, in place of what filled it or let it stand before; null leaves it open. */
export function withFill(job: Job, gapKey: string, fill: Fill | null): Job {
  const fills = (job.fills ?? []).filter((one) => one.gapKey !== gapKey)
  const waivers = (job.waivers ?? []).filter((one) => one.gapKey !== gapKey)
  return { ...job, fills: fill === null ? fills : [...fills, fill], ...(fill === null ? {} : { waivers }) }
}

/** A gap let stand for a reason; null takes that back. */
export function withWaiver(job: Job, gapKey: string, reason: string | null): Job {
  const others = (job.waivers ?? []).filter((one) => one.gapKey !== gapKey)
  return { ...job, waivers: reason === null ? others : [...others, { gapKey, reason }] }
}

/** One kind of part by mark-up or by margin, never by both; null as the firm usually does. */
export function withSelling(
  job: Job,
  of: CategoryPrice['of'],
  to: Pick<CategoryPrice, 'by' | 'basisPoints'> | null,
): Job {
  return withPricing(job, (pricing) => {
    const all = pricing.markUps ?? []
    const at = all.findIndex((one) => one.of === of)
    if (to === null) return { ...pricing, markUps: all.filter((one) => one.of !== of) }
    return at < 0
      ? { ...pricing, markUps: [...all, { of, ...to }] }
      : { ...pricing, markUps: all.map((one) => (one.of === of ? { ...one, by: to.by } : one)) }
  })
}

export function withDiscount(job: Job, discount: Discount): Job {
  return withPricing(job, (pricing) => ({ ...pricing, discounts: [...(pricing.discounts ?? []), discount] }))
}

/** A discount by amount instead of by percent, or the other way round; its name and what it is of stay. */
export function asKind(discount: Discount, kind: Discount['kind']): Discount {
  const { name, of, roomId } = discount
  const shared = { name, ...(of === undefined ? {} : { of }), ...(roomId === undefined ? {} : { roomId }) }
  return kind === 'percent' ? { kind, ...shared, basisPoints: 500 } : { kind, ...shared, pence: 1000 }
}

type TaxOf = { readonly of: 'lineCategories' | 'partCategories'; readonly name: string }

/** The tax of a section, a line or a part; null as usual. */
export function withTax(job: Job, { of, name }: TaxOf, category: TaxCategory | null): Job {
  return withPricing(job, (pricing) => {
    const others = Object.entries(pricing[of] ?? {}).filter(([one]) => one !== name)
    const own: readonly (readonly [string, TaxCategory])[] = category === null ? [] : [[name, category]]
    return { ...pricing, [of]: Object.fromEntries([...others, ...own]) }
  })
}

/** A name that no option of the job has yet. */
export function freeOptionId(job: Pick<Job, 'options'>): string {
  const taken = new Set((job.options ?? []).map(({ optionId }) => optionId))
  let nth = taken.size + 1
  while (taken.has(`option-${nth}`)) nth += 1
  return `option-${nth}`
}
