import { describe, expect, it } from 'vitest'
import { customerQuoteView } from '../../src-main/documents/customer-quote-view.ts'
import type { Job, Room, Swap } from '../../src-main/domain/job.ts'
import type { Pipe, Wall } from '../../src-main/domain/wall.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { testMaterial, testSetOut } from './material-for-tests.ts'

type Changes = {
  readonly job?: Partial<Job>
  readonly survey?: Partial<Job['survey']>
  readonly system?: Partial<Job['survey']['system']>
  readonly room?: Partial<Room>
  readonly wall?: Partial<Wall>
  readonly swap?: Partial<Swap>
  readonly pipe?: Partial<Pipe>
  readonly existing?: Partial<NonNullable<Swap['existing']>>
  readonly needsBoard?: boolean
}

const cable = { obstacleId: 'c', kind: 'cable', xMm: 0, yMm: 0, widthMm: 50, heightMm: 2400 } as const

/** The bedroom job, in which everything that a price can rest on was surveyed. */
function surveyed(changes: Changes = {}): Job {
  const {
    job = {},
    survey = {},
    system = {},
    room = {},
    wall = {},
    swap = {},
    pipe = {},
    existing = {},
  } = changes
  const base = bedroomJob()
  return {
    ...base,
    survey: {
      ...base.survey,
      builtYear: 1962,
      ...survey,
      system: { ...base.survey.system, contentLitres: 90, ...system },
    },
    house: {} as NonNullable<Job['house']>,
    rooms: base.rooms.map((one) => ({
      ...one,
      walls: one.walls.map((each) => ({ ...each, obstacles: [{ ...cable, name: 'Cable' }], ...wall })),
      ...room,
    })),
    swaps: base.swaps.map((one) => ({
      ...one,
      existing: { name: 'Old panel', widthMm: 500, heightMm: 600, brackets: 2, ...existing },
      pipes: one.pipes.map((each) => ({ ...each, offWallMm: 60, ...pipe })),
      ...swap,
    })),
    ...job,
  }
}

/** Changes of a job; a field that is set to undefined is absent. */
function view(changes: Changes = {}) {
  const setOuts = {
    'swap-1': { ...testSetOut, fixing: { ...testSetOut.fixing, needsBoard: changes.needsBoard ?? false } },
  }
  const { assumptions, notIncluded } = customerQuoteView(testMaterial({ job: surveyed(changes), setOuts }))
  const plain = (all: readonly string[]) => all.map((one) => one.replaceAll('\u00a0', ' '))
  return { assumptions: plain(assumptions), notIncluded: plain(notIncluded) }
}

const none = undefined as never

const whenAndOnlyWhen: readonly (readonly [
  what: string,
  sentence: string,
  absent: Changes,
  there: Changes,
])[] = [
  [
    'the year of building',
    'The year of building is not known; the house is treated as old enough to hold asbestos.',
    { survey: { builtYear: none } },
    { survey: { builtYear: 2004 } },
  ],
  [
    'the water in the system',
    'The water in the system was not measured; it is reckoned from the usual size of a boiler.',
    { system: { contentLitres: none } },
    { system: { contentLitres: 70 } },
  ],
  [
    'the water in the part that is isolated',
    'The water in the part that is isolated was not measured; the usual share is taken.',
    { system: { drain: 'isolatedPart' } },
    { system: { drain: 'isolatedPart', drainedShare: 0.2 } },
  ],
  [
    'the pipes of the house',
    'The pipes between the boiler and the rooms were not surveyed; they are taken to carry what the new emitters need.',
    { job: { house: none } },
    {},
  ],
  [
    'what is behind the old emitter',
    'The wall behind the old emitter in the back bedroom was not seen; making it good is not in this price until it has been.',
    { existing: { brackets: none } },
    { existing: { brackets: none, oldHoles: { count: 0, diameterMm: 8, depthMm: 50 } } },
  ],
  [
    'hidden pipes and cables',
    'The survey marks no pipe or cable hidden in the window wall of the back bedroom. If one is met, the holes move, or a new price is agreed first.',
    { wall: { obstacles: [{ ...cable, name: 'Socket', kind: 'socket' }] } },
    { wall: { obstacles: [{ ...cable, name: 'Pipe', kind: 'pipeInWall' }] } },
  ],
  [
    'the studs of a wall that wants a backing board',
    'The studs in the window wall of the back bedroom were not found; the usual spacing is taken.',
    { wall: { build: 'boardOnStuds' }, needsBoard: true },
    {
      wall: { build: 'boardOnStuds', studs: { firstMm: 100, spacingMm: 400, widthMm: 38 } },
      needsBoard: true,
    },
  ],
  [
    'where the tiles meet',
    'Where the tiles meet on the window wall of the back bedroom was not measured; a hole may come near an edge.',
    { wall: { finish: 'tile' } },
    { wall: { finish: 'tile', tiles: { widthMm: 200, heightMm: 200, jointMm: 3, xMm: 0, yMm: 0 } } },
  ],
  [
    'which pipe is flow',
    'Which pipe is flow and which is return in the back bedroom was not found; it is tried before the valves go on.',
    { pipe: { carries: 'unknown' } },
    { pipe: { carries: 'flow' } },
  ],
  [
    'how far pipes stand off the wall',
    'How far the pipes in the back bedroom stand off the wall was not measured; they are taken to meet their valves.',
    { pipe: { offWallMm: none } },
    { pipe: { offWallMm: 0 } },
  ],
  [
    'how high pipes leave the wall',
    'How high the pipes in the back bedroom leave the wall was not measured; they are taken to meet their valves.',
    { pipe: { from: 'wall', yMm: none } },
    { pipe: { from: 'wall', yMm: 200 } },
  ],
  [
    'the heat, element by element',
    'The heat that the back bedroom needs is worked out from its size and the age of the house; walls and floors were not opened.',
    { room: { quick: { entry: {} as never } } },
    { room: { quick: { entry: {} as never, byHand: true } } },
  ],
]

