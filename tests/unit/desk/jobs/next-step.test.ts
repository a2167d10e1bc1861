import { describe, expect, it } from 'vitest'
import { because } from '../../../../src-main/domain/derivation.ts'
import { accept, refuse } from '../../../../src-main/domain/outcome.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import { nextStep, openGapLines } from '../../../../src-main/desk/jobs/next-step.ts'
import { bedroomJob } from '../../../job-for-tests.ts'

type Worked = Parameters<typeof nextStep>[1]
type Known = Extract<NonNullable<Worked>, { readonly ok: true }>['value']

const why = because('A line for a test', 1)
const line = (lineKey: string, changes: object = {}): Known['takeOff']['lines'][number] => ({
  lineKey,
  name: lineKey,
  itemKind: 'vent',
  spec: {},
  quantity: 1,
  unit: 'each',
  generic: false,
  shared: false,
  swapIds: [],
  why,
  ...changes,
})
const unknown = (lineKey: string) => line(lineKey, { gap: 'The catalogue has no vent.' })
const unpriced = (lineKey: string) => line(lineKey, { gap: 'Nobody sells it.', itemId: 'vent-1' })

/** A job worked out, with these lines; every gap is open but those that are waived. */
function worked(lines: Known['takeOff']['lines'], waived: readonly string[] = []): NonNullable<Worked> {
  const gaps = lines
    .filter((one) => one.gap !== undefined)
    .map(({ lineKey, gap = '' }) => ({
      gapKey: lineKey,
      says: gap,
      ...(waived.includes(lineKey) ? { waived: 'he brings it' } : {}),
    }))
  const quote = { gaps } as Pick<Known['quote'], 'gaps'> as Known['quote']
  const takeOff = { lines } as Pick<Known['takeOff'], 'lines'> as Known['takeOff']
  return accept({ firm: { name: 'Invented Heating', addressLines: [] }, takeOff, quote })
}

const job = (changes: Partial<Job> = {}) => bedroomJob(changes)

describe('the next thing to do for a job', () => {
  it('is a room, then a swap', () => {
    expect(nextStep(job({ rooms: [], swaps: [] }), null)).toBe('Add a room')
    expect(nextStep(job({ swaps: [] }), null)).toBe('Add a swap')
  })

  it('is an emitter, where a swap has none that the catalogue knows', () => {
    expect(nextStep(job(), refuse('not-found', 'No such emitter.', 'job.swaps[3].emitterId'))).toBe(
      'Choose an emitter',
    )
  })

  it('is to put right whatever else is wrong, counted', () => {
    const wrong = refuse('invalid', 'It is wrong.', 'job.swaps[0].wallId')
    expect(nextStep(job(), wrong)).toBe('Put the survey right: one thing is wrong')
    const problems = wrong.ok ? [] : [...wrong.problems, ...wrong.problems]
    expect(nextStep(job(), { ok: false, problems })).toBe('Put the survey right: 2 things are wrong')
  })

  it('is the missing parts, by what they lack', () => {
    expect(nextStep(job(), worked([unpriced('a'), line('b')]))).toBe('1 part is missing a price')
    expect(nextStep(job(), worked([unpriced('a'), unpriced('b')]))).toBe('2 parts are missing a price')
    expect(nextStep(job(), worked([unknown('a')]))).toBe('1 part is not in the catalogue')
    expect(nextStep(job(), worked([unknown('a'), unpriced('b'), line('c')]))).toBe(
      '2 parts are not in the catalogue, or without a price',
    )
  })

  it('passes over a gap that was left out on purpose', () => {
    expect(nextStep(job(), worked([unknown('a')], ['a']))).toBe('Make the quote')
  })

  it('follows the stage once all parts are there', () => {
    const whole = worked([line('a')])
    expect(nextStep(job(), whole)).toBe('Make the quote')
    expect(nextStep(job({ stage: 'surveying' }), whole)).toBe('Make the quote')
    expect(nextStep(job({ stage: 'quoted' }), whole)).toBe('Wait for the customer’s answer')
    expect(nextStep(job({ stage: 'accepted' }), whole)).toBe('Order the parts')
  })

  it('is nothing when the job is over, whatever is missing', () => {
    expect(nextStep(job({ stage: 'done' }), worked([unknown('a')]))).toBeNull()
    expect(nextStep(job({ stage: 'lost', rooms: [], swaps: [] }), null)).toBeNull()
  })

  it('is the firm, where nobody knows yet who the quote is from', () => {
    const whole = worked([line('a')])
    const nobody = whole.ok ? accept({ ...whole.value, firm: null }) : whole
    expect(nextStep(job(), nobody)).toBe('Give your firm’s details')
  })
})

describe('open gaps', () => {
  it('are the lines with a gap that is not waived', () => {
    const known = worked([unknown('a'), unpriced('b'), line('c')], ['b'])
    expect(known.ok ? openGapLines(known.value).map((one) => one.itemId) : []).toEqual([undefined])
  })
})
