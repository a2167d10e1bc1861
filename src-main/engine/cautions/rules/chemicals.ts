import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Inhibitor and cleaner: gloves, eye protection, the data sheet at hand. */
export const chemicals: CautionRule<'job'> = {
  id: 'chemicals',
  per: 'job',
  source: 'practice, no published source; the data sheet of the product decides',
  says: 'Inhibitor and cleaner: gloves, eye protection, the data sheet at hand. Drained water goes to the foul drain where the sewerage company allows it, never to surface water.',
  uses: [],
  when: (job) => given('Water let out, as a share of the system', job.drainedShare),
  examples: [
    { says: 'a dose', ask: {}, appears: true },
    { says: 'a flush', ask: { flush: true }, appears: true },
  ],
}
