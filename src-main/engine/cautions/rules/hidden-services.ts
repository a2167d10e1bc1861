import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Look for hidden pipes and cables with a detector before drilling, isolate what cannot be ruled out, and wear eye protection and a dust mask. */
export const hiddenServices: CautionRule<'hole'> = {
  id: 'hidden-services',
  per: 'hole',
  source: 'BS 7671 522.6 for where cables may run',
  says: 'Look for hidden pipes and cables with a detector before drilling, isolate what cannot be ruled out, and wear eye protection and a dust mask.',
  uses: [],
  when: (hole) => given(`Hole ${hole.holeId} is drilled`, hole.drillMm, 'mm'),
  examples: [
    { says: 'every hole', ask: {}, appears: true },
    { says: 'a screw into a board is a hole too', ask: { needsBoard: true }, appears: true },
  ],
}
