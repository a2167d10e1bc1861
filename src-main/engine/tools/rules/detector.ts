import type { ToolRule } from '../tool-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** A detector for pipes, cables and studs. */
export const detector: ToolRule<'hole'> = {
  id: 'detector',
  per: 'hole',
  source: 'practice, no published source',
  says: 'A detector for pipes, cables and studs',
  uses: [],
  gives: (hole) => [
    { name: 'Detector for pipes, cables and studs', why: given(`Hole ${hole.holeId}`, hole.drillMm, 'mm') },
  ],
  examples: [
    { says: 'any hole', ask: {}, gives: ['Detector for pipes, cables and studs'] },
    { says: 'a hole in tile', ask: { wallFinish: 'tile' }, gives: ['Detector for pipes, cables and studs'] },
  ],
}
