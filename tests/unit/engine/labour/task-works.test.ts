import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import type { Modifier } from '../../../../src-main/domain/labour.ts'
import { taskRules } from '../../../../src-main/engine/labour/task-list.ts'
import type { TaskRule } from '../../../../src-main/engine/labour/task-rule.ts'
import { named } from '../../../../src-main/engine/takeoff/rule.ts'
import { typical } from '../../../typical-asks.ts'

/** Round figures of our own: a quarter more a storey, tile three times as long, and lifts of 25 kg for one at the waist. */
const values: Readonly<Record<string, number>> = {
  'labour.stairsRatio': 0.25,
  'labour.tileDrillRatio': 2,
  'labour.protectCarpetCount': 0,
  'labour.protectTileCount': 0,
  'labour.protectTimberCount': 2,
  'labour.protectVinylCount': 0,
  'labour.protectBareCount': 0,
  'lift.onePersonKg': 25,
  'lift.stairsRatio': 0.8,
  'lift.pairRatio': 2 / 3,
  'lift.threeRatio': 0.5,
  'lift.shoulderMm': 1400,
  'lift.elbowMm': 1000,
  'lift.knuckleMm': 700,
  'lift.shinMm': 300,
  ...Object.fromEntries(
    ['aboveShoulder', 'shoulderToElbow', 'elbowToKnuckle', 'knuckleToShin', 'belowShin'].flatMap((zone) => [
      [`lift.${zone}Kg`, 25],
      [`lift.${zone}FarKg`, 25],
    ]),
  ),
}
const figures: Figures = {
  settings: Object.fromEntries(
    Object.entries(values).map(([id, value]) => [id, { says: id, value, unit: 'Ratio', source: 'the firm' }]),
  ),
  tasks: {},
  fixings: [],
}
const setting = (id: string) => named(figures, [id]).why(id)
const offsetWhy = given('The pipe stands off its valve', 40, 'mm')

type Wanted = {
  readonly task: string
  readonly count: number
  readonly says: string
  readonly from?: readonly Derivation[]
  readonly longer?: readonly [howMany: number, modifiers: readonly Modifier[]]
  readonly people?: number
}

const once = (task: string, says: string, from: readonly Derivation[] = []): Wanted => ({
  task,
  count: 1,
  says,
  from,
})
const rowOf = (id: string, over: object, wanted: readonly Wanted[]) => [id, over, wanted] as const

