import { describe, expect, it } from 'vitest'
import { because } from '../../../../src-main/domain/derivation.ts'
import { figureWhy } from '../../../../src-main/domain/figures.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import { labourOfJob } from '../../../../src-main/engine/labour/labour-of-job.ts'
import { answered } from '../../../answered.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'
import { figures as halfHours } from '../quote/work-for-tests.ts'
import { typical } from '../../../typical-asks.ts'

/** Half an hour for every task, but two minutes a kilometre, so that every sum here is done in the head. */
const travel = {
  taskId: 'travel',
  name: 'Travel',
  optimisticMin: 2,
  likelyMin: 2,
  pessimisticMin: 2,
  source: 'invented',
}
const figures: Figures = { ...halfHours, tasks: { ...halfHours.tasks, travel } }

/** One emitter of 30 kg where one person lifts 25, in tight access and a house that is lived in, 10 km away. */
const ask = { ...typical.swap, emitterMassKg: 30, oldName: 'Old panel', tightAccess: true as const }
const facts = factsOf([swapOf('a', 'bedroom', { ask })], { travelKm: 10, occupied: true })
/** Worked out anew inside each test, so that each is answerable for it. */
const labour = () => answered(labourOfJob(facts, figures))
const room = () => labour().tasks.rooms[0]
const task = (taskId: string) =>
  [...(room()?.tasks ?? []), ...labour().tasks.shared].find((one) => one.taskId === taskId)

const tight = {
  name: 'Tight access',
  how: 'times' as const,
  factor: 1.5,
  reason: 'The survey says that there is no room to stand close and work.',
}
const occupied = {
  name: 'Occupied house',
  how: 'times' as const,
  factor: 1.25,
  reason: 'People live in the house while the work goes on.',
}
const two = {
  name: 'Two people to lift',
  how: 'times' as const,
  factor: 2,
  reason: 'Panel is over what one person should lift: both give their time.',
}

describe('the labour of a job, summed by hand', () => {
  // Room: set-up 37.5, take-off 45, set-out 45, dress 30, hang 2 x 45, balance 30, clear-up 37.5. Once: 4 x 30 and 20 km x 2.
  it('is paid by the people: 315 minutes in the room and 160 for the whole job', () => {
    expect(room()).toMatchObject({ roomId: 'bedroom', name: 'Bedroom', expectedMin: 315 })
    expect(labour().expectedMin).toBe(475)
    expect(labour().sdMin).toBe(0)
  })
  it('is shorter by the clock: two hang it in 45 minutes, not 90', () => {
    expect([labour().p50Min, labour().p80Min]).toEqual([430, 430])
    expect(labour().why).toMatchObject({
      says: 'From start to finish by the clock, four jobs in five take less.',
      value: 430,
      unit: 'min',
    })
    expect(labour().why.from.slice(1)).toEqual([labour().crew.why, labour().days.why])
    expect(labour().why.from[0]?.value).toBe(430)
  })
  it('leaves travel out of the time on site: 430 - 40', () => {
    expect(labour().days).toMatchObject({ p50SiteMin: 390, p80SiteMin: 390, dayMin: 420, p80Days: 1 })
  })
  it('has two people for 45 minutes, and names what nobody weighed', () => {
    expect(labour().crew).toMatchObject({
      people: 2,
      togetherMin: 45,
      aloneMin: 385,
      notWeighed: ['Old panel in the Bedroom'],
    })
    expect(labour().crew.lifts.map(({ swapId, how, people }) => [swapId, how, people])).toEqual([
      ['a', 'carryIn', 2],
      ['a', 'hang', 2],
    ])
    expect(labour().crew).not.toHaveProperty('aid')
  })
})

