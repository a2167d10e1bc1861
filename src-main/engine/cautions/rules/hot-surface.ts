import type { CautionRule } from '../caution-rule.ts'
import { because, given } from '../../../domain/derivation.ts'

/** A hot rail can burn people who do not pull away: guard it, or lower the flow temperature, where children or frail people live. */
export const hotSurface: CautionRule<'swap'> = {
  id: 'hot-surface',
  per: 'swap',
  source: 'from memory: surfaces above 43 degrees can burn people who do not pull away',
  says: 'A hot rail can burn people who do not pull away: guard it, or lower the flow temperature, where children or frail people live.',
  uses: ['lift.touchHotC'],
  when: (swap, use) => {
    if (swap.emitterKind !== 'towelRail' || swap.flowC < use.value('lift.touchHotC')) return null
    return because('A rail within reach runs hotter than the limit.', swap.flowC, {
      unit: 'C',
      from: [given('Flow temperature', swap.flowC, 'C', 'survey'), use.why('lift.touchHotC')],
    })
  },
  examples: [
    { says: 'a rail at 60 degrees', ask: { emitterKind: 'towelRail', flowC: 60 }, appears: true },
    { says: 'a rail at 40 degrees', ask: { emitterKind: 'towelRail', flowC: 40 }, appears: false },
    { says: 'a panel', ask: {}, appears: false },
  ],
}
