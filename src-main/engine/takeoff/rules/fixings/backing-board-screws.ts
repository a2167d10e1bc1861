import { need } from '../../rule.ts'
import type { Rule } from '../../rule.ts'
import { given } from '../../../../domain/derivation.ts'
import { studScrew } from '../../board-screws.ts'

/** Two screws into each stud that a backing board crosses. */
export const backingBoardScrews: Rule<'swap'> = {
  id: 'fixings/backing-board-screws',
  per: 'swap',
  source: 'practice, no published source',
  says: 'Two screws into each stud that a backing board crosses',
  uses: [],
  gives: (swap) => {
    if (!swap.needsBoard) return []
    const studs = Math.floor(swap.boardMm / swap.studSpacingMm) + 1
    const screws = studs * 2 * 2
    return [
      need('screw', { diameterMm: studScrew.diameterMm, lengthMm: studScrew.lengthMm }, screws, {
        says: 'Each row of backing board is screwed twice into every stud it crosses.',
        from: [
          given('Studs crossed', studs),
          given('Stud spacing', swap.studSpacingMm, 'mm', 'survey'),
          given('Rows of board', 2),
          given('Screws a stud and row', 2),
        ],
      }),
    ]
  },
  examples: [
    {
      says: 'a 1.2 m board on studs at 400 crosses four',
      ask: { needsBoard: true, boardMm: 1200 },
      gives: [['screw', 16]],
    },
    { says: 'no board, no screws', ask: {}, gives: [] },
  ],
}
