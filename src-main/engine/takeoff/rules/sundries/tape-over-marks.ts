import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** Masking tape over the marks on tile. */
export const tapeOverMarks: Rule<'swap'> = {
  id: 'sundries/tape-over-marks',
  per: 'swap',
  source: 'fixandpaintguide.com: tape over the mark before drilling tile',
  says: 'Masking tape over the marks on tile',
  uses: [],
  gives: (swap) =>
    swap.wallFinish === 'tile'
      ? [
          need('sundry', { what: 'maskingTape' }, 1, {
            says: 'Tape over each mark keeps the bit from wandering on the glaze.',
            from: [given('Rolls', 1)],
          }),
        ]
      : [],
  examples: [
    { says: 'a tiled wall', ask: { wallFinish: 'tile' }, gives: [['sundry', 1]] },
    { says: 'a painted wall', ask: {}, gives: [] },
  ],
}
