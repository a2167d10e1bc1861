import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'
import { valveBody } from '../../valve-body.ts'

/** A new valve at each pipe, unless the survey says keep. */
export const valveEachSide: Rule<'side'> = {
  id: 'valves/valve-each-side',
  per: 'side',
  source: 'practice, no published source: new valves with a new emitter',
  says: 'A new valve at each pipe, unless the survey says keep',
  uses: [],
  gives: (side) => {
    if (side.role === 'kept') return []
    const body = valveBody(side)
    const pipeMm = Math.min(side.pipe.outsideMm, 15)
    return [
      need('valve', { role: side.role, body, pipeMm, thread: side.thread, finish: side.finish }, 1, {
        says: `${body === 'angled' ? 'An' : 'A'} ${body} ${side.role} valve on the ${side.side}: ${side.roleBecause}.`,
        from: [
          given(
            `Pipe on the ${side.side}: comes from the ${side.pipe.from}`,
            side.pipe.outsideMm,
            'mm',
            'survey',
          ),
          given(
            `The emitter's tapping points ${side.tappingFaces === 'down' ? 'down' : 'sideways'}`,
            side.thread,
          ),
        ],
      }),
    ]
  },
  examples: [
    {
      says: 'a floor pipe to a side tapping takes an angled valve',
      ask: { role: 'lockshield' },
      gives: [['valve', 1]],
    },
    { says: 'a kept valve asks for nothing', ask: { role: 'kept' }, gives: [] },
  ],
}
