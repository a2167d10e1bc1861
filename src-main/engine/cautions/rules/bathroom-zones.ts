import type { CautionRule } from '../caution-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Room with a bath or shower: nothing electrical is touched in its zones; metal parts and bonding are a matter for a qualified electrician. */
export const bathroomZones: CautionRule<'swap'> = {
  id: 'bathroom-zones',
  per: 'swap',
  source: 'BS 7671 section 701',
  says: 'Room with a bath or shower: nothing electrical is touched in its zones; metal parts and bonding are a matter for a qualified electrician.',
  uses: [],
  when: (swap) =>
    swap.roomUse === 'bathroom' ? given('The room', swap.roomName, undefined, 'survey') : null,
  examples: [
    { says: 'a bathroom', ask: { roomUse: 'bathroom' }, appears: true },
    { says: 'a bedroom', ask: {}, appears: false },
  ],
}
