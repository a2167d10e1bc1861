import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Unpack and dress each new emitter. */
export const buildAndDress: TaskRule<'swap'> = {
  id: 'build-and-dress',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Unpack and dress each new emitter',
  uses: [],
  gives: (swap) => [work('dress', 1, `${swap.emitterName} is unpacked and dressed.`)],
  examples: [
    { says: 'once a swap', ask: {}, gives: [['dress', 1]] },
    { says: 'a heavy one as well', ask: { emitterMassKg: 60 }, gives: [['dress', 1]] },
  ],
}
