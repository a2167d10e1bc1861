import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import type { Job, Room, Swap } from '../../../../src-main/domain/job.ts'
import { jobFacts } from '../../../../src-main/engine/takeoff/job-facts.ts'
import type { PlacedSwap } from '../../../../src-main/engine/takeoff/job-facts.ts'
import { bedroomJob } from '../../../job-for-tests.ts'

const values = {
  'water.litresPerKW': 10,
  'water.defaultBoilerKW': 20,
  'water.freezeShareRatio': 0.05,
  'water.drainedShareRatio': 0.4,
}
const plug = { fixingId: 'plug', name: 'Plug', plug: { bitMm: 8, lengthMm: 50 }, source: 'from memory' }
const stud = { fixingId: 'stud', name: 'Stud screw', intoStud: true, source: 'from memory' }
const figures = {
  settings: Object.fromEntries(
    Object.entries(values).map(([id, value]) => [id, { says: id, value, unit: 'Ratio', source: 'the firm' }]),
  ),
  tasks: {},
  fixings: [plug, stud],
} as unknown as Figures

const offsetWhy = given('Off its valve', 20, 'mm')
const offset = {
  remedy: 'longerTail',
  elbows: 1,
  couplers: 2,
  pipeMm: 300,
  clips: 3,
  tailMm: 20,
  why: offsetWhy,
}
const emitter = {
  itemId: 'panel',
  name: 'Panel',
  form: { kind: 'panel' },
  finish: 'grey',
  dryKg: 21,
  widthMm: 1010,
  heightMm: 600,
  brackets: ['left', 'right', 'middle'],
  box: [],
  tappings: [
    { at: 'topLeft', thread: 'G3/4', holds: 'vent' },
    { at: 'bottomLeft', thread: 'G1/2', holds: 'valve' },
    { at: 'bottomRight', thread: 'G3/8', holds: 'valve', factoryFitted: false },
    { at: 'topRight', thread: 'G1/2', holds: 'blank', factoryFitted: true },
  ],
}
const setOut = {
  fixing: { fixingId: 'plug', needsBoard: true },
  holes: [
    { id: 'A1', bracket: 'left bracket', drillMm: 8, depthMm: 55 },
    {
      id: 'A2',
      bracket: 'right bracket',
      drillMm: 4,
      depthMm: 40,
      fixing: { fixingId: 'stud' },
      finish: 'tile',
    },
  ],
  pipeOffsets: [
    { side: 'left', ...offset },
    { side: 'right', ...offset, remedy: 'none', tailMm: 0 },
  ],
}
type Changes = {
  readonly job?: Partial<Job>
  readonly room?: Partial<Room>
  readonly swap?: Partial<Swap>
  readonly emitter?: object
}

function factsWith(changes: Changes = {}) {
  const plain = bedroomJob()
  const [room] = plain.rooms
  const [swap] = plain.swaps
  if (room === undefined || swap === undefined) throw new Error('The bedroom job has a room and a swap')
  const rooms = [
    { ...room, ...changes.room },
    { ...room, roomId: 'attic', name: 'Attic' },
  ]
  const job = bedroomJob({ rooms, ...changes.job })
  const placed = {
    swap: { ...swap, ...changes.swap },
    room: rooms[0],
    wall: room.walls[0],
    emitter: { ...emitter, ...changes.emitter },
    setOut,
  } as unknown as PlacedSwap
  return jobFacts(job, [placed], figures)
}
const swapWith = (changes: Changes = {}) => {
  const [swap] = factsWith(changes).swaps
  if (swap === undefined) throw new Error('There is one swap')
  return swap
}
const system = (more: Partial<Job['survey']['system']>, survey: Partial<Job['survey']> = {}): Changes => {
  const plain = bedroomJob().survey
  return { job: { survey: { ...plain, ...survey, system: { ...plain.system, ...more } } } }
}

