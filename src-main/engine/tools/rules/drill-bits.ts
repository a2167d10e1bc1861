import type { ToolRule } from '../tool-rule.ts'
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
    if (hole.fixing.intoStud === true) return [{ name: `Pilot bit for timber, ${hole.drillMm} mm`, why }]
    const bit =
      hole.fixing.anchor === undefined
        ? `Masonry bit, ${hole.drillMm} mm`
        : `Bit for board, ${hole.drillMm} mm`
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
    { says: 'a backing board', ask: { needsBoard: true }, gives: ['Pilot bit for timber, 3 mm'] },
  ],
}
