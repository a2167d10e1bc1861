import { describe } from 'vitest'
import { given } from '../../../../../src-main/domain/derivation.ts'
import { airVent } from '../../../../../src-main/engine/takeoff/rules/valves/air-vent.ts'
import { blankPlug } from '../../../../../src-main/engine/takeoff/rules/valves/blank-plug.ts'
import { row } from './rows-for-tests.ts'

describe('vents and blanks', () => {
  const of = { thread: 'G1/2', sealing: 'oRing', finish: 'white' } as const
  row(
    'a vent of the thread, sealing and finish of its tapping',
    [airVent, { at: 'top right', holds: 'vent', ...of }],
    [
      {
        kind: 'vent',
        spec: of,
        quantity: 1,
        unit: 'each',
        says: 'An air vent closes the tapping at the top right.',
        from: [given('Tapping at the top right', 'G1/2')],
      },
    ],
  )
  row('no vent in a tapping for a blank', [airVent, { holds: 'blank' }], [])
  row('no vent where the works fitted one', [airVent, { holds: 'vent', factoryFitted: true }], [])
  row(
    'a blank of the thread, sealing and finish of its tapping',
    [blankPlug, { at: 'top left', holds: 'blank', ...of }],
    [
      {
        kind: 'blank',
        spec: of,
        quantity: 1,
        unit: 'each',
        says: 'A blank plug closes the tapping at the top left.',
        from: [given('Tapping at the top left', 'G1/2')],
      },
    ],
  )
  row('no blank in a tapping for a vent', [blankPlug, { holds: 'vent' }], [])
  row('no blank where the works fitted one', [blankPlug, { holds: 'blank', factoryFitted: true }], [])
})
