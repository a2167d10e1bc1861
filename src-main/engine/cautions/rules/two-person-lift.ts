import type { CautionRule } from '../caution-rule.ts'
import { because, given } from '../../../domain/derivation.ts'

/** This emitter is heavier than one person should lift: two people or a lifting aid. */
export const twoPersonLift: CautionRule<'swap'> = {
  id: 'two-person-lift',
  per: 'swap',
  source: 'HSE lifting filter: guidance, not a legal limit',
  says: 'This emitter is heavier than one person should lift: two people or a lifting aid.',
  uses: ['lift.onePersonKg'],
  when: (swap, use) => {
    const heaviestKg = Math.max(swap.emitterMassKg, swap.oldMassKg ?? 0)
    if (heaviestKg <= use.value('lift.onePersonKg')) return null
    return because(`The heavier emitter in the ${swap.roomName} is over the guideline.`, heaviestKg, {
      unit: 'kg',
      from: [
        given('New emitter, dry', swap.emitterMassKg, 'kg'),
        given('Old emitter', swap.oldMassKg ?? 'not known', 'kg', 'survey'),
        use.why('lift.onePersonKg'),
      ],
    })
  },
  examples: [
    { says: '38 kg', ask: { emitterMassKg: 38 }, appears: true },
    { says: 'a heavy old one', ask: { oldMassKg: 30 }, appears: true },
    { says: '18 kg', ask: { emitterMassKg: 18 }, appears: false },
  ],
}
