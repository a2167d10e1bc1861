import { describe } from 'vitest'
import { given } from '../../../../../src-main/domain/derivation.ts'
import { clips } from '../../../../../src-main/engine/takeoff/rules/pipes/clips.ts'
import { collar } from '../../../../../src-main/engine/takeoff/rules/pipes/collar.ts'
import { couplers } from '../../../../../src-main/engine/takeoff/rules/pipes/couplers.ts'
import { elbows } from '../../../../../src-main/engine/takeoff/rules/pipes/elbows.ts'
import { insulation } from '../../../../../src-main/engine/takeoff/rules/pipes/insulation.ts'
import { newPipe } from '../../../../../src-main/engine/takeoff/rules/pipes/new-pipe.ts'
import { insertInPlastic } from '../../../../../src-main/engine/takeoff/rules/valves/insert-in-plastic.ts'
import { longerTail } from '../../../../../src-main/engine/takeoff/rules/valves/longer-tail.ts'
import { reducerToValve } from '../../../../../src-main/engine/takeoff/rules/valves/reducer-to-valve.ts'
import { valveEachSide } from '../../../../../src-main/engine/takeoff/rules/valves/valve-each-side.ts'
import { typical } from '../../../../typical-asks.ts'
import { row, setting } from './rows-for-tests.ts'

const offsetWhy = given('The pipe stands off its valve', 240, 'mm')
const { pipe } = typical.side
const repiped = { side: 'right', remedy: 'repipe', offsetWhy, newPipeMm: 900 } as const
const plastic = { ...pipe, material: 'plastic', outsideMm: 22 } as const
const run = given('Length of new pipe', 900, 'mm')

describe('new pipe', () => {
  row(
    '900 mm of copper are 0.9 m, in one piece',
    [newPipe, repiped],
    [
      {
        kind: 'pipe',
        spec: { material: 'copper', outsideMm: 15 },
        quantity: 0.9,
        unit: 'm',
        pieces: [{ id: 'right side', lengthMm: 900, count: 1 }],
        says: 'New pipe brings the right side to its valve.',
        from: [offsetWhy, run],
      },
    ],
  )
  row(
    'plastic goes on in plastic',
    [newPipe, { ...repiped, pipe: plastic }],
    [
      {
        kind: 'pipe',
        spec: { material: 'plastic', outsideMm: 22 },
        quantity: 0.9,
        unit: 'm',
        pieces: [{ id: 'right side', lengthMm: 900, count: 1 }],
        says: 'New pipe brings the right side to its valve.',
        from: [offsetWhy, run],
      },
    ],
  )
  row('none where the remedy is another', [newPipe, { ...repiped, remedy: 'pull' }], [])
  row('none of no length', [newPipe, { ...repiped, newPipeMm: 0 }], [])
  row(
    'two elbows on copper are compression fittings',
    [elbows, { ...repiped, elbows: 2 }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'elbow', joint: 'compression', outsideMm: 15 },
        quantity: 2,
        unit: 'each',
        says: 'The new run on the right turns twice.',
        from: [offsetWhy],
      },
    ],
  )
  row(
    'one elbow turns once',
    [elbows, { ...repiped, elbows: 1 }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'elbow', joint: 'compression', outsideMm: 15 },
        quantity: 1,
        unit: 'each',
        says: 'The new run on the right turns once.',
        from: [offsetWhy],
      },
    ],
  )
  row('no elbow on a straight run', [elbows, repiped], [])
  row(
    'two couplers on plastic are push fits',
    [couplers, { ...repiped, pipe: plastic, couplers: 2 }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'coupler', joint: 'pushFit', outsideMm: 22 },
        quantity: 2,
        unit: 'each',
        says: 'The new run on the right joins the old pipe twice.',
        from: [offsetWhy],
      },
    ],
  )
  row(
    'three couplers join three times',
    [couplers, { ...repiped, pipe: plastic, couplers: 3 }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'coupler', joint: 'pushFit', outsideMm: 22 },
        quantity: 3,
        unit: 'each',
        says: 'The new run on the right joins the old pipe 3 times.',
        from: [offsetWhy],
      },
    ],
  )
  row('no coupler where nothing is joined', [couplers, repiped], [])
  row(
    'three clips of the size of the pipe',
    [clips, { ...repiped, clips: 3 }],
    [
      {
        kind: 'clip',
        spec: { outsideMm: 15 },
        quantity: 3,
        unit: 'each',
        says: 'Clips hold the new run on the right.',
        from: [offsetWhy, run],
      },
    ],
  )
  row('no clip on a short run', [clips, repiped], [])
})

describe('where a pipe goes through', () => {
  row(
    'a chrome collar beside chrome valves',
    [collar, { side: 'right', pipe: { ...pipe, from: 'wall' } }],
    [
      {
        kind: 'collar',
        spec: { outsideMm: 15, finish: 'chrome' },
        quantity: 1,
        unit: 'each',
        says: 'A collar covers the hole where the right pipe leaves the wall.',
        from: [given('Pipe on the right', 15, 'mm', 'survey')],
      },
    ],
  )
  row(
    'a white one beside valves of any other finish',
    [collar, { finish: 'brass' }],
    [
      {
        kind: 'collar',
        spec: { outsideMm: 15, finish: 'white' },
        quantity: 1,
        unit: 'each',
        says: 'A collar covers the hole where the left pipe leaves the floor.',
        from: [given('Pipe on the left', 15, 'mm', 'survey')],
      },
    ],
  )
  row(
    '2500 mm through a cold void take 2.5 m of insulation, at least as thick as the firm asks',
    [insulation, { pipe: { ...pipe, coldVoidMm: 2500 } }],
    [
      {
        kind: 'insulation',
        spec: { outsideMm: 15, wallMm: { atLeast: 13 } },
        quantity: 2.5,
        unit: 'm',
        says: 'The left pipe crosses an unheated void.',
        from: [given('Length in the void', 2500, 'mm', 'survey'), setting('pipe.insulationWallMm')],
      },
    ],
  )
  row('no insulation in a warm floor', [insulation, {}], [])
})

