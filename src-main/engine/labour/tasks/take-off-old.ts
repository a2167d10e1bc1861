import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'
import { given } from '../../../domain/derivation.ts'

/** Take off the old emitter and carry it out. */
export const takeOffOld: TaskRule<'swap'> = {
  id: 'take-off-old',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Take off the old emitter and carry it out',
  uses: ['labour.stairsRatio', 'lift.onePersonKg'],
  gives: (swap, use) => {
    if (swap.oldName === null) return []
    const people = swap.oldMassKg !== null && swap.oldMassKg > use.value('lift.onePersonKg') ? 2 : 1
    const stairs = 1 + Math.abs(swap.storey) * use.value('labour.stairsRatio')
    return [
      work('take-off', people * stairs, `${swap.oldName} comes off and is carried out, people x stairs.`, [
        given('People', people),
        given('Storeys up or down', Math.abs(swap.storey), undefined, 'survey'),
        use.why('labour.stairsRatio'),
        use.why('lift.onePersonKg'),
      ]),
    ]
  },
  examples: [
    {
      says: 'one person, one storey up',
      ask: { oldName: 'Old panel', oldMassKg: 20, storey: 1 },
      gives: [['take-off', 1.25]],
    },
    {
      says: 'two people for a heavy one on the ground floor',
      ask: { oldName: 'Old panel', oldMassKg: 40, storey: 0 },
      gives: [['take-off', 2]],
    },
    { says: 'a bare wall', ask: {}, gives: [] },
  ],
}
