import { lengthened, work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'
import { given } from '../../../domain/derivation.ts'
import { liftLimit, liftSettings } from '../crew-lift.ts'

/** Take off the old emitter and carry it out. */
export const takeOffOld: TaskRule<'swap'> = {
  id: 'take-off-old',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Take off the old emitter and carry it out',
  uses: ['labour.stairsRatio', ...liftSettings],
  gives: (swap, use) => {
    if (swap.oldName === null) return []
    const carried =
      swap.oldMassKg === null ? null : liftLimit(swap.oldMassKg, { stairs: swap.storey !== 0 }, use)
    const people = carried?.people ?? 1
    const stairs = 1 + Math.abs(swap.storey) * use.value('labour.stairsRatio')
    const done = work(
      'take-off',
      people * stairs,
      `${swap.oldName} comes off and is carried out, people x stairs.`,
      [
        given('People', people),
        given('Storeys up or down', Math.abs(swap.storey), undefined, 'survey'),
        use.why('labour.stairsRatio'),
        use.why('lift.onePersonKg'),
      ],
    )
    const reason = `${swap.oldName} is over what one person should lift: both give their time.`
    const storeys = `Storeys of stairs to carry it over: ${Math.abs(swap.storey)}.`
    return [
      {
        ...lengthened(done, 1, [
          { name: 'Two people to lift', how: 'times', factor: people, reason },
          { name: 'Stairs', how: 'times', factor: stairs, reason: storeys },
        ]),
        people,
      },
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
    {
      says: 'two people for 22 kg on stairs',
      ask: { oldName: 'Old panel', oldMassKg: 22, storey: 1 },
      gives: [['take-off', 2.5]],
    },
    { says: 'a bare wall', ask: {}, gives: [] },
  ],
}
