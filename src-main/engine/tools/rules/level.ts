import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Level, tape and pencil for setting out. */
export const level: ToolRule<'swap'> = {
  id: 'level',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Level, tape and pencil for setting out',
  uses: [],
  gives: (swap) => [
    {
      name: 'Spirit level, tape measure and pencil',
      why: given(`${swap.emitterName}: brackets`, swap.brackets),
    },
  ],
  examples: [
    { says: 'any swap', ask: {}, gives: ['Spirit level, tape measure and pencil'] },
    { says: 'with three brackets', ask: { brackets: 3 }, gives: ['Spirit level, tape measure and pencil'] },
  ],
}
