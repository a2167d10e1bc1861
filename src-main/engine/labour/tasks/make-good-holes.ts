import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Fill and dress each old hole. */
export const makeGoodHoles: TaskRule<'swap'> = {
  id: 'make-good-holes',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Fill and dress each old hole',
  uses: [],
  gives: (swap) =>
    swap.oldHoles === null || swap.oldHoles.count === 0
      ? []
      : [work('make-good-hole', swap.oldHoles.count, 'Each old hole is filled and dressed.')],
  examples: [
    {
      says: 'four holes',
      ask: { oldHoles: { count: 4, diameterMm: 8, depthMm: 50 } },
      gives: [['make-good-hole', 4]],
    },
    { says: 'a bare wall', ask: {}, gives: [] },
  ],
}