describe('what was not surveyed is said in the assumptions when, and only when, it was not', () => {
  it.each(whenAndOnlyWhen)('%s', (_, sentence, absent, there) => {
    expect(view(absent).assumptions).toContain(sentence)
    expect(view(there).assumptions).not.toContain(sentence)
    expect(view().assumptions).not.toContain(sentence)
  })

  it('adds no other sentence than its own', () => {
    const usual = view().assumptions
    for (const [, sentence, absent, there] of whenAndOnlyWhen) {
      const base = [...usual, ...view(there).assumptions]
      const more = view(absent).assumptions.filter((one) => !base.includes(one))
      expect(more).toEqual([sentence])
    }
  })

  it('says nothing of studs where no board is wanted or the wall has none, nor of an old emitter where none hangs', () => {
    expect(view({ wall: { build: 'boardOnStuds' } }).assumptions.join(' ')).not.toContain('studs in')
    expect(view({ needsBoard: true }).assumptions.join(' ')).not.toContain('studs in')
    expect(view({ swap: { existing: none } }).assumptions.join(' ')).not.toContain('behind the old emitter')
  })

  it('does not ask which pipe is flow where one of them is known', () => {
    const [left, right] = surveyed().swaps[0]?.pipes ?? []
    if (left === undefined || right === undefined) throw new Error('The test job has two pipes')
    const pipes = [{ ...left, carries: 'unknown' as const }, right]
    expect(view({ swap: { pipes } }).assumptions.join(' ')).not.toContain('flow and which')
    expect(view({ swap: { pipes: [] } }).assumptions.join(' ')).not.toContain('flow and which')
  })

  it('says the same of many rooms in one sentence, by the rooms where their walls are many', () => {
    const { rooms, swaps } = surveyed({ wall: { obstacles: [] }, pipe: { fixed: true } })
    const [room] = rooms
    const [swap] = swaps
    if (room === undefined || swap === undefined) throw new Error('The test job has a room and a swap')
    const numbers = [1, 2, 3, 4, 5]
    const many = {
      rooms: numbers.map((n) => ({ ...room, roomId: `r${n}`, name: `Room ${n}` })),
      swaps: numbers.map((n) => ({ ...swap, roomId: `r${n}`, swapId: `s${n}` })),
    }
    const setOuts = Object.fromEntries(many.swaps.map(({ swapId }) => [swapId, testSetOut]))
    const emitters = Object.fromEntries(
      many.swaps.map(({ swapId }) => [swapId, testMaterial().emitters['swap-1']]),
    ) as ReturnType<typeof testMaterial>['emitters']
    const all = testMaterial({ job: { ...surveyed(), ...many }, setOuts, emitters })
    const { assumptions } = customerQuoteView(all)
    const rooms5 = 'the room 1, the room 2, the room 3, the room 4 and the room 5'
    expect(assumptions).toContain(
      `The survey marks no pipe or cable hidden in the walls worked on in ${rooms5}. If one is met, the holes move, or a new price is agreed first.`,
    )
    expect(assumptions).toContain(`In ${rooms5} the left and right pipes cannot be moved and stay in place.`)
  })
})

describe('what is not included', () => {
  it('names rooms that were surveyed and stay as they are, and no room that is worked in', () => {
    const [room] = surveyed().rooms
    if (room === undefined) throw new Error('The test job has a room')
    const hall = { ...room, roomId: 'hall', name: 'Hall' }
    const landing = { ...room, roomId: 'landing', name: 'Landing' }
    const { notIncluded } = view({ job: { rooms: [hall, room, landing] } })
    expect(notIncluded).toContain('Work in the hall and the landing.')
    expect(view().notIncluded.join(' ')).not.toContain('Work in')
  })

  it.each([
    [
      'Cleaning or flushing the rest of the heating system.',
      { system: { flush: false } },
      { system: { flush: true } },
    ],
    [
      'Wiring, protecting and testing the electric element, which is for a qualified electrician.',
      { swap: { elementW: 300 } },
      {},
    ],
    [
      'Decorating and new tiles. Old holes are filled or sealed and touched up by hand; some trace may show.',
      { existing: { oldHoles: { count: 4, diameterMm: 8, depthMm: 50 } } },
      { existing: { oldHoles: { count: 0, diameterMm: 8, depthMm: 50 } } },
    ],
  ] as const)('says when, and only when, it is so: %s', (sentence, so, not) => {
    expect(view(so).notIncluded).toContain(sentence)
    expect(view(not).notIncluded).not.toContain(sentence)
  })

  it('leaves out new pipes where, and only where, fewer than two were surveyed', () => {
    const says = 'New pipes to the emitter in the back bedroom, where the survey does not show two.'
    const pipes = surveyed().swaps[0]?.pipes ?? []
    expect(view({ swap: { pipes: [] } }).notIncluded).toContain(says)
    expect(view({ swap: { pipes: pipes.slice(0, 1) } }).notIncluded).toContain(says)
    expect(view({ swap: { pipes } }).notIncluded).not.toContain(says)
  })

  it('says that the valves stay sound only where valves stay', () => {
    const says = 'The valves that stay are sound and shut off.'
    expect(view({ swap: { valves: { kind: 'keep', finish: 'white' } } }).assumptions).toContain(says)
    expect(view().assumptions).not.toContain(says)
  })
})
