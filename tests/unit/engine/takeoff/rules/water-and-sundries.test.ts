import { describe } from 'vitest'
import { given } from '../../../../../src-main/domain/derivation.ts'
import { elementTee } from '../../../../../src-main/engine/takeoff/rules/electric/element-tee.ts'
import { element } from '../../../../../src-main/engine/takeoff/rules/electric/element.ts'
import { newEmitter } from '../../../../../src-main/engine/takeoff/rules/emitter/new-emitter.ts'
import { tapeOnThread } from '../../../../../src-main/engine/takeoff/rules/seal/tape-on-thread.ts'
import { dustSheets } from '../../../../../src-main/engine/takeoff/rules/sundries/dust-sheets.ts'
import { rubbleSack } from '../../../../../src-main/engine/takeoff/rules/sundries/rubble-sack.ts'
import { tapeOverMarks } from '../../../../../src-main/engine/takeoff/rules/sundries/tape-over-marks.ts'
import { ventKey } from '../../../../../src-main/engine/takeoff/rules/sundries/vent-key.ts'
import { wipes } from '../../../../../src-main/engine/takeoff/rules/sundries/wipes.ts'
import { drainHoseJointing } from '../../../../../src-main/engine/takeoff/rules/water/drain-hose-jointing.ts'
import { freezePacks } from '../../../../../src-main/engine/takeoff/rules/water/freeze-packs.ts'
import { isolatingCaps } from '../../../../../src-main/engine/takeoff/rules/water/isolating-caps.ts'
import { testKit } from '../../../../../src-main/engine/takeoff/rules/water/test-kit.ts'
import { row, setting } from './rows-for-tests.ts'
import type { Wanted } from './rows-for-tests.ts'

/** A sundry thing, counted. */
const sundry = (spec: Wanted['spec'], more: Pick<Wanted, 'quantity' | 'says' | 'from'>): Wanted => ({
  kind: 'sundry',
  spec,
  unit: 'each',
  ...more,
})

describe('the emitter and its element', () => {
  row(
    'the emitter that was chosen, by its own id',
    [newEmitter, { emitterId: 'tall-rail', emitterName: 'Tall rail', roomName: 'Bathroom' }],
    [
      {
        kind: 'emitter',
        spec: { itemId: 'tall-rail' },
        quantity: 1,
        unit: 'each',
        says: 'Tall rail goes up in the Bathroom.',
        from: [given('Emitters in this swap', 1)],
      },
    ],
  )
  row(
    'an element of the watts asked for and the thread of the tapping, to be connected by another trade',
    [element, { elementW: 400 }],
    [
      {
        kind: 'element',
        spec: { watts: 400, thread: 'G1/2' },
        quantity: 1,
        unit: 'each',
        says: 'An element of 400 W; to be connected by a qualified electrician, which is not in this price.',
        from: [given('Element', 400, 'W', 'survey')],
      },
    ],
  )
  row('no element where none was asked for', [element, {}], [])
  row(
    'one T-piece of the thread of the tapping goes with it',
    [elementTee, { elementW: 400, tappingThread: 'G3/4' }],
    [
      sundry(
        { what: 'elementTee', thread: 'G3/4' },
        {
          quantity: 1,
          says: 'The element and a valve share one tapping through a T-piece.',
          from: [given('Elements', 1)],
        },
      ),
    ],
  )
  row('no T-piece without', [elementTee, {}], [])
})

describe('tape on threads', () => {
  row(
    'ten turns round G 3/4 (26.4414 mm: 1.041 in of ISO 228) and half as much again: 10 x pi x 26.4414 x 1.5 = 1246.0 mm',
    [tapeOnThread, { at: 'top right', holds: 'blank', thread: 'G3/4' }],
    [
      {
        kind: 'seal',
        spec: { form: 'tape' },
        quantity: 1.2460216,
        unit: 'm',
        says: 'Tape on the blank at the top right: turns x pi x thread diameter x (1 + overlap).',
        from: [
          setting('seal.tapeTurnsCount'),
          given('Major diameter of G3/4', 1.041 * 25.4, 'mm', 'ISO 228, as tabulated by threadchart.net'),
          setting('seal.tapeOverlapRatio'),
        ],
      },
    ],
  )
  row('none on an O-ring', [tapeOnThread, { sealing: 'oRing' }], [])
  row('none where the works made the joint', [tapeOnThread, { factoryFitted: true }], [])
})

