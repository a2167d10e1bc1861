import { describe } from 'vitest'
import { given } from '../../../../../src-main/domain/derivation.ts'
import { anchorEachHole } from '../../../../../src-main/engine/takeoff/rules/fixings/anchor-each-hole.ts'
import { backingBoardScrews } from '../../../../../src-main/engine/takeoff/rules/fixings/backing-board-screws.ts'
import { backingBoard } from '../../../../../src-main/engine/takeoff/rules/fixings/backing-board.ts'
import { plugEachHole } from '../../../../../src-main/engine/takeoff/rules/fixings/plug-each-hole.ts'
import { screwEachHole } from '../../../../../src-main/engine/takeoff/rules/fixings/screw-each-hole.ts'
import { fillOldHoles } from '../../../../../src-main/engine/takeoff/rules/making-good/fill-old-holes.ts'
import { sealOldTileHoles } from '../../../../../src-main/engine/takeoff/rules/making-good/seal-old-tile-holes.ts'
import { sealRoundCollar } from '../../../../../src-main/engine/takeoff/rules/making-good/seal-round-collar.ts'
import { touchUp } from '../../../../../src-main/engine/takeoff/rules/making-good/touch-up.ts'
import { typical } from '../../../../typical-asks.ts'
import { row, setting } from './rows-for-tests.ts'

const { pipe } = typical.side
const anchored = { name: 'spring toggle', anchor: { bitMm: 13 }, source: 'a leaflet' }

describe('what each hole is fixed with', () => {
  row(
    'the plug of the bit that the fixing names, in the hole that was set out',
    [plugEachHole, { holeId: 'B2', bracket: 'right bracket', drillMm: 8, depthMm: 55 }],
    [
      {
        kind: 'plug',
        spec: { bitMm: 8, lengthMm: 50 },
        quantity: 1,
        unit: 'each',
        says: 'Hole B2 of the right bracket: wall plug 8 x 50.',
        from: [given('Bit', 8, 'mm', 'from memory'), given('Depth', 55, 'mm', 'from memory')],
      },
    ],
  )
  row('no plug where the fixing has none', [plugEachHole, { fixing: anchored }], [])
  row('no plug behind a backing board', [plugEachHole, { needsBoard: true }], [])
  row(
    'an anchor of the bit that the fixing names',
    [anchorEachHole, { drillMm: 13, fixing: anchored }],
    [
      {
        kind: 'anchor',
        spec: { bitMm: 13 },
        quantity: 1,
        unit: 'each',
        says: 'Hole A1 of the left bracket: spring toggle.',
        from: [given('Bit', 13, 'mm', 'a leaflet')],
      },
    ],
  )
  row('no anchor behind a backing board', [anchorEachHole, { fixing: anchored, needsBoard: true }], [])
  row('no anchor where the wall takes plugs', [anchorEachHole, {}], [])
  row(
    "the fixing's own screw",
    [screwEachHole, {}],
    [
      {
        kind: 'screw',
        spec: { diameterMm: 6, lengthMm: 70 },
        quantity: 1,
        unit: 'each',
        says: 'Hole A1 of the left bracket: wall plug 8 x 50.',
        from: [given('Screw', '6 x 70 mm', undefined, 'from memory')],
      },
    ],
  )
  row(
    'a short screw into a backing board, even where the fixing brings none (5 x 30 mm: practice, no published source)',
    [screwEachHole, { fixing: anchored, needsBoard: true }],
    [
      {
        kind: 'screw',
        spec: { diameterMm: 5, lengthMm: 30 },
        quantity: 1,
        unit: 'each',
        says: 'Hole A1 of the left bracket: into the backing board.',
        from: [given('Screw', '5 x 30 mm', undefined, 'a leaflet')],
      },
    ],
  )
  row('no screw beside an anchor that has a bolt', [screwEachHole, { fixing: anchored }], [])
})

