import type { CautionRule } from '../caution-rule.ts'
import { because, given } from '../../../domain/derivation.ts'
import { hangingCrew, liftLimit, liftSettings } from '../../labour/crew-lift.ts'

/** This emitter is heavier than one person should lift: two people or a lifting aid. */
export const twoPersonLift: CautionRule<'swap'> = {
  id: 'two-person-lift',
  per: 'swap',
  source: 'HSE lifting filter: guidance, not a legal limit',
  says: 'This emitter is heavier than one person should lift: two people or a lifting aid.',
  uses: liftSettings,
  when: (swap, use) => {
    const hung = hangingCrew(swap, use)
    const old = liftLimit(swap.oldMassKg ?? 0, { stairs: swap.storey !== 0 }, use)
    if (hung.people === 1 && old.people === 1) return null
    const heaviestKg = Math.max(swap.emitterMassKg, swap.oldMassKg ?? 0)
    return because(
      `An emitter in the ${swap.roomName} is over what one person should lift there.`,
      heaviestKg,
      {
        unit: 'kg',
        from: [
          ...hung.whys,
          swap.oldMassKg === null
            ? given('Mass of the old emitter', 'not known', undefined, 'survey')
            : old.why,
        ],
      },
    )
  },
  examples: [
    { says: '38 kg', ask: { emitterMassKg: 38 }, appears: true },
    { says: 'a heavy old one', ask: { oldMassKg: 30 }, appears: true },
    { says: '22 kg up the stairs', ask: { emitterMassKg: 22, storey: 1 }, appears: true },
    { says: '18 kg', ask: { emitterMassKg: 18 }, appears: false },
  ],
}
