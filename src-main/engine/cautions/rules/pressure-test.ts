import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Pressure test cold before the system is heated, within what the weakest part allows; then check every joint hot. */
export const pressureTest: CautionRule<'job'> = {
  id: 'pressure-test',
  per: 'job',
  source: 'BS EN 14336; test pressure from the maker of each part',
  says: 'Pressure test cold before the system is heated, within what the weakest part allows; then check every joint hot.',
  uses: [],
  when: (job) => given('Emitters to test', job.swaps),
  examples: [
    { says: 'one swap', ask: { swaps: 1 }, appears: true },
    { says: 'many', ask: { swaps: 12 }, appears: true },
  ],
}
