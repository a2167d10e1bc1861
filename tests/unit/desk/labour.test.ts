import { describe, expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { jobLabour, learned } from '../../../src-main/domain/labour.ts'
import type { JobLabour } from '../../../src-main/domain/labour.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { labourJob } from '../../../src-main/desk/labour/labour-job.ts'
import { labourLearn } from '../../../src-main/desk/labour/labour-learn.ts'
import { workUp } from '../../../src-main/desk/quoting/work-up.ts'
import { answered, nonFiniteIn, refused } from '../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)
const labourOf = async (changed: Job) => answered(await labourJob({ job: changed }, desk))
const withRooms = (change: Partial<Job['rooms'][number]>): Job => ({
  ...job,
  rooms: job.rooms.map((room) => ({ ...room, ...change })),
})
const whole = (labour: JobLabour) => [
  ...labour.tasks.rooms.flatMap((room) => room.tasks),
  ...labour.tasks.shared,
]
const taskIn = (labour: JobLabour, roomId: string, taskId: string) =>
  labour.tasks.rooms.find((room) => room.roomId === roomId)?.tasks.find((task) => task.taskId === taskId)
const sentences = (why: Derivation): readonly string[] => [why.says, ...why.from.flatMap(sentences)]

describe('the labour of the sample job', () => {
  it('is the time that its quote charges, task for task', async () => {
    const [labour, quoted] = [await labourOf(job), answered(await workUp(job, desk)).quote.labour]
    expect(labour.expectedMin).toBe(quoted.expectedMin)
    expect(labour.sdMin).toBe(quoted.sdMin)
    const sum = whole(labour).reduce((total, task) => total + task.expectedMin, 0)
    expect(sum).toBeCloseTo(
      quoted.tasks.reduce((total, task) => total + task.expectedMin, 0),
      9,
    )
  })

  it('is what the contract says it is, holds only finite numbers, and has each once-a-job task once', async () => {
    const labour = await labourOf(job)
    expect(jobLabour.parse(labour)).toEqual(labour)
    expect(nonFiniteIn(labour)).toEqual([])
    expect(labour.tasks.shared.map((task) => task.taskId).toSorted()).toEqual([
      'drain',
      'explain',
      'fill',
      'leak-check',
      'travel',
    ])
  })

  it('names what makes a task longer: six holes through tile take as long as twelve, the stairs a quarter more', async () => {
    const labour = await labourOf(job)
    expect(taskIn(labour, 'bathroom', 'drill-masonry')).toMatchObject({
      howMany: 6,
      count: 12,
      modifiers: [{ name: 'Tile', how: 'times', factor: 2 }],
    })
    expect(taskIn(labour, 'bathroom', 'take-off')).toMatchObject({
      howMany: 1,
      count: 1.25,
      modifiers: [{ name: 'Stairs', factor: 1.25 }],
    })
    const names = labour.modifiers.map((modifier) => modifier.name)
    expect(names).toEqual(expect.arrayContaining(['Tile', 'Stairs', 'Two people to lift', 'The house']))
    const task = taskIn(labour, 'bathroom', 'drill-masonry')
    expect(task === undefined ? [] : sentences(task.why)).toEqual(
      expect.arrayContaining([expect.stringContaining('Tile, already in how often')]),
    )
  })

  it('sends two people for the 26.8 kg panel, with an aid: hung at 450 mm two should lift 26.7 kg', async () => {
    const { crew } = await labourOf(job)
    expect(crew.people).toBe(2)
    const hung = crew.lifts.find((lift) => lift.how === 'hang' && lift.massKg === 26.8)
    expect(hung).toMatchObject({ oneKg: 20, people: 2, needsAid: true })
    expect(crew.aid).toContain('a lifting aid or a third person')
  })

  it('lets two share the hanging: 6.67 min x the house’s 1.0667 by the clock, which is charged twice', async () => {
    const labour = await labourOf(job)
    expect(labour.crew.togetherMin).toBeCloseTo((40 / 6) * (6.4 / 6), 9)
    expect(labour.p50Min).toBeCloseTo(labour.expectedMin - labour.crew.togetherMin, 9)
    expect(labour.crew.aloneMin + labour.crew.togetherMin).toBeCloseTo(labour.p50Min, 9)
  })

  it('takes a day: 338 min on site of 420, and 369 for four jobs in five', async () => {
    // By hand: 350.33 task minutes less 6.67 shared and 26.67 of travel, x 1.0667 = 338.1.
    const { days } = await labourOf(job)
    expect(days.p50SiteMin.toFixed(1)).toBe('338.1')
    expect(days).toMatchObject({ dayMin: 420, p50Days: 1, p80Days: 1, furtherTravelMin: 0 })
  })

  it('takes more days when the working day is short, and more travel with them', async () => {
    const short = await labourOf({ ...job, figures: { 'labour.crewHoursPerDay': 2 } })
    expect(short.days).toMatchObject({ dayMin: 120, p50Days: 3 })
    // 16 km x 1.6667 min x 1.0667 = 28.44 min for each further day.
    expect(short.days.furtherTravelMin).toBeCloseTo((short.days.p80Days - 1) * 28.444, 2)
  })
})

describe('what the survey found', () => {
  it('a timber floor adds boards: 5.5 min a room, and says so', async () => {
    const [plain, timber] = [await labourOf(job), await labourOf(withRooms({ floor: 'timber' }))]
    // By hand: (3 + 4 x 5 + 10)/6 = 5.5, in two rooms, x 1.0667.
    expect(timber.expectedMin - plain.expectedMin).toBeCloseTo(2 * 5.5 * (6.4 / 6), 9)
    expect(taskIn(timber, 'bathroom', 'protect-floor')?.modifiers).toMatchObject([
      { name: 'Floor covering', how: 'adds', factor: 1 },
    ])
  })

  it('a tight room takes a quarter longer at the wall, and its lifts count as with arms stretched out', async () => {
    const tight = await labourOf(withRooms({ tightAccess: true }))
    expect(taskIn(tight, 'bathroom', 'valve')).toMatchObject({
      howMany: 2,
      count: 2.5,
      modifiers: [{ name: 'Tight access', factor: 1.25 }],
    })
    expect(taskIn(tight, 'bathroom', 'drill-masonry')).toMatchObject({ howMany: 6, count: 15 })
    expect(tight.crew.lifts.find((lift) => lift.how === 'hang' && lift.massKg === 26.8)?.oneKg).toBe(10)
    expect(taskIn(tight, 'bathroom', 'balance')?.modifiers).toEqual([])
  })

  it('an occupied house takes half as long again to set up and clear up, and nothing else', async () => {
    const plain = await labourOf(job)
    const lived = await labourOf({ ...job, survey: { ...job.survey, occupied: true } })
    expect(taskIn(lived, 'bathroom', 'set-up')).toMatchObject({ howMany: 1, count: 1.5 })
    // By hand: half of 4 x 6.667 (two tasks in two rooms) x 1.0667.
    expect(lived.expectedMin - plain.expectedMin).toBeCloseTo((40 / 3) * (6.4 / 6), 9)
  })

  it('is charged by the quote as well', async () => {
    const tight = withRooms({ tightAccess: true })
    const quoted = answered(await workUp(tight, desk)).quote.labour
    expect((await labourOf(tight)).expectedMin).toBe(quoted.expectedMin)
  })

  it('names an old emitter that nobody weighed', async () => {
    const swaps = job.swaps.map((swap) => {
      const { dryKg: _, ...existing } = swap.existing ?? { name: 'Old', widthMm: 1, heightMm: 1 }
      return { ...swap, existing }
    })
    const { crew } = await labourOf({ ...job, swaps })
    expect(crew.notWeighed).toHaveLength(2)
    expect(crew.lifts.some((lift) => lift.how === 'carryOut')).toBe(false)
  })

  it('does not mind the order of the swaps', async () => {
    const [one, other] = [await labourOf(job), await labourOf({ ...job, swaps: job.swaps.toReversed() })]
    expect(other.p80Min).toBeCloseTo(one.p80Min, 9)
    expect(other.days).toMatchObject({ p50Days: one.days.p50Days, p80Days: one.days.p80Days })
    expect(other.crew.people).toBe(one.crew.people)
  })

  it('refuses a job that does not hang together', async () => {
    const swaps = job.swaps.map((swap) => ({ ...swap, roomId: 'nowhere' }))
    expect(refused(await labourJob({ job: { ...job, swaps } }, desk)).path).toBe('job.swaps[0].roomId')
  })
})

describe('learning the minutes of a task', () => {
  const prior = { optimisticMin: 4, likelyMin: 6, pessimisticMin: 12 }

  it('takes the firm’s weight of four tasks when none is given: (4 x 6.667 + 40) / 8 = 8.333', async () => {
    const after = answered(await labourLearn({ prior, actuals: [{ minutes: 40, count: 4 }] }, desk))
    expect(learned.parse(after)).toEqual(after)
    expect(after.expectedMin.toFixed(3)).toBe('8.333')
    expect(after).toMatchObject({ jobs: 1, count: 4, priorWeightCount: 4 })
  })

  it('or the weight that is given', async () => {
    const asked = { prior, actuals: [{ minutes: 40, count: 4 }], priorWeightCount: 1 }
    expect(answered(await labourLearn(asked, desk)).expectedMin.toFixed(3)).toBe('9.333')
  })
})
