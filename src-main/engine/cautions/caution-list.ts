// Generated from the files beside it by `npm run rules`.
import { asbestos } from './rules/asbestos.ts'
import { bathroomZones } from './rules/bathroom-zones.ts'
import { chemicals } from './rules/chemicals.ts'
import { elementElectrician } from './rules/element-electrician.ts'
import { fillingLoop } from './rules/filling-loop.ts'
import { frailPeople } from './rules/frail-people.ts'
import { gasAppliance } from './rules/gas-appliance.ts'
import { hiddenServices } from './rules/hidden-services.ts'
import { hotSurface } from './rules/hot-surface.ts'
import { hotWork } from './rules/hot-work.ts'
import { pressureTest } from './rules/pressure-test.ts'
import { systemHot } from './rules/system-hot.ts'
import { tileDust } from './rules/tile-dust.ts'
import { twoPersonLift } from './rules/two-person-lift.ts'
import type { AnyCautionRule } from './caution-rule.ts'

export const cautionRules: readonly AnyCautionRule[] = [
  asbestos,
  bathroomZones,
  chemicals,
  elementElectrician,
  fillingLoop,
  frailPeople,
  gasAppliance,
  hiddenServices,
  hotSurface,
  hotWork,
  pressureTest,
  systemHot,
  tileDust,
  twoPersonLift,
]