describe('each task of a job', () => {
  it('stands in its room, or with what is done once', () => {
    expect(
      room()
        ?.tasks.map(({ taskId, expectedMin }) => [taskId, expectedMin])
        .toSorted(),
    ).toEqual([
      ['balance', 30],
      ['clear-up', 37.5],
      ['dress', 30],
      ['hang', 90],
      ['set-out', 45],
      ['set-up', 37.5],
      ['take-off', 45],
    ])
    expect(
      labour()
        .tasks.shared.map(({ taskId, expectedMin }) => [taskId, expectedMin])
        .toSorted(),
    ).toEqual([
      ['drain', 30],
      ['explain', 30],
      ['fill', 30],
      ['leak-check', 30],
      ['travel', 40],
    ])
  })
  it('says how many it was before, how many after, and what made it longer', () => {
    expect(task('hang')).toMatchObject({ howMany: 1, count: 3, modifiers: [two, tight] })
    expect(task('set-up')).toMatchObject({ howMany: 1, count: 1.25, modifiers: [occupied] })
    expect(task('dress')).toMatchObject({ howMany: 1, count: 1, modifiers: [] })
    expect(task('travel')).toMatchObject({ howMany: 20, count: 20, modifiers: [] })
  })
  it('gives what made it longer as the last of its reasons', () => {
    expect(task('hang')?.why.from.slice(-2)).toEqual([
      because(`Two people to lift, already in how often: ${two.reason}`, 2),
      because(`Tight access, already in how often: ${tight.reason}`, 1.5),
    ])
    expect(task('dress')?.why.from.at(-1)?.says).toBe('Pessimistic, for one')
  })
  it('shows how often with the reason of each time', () => {
    expect(task('set-up')?.why.from[0]).toEqual(
      because('Task set-up: how often.', 1.25, {
        from: [
          because(`Occupied house: ${occupied.reason}`, 1.25, {
            from: [
              because('The Bedroom is set up and protected.', 1),
              figureWhy(figures, 'labour.occupiedRatio'),
            ],
          }),
        ],
      }),
    )
  })
  it('counts a task of two swaps in one room twice, and the room once', () => {
    const pair = [swapOf('a', 'bedroom', { ask }), swapOf('b', 'bedroom')]
    const both = answered(labourOfJob(factsOf(pair), figures)).tasks.rooms
    expect(both).toHaveLength(1)
    const how = (taskId: string) => both[0]?.tasks.find((one) => one.taskId === taskId)
    expect(how('set-up')).toMatchObject({ howMany: 1, count: 1 })
    expect(how('set-out')).toMatchObject({ howMany: 2, count: 2.5, modifiers: [tight] })
  })
  it('keeps two rooms apart', () => {
    const pair = [swapOf('a', 'bedroom'), swapOf('b', 'hall')]
    const { rooms } = answered(labourOfJob(factsOf(pair), figures)).tasks
    expect(rooms.map(({ roomId, tasks }) => [roomId, tasks.every(({ howMany }) => howMany === 1)])).toEqual([
      ['bedroom', true],
      ['hall', true],
    ])
  })
})

describe('what makes a job longer', () => {
  it('is named once each, and the house last, by (o + 4m + p) / 6', () => {
    expect(
      labour()
        .modifiers.map(({ name }) => name)
        .toSorted(),
    ).toEqual(['Occupied house', 'The house', 'Tight access', 'Two people to lift'])
    const access = (optimistic: number, likely: number, pessimistic: number): Figures => {
      const set = (id: string, value: number) => ({
        [`labour.access${id}Ratio`]: { says: id, value, unit: 'Ratio' as const, source: 'the firm' },
      })
      const settings = {
        ...set('Optimistic', optimistic),
        ...set('Likely', likely),
        ...set('Pessimistic', pessimistic),
      }
      return { ...figures, settings: { ...figures.settings, ...settings } }
    }
    // (0.9 + 4 x 1.2 + 1.5) / 6 = 7.2 / 6 = 1.2
    const awkward = answered(labourOfJob(facts, access(0.9, 1.2, 1.5)))
    expect(awkward.modifiers.at(-1)).toEqual({
      name: 'The house',
      how: 'whole',
      factor: expect.closeTo(1.2, 9),
      reason: 'Easy 0.9, usual 1.2, awkward 1.5: on the whole job, travel too.',
    })
    expect(awkward.expectedMin).toBeCloseTo(475 * 1.2, 9)
  })
  it('adds boards over a floor that marks', () => {
    const { rooms, ...rest } = factsOf([swapOf('a', 'bedroom')])
    const timber = rooms.map((one) => ({ ...one, ask: { ...one.ask, floor: 'timber' as const } }))
    const boards = answered(labourOfJob({ ...rest, rooms: timber }, figures)).tasks.rooms[0]?.tasks.find(
      ({ taskId }) => taskId === 'protect-floor',
    )
    const reason = 'The timber floor of the Bedroom marks easily.'
    expect(boards).toMatchObject({
      howMany: 2,
      count: 2,
      expectedMin: 60,
      modifiers: [{ name: 'Floor covering', how: 'adds', factor: 2, reason }],
    })
    expect(boards?.why.from.at(-1)).toEqual(because(`Added, Floor covering: ${reason}`, 2))
  })
})
