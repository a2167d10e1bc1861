// Generated from the files beside it by `npm run rules`.
import { alterPipe } from './tasks/alter-pipe.ts'
import { fixBackingBoard } from './tasks/backing-board.ts'
import { balance } from './tasks/balance.ts'
import { buildAndDress } from './tasks/build-and-dress.ts'
import { clearUp } from './tasks/clear-up.ts'
import { drillHoles } from './tasks/drill-holes.ts'
import { explain } from './tasks/explain.ts'
import { fillVentDose } from './tasks/fill-vent-dose.ts'
import { flush } from './tasks/flush.ts'
import { freezePipes } from './tasks/freeze-pipes.ts'
import { hang } from './tasks/hang.ts'
import { isolateAndDrain } from './tasks/isolate-and-drain.ts'
import { leakCheck } from './tasks/leak-check.ts'
import { makeGoodHoles } from './tasks/make-good-holes.ts'
import { setOutBrackets } from './tasks/set-out-brackets.ts'
import { setUp } from './tasks/set-up.ts'
import { takeOffOld } from './tasks/take-off-old.ts'
import { travel } from './tasks/travel.ts'
import { fitValves } from './tasks/valves.ts'
import { ventAndBlank } from './tasks/vent-and-blank.ts'
import type { AnyTaskRule } from './task-rule.ts'

export const taskRules: readonly AnyTaskRule[] = [
  alterPipe,
  fixBackingBoard,
  balance,
  buildAndDress,
  clearUp,
  drillHoles,
  explain,
  fillVentDose,
  flush,
  freezePipes,
  hang,
  isolateAndDrain,
  leakCheck,
  makeGoodHoles,
  setOutBrackets,
  setUp,
  takeOffOld,
  travel,
  fitValves,
  ventAndBlank,
]
