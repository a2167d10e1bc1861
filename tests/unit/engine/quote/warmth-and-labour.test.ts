import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { figureWhy } from '../../../../src-main/domain/figures.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import { jobWork, labourFor } from '../../../../src-main/engine/labour/job-labour.ts'
import { labourLines, penceForMinutes } from '../../../../src-main/engine/quote/labour-lines.ts'
import { buildPickList } from '../../../../src-main/engine/quote/pick-list.ts'
import { contingencyLines, pencePerKm, travelLines } from '../../../../src-main/engine/quote/price-lines.ts'
import { roomHeatOf, warmthOf } from '../../../../src-main/engine/quote/warmth.ts'
import type { SwapAsk } from '../../../../src-main/engine/takeoff/asks.ts'
import type { PlacedSwap } from '../../../../src-main/engine/takeoff/job-facts.ts'
import { answered, refused } from '../../../answered.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { typical } from '../../../typical-asks.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'
import { figures, placedIn } from './work-for-tests.ts'

/** A room that needs 20 m3 x W for each, at 18 degrees; the emitter gives its rating at 75/65/20: EN 442's own temperatures. */
function warmJob(roughWPerM3: number, more: Partial<Job['rooms'][number]> = {}): Job {
  const job = bedroomJob()
  const [room] = job.rooms
  if (room === undefined) throw new Error('The bedroom job has a room')
  const system = { ...job.survey.system, flowC: 75, returnC: 65 }
  return bedroomJob({
    survey: { ...job.survey, system },
    rooms: [{ ...room, roomC: 20, heat: { volumeM3: 20, roughWPerM3 }, ...more }],
  })
}
const warmth = (job: Job, placed: readonly PlacedSwap[] = [placedIn(job)]) => answered(warmthOf(job, placed))

describe('whether a room is warm', () => {
  // At 75/65/20 an emitter of 1000 W gives its rated 1000 W.
  it.each([
    [49.95, 999, 'Gives 1000 W where the Back bedroom needs 999 W, by a rough estimate.'],
    [50, 1000, 'Gives 1000 W where the Back bedroom needs 1000 W, by a rough estimate.'],
    [50.05, 1001, '1 W short: gives 1000 W where the Back bedroom needs 1001 W, by a rough estimate.'],
  ])('at %d W for each of 20 m3', (roughWPerM3, needW, says) => {
    const [one, ...others] = warmth(warmJob(roughWPerM3))
    expect(others).toEqual([])
    expect(one).toMatchObject({
      swapId: 'swap-1',
      roomName: 'Back bedroom',
      needW,
      givesW: 1000,
      rough: true,
      enough: needW <= 1000,
      says,
    })
    expect(one?.why).toMatchObject({ says, value: 1000 - needW, unit: 'W' })
    // What the room needs, before it is rounded, and what the emitter gives.
    expect(one?.why.from.map(({ unit }) => unit)).toEqual(['W', 'W'])
    expect(Number(one?.why.from[0]?.value)).toBeCloseTo(roughWPerM3 * 20, 6)
    expect(Number(one?.why.from[1]?.value)).toBeCloseTo(1000, 6)
  })

  it('counts every emitter of the room in each of its swaps, and what stays', () => {
    const job = warmJob(50, { otherEmittersW: 250 })
    const both = warmth(job, [placedIn(job), placedIn(job, 'swap-2')])
    expect(both.map(({ swapId, givesW }) => [swapId, givesW])).toEqual([
      ['swap-1', 2250],
      ['swap-2', 2250],
    ])
    expect(both[0]?.why.from).toHaveLength(4)
    expect(both[0]?.why.from.at(-1)).toEqual(given('Emitters that stay', 250, 'W', 'survey'))
  })

  it('does not count an emitter of another room', () => {
    const job = warmJob(50)
    const here = placedIn(job)
    const elsewhere = { ...here, room: { ...here.room, roomId: 'hall' } }
    expect(warmth(job, [here, elsewhere]).map(({ givesW }) => givesW)).toEqual([1000, 1000])
  })

  it('lessens what an emitter gives by its factors, and reads its own rating', () => {
    const job = warmJob(50)
    const here = placedIn(job)
    const factors = [{ name: 'Cover', value: 0.8 }]
    const covered = { ...here, swap: { ...here.swap, factors } } as unknown as PlacedSwap
    expect(warmth(job, [covered])[0]?.givesW).toBe(800)
    // A rating given at 75/65/20 is the same as none given.
    const rating = { flowC: 75, returnC: 65, roomC: 20 }
    const rated = { ...here, emitter: { ...here.emitter, rating } } as unknown as PlacedSwap
    expect(warmth(job, [rated])[0]?.givesW).toBe(1000)
  })

  it('is not called rough where the room was measured', () => {
    const heat = { volumeM3: 20, floorAreaM2: 8, airChangesPerHour: 1, elements: [] }
    // One air change of 20 m3 from -3 to 20 degrees: 0.34 Wh/(m3 K) x 20 x 23 = 156.4 W (EN 12831:2003 7.2).
    const job = warmJob(50, { heat })
    expect(warmth(job)[0]?.says).toBe('Gives 1000 W where the Back bedroom needs 156 W.')
    expect(warmth(job)[0]?.rough).toBe(false)
  })

  it('takes the room with the temperature outside', () => {
    const [room] = warmJob(50).rooms
    if (room === undefined) throw new Error('There is a room')
    expect(roomHeatOf(room, -4)).toEqual({
      name: 'Back bedroom',
      roomC: 20,
      outsideC: -4,
      volumeM3: 20,
      roughWPerM3: 50,
    })
  })

  it('names the room whose figures cannot be reckoned by its place in the job', () => {
    const job = warmJob(Number.NaN)
    const [room] = job.rooms
    if (room === undefined) throw new Error('There is a room')
    const second = { ...job, rooms: [{ ...room, roomId: 'hall' }, room] }
    const placed = [{ ...placedIn(job), room }]
    expect(refused(warmthOf(second, placed))).toMatchObject({ path: 'job.rooms[1].heat.roughWPerM3' })
    expect(refused(warmthOf({ ...job }, placed)).path).toBe('job.rooms[0].heat.roughWPerM3')
  })

  it('names the system where its emitter cannot be reckoned', () => {
    const job = warmJob(50)
    const here = placedIn(job)
    const none = { ...here, emitter: { ...here.emitter, ratedW: 0 } }
    expect(refused(warmthOf(job, [none]))).toMatchObject({
      message: 'The rated output must be more than 0 W; it was 0.',
      path: 'job.survey.system.ratedW',
    })
  })
})

