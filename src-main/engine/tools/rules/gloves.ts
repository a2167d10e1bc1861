import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Gloves for the chemicals. */
export const gloves: ToolRule<'job'> = {
  id: 'gloves',
  per: 'job',
  source: 'practice, no published source',
  says: 'Gloves for the chemicals',
  uses: [],
  gives: (job) => [
    { name: 'Chemical-proof gloves', why: given('Share of the water dosed anew', job.drainedShare) },
  ],
  examples: [
    { says: 'a dose', ask: {}, gives: ['Chemical-proof gloves'] },
    { says: 'a flush', ask: { flush: true }, gives: ['Chemical-proof gloves'] },
  ],
}
