import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Fill, vent and dose, once a job. */
export const fillVentDose: TaskRule<'job'> = {
  id: 'fill-vent-dose',
  per: 'job',
  source: 'practice, no published source',
  says: 'Fill, vent and dose, once a job',
  uses: [],
  gives: () => [work('fill', 1, 'The system is filled, vented and dosed, once.')],
  examples: [
    { says: 'once a job', ask: {}, gives: [['fill', 1]] },
    { says: 'once, however many swaps', ask: { swaps: 9 }, gives: [['fill', 1]] },
  ],
}