describe('the facts of the whole job', () => {
  it('are what the survey says, with nothing where it is silent', () => {
    expect(factsWith().job).toEqual({
      swaps: 1,
      drain: 'wholeSystem',
      systemKind: 'sealed',
      flush: false,
      contentLitres: 90,
      contentWhy: given('Water in the system, as surveyed', 90, 'L', 'survey'),
      drainedShare: 1,
      hotWork: false,
      builtYear: 1962,
      frailOrChildren: false,
      travelKm: 12,
    })
    const survey = { hotWork: true, frailOrChildren: true, occupied: true }
    expect(factsWith(system({}, survey)).job).toMatchObject(survey)
    const site = { addressLines: ['1 Example Row'] }
    const { builtYear: _, ...young } = bedroomJob().survey
    expect(factsWith({ job: { site, survey: young } }).job).toMatchObject({ travelKm: 0, builtYear: null })
  })
  it('water that nobody surveyed is the boiler x litres per kW: 15 x 10, or 20 x 10 where it is not known', () => {
    const { contentLitres: _, ...unknown } = bedroomJob().survey.system
    const survey = bedroomJob().survey
    const bare = factsWith({ job: { survey: { ...survey, system: unknown } } }).job
    expect(bare.contentLitres).toBe(200)
    expect(bare.contentWhy.from.map(({ says, value }) => [says, value])).toEqual([
      ['water.defaultBoilerKW', 20],
      ['water.litresPerKW', 10],
    ])
    const known = factsWith({ job: { survey: { ...survey, system: { ...unknown, boilerKW: 15 } } } }).job
    expect(known.contentLitres).toBe(150)
    expect(known.contentWhy.from[0]).toEqual(given('Boiler output', 15, 'kW', 'survey'))
  })
  it.each([
    ['all, where the whole system is drained', { drain: 'wholeSystem', drainedShare: 0.3 }, 1],
    ['all, where it is flushed, whatever was drained', { drain: 'freeze', flush: true }, 1],
    ['as surveyed, where a part is isolated', { drain: 'isolatedPart', drainedShare: 0.3 }, 0.3],
    ["the firm's share of a part", { drain: 'isolatedPart' }, 0.4],
    ["the firm's share where pipes are frozen", { drain: 'freeze' }, 0.05],
  ] as const)('water let out is %s', (_, more, share) => {
    expect(factsWith(system(more)).job.drainedShare).toBe(share)
  })
  it('have only the rooms that work is done in', () => {
    const ask = { roomName: 'Back bedroom', use: 'bedroom', floor: 'carpet', swaps: 1 }
    expect(factsWith().rooms).toEqual([{ roomId: 'bedroom', ask }])
    expect(factsWith({ room: { tightAccess: true } }).rooms[0]?.ask).toEqual({ ...ask, tightAccess: true })
    expect(factsWith({ room: { tightAccess: false } }).rooms[0]?.ask).toEqual(ask)
  })
})