describe('a backing board', () => {
  row(
    'two rows of 1.8 m are 3.6 m, at least as thick and high as the firm asks',
    [backingBoard, { needsBoard: true, boardMm: 1800 }],
    [
      {
        kind: 'board',
        spec: { thicknessMm: { atLeast: 18 }, heightMm: { atLeast: 150 } },
        quantity: 3.6,
        unit: 'm',
        says: 'No fixing in this board carries the load: two rows of backing board, stud to stud.',
        from: [
          given('Rows of board, upper and lower brackets', 2),
          given('Length of one row, stud to stud', 1800, 'mm'),
          setting('fixing.boardThicknessMm'),
          setting('fixing.boardHeightMm'),
        ],
      },
    ],
  )
  row('none where the wall holds', [backingBoard, { boardMm: 1800 }], [])
  row(
    '1.8 m on studs at 600 mm ends on both sides on a stud: 4 studs x 2 rows x 2 screws = 16',
    [backingBoardScrews, { needsBoard: true, boardMm: 1800, studSpacingMm: 600 }],
    [
      {
        kind: 'screw',
        spec: { diameterMm: 5, lengthMm: 70 },
        quantity: 16,
        unit: 'each',
        says: 'Each row of backing board is screwed twice into every stud it crosses.',
        from: [
          given('Studs crossed', 4),
          given('Stud spacing', 600, 'mm', 'survey'),
          given('Rows of board', 2),
          given('Screws a stud and row', 2),
        ],
      },
    ],
  )
  row('no screws without a board', [backingBoardScrews, { boardMm: 1800 }], [])
})

describe('what the old fixings leave behind', () => {
  const oldHoles = { count: 3, diameterMm: 10, depthMm: 40 }
  row(
    'three holes of 10 x 40 mm hold 3 x pi x 5 x 5 x 40 / 1000 = 9.424778 ml; a quarter more is 11.780972',
    [fillOldHoles, { oldHoles }],
    [
      {
        kind: 'filler',
        spec: { forWall: 'plaster' },
        quantity: 11.780972,
        unit: 'ml',
        says: 'Holes x pi/4 x diameter squared x depth x (1 + waste).',
        from: [
          given('Old holes', 3, undefined, 'survey'),
          given('Diameter', 10, 'mm', 'survey'),
          given('Depth', 40, 'mm', 'survey'),
          setting('making.fillerWasteRatio'),
        ],
      },
    ],
  )
  row('no filler for no hole', [fillOldHoles, { oldHoles: { ...oldHoles, count: 0 } }], [])
  row('no filler in tile', [fillOldHoles, { oldHoles, wallFinish: 'tile' }], [])
  row('no filler where nothing hung', [fillOldHoles, {}], [])
  row(
    'three holes in tile x 3 ml = 9 ml',
    [sealOldTileHoles, { oldHoles, wallFinish: 'tile' }],
    [
      {
        kind: 'sealant',
        spec: { form: 'sanitarySilicone' },
        quantity: 9,
        unit: 'ml',
        says: 'Old holes in tile are closed with sealant.',
        from: [given('Old holes', 3, undefined, 'survey'), setting('making.tileSealantMl')],
      },
    ],
  )
  row('none for no hole', [sealOldTileHoles, { oldHoles: { ...oldHoles, count: 0 }, wallFinish: 'tile' }], [])
  row('none in plaster', [sealOldTileHoles, { oldHoles }], [])
  row('none on a bare tiled wall', [sealOldTileHoles, { wallFinish: 'tile' }], [])
  row(
    'round the collar of a pipe out of a tiled wall',
    [sealRoundCollar, { side: 'right', wallFinish: 'tile', pipe: { ...pipe, from: 'wall' } }],
    [
      {
        kind: 'sealant',
        spec: { form: 'sanitarySilicone' },
        quantity: 6,
        unit: 'ml',
        says: 'Sealant round the right collar keeps water out of the tiled wall.',
        from: [setting('making.collarSealantMl')],
      },
    ],
  )
  row('none round a pipe out of the floor', [sealRoundCollar, { wallFinish: 'tile' }], [])
  row('none on a painted wall', [sealRoundCollar, { pipe: { ...pipe, from: 'wall' } }], [])
  row(
    'four old brackets x 0.05 m2 of paint = 0.2 m2',
    [touchUp, { oldBrackets: 4 }],
    [
      {
        kind: 'paint',
        spec: { form: 'wallTouchUp' },
        quantity: 0.2,
        unit: 'm2',
        says: 'The wall is touched up where each old bracket sat.',
        from: [given('Old brackets', 4, undefined, 'survey'), setting('making.touchUpM2')],
      },
    ],
  )
  row('no paint where no bracket sat', [touchUp, {}], [])
  row('no paint on tile', [touchUp, { oldBrackets: 4, wallFinish: 'tile' }], [])
})
