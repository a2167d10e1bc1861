import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Paint to touch up where old brackets sat. */
export const touchUp: Rule<'swap'> = {
  id: 'making-good/touch-up',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Paint to touch up where old brackets sat',
  uses: ['making.touchUpM2'],
  gives: (swap, use) =>
    swap.oldBrackets === 0 || swap.wallFinish !== 'paint'
      ? []
      : [
          need('paint', { form: 'wallTouchUp' }, swap.oldBrackets * use.value('making.touchUpM2'), {
            says: 'The wall is touched up where each old bracket sat.',
            from: [given('Old brackets', swap.oldBrackets, undefined, 'survey'), use.why('making.touchUpM2')],
          }),
        ],
  examples: [
    { says: 'two brackets on a painted wall', ask: { oldBrackets: 2 }, gives: [['paint', 0.08]] },
    { says: 'a tiled wall takes no paint', ask: { oldBrackets: 2, wallFinish: 'tile' }, gives: [] },
  ],
}
