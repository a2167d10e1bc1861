import type { ToolRule } from '../tool-rule.ts'
import type { HoleAsk } from '../../takeoff/asks.ts'
import { given } from '../../../domain/derivation.ts'

/** The bit that each plug wants; for tile also a tile bit. */
export const drillBits: ToolRule<'hole'> = {
  id: 'drill-bits',
  per: 'hole',
  source: 'practice, no published source',
  says: 'The bit that each plug wants; for tile also a tile bit',
  uses: [],
  gives: (hole) => {
    const why = given(`Hole ${hole.holeId}: ${hole.fixing.name}`, hole.drillMm, 'mm', hole.fixing.source)
    if (hole.needsBoard) return [{ name: 'Pilot bit for timber, 3 mm', why }]
    const bit = bitFor(hole)
    return hole.wallFinish === 'tile'
      ? [
          { name: 'Tile bit, 4 mm, for the pilot', why },
          { name: `Tile bit, ${hole.drillMm} mm`, why },
          { name: bit, why },
        ]
      : [{ name: bit, why }]
  },
  examples: [
    { says: 'a plug of 8 mm', ask: {}, gives: ['Masonry bit, 8 mm'] },
    {
      says: 'a screw through tile into a stud',
      ask: {
        drillMm: 4,
        wallFinish: 'tile',
        fixing: { name: 'screw', intoStud: true, source: 'from memory' },
      },
      gives: ['Tile bit, 4 mm, for the pilot', 'Tile bit, 4 mm', 'Pilot bit for timber, 4 mm'],
    },
    { says: 'a backing board', ask: { needsBoard: true }, gives: ['Pilot bit for timber, 3 mm'] },
  ],
}

function bitFor({ fixing, drillMm }: HoleAsk): string {
  if (fixing.intoStud === true) return `Pilot bit for timber, ${drillMm} mm`
  return fixing.anchor === undefined ? `Masonry bit, ${drillMm} mm` : `Bit for board, ${drillMm} mm`
}
