import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { AnswerOf, InputOf, RequestName } from '../../../../src-main/contract/requests.ts'
import type { Emitter } from '../../../../src-main/domain/item.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Outcome } from '../../../../src-main/domain/outcome.ts'
import type { CentreChoice, Wall } from '../../../../src-main/domain/wall.ts'
import { catalogueOf } from '../../../../src-main/desk/catalogue-of.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { figuresInForce } from '../../../../src-main/desk/figures-in-force.ts'
import { placeSwaps } from '../../../../src-main/desk/quoting/place-swaps.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import { formOnWall, shapeOf } from '../../../../src-main/engine/wall/emitter-on-wall.ts'
import { oldOnWall, setOutHere } from '../../../../src-renderer/parts/wall-drawing/set-out-here.ts'
import { answered, refused } from '../../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)

async function ask<N extends RequestName>(name: N, input: InputOf<N>): Promise<Outcome<AnswerOf<N>>> {
  return (await answer(name, input, desk)) as Outcome<AnswerOf<N>>
}

async function emitterOf(itemId: string): Promise<Emitter> {
  const { item } = answered(await ask('catalogue.item', { itemId }))
  if (item.kind !== 'emitter') throw new Error(`${itemId} is no emitter`)
  return item
}

const tiled: Partial<Wall> = {
  finish: 'tile',
  tiles: { widthMm: 300, heightMm: 200, jointMm: 2, xMm: 10, yMm: 0, halfBond: true },
  tiledToMm: 1200,
  thicknessMm: 100,
}
const door = {
  obstacleId: 'door',
  name: 'Door',
  kind: 'door',
  xMm: 700,
  yMm: 0,
  widthMm: 826,
  heightMm: 2013,
  leaf: { in: 'thisWall', hinge: 'left', leafMm: 762, opensIntoRoom: true },
} as const

/** The sample's swaps as they are, moved about, among a door, tiles and studs. */
const changes: readonly {
  readonly centre?: CentreChoice
  readonly bottomMm?: number
  readonly wall?: Partial<Wall>
}[] = [
  {},
  { centre: { kind: 'at', xMm: 1625 }, bottomMm: 280 },
  { centre: { kind: 'middleOfWall' }, bottomMm: 0 },
  { wall: tiled },
  { wall: { obstacles: [door] } },
  { wall: { build: 'boardOnStuds', boardMm: 12.5, studs: { firstMm: 200, spacingMm: 400, widthMm: 47 } } },
]

function placed(at: number, change: (typeof changes)[number]) {
  const swap = job.swaps[at]
  const room = job.rooms.find(({ roomId }) => roomId === swap?.roomId)
  const found = room?.walls.find(({ wallId }) => wallId === swap?.wallId)
  if (swap === undefined || found === undefined) throw new Error('The sample has no such swap')
  const { wall, ...moved } = change
  return { swap: { ...swap, ...moved }, wall: { ...found, ...wall } }
}

describe('what the window sets out by itself', () => {
  it.each(changes.flatMap((change, nth) => [0, 1].map((at) => ({ at, nth, change }))))(
    'is what the desk answers, reasons and all: swap $at, change $nth',
    async ({ at, change }) => {
      const { swap, wall } = placed(at, change)
      const emitter = await emitterOf(swap.emitterId)
      const figures = answered(await ask('wall.figures', {}))
      const here = answered(setOutHere({ swap, wall, emitter, figures }))
      const input = {
        wall,
        emitter: shapeOf(emitter),
        valves: {},
        centre: swap.centre,
        bottomMm: swap.bottomMm,
        pipes: swap.pipes,
        ...formOnWall(emitter),
      }
      expect(here.fit).toEqual(answered(await ask('wall.fit', input)))
      expect(here.setOut).toEqual(answered(await ask('wall.setOut', input)))
    },
  )

  it('is what the job is priced and printed by once it is saved, with the figures of that job and its day', async () => {
    const own: Job = {
      ...job,
      quotedOn: '2026-03-02',
      figures: { 'wall.valveDropUnderMm': 80, 'wall.clearSideMm': 333 },
    }
    const inForce = answered(await figuresInForce(desk, '2026-03-02', own.figures))
    const swaps = answered(placeSwaps(own, await catalogueOf(desk), inForce))
    const figures = answered(await ask('wall.figures', { on: '2026-03-02', figures: { ...own.figures } }))
    for (const { swap, wall, emitter, setOut } of swaps) {
      expect(answered(setOutHere({ swap, wall, emitter, figures })).setOut).toEqual(setOut)
    }
    expect(swaps).toHaveLength(2)
    expect(figures.settings['wall.clearSideMm']?.value).toBe(333)
  })

  it('says no where the desk does: a pipe that is not there', async () => {
    const { swap, wall } = placed(1, { centre: { kind: 'fromPipe', side: 'left' } })
    const emitter = await emitterOf(swap.emitterId)
    const figures = answered(await ask('wall.figures', {}))
    const problem = refused(setOutHere({ swap: { ...swap, pipes: [] }, wall, emitter, figures }))
    expect(problem.message).toContain('There is no pipe on the left')
  })

  it('has a clash for each that the fit has, and each clearance once', async () => {
    const { swap, wall } = placed(1, { centre: { kind: 'at', xMm: 1200 }, bottomMm: 320 })
    const emitter = await emitterOf(swap.emitterId)
    const figures = answered(await ask('wall.figures', {}))
    const { fit, looked } = answered(setOutHere({ swap, wall, emitter, figures }))
    const clashing = looked.filter(({ clashes }) => clashes)
    expect(fit.fits).toBe(false)
    expect(clashing.map(({ says }) => says)).toEqual(fit.clashes.map(({ says }) => says))
    expect(clashing.every(({ taken }) => taken !== null)).toBe(true)
  })
})

describe('figures for a wall', () => {
  it('are those of walls and fixings alone, and an unknown one of a job is refused', async () => {
    const { settings, fixings } = answered(await ask('wall.figures', {}))
    expect(Object.keys(settings).every((id) => id.startsWith('wall.'))).toBe(true)
    expect(Object.keys(settings).length).toBeGreaterThan(20)
    expect(fixings.length).toBeGreaterThan(3)
    expect(refused(await ask('wall.figures', { figures: { nothing: 1 } })).code).toBe('invalid')
  })
})

describe('the old emitter', () => {
  const { swap } = placed(1, {})
  it('hangs where it was measured', () => {
    const existing = { name: 'Old', widthMm: 1000, heightMm: 600, leftMm: 900, bottomMm: 120 }
    expect(oldOnWall({ ...swap, existing })).toEqual({ ...existing })
    const noBottom = { name: 'Old', widthMm: 1000, heightMm: 600, leftMm: 900 }
    expect(oldOnWall({ ...swap, existing: noBottom })?.bottomMm).toBe(swap.bottomMm)
  })
  it('is drawn between its pipes and says so, where nobody measured', () => {
    // Pipes at 1265 and 2335: their middle is 1800; the old one is 1000 wide.
    expect(oldOnWall(swap)).toMatchObject({ leftMm: 1300, name: 'Old one, place not measured' })
    expect(oldOnWall({ ...swap, pipes: swap.pipes.slice(0, 1) })).toBeUndefined()
  })
})