describe('valves', () => {
  const valve = (over: object) => ({
    kind: 'valve' as const,
    quantity: 1,
    unit: 'each' as const,
    spec: { role: 'thermostatic', body: 'angled', pipeMm: 15, thread: 'G1/2', finish: 'chrome', ...over },
  })
  row(
    'from the floor to a side tapping: angled',
    [valveEachSide, {}],
    [
      {
        ...valve({}),
        says: 'An angled thermostatic valve on the left: the flow side regulates the room.',
        from: [
          given('Pipe on the left: comes from the floor', 15, 'mm', 'survey'),
          given("The emitter's tapping points sideways", 'G1/2'),
        ],
      },
    ],
  )
  row(
    'from the wall to a side tapping: corner',
    [valveEachSide, { pipe: { ...pipe, from: 'wall' } }],
    [
      {
        ...valve({ body: 'corner' }),
        says: 'A corner thermostatic valve on the left: the flow side regulates the room.',
        from: [
          given('Pipe on the left: comes from the wall', 15, 'mm', 'survey'),
          given("The emitter's tapping points sideways", 'G1/2'),
        ],
      },
    ],
  )
  row(
    'from the floor to a tapping that points down: straight, of 15 mm on a pipe of 22',
    [
      valveEachSide,
      {
        side: 'right',
        role: 'lockshield',
        roleBecause: 'set once',
        tappingFaces: 'down',
        pipe: { ...pipe, outsideMm: 22 },
      },
    ],
    [
      {
        ...valve({ role: 'lockshield', body: 'straight' }),
        says: 'A straight lockshield valve on the right: set once.',
        from: [
          given('Pipe on the right: comes from the floor', 22, 'mm', 'survey'),
          given("The emitter's tapping points down", 'G1/2'),
        ],
      },
    ],
  )
  row(
    'from the wall to a tapping that points down: angled, of the size of a thin pipe',
    [valveEachSide, { tappingFaces: 'down', pipe: { ...pipe, from: 'wall', outsideMm: 10 } }],
    [
      {
        ...valve({ pipeMm: 10 }),
        says: 'An angled thermostatic valve on the left: the flow side regulates the room.',
        from: [
          given('Pipe on the left: comes from the wall', 10, 'mm', 'survey'),
          given("The emitter's tapping points down", 'G1/2'),
        ],
      },
    ],
  )
  row('none where the old one is kept', [valveEachSide, { role: 'kept' }], [])
  row(
    'a 22 mm pipe comes down to the 15 mm of the valve',
    [reducerToValve, { side: 'right', pipe: { ...pipe, outsideMm: 22 } }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'reducer', joint: 'compression', outsideMm: 22, toMm: 15 },
        quantity: 1,
        unit: 'each',
        says: 'The right pipe is 22 mm and the valve takes 15 mm.',
        from: [given('Pipe on the right', 22, 'mm', 'survey')],
      },
    ],
  )
  row('no reducer on 15 mm', [reducerToValve, {}], [])
  row('no reducer to a kept valve', [reducerToValve, { role: 'kept', pipe: { ...pipe, outsideMm: 22 } }], [])
  row(
    'a tail at least as long as the pipe is short',
    [longerTail, { remedy: 'longerTail', tailMm: 25, offsetWhy }],
    [
      {
        kind: 'tail',
        spec: { thread: 'G1/2', lengthMm: { atLeast: 25 } },
        quantity: 1,
        unit: 'each',
        says: 'The left valve sits 25 mm further out than its own tail reaches.',
        from: [offsetWhy],
      },
    ],
  )
  row('no tail where the remedy is another', [longerTail, { remedy: 'repipe', tailMm: 25 }], [])
  row('no tail of no length', [longerTail, { remedy: 'longerTail', tailMm: 0 }], [])
  row(
    'plastic: one end at the valve, two at a coupler and two at each of two elbows are seven',
    [insertInPlastic, { side: 'right', pipe: plastic, couplers: 1, elbows: 2 }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'insert', joint: 'none', outsideMm: 22 },
        quantity: 7,
        unit: 'each',
        says: 'Every cut end of plastic pipe on the right takes an insert.',
        from: [
          given('Ends at the valve', 1),
          given('Couplers, two ends each', 1),
          given('Elbows, two ends each', 2),
        ],
      },
    ],
  )
  row(
    'at a kept valve no end is cut, so one coupler takes two',
    [insertInPlastic, { role: 'kept', pipe: plastic, couplers: 1 }],
    [
      {
        kind: 'pipeFitting',
        spec: { shape: 'insert', joint: 'none', outsideMm: 22 },
        quantity: 2,
        unit: 'each',
        says: 'Every cut end of plastic pipe on the left takes an insert.',
        from: [
          given('Ends at the valve', 0),
          given('Couplers, two ends each', 1),
          given('Elbows, two ends each', 0),
        ],
      },
    ],
  )
  row('none at a kept valve with nothing cut', [insertInPlastic, { role: 'kept', pipe: plastic }], [])
  row('none in copper', [insertInPlastic, { couplers: 1 }], [])
})
