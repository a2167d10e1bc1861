import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Spanners for the valves. */
export const spanners: ToolRule<'side'> = {
  id: 'spanners',
  per: 'side',
  source: 'practice, no published source',
  says: 'Spanners for the valves',
  uses: [],
  gives: (side) => [
    {
      name: 'Adjustable spanners, two, and a radiator key',
      why: given(`Valve on the ${side.side}`, side.role),
    },
  ],
  examples: [
    { says: 'any side', ask: {}, gives: ['Adjustable spanners, two, and a radiator key'] },
    { says: 'a kept valve', ask: { role: 'kept' }, gives: ['Adjustable spanners, two, and a radiator key'] },
  ],
}
