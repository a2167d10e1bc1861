import { describe, expect, it } from 'vitest'
import type { Job } from '../../../src-main/domain/job.ts'
import type { Quote } from '../../../src-main/domain/quote.ts'
import { nextThing } from '../../../src-renderer/frame/next-thing.ts'
import { bedroomJob } from '../../job-for-tests.ts'

const full: Job = bedroomJob({ jobId: 'job' })
const [firstRoom] = full.rooms
const noSwaps: Job = { ...full, swaps: [] }
const empty: Job = { ...noSwaps, rooms: [] }
const quoteWith = (gaps: readonly Partial<Quote['gaps'][number]>[]) => ({ gaps }) as unknown as Quote
const open = (job: Job, more: Partial<Parameters<typeof nextThing>[0]> = {}) => ({
  job,
  quote: quoteWith([]),
  problems: [],
  ...more,
})

describe('the next thing to do in a job', () => {
  it('is what must be put right, before anything else', () => {
    const problems = [{ code: 'invalid', message: 'No.', path: 'job.survey.outsideC' }] as const
    expect(nextThing(open(empty, { problems }), '/job/job/survey')).toEqual({
      says: 'put right what is marked',
      href: '/job/job/survey/system',
      field: 'survey.outsideC',
    })
  })
  it('leads from the customer to the system, and from there to the first room', () => {
    expect(nextThing(open(empty), '/job/job/survey')?.field).toBe('survey.system.flowC')
    expect(nextThing(open(empty), '/job/job')?.href).toBe('/job/job/survey/system')
    expect(nextThing(open(empty), '/job/job/survey/system')).toEqual({
      says: 'add a room',
      href: '/job/job/survey/add-room',
      field: 'new-room-name',
    })
  })
  it('leads from a room without a swap to a swap in that room, and else to the first room that has none', () => {
    const roomId = firstRoom?.roomId ?? ''
    const wanted = {
      says: `add a swap in ${firstRoom?.name}`,
      href: `/job/job/survey/add-swap/${roomId}`,
      field: 'new-swap-oldName',
    }
    expect(nextThing(open(noSwaps), `/job/job/survey/room/${roomId}`)).toEqual(wanted)
    expect(nextThing(open(noSwaps), '/job/job/survey/system')).toEqual(wanted)
  })
  it('leaves rooms alone that need no swap, where another has one', () => {
    const more: Job = {
      ...full,
      rooms: [
        ...full.rooms,
        ...full.rooms.slice(0, 1).map((room) => ({ ...room, roomId: 'extra', name: 'Hall' })),
      ],
    }
    const swapId = full.swaps[0]?.swapId
    expect(nextThing(open(more), `/job/job/survey/swap/${swapId}`)?.href).toBe('/job/job/price')
    expect(nextThing(open(more), '/job/job/survey/room/extra')?.says).toBe('add a swap in Hall')
  })
  it('leads from the price to the first open gap, and without one to the quote', () => {
    const gaps = [{ gapKey: 'a', waived: 'The customer has it' }, { gapKey: 'b' }, { gapKey: 'c' }]
    const here = '/job/job/price'
    expect(nextThing(open(full, { quote: quoteWith(gaps) }), here)).toEqual({
      says: 'fill 2 gaps',
      href: here,
      field: 'gap b',
    })
    expect(nextThing(open(full, { quote: quoteWith(gaps.slice(0, 2)) }), here)?.says).toBe('fill the gap')
    expect(nextThing(open(full), here)).toEqual({
      says: 'make the quote',
      href: '/job/job/papers',
      field: 'make quote.pdf',
    })
  })
  it('is nothing while there is no price yet, and nothing at the papers of a job without gaps', () => {
    expect(nextThing(open(full, { quote: null }), '/job/job/price')).toBeNull()
    expect(nextThing(open(full), '/job/job/papers')).toBeNull()
    expect(nextThing(open(full, { quote: quoteWith([{ gapKey: 'a' }]) }), '/job/job/papers')?.href).toBe(
      '/job/job/price',
    )
  })
})
