// Generated from the files beside it by `npm run rules`.
import { detector } from './rules/detector.ts'
import { drainGear } from './rules/drain-gear.ts'
import { drillBits } from './rules/drill-bits.ts'
import { eyeProtection } from './rules/eye-protection.ts'
import { gloves } from './rules/gloves.ts'
import { heatMat } from './rules/heat-mat.ts'
import { level } from './rules/level.ts'
import { pipeCutter } from './rules/pipe-cutter.ts'
import { spanners } from './rules/spanners.ts'
import type { AnyToolRule } from './tool-rule.ts'

export const toolRules: readonly AnyToolRule[] = [
  detector,
  drainGear,
  drillBits,
  eyeProtection,
  gloves,
  heatMat,
  level,
  pipeCutter,
  spanners,
]
