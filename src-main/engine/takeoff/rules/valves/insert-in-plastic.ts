import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A pipe insert in every cut end of plastic pipe. */
export const insertInPlastic: Rule<'side'> = {
  id: 'valves/insert-in-plastic',
  per: 'side',
  source: 'practice, no published source',
  says: 'A pipe insert in every cut end of plastic pipe',
  uses: [],
  gives: (side) => {
    if (side.pipe.material !== 'plastic') return []
    const valveEnds = side.role === 'kept' ? 0 : 1
    const ends = valveEnds + side.couplers * 2 + side.elbows * 2
    if (ends === 0) return []
    return [
      need('pipeFitting', { shape: 'insert', joint: 'none', outsideMm: side.pipe.outsideMm }, ends, {
        says: `Every cut end of plastic pipe on the ${side.side} takes an insert.`,
        from: [
          given('Ends at the valve', valveEnds),
          given('Couplers, two ends each', side.couplers),
          given('Elbows, two ends each', side.elbows),
        ],
      }),
    ]
  },
  examples: [
    {
      says: 'plastic into a valve takes one',
      ask: { pipe: { from: 'floor', material: 'plastic', outsideMm: 15, coldVoidMm: 0 } },
      gives: [['pipeFitting', 1]],
    },
    { says: 'copper takes none', ask: {}, gives: [] },
  ],
}