describe('what each room and job takes once', () => {
  row(
    'as many dust sheets a room as the firm lays',
    [dustSheets, { floor: 'timber', roomName: 'Study', swaps: 3 }],
    [
      sundry(
        { what: 'dustSheet' },
        {
          quantity: 2,
          says: 'The timber floor of the Study is covered.',
          from: [setting('sundry.dustSheetsPerRoomCount')],
        },
      ),
    ],
  )
  row(
    'one rubble sack a room',
    [rubbleSack, { roomName: 'Study', swaps: 3 }],
    [
      sundry(
        { what: 'rubbleSack' },
        {
          quantity: 1,
          says: 'Dust and packing from the Study go into a sack.',
          from: [given('Rooms', 1)],
        },
      ),
    ],
  )
  row(
    'a roll of masking tape for a tiled wall',
    [tapeOverMarks, { wallFinish: 'tile' }],
    [
      sundry(
        { what: 'maskingTape' },
        {
          quantity: 1,
          says: 'Tape over each mark keeps the bit from wandering on the glaze.',
          from: [given('Rolls', 1)],
        },
      ),
    ],
  )
  row('no masking tape on paint', [tapeOverMarks, {}], [])
  row(
    'a key for a vent',
    [ventKey, { roomName: 'Study' }],
    [
      sundry(
        { what: 'ventKey' },
        {
          quantity: 1,
          says: 'A key for the vent stays with the Study.',
          from: [given('Vents', 1)],
        },
      ),
    ],
  )
  row('no key without a vent', [ventKey, { hasVent: false }], [])
  row(
    'one pack of wipes a job',
    [wipes, { swaps: 4 }],
    [
      sundry(
        { what: 'wipes' },
        {
          quantity: 1,
          says: 'Hands and finish are wiped clean: one pack a job.',
          from: [given('Packs', 1)],
        },
      ),
    ],
  )
  row(
    'one test of the inhibitor a job',
    [testKit, { swaps: 4 }],
    [
      {
        kind: 'testKit',
        spec: { tests: 'inhibitor' },
        quantity: 1,
        unit: 'each',
        says: 'The inhibitor level is checked after dosing.',
        from: [given('Tests', 1)],
      },
    ],
  )
})

describe('how the water is dealt with', () => {
  const jointing = sundry(
    { what: 'drainHoseJointing' },
    {
      quantity: 1,
      says: 'The drain hose is jointed to the drain cock once a job.',
      from: [given('Times drained', 1)],
    },
  )
  row('the hose is jointed when all is drained', [drainHoseJointing, { drain: 'wholeSystem' }], [jointing])
  row('and when a part is', [drainHoseJointing, { drain: 'isolatedPart' }], [jointing])
  row('not when pipes are frozen', [drainHoseJointing, { drain: 'freeze' }], [])
  row(
    'freezing takes a pack for each of the two pipes',
    [freezePacks, { drain: 'freeze' }],
    [
      sundry(
        { what: 'pipeFreezePack' },
        {
          quantity: 2,
          says: 'Both pipes are frozen while the emitter is changed.',
          from: [given('Pipes', 2)],
        },
      ),
    ],
  )
  row('no pack where a part is isolated', [freezePacks, { drain: 'isolatedPart' }], [])
  row('no pack where all is drained', [freezePacks, {}], [])
  row(
    'isolating a part takes a cap of the thread for each of the two open ends',
    [isolatingCaps, { drain: 'isolatedPart', tappingThread: 'G3/4' }],
    [
      sundry(
        { what: 'isolatingCap', thread: 'G3/4' },
        {
          quantity: 2,
          says: 'Both open ends are capped while the emitter is off.',
          from: [given('Pipes', 2)],
        },
      ),
    ],
  )
  row('no cap where pipes are frozen', [isolatingCaps, { drain: 'freeze' }], [])
  row('no cap where all is drained', [isolatingCaps, {}], [])
})
