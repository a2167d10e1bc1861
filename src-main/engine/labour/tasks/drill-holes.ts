import { lengthened, work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'

/** Drill each hole by what the wall is. */
export const drillHoles: TaskRule<'hole'> = {
  id: 'drill-holes',
  per: 'hole',
  source: 'practice, no published source',
  says: 'Drill each hole by what the wall is',
  uses: ['labour.tileDrillRatio'],
  gives: (hole, use) => {
    const tile = hole.wallFinish === 'tile' ? 1 + use.value('labour.tileDrillRatio') : 1
    const from = hole.wallFinish === 'tile' ? [use.why('labour.tileDrillRatio')] : []
    if (hole.needsBoard || hole.fixing.intoStud === true)
      return [work('drill-stud', 1, `Hole ${hole.holeId} is screwed into timber.`)]
    const done =
      hole.fixing.anchor === undefined
        ? work('drill-masonry', tile, `Hole ${hole.holeId} is drilled and plugged.`, from)
        : work('drill-board', tile, `Hole ${hole.holeId} takes a board anchor.`, from)
    const reason = 'Tile is drilled slowly, without hammer, before the wall behind it.'
    return [lengthened(done, 1, [{ name: 'Tile', how: 'times', factor: tile, reason }])]
  },
  examples: [
    { says: 'a plugged hole', ask: {}, gives: [['drill-masonry', 1]] },
    { says: 'through tile takes twice as long', ask: { wallFinish: 'tile' }, gives: [['drill-masonry', 2]] },
    { says: 'a screw into a board', ask: { needsBoard: true }, gives: [['drill-stud', 1]] },
  ],
}
