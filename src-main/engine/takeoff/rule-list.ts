// Generated from the files beside it by `npm run rules`.
import { elementTee } from './rules/electric/element-tee.ts'
import { element } from './rules/electric/element.ts'
import { newEmitter } from './rules/emitter/new-emitter.ts'
import { anchorEachHole } from './rules/fixings/anchor-each-hole.ts'
import { backingBoardScrews } from './rules/fixings/backing-board-screws.ts'
import { backingBoard } from './rules/fixings/backing-board.ts'
import { plugEachHole } from './rules/fixings/plug-each-hole.ts'
import { screwEachHole } from './rules/fixings/screw-each-hole.ts'
import { fillOldHoles } from './rules/making-good/fill-old-holes.ts'
import { sealOldTileHoles } from './rules/making-good/seal-old-tile-holes.ts'
import { sealRoundCollar } from './rules/making-good/seal-round-collar.ts'
import { touchUp } from './rules/making-good/touch-up.ts'
import { clips } from './rules/pipes/clips.ts'
import { collar } from './rules/pipes/collar.ts'
import { couplers } from './rules/pipes/couplers.ts'
import { elbows } from './rules/pipes/elbows.ts'
import { insulation } from './rules/pipes/insulation.ts'
import { newPipe } from './rules/pipes/new-pipe.ts'
import { tapeOnThread } from './rules/seal/tape-on-thread.ts'
import { dustSheets } from './rules/sundries/dust-sheets.ts'
import { rubbleSack } from './rules/sundries/rubble-sack.ts'
import { tapeOverMarks } from './rules/sundries/tape-over-marks.ts'
import { ventKey } from './rules/sundries/vent-key.ts'
import { wipes } from './rules/sundries/wipes.ts'
import { airVent } from './rules/valves/air-vent.ts'
import { blankPlug } from './rules/valves/blank-plug.ts'
import { insertInPlastic } from './rules/valves/insert-in-plastic.ts'
import { longerTail } from './rules/valves/longer-tail.ts'
import { reducerToValve } from './rules/valves/reducer-to-valve.ts'
import { valveEachSide } from './rules/valves/valve-each-side.ts'
import { cleaner } from './rules/water/cleaner.ts'
import { drainHoseJointing } from './rules/water/drain-hose-jointing.ts'
import { freezePacks } from './rules/water/freeze-packs.ts'
import { inhibitor } from './rules/water/inhibitor.ts'
import { isolatingCaps } from './rules/water/isolating-caps.ts'
import { testKit } from './rules/water/test-kit.ts'
import type { AnyRule } from './rule.ts'

export const rules: readonly AnyRule[] = [
  elementTee,
  element,
  newEmitter,
  anchorEachHole,
  backingBoardScrews,
  backingBoard,
  plugEachHole,
  screwEachHole,
  fillOldHoles,
  sealOldTileHoles,
  sealRoundCollar,
  touchUp,
  clips,
  collar,
  couplers,
  elbows,
  insulation,
  newPipe,
  tapeOnThread,
  dustSheets,
  rubbleSack,
  tapeOverMarks,
  ventKey,
  wipes,
  airVent,
  blankPlug,
  insertInPlastic,
  longerTail,
  reducerToValve,
  valveEachSide,
  cleaner,
  drainHoseJointing,
  freezePacks,
  inhibitor,
  isolatingCaps,
  testKit,
]
