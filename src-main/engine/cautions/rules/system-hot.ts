import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** The system may be hot and under pressure: switch off, let it cool, and prove it drained before opening a joint. */
export const systemHot: CautionRule<'job'> = {
  id: 'system-hot',
  per: 'job',
  source: 'practice, no published source',
  says: 'The system may be hot and under pressure: switch off, let it cool, and prove it drained before opening a joint.',
  uses: [],
  when: (job) => given('Emitters to take off or fit', job.swaps),
  examples: [
    { says: 'one swap', ask: { swaps: 1 }, appears: true },
    { says: 'many', ask: { swaps: 12 }, appears: true },
  ],
}
