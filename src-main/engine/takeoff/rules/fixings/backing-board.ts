import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'

/** A board across the studs, for each row of brackets, where no fixing in the board itself holds the load. */
export const backingBoard: Rule<'swap'> = {
  id: 'fixings/backing-board',
  per: 'swap',
  source: 'practice, no published source',
  says: 'A board across the studs, for each row of brackets, where no fixing in the board itself holds the load',
  uses: ['fixing.boardThicknessMm', 'fixing.boardHeightMm'],
  gives: (swap, use) => {
    if (!swap.needsBoard) return []
    const rows = 2
    return [
      need(
        'board',
        {
          thicknessMm: { atLeast: use.value('fixing.boardThicknessMm') },
          heightMm: { atLeast: use.value('fixing.boardHeightMm') },
        },
        (rows * swap.boardMm) / 1000,
        {
          says: 'No fixing in this board carries the load: two rows of backing board, stud to stud.',
          from: [
            given('Rows of board, upper and lower brackets', rows),
            given('Length of one row, stud to stud', swap.boardMm, 'mm'),
            use.why('fixing.boardThicknessMm'),
            use.why('fixing.boardHeightMm'),
          ],
        },
      ),
    ]
  },
  examples: [
    {
      says: 'two rows of 1.2 m make 2.4 m',
      ask: { needsBoard: true, boardMm: 1200 },
      gives: [['board', 2.4]],
    },
    { says: 'a wall that holds needs none', ask: {}, gives: [] },
  ],
}
