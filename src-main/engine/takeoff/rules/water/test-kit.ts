import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A test of the inhibitor level after dosing. */
export const testKit: Rule<'job'> = {
  id: 'water/test-kit',
  per: 'job',
  source: 'BS 7593:2019 asks that the level be checked',
  says: 'A test of the inhibitor level after dosing',
  uses: [],
  gives: () => [
    need('testKit', { tests: 'inhibitor' }, 1, {
      says: 'The inhibitor level is checked after dosing.',
      from: [given('Tests', 1)],
    }),
  ],
  examples: [
    { says: 'one a job', ask: {}, gives: [['testKit', 1]] },
    { says: 'one a job, however many swaps', ask: { swaps: 9 }, gives: [['testKit', 1]] },
  ],
}
