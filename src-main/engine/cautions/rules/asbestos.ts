import type { CautionRule } from '../caution-rule.ts'
import { because, given } from '../../../domain/derivation.ts'

/** This building may be older than 2000: textured coatings, boards, tile adhesive, lagging and panels behind radiators may hold asbestos. */
export const asbestos: CautionRule<'job'> = {
  id: 'asbestos',
  per: 'job',
  source: 'HSE trade guidance as summarised by netregs.org.uk',
  says: 'This building may be older than 2000: textured coatings, boards, tile adhesive, lagging and panels behind radiators may hold asbestos. Even one hole counts. If in doubt stop, and have it tested by a competent person.',
  uses: ['asbestos.beforeYear'],
  when: (job, use) => {
    if (job.builtYear !== null && job.builtYear >= use.value('asbestos.beforeYear')) return null
    return job.builtYear === null
      ? given('The year of building is not known', 'unknown', undefined, 'survey')
      : because('Built before the limit.', job.builtYear, {
          from: [given('Year built', job.builtYear, undefined, 'survey'), use.why('asbestos.beforeYear')],
        })
  },
  examples: [
    { says: 'built in 1968', ask: { builtYear: 1968 }, appears: true },
    { says: 'not known', ask: { builtYear: null }, appears: true },
    { says: 'built in 2004', ask: { builtYear: 2004 }, appears: false },
  ],
}