/** A rule by its id, what differs from the plainest case, and all the work that it should give, in full. */
const rows = [
  rowOf('set-up', { roomName: 'Study', floor: 'vinyl' }, [
    once('set-up', 'The Study is set up and protected.'),
  ]),
  rowOf('set-up', { roomName: 'Study', floor: 'timber' }, [
    once('set-up', 'The Study is set up and protected.'),
    {
      task: 'protect-floor',
      count: 2,
      says: 'The timber floor of the Study marks easily.',
      from: [setting('labour.protectTimberCount')],
      longer: [
        2,
        [
          {
            name: 'Floor covering',
            how: 'adds',
            factor: 2,
            reason: 'The timber floor of the Study marks easily.',
          },
        ],
      ],
    },
  ]),
  rowOf('isolate-and-drain', {}, [once('drain', 'The whole system is drained, once.')]),
  rowOf('isolate-and-drain', { drain: 'isolatedPart' }, [
    once('isolate-part', 'A part of the system is isolated and drained, once.'),
  ]),
  rowOf('isolate-and-drain', { drain: 'freeze' }, []),
  rowOf('freeze-pipes', { drain: 'freeze' }, [once('freeze', 'Both pipes are frozen.')]),
  rowOf('freeze-pipes', { drain: 'isolatedPart' }, []),
  rowOf('flush', { flush: true }, [once('flush', 'The system is cleaned and flushed.')]),
  rowOf('flush', {}, []),
  rowOf('take-off-old', {}, []),
  rowOf('take-off-old', { oldName: 'Old panel', oldMassKg: 20, storey: 0 }, [
    {
      ...once('take-off', 'Old panel comes off and is carried out, people x stairs.', [
        given('People', 1),
        given('Storeys up or down', 0, undefined, 'survey'),
        setting('labour.stairsRatio'),
        setting('lift.onePersonKg'),
      ]),
      people: 1,
    },
  ]),
  // Two people, and two storeys down at a quarter more each: 2 x 1.5 = 3.
  rowOf('take-off-old', { oldName: 'Old panel', oldMassKg: 40, storey: -2 }, [
    {
      task: 'take-off',
      count: 3,
      says: 'Old panel comes off and is carried out, people x stairs.',
      from: [
        given('People', 2),
        given('Storeys up or down', 2, undefined, 'survey'),
        setting('labour.stairsRatio'),
        setting('lift.onePersonKg'),
      ],
      longer: [
        1,
        [
          {
            name: 'Two people to lift',
            how: 'times',
            factor: 2,
            reason: 'Old panel is over what one person should lift: both give their time.',
          },
          { name: 'Stairs', how: 'times', factor: 1.5, reason: 'Storeys of stairs to carry it over: 2.' },
        ],
      ],
      people: 2,
    },
  ]),
  // Nobody weighed it: one person is reckoned with.
  rowOf('take-off-old', { oldName: 'Old panel', storey: 0 }, [
    {
      ...once('take-off', 'Old panel comes off and is carried out, people x stairs.', [
        given('People', 1),
        given('Storeys up or down', 0, undefined, 'survey'),
        setting('labour.stairsRatio'),
        setting('lift.onePersonKg'),
      ]),
      people: 1,
    },
  ]),
  // 22 kg is over the 25 x 0.8 = 20 kg that one carries on stairs, and under 25 kg on the flat.
  rowOf('take-off-old', { oldName: 'Old panel', oldMassKg: 22, storey: 0 }, [
    {
      ...once('take-off', 'Old panel comes off and is carried out, people x stairs.', [
        given('People', 1),
        given('Storeys up or down', 0, undefined, 'survey'),
        setting('labour.stairsRatio'),
        setting('lift.onePersonKg'),
      ]),
      people: 1,
    },
  ]),
  rowOf('set-out-brackets', { brackets: 3 }, [once('set-out', '3 brackets are set out.')]),
  rowOf('drill-holes', { holeId: 'B2' }, [once('drill-masonry', 'Hole B2 is drilled and plugged.')]),
  rowOf('drill-holes', { fixing: { name: 'toggle', anchor: { bitMm: 13 }, source: 'a leaflet' } }, [
    once('drill-board', 'Hole A1 takes a board anchor.'),
  ]),
  rowOf('drill-holes', { needsBoard: true }, [once('drill-stud', 'Hole A1 is screwed into timber.')]),
  rowOf('drill-holes', { fixing: { name: 'screw', intoStud: true, source: 'a leaflet' } }, [
    once('drill-stud', 'Hole A1 is screwed into timber.'),
  ]),
  rowOf('drill-holes', { wallFinish: 'tile' }, [
    {
      task: 'drill-masonry',
      count: 3,
      says: 'Hole A1 is drilled and plugged.',
      from: [setting('labour.tileDrillRatio')],
      longer: [
        1,
        [
          {
            name: 'Tile',
            how: 'times',
            factor: 3,
            reason: 'Tile is drilled slowly, without hammer, before the wall behind it.',
          },
        ],
      ],
    },
  ]),
  rowOf('backing-board', { needsBoard: true }, [
    once('backing-board', 'A backing board goes across the studs.'),
  ]),
  rowOf('backing-board', {}, []),
  rowOf('build-and-dress', { emitterName: 'Tall rail' }, [
    once('dress', 'Tall rail is unpacked and dressed.'),
  ]),
  rowOf('hang', { emitterName: 'Tall rail', emitterMassKg: 12 }, [
    {
      ...once('hang', 'Tall rail is hung by one person.', [
        given('Mass, dry', 12, 'kg'),
        setting('lift.onePersonKg'),
      ]),
      people: 1,
    },
  ]),
  rowOf('hang', { emitterName: 'Long panel', emitterMassKg: 26 }, [
    {
      task: 'hang',
      count: 2,
      says: 'Long panel is hung by two people.',
      from: [given('Mass, dry', 26, 'kg'), setting('lift.onePersonKg')],
      longer: [
        1,
        [
          {
            name: 'Two people to lift',
            how: 'times',
            factor: 2,
            reason: 'Long panel is over what one person should lift: both give their time.',
          },
        ],
      ],
      people: 2,
    },
  ]),
  rowOf('valves', { side: 'right' }, [once('valve', 'The right valve is fitted.')]),
  rowOf('valves', { role: 'kept' }, [once('valve', 'The left valve is fitted again.')]),
  rowOf('alter-pipe', { offsetWhy }, []),
  rowOf('alter-pipe', { remedy: 'pull', offsetWhy }, [
    once('alter-pull', 'The left pipe is eased across.', [offsetWhy]),
  ]),
  rowOf('alter-pipe', { remedy: 'longerTail', offsetWhy }, [
    once('alter-tail', 'A longer tail reaches the left pipe.', [offsetWhy]),
  ]),
  rowOf('alter-pipe', { remedy: 'repipe', offsetWhy }, [
    once('alter-repipe', 'The left side is cut and re-piped.', [offsetWhy]),
  ]),
  rowOf('vent-and-blank', { holds: 'vent', at: 'top left' }, [
    once('vent-blank', 'The vent at the top left.'),
  ]),
  rowOf('vent-and-blank', { holds: 'blank', at: 'top right' }, [
    once('vent-blank', 'The blank at the top right.'),
  ]),
  rowOf('vent-and-blank', { holds: 'vent', factoryFitted: true }, []),
  rowOf('vent-and-blank', { holds: 'tee' }, []),
  rowOf('make-good-holes', { oldHoles: { count: 3, diameterMm: 8, depthMm: 50 } }, [
    { ...once('make-good-hole', 'Each old hole is filled and dressed.'), count: 3 },
  ]),
  rowOf('make-good-holes', { oldHoles: { count: 0, diameterMm: 8, depthMm: 50 } }, []),
  rowOf('make-good-holes', {}, []),
  rowOf('fill-vent-dose', {}, [once('fill', 'The system is filled, vented and dosed, once.')]),
  rowOf('leak-check', {}, [once('leak-check', 'Every joint is checked cold and hot.')]),
  rowOf('balance', { emitterName: 'Tall rail' }, [once('balance', 'Tall rail is balanced.')]),
  rowOf('explain', {}, [once('explain', 'The customer is shown valves and venting.')]),
  rowOf('clear-up', { roomName: 'Study' }, [once('clear-up', 'The Study is cleared up.')]),
  rowOf('travel', { travelKm: 7 }, [
    { ...once('travel', 'There and back.', [given('Distance one way', 7, 'km', 'survey')]), count: 14 },
  ]),
  rowOf('travel', { travelKm: 0 }, []),
]

describe('each task rule gives its work with its reason, what made it longer and who does it', () => {
  const all = taskRules as readonly TaskRule[]

  it.each(rows)('%s with %j', (id, over, wanted) => {
    const rule = all.find((one) => one.id === id)
    if (rule === undefined) throw new Error(`There is no task rule ${id}`)
    const works = rule.gives({ ...typical[rule.per], ...over }, named(figures, rule.uses))
    expect(works).toEqual(
      wanted.map(({ task, count, says, from = [], longer, people }) => ({
        taskId: task,
        count,
        why: { says, value: count, from },
        ...(longer === undefined ? {} : { howMany: longer[0], modifiers: longer[1] }),
        ...(people === undefined ? {} : { people }),
      })),
    )
  })

  it('every task rule stands in a row above', () => {
    const seen = new Set<string>(rows.map(([id]) => id))
    expect(all.map(({ id }) => id).filter((id) => !seen.has(id))).toEqual([])
  })
})
