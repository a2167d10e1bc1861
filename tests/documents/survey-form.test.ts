import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { surveyFormDocument } from '../../src-main/documents/survey-form/form-document.ts'
import { surveyFormView } from '../../src-main/documents/survey-form/form-view.ts'
import { job as jobShape } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import sample from '../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { filesLike, textOf } from '../shape/source-files.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { quickEntry } from '../quick-room-for-tests.ts'
import { readPdf } from './read-pdf.ts'

const createdOn = '2026-11-25'

async function read(job: Job | null, rooms = 1) {
  const { bytes } = await printPdf(surveyFormDocument(surveyFormView(job, rooms)), { createdOn })
  return readPdf(bytes)
}

/** Every question of the form, in its order. */
function labels(job: Job | null): readonly string[] {
  return surveyFormView(job, 1).pages.flatMap(({ parts, wall }) => [
    ...parts.flatMap(({ fields }) => fields.map(({ label }) => label)),
    ...(wall?.columns ?? []),
  ])
}

/** Asked on the form alone: in the window these are chosen from lists or drawings. */
const ofTheForm = ['What the customer wants', 'Where its middle goes', 'Finish of the valves', 'Kind']

describe('the survey form, blank', { timeout: 60_000 }, () => {
  it('is one page for the house and three for each room', async () => {
    expect((await read(null, 1)).pages).toHaveLength(4)
    const two = await read(null, 2)
    expect(two.pages).toHaveLength(7)
    expect(two.pages.map(([title]) => title)).toEqual([
      'The house',
      'Room 1',
      'Room 1: the wall',
      'Room 1: the swap',
      'Room 2',
      'Room 2: the wall',
      'Room 2: the swap',
    ])
  })

  it('asks every question, with every choice', async () => {
    const { told } = await read(null)
    for (const label of labels(null)) expect(told).toContain(label)
    for (const choice of ['Before 1900', '2012 or later', 'A flat roof or sloping ceiling', 'Open vented'])
      expect(told).toContain(choice)
    expect(told).toContain('One square is')
  })

  it('asks in the words of the window', () => {
    const words = filesLike([
      'src-renderer/screens/job/**/*.words.ts',
      'src-renderer/screens/job/**/*.tsx',
      'src-renderer/parts/**/*words.ts',
    ])
      .map(textOf)
      .join('\n')
    const strange = labels(null).filter((label) => !ofTheForm.includes(label) && !words.includes(label))
    expect(strange).toEqual([])
  })
})

describe('the survey form of a job', { timeout: 60_000 }, () => {
  const job = bedroomJob()
  const [room] = job.rooms
  if (room === undefined) throw new Error('The test job has a room')

  it('says what the job already says, each in its box', async () => {
    const { told, pages } = await read(job)
    for (const says of ['Test Customer', '01632 960001', '1 Example Row, Sampleton', '1962', '3200', '120'])
      expect(told).toContain(says)
    expect(pages.map(([title]) => title)).toEqual([
      'The house',
      'Back bedroom',
      'Back bedroom: Window wall',
      'Back bedroom: the swap',
    ])
    expect(pages[2]?.join(' ')).toMatch(/Window Window 800 950 1500 1100/)
  })

  it('crosses what was chosen, and only that', () => {
    const entry = quickEntry({ outsideWallM: 5, ageBand: 'C', glazing: 'doubleOldWide', wall: 'sandstone' })
    const view = surveyFormView({ ...job, rooms: [{ ...room, quick: { entry } }] }, 1)
    const ticked = view.pages.flatMap(({ parts }) =>
      parts.flatMap(({ fields }) =>
        fields.flatMap((field) =>
          field.kind === 'ticks'
            ? field.choices.filter((choice) => choice.ticked).map(({ says }) => `${field.label}: ${says}`)
            : [],
        ),
      ),
    )
    for (const says of [
      'System: Sealed',
      'Used as: Bedroom',
      'Floor covering: Carpet',
      'Age of the house: 1930 to 1949',
      'Glazing: Double before 2002',
      'Built as: Stone',
      'Outside walls: One',
      'Built of: Solid masonry',
      'Flush the system with a cleaner: No',
    ])
      expect(ticked).toContain(says)
    const most = view.pages.flatMap(({ parts }) =>
      parts.flatMap(({ fields }) =>
        fields.map((field) =>
          field.kind === 'ticks' ? field.choices.filter((one) => one.ticked).length : 0,
        ),
      ),
    )
    expect(Math.max(...most)).toBe(1)
  })

  it('of a job with every box filled has no page for what ran over', async () => {
    expect((await read(jobShape.parse(sample))).pages).toHaveLength(7)
  })

  it('has pages for a room although the job has none', () => {
    expect(surveyFormView(bedroomJob({ rooms: [], swaps: [] }), 1).pages.map(({ title }) => title)).toEqual([
      'The house',
      'Room 1',
      'Room 1: the wall',
      'Room 1: the swap',
    ])
  })

  it('keeps a wall with many things on it on one page', async () => {
    const [wall] = room.walls
    if (wall === undefined) throw new Error('The test room has a wall')
    const obstacles = Array.from({ length: 12 }, (_, nth) => ({
      obstacleId: `thing-${nth}`,
      name: `Thing ${nth}`,
      kind: 'socket' as const,
      xMm: nth * 100,
      yMm: 300,
      widthMm: 80,
      heightMm: 80,
    }))
    const full = { ...job, rooms: [{ ...room, walls: [{ ...wall, obstacles }] }] }
    expect((await read(full)).pages).toHaveLength(4)
  })
})