describe('money for time and distance', () => {
  it('is to the nearest penny, a half up', () => {
    expect([penceForMinutes(90, 5200), penceForMinutes(0.5, 60), penceForMinutes(0.499, 60)]).toEqual([
      7800, 1, 0,
    ])
    // A thousandth of a minute counts, less does not: 0.4999 is 0.5.
    expect(penceForMinutes(0.4999, 60)).toBe(1)
    expect([pencePerKm(24.5, 45), pencePerKm(0, 45), pencePerKm(0.0004, 1_000_000)]).toEqual([1103, 0, 0])
  })

  it('is no line where there is no way, and no allowance where the firm takes none', () => {
    expect(
      travelLines(bedroomJob({ site: { addressLines: ['1 Example Row'], travelKm: 0 } }), figures),
    ).toEqual([])
    const none = { says: 'None', value: 0, unit: 'BasisPoints' as const, source: 'the firm' }
    const settings = { ...figures.settings, 'money.contingencyBasisPoints': none }
    expect(contingencyLines([], { ...figures, settings })).toEqual([])
    expect(contingencyLines([], figures)).toMatchObject([{ netPence: 0 }])
  })
})

describe('labour as lines', () => {
  const facts = () => factsOf([swapOf('swap-1', 'bedroom'), swapOf('swap-2', 'bedroom')])
  const lines = () => {
    const works = jobWork(facts(), figures)
    const labour = answered(labourFor(works, figures))
    const placed = [placedIn(), placedIn(undefined, 'swap-2')]
    return answered(labourLines(works, placed, { labour, figures }))
  }

  it('is a line for each swap and one for what is shared: the room’s own work goes with the job', () => {
    // Each swap: take-off... four half hours; the room is set up and cleared once for both, which no swap has alone.
    const told = lines().map(({ lineId, swapIds, shared, netPence, quantity }) => [
      lineId,
      swapIds,
      shared,
      netPence === quantity * 100,
    ])
    expect(told).toEqual([
      ['labour-1', ['swap-1'], false, true],
      ['labour-2', ['swap-2'], false, true],
      ['labour-3', [], true, true],
    ])
    const total = lines().reduce((sum, { netPence }) => sum + netPence, 0)
    expect(lines()[2]?.why.from.slice(1)).toEqual([
      figureWhy(figures, 'money.labourPencePerHour'),
      given('Labour of the whole job', total, 'pence'),
    ])
  })
})

describe('what is heavy on the pick list', () => {
  const lifts = (ask: Partial<SwapAsk>) =>
    buildPickList(
      {
        purchases: [],
        boxUses: [
          { kind: 'plug', spec: { bitMm: 8 }, quantity: 4, swapId: 'a', why: because('In the box', 4) },
        ],
        takeOff: { lines: [], fromBox: [], cautions: [], tools: [], why: given('Rules', 1) },
      },
      { gaps: [] },
      { placed: [], facts: factsOf([swapOf('a', 'hall', { ask: { ...typical.swap, ...ask } })]), figures },
    )
  const says = 'Over what one person should lift here: two people or a lifting aid.'

  it('is the new one over 25 kg, or over 20 kg where there are stairs', () => {
    expect(lifts({ emitterMassKg: 25 }).lifts).toEqual([])
    expect(lifts({ emitterMassKg: 25.1 }).lifts).toEqual([{ swapId: 'a', name: 'Panel', massKg: 25.1, says }])
    expect(lifts({ emitterMassKg: 21, storey: 1 }).lifts).toHaveLength(1)
  })

  it('is the old one too, by its name or without', () => {
    expect(lifts({ oldName: 'Old column', oldMassKg: 30 }).lifts).toEqual([
      { swapId: 'a', name: 'Old: Old column', massKg: 30, says },
    ])
    expect(lifts({ oldMassKg: 30 }).lifts).toEqual([{ swapId: 'a', name: 'Old: emitter', massKg: 30, says }])
    expect(lifts({ oldMassKg: 25 }).lifts).toEqual([])
    expect(lifts({ oldMassKg: 21, storey: 1 }).lifts).toHaveLength(1)
  })

  it('stands beside what the boxes bring', () => {
    expect(lifts({}).fromBox).toEqual([{ name: 'wall plug (bit 8 mm)', quantity: 4, swapId: 'a' }])
    expect(lifts({})).not.toHaveProperty('split')
    expect(lifts({})).not.toHaveProperty('fromVan')
  })
})
