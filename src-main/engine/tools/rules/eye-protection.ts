import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Eye protection and dust mask. */
export const eyeProtection: ToolRule<'hole'> = {
  id: 'eye-protection',
  per: 'hole',
  source: 'practice, no published source',
  says: 'Eye protection and dust mask',
  uses: [],
  gives: (hole) => [
    { name: 'Eye protection and dust mask', why: given(`Hole ${hole.holeId}`, hole.drillMm, 'mm') },
  ],
  examples: [
    { says: 'any hole', ask: {}, gives: ['Eye protection and dust mask'] },
    { says: 'a hole in tile', ask: { wallFinish: 'tile' }, gives: ['Eye protection and dust mask'] },
  ],
}
