import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A reducer where the pipe is larger than the valve takes. */
export const reducerToValve: Rule<'side'> = {
  id: 'valves/reducer-to-valve',
  per: 'side',
  source: 'practice, no published source',
  says: 'A reducer where the pipe is larger than the valve takes',
  uses: [],
  gives: (side) =>
    side.pipe.outsideMm > 15 && side.role !== 'kept'
      ? [
          need(
            'pipeFitting',
            { shape: 'reducer', joint: 'compression', outsideMm: side.pipe.outsideMm, toMm: 15 },
            1,
            {
              says: `The ${side.side} pipe is ${side.pipe.outsideMm} mm and the valve takes 15 mm.`,
              from: [given(`Pipe on the ${side.side}`, side.pipe.outsideMm, 'mm', 'survey')],
            },
          ),
        ]
      : [],
  examples: [
    {
      says: 'a 22 mm pipe is brought down to 15',
      ask: { pipe: { from: 'floor', material: 'copper', outsideMm: 22, coldVoidMm: 0 } },
      gives: [['pipeFitting', 1]],
    },
    { says: 'a 15 mm pipe needs none', ask: {}, gives: [] },
  ],
}