describe('the facts of a swap', () => {
  it('are those of the room, the old and the new emitter and the set-out', () => {
    // Hands at 150 + 600 / 2; a board across three bays of 400 for 1010 mm.
    expect(swapWith().ask).toEqual({
      roomName: 'Back bedroom',
      roomUse: 'bedroom',
      storey: 1,
      emitterId: 'panel',
      emitterName: 'Panel',
      emitterKind: 'panel',
      emitterMassKg: 21,
      emitterWidthMm: 1010,
      handsMm: 450,
      elementW: null,
      tappingThread: 'G3/4',
      oldName: 'Old single panel',
      oldMassKg: 14,
      oldHoles: null,
      oldBrackets: 2,
      wallBuild: 'solidMasonry',
      wallFinish: 'paint',
      needsBoard: true,
      boardMm: 1200,
      studSpacingMm: 400,
      brackets: 3,
      drain: 'wholeSystem',
      valvesKept: false,
      hasVent: true,
      flowC: 55,
    })
    expect(swapWith()).toMatchObject({
      swapId: 'swap-1',
      roomId: 'bedroom',
      box: [],
      wallBuild: 'solidMasonry',
    })
  })
  it('say so where nothing hung there and nothing is known', () => {
    const { ask } = swapWith({ swap: { existing: undefined }, emitter: { tappings: [] } })
    expect(ask).toMatchObject({
      oldName: null,
      oldMassKg: null,
      oldHoles: null,
      oldBrackets: 0,
      tappingThread: 'G1/2',
      hasVent: false,
    })
    const kept = swapWith({ swap: { elementW: 300, valves: { kind: 'keep', finish: 'white' } } }).ask
    expect(kept).toMatchObject({ elementW: 300, valvesKept: true })
    expect(swapWith({ room: { tightAccess: true } }).ask.tightAccess).toBe(true)
  })
  it('of each side are those of its pipe, its tapping and its remedy', () => {
    const [left, right] = swapWith().sides
    expect(left).toEqual({
      side: 'left',
      role: 'thermostatic',
      roleBecause: 'the flow side regulates the room',
      tappingFaces: 'side',
      pipe: { from: 'floor', material: 'copper', outsideMm: 15, coldVoidMm: 0 },
      thread: 'G1/2',
      finish: 'white',
      remedy: 'longerTail',
      elbows: 1,
      couplers: 2,
      newPipeMm: 300,
      clips: 3,
      tailMm: 20,
      offsetWhy,
      wallFinish: 'paint',
    })
    expect(right).toMatchObject({
      side: 'right',
      role: 'lockshield',
      roleBecause: 'the return side is set once, when balancing',
      thread: 'G3/8',
      remedy: 'none',
    })
    const rail = swapWith({ emitter: { form: { kind: 'towelRail' } } })
    expect(rail.sides.map(({ tappingFaces }) => tappingFaces)).toEqual(['down', 'down'])
  })
  it('of each hole are its own fixing and finish, else those of the whole', () => {
    expect(swapWith().holes).toEqual([
      {
        holeId: 'A1',
        bracket: 'left bracket',
        drillMm: 8,
        depthMm: 55,
        fixing: plug,
        needsBoard: true,
        wallFinish: 'paint',
      },
      {
        holeId: 'A2',
        bracket: 'right bracket',
        drillMm: 4,
        depthMm: 40,
        fixing: stud,
        needsBoard: true,
        wallFinish: 'tile',
      },
    ])
    const none = { ...figures, fixings: [stud] } as unknown as Figures
    const placed = {
      swap: { pipes: [], valves: {} },
      room: {},
      wall: {},
      emitter,
      setOut,
    } as unknown as PlacedSwap
    expect(() => jobFacts(bedroomJob(), [placed], none)).toThrow(
      'The set-out chose a fixing that is not there: plug',
    )
  })
  it('of each joint are its tapping in words, sealed by a ring unless a valve goes in, and one more behind a longer tail', () => {
    const of = (holds: string, at: string, more: object) => ({
      at,
      holds,
      thread: 'G1/2',
      sealing: 'oRing',
      factoryFitted: false,
      finish: 'chrome',
      ...more,
    })
    expect(swapWith().joints).toEqual([
      of('vent', 'top left', { thread: 'G3/4' }),
      of('valve', 'bottom left', { sealing: 'none' }),
      of('valve', 'bottom right', { thread: 'G3/8', sealing: 'none' }),
      of('blank', 'top right', { factoryFitted: true }),
      of('extension', 'left valve', { sealing: 'none', finish: 'white' }),
    ])
    const element = swapWith({ swap: { elementW: 300 }, emitter: { finish: 'black' } }).joints
    expect(element.at(-1)).toEqual(of('tee', 'left valve', { sealing: 'none', finish: 'white' }))
    expect(element[0]).toMatchObject({ finish: 'black' })
  })
})

describe('which valve a pipe takes', () => {
  const [left, right] = bedroomJob().swaps[0]?.pipes ?? []
  if (left === undefined || right === undefined) throw new Error('The bedroom job has two pipes')
  const plainLeft = { ...left, carries: 'unknown' } as const
  const plainRight = { ...right, carries: 'unknown' } as const
  const rolesOf = (changes: Changes) => swapWith(changes).sides.map(({ role }) => role)
  const pipes = (...list: Swap['pipes']): Changes => ({ swap: { pipes: list } })

  it('is thermostatic on the flow, wherever that is', () => {
    const crossed = pipes({ ...left, carries: 'return' }, { ...right, carries: 'flow' })
    expect(rolesOf(crossed)).toEqual(['lockshield', 'thermostatic'])
  })
  it('is thermostatic on the left where nobody found out, and opposite the return where that is known', () => {
    expect(rolesOf(pipes(plainLeft, plainRight))).toEqual(['thermostatic', 'lockshield'])
    expect(rolesOf(pipes({ ...left, carries: 'return' }, plainRight))).toEqual(['lockshield', 'thermostatic'])
    expect(rolesOf(pipes(plainLeft, { ...right, carries: 'return' }))).toEqual(['thermostatic', 'lockshield'])
  })
  it('is worked by hand where the room holds the thermostat, or the customer wants that, and kept where the survey says so', () => {
    const rolesAndWhy = (changes: Changes) =>
      swapWith(changes).sides.map(({ role, roleBecause }) => `${role}: ${roleBecause}`)[0]
    expect(rolesAndWhy({ room: { holdsThermostat: true } })).toBe(
      'manual: the room holds the thermostat or the bypass, so nothing here may close by itself',
    )
    expect(rolesAndWhy({ swap: { valves: { kind: 'manualPair', finish: 'white' } } })).toBe(
      'manual: the customer wants hand wheels',
    )
    expect(
      rolesAndWhy({ room: { holdsThermostat: true }, swap: { valves: { kind: 'keep', finish: 'white' } } }),
    ).toBe('kept: the survey says to keep it')
  })
})
