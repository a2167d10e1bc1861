import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Isolating, draining and filling here are on the water side. */
export const gasAppliance: CautionRule<'job'> = {
  id: 'gas-appliance',
  per: 'job',
  source: 'hse.gov.uk: gas appliances are for registered engineers',
  says: 'Isolating, draining and filling here are on the water side. Work on the gas side of the boiler is for a registered gas engineer.',
  uses: [],
  when: (job) => given('Emitters on the system', job.swaps),
  examples: [
    { says: 'any wet system', ask: { swaps: 1 }, appears: true },
    { says: 'a frozen one as well', ask: { drain: 'freeze' }, appears: true },
  ],
}
