import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import type { FileQuote } from '../../../../src-main/contract/job.ts'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { nthIn } from '../../../../src-main/desk/quote-life/quotes-in-file.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import { numberIn, seriesOf } from '../../../../src-main/engine/quote/life/quote-number.ts'
import { ask, deskOfToday, job } from './issued-for-tests.ts'

// Quotes are issued and printed first: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 120_000 })

const { jobId } = job
const variation = {
  variationId: 'v1',
  onDay: '2026-03-02',
  what: 'A towel rail in the bathroom',
  agreed: 'inWriting' as const,
  said: 'Yes please, as we said on the landing.',
  netPence: 120_00,
  rateKey: 'standard' as const,
}
const afterJob = { tasks: [], parts: [], variations: [variation], paidPence: 500_00 }

type JobFile = AnswerOf<'job.export'>
type WithQuotes = JobFile & { readonly quotes: readonly FileQuote[] }

/** A job with a quote, its revision sent and accepted, and what was noted after the job; as its file. */
async function fileOfLife(): Promise<{ readonly desk: Desk; readonly file: WithQuotes }> {
  const desk = await deskOfToday()
  await ask(desk, 'job.save', { job })
  await ask(desk, 'quote.issue', { job })
  const { quoteId } = await ask(desk, 'quote.issue', {
    job,
    revises: 'Q-2026-0001',
    reason: 'A cheaper valve',
  })
  await ask(desk, 'quote.mark', { quoteId, kind: 'sent' })
  await ask(desk, 'quote.mark', { quoteId, kind: 'accepted', reason: 'By telephone' })
  await ask(desk, 'afterJob.save', { quoteId, afterJob })
  await ask(desk, 'afterJob.close', { quoteId })
  return { desk, file: await exported(desk) }
}

async function exported(desk: Desk): Promise<WithQuotes> {
  const file = await ask(desk, 'job.export', { jobId, quotes: true })
  if (file.quotes === undefined) throw new Error('The quotes are not in the file')
  return { ...file, quotes: file.quotes }
}

/** The file with one of its quotes changed. */
function changed(file: WithQuotes, at: number, change: (quote: FileQuote) => object): unknown {
  return {
    ...file,
    quotes: file.quotes.map((quote, i) => (i === at ? { ...quote, ...change(quote) } : quote)),
  }
}

const nextNumber = async (desk: Desk) => (await ask(desk, 'quote.nextNumber', {})).number

describe('issued quotes in a job file', () => {
  it('are there only where they are asked for, the first issued first, with all that is needed to check them', async () => {
    const { desk, file } = await fileOfLife()
    expect(await ask(desk, 'job.export', { jobId })).not.toHaveProperty('quotes')
    expect(await ask(desk, 'job.export', { jobId, quotes: false })).not.toHaveProperty('quotes')
    expect(file).not.toHaveProperty('photos')
    expect(await ask(desk, 'job.export', { jobId, quotes: true, photos: true })).toEqual({
      ...file,
      photos: [],
    })
    expect(file.quotes.map(({ quoteId, number, revision }) => [quoteId, number, revision])).toEqual([
      ['Q-2026-0001', 'Q-2026-0001', 0],
      ['Q-2026-0001-R1', 'Q-2026-0001', 1],
    ])
    expect(file.quotes.map(({ events }) => events.map(({ kind }) => kind))).toEqual([
      ['issued', 'replaced'],
      ['issued', 'sent', 'accepted'],
    ])
    for (const { pdf } of file.quotes) {
      const bytes = Buffer.from(pdf?.base64 ?? '', 'base64')
      expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
      expect(createHash('sha256').update(bytes).digest('hex')).toBe(pdf?.sha256)
    }
    expect(file.quotes.map((quote) => quote.afterJob)).toEqual([
      undefined,
      { body: afterJob, closedOn: '2026-03-02' },
    ])
  })

  it('are taken into another data file as they were, and their numbers are not given again', async () => {
    const { desk, file } = await fileOfLife()
    const there = await deskOfToday()
    expect(await ask(there, 'job.import', file)).toEqual({ jobId, replaced: false, quotes: 2 })
    expect(await exported(there)).toEqual(file)
    expect(JSON.stringify(await exported(there))).toBe(JSON.stringify(file))
    for (const { quoteId } of file.quotes) {
      expect(await ask(there, 'quote.read', { quoteId })).toEqual(await ask(desk, 'quote.read', { quoteId }))
    }
    const account = { quoteId: 'Q-2026-0001-R1' }
    expect(await ask(there, 'afterJob.account', account)).toEqual(
      await ask(desk, 'afterJob.account', account),
    )
    expect(await nextNumber(there)).toBe('Q-2026-0002')
  })

  it('are not taken in twice, and nothing is said of those that are the same', async () => {
    const { desk, file } = await fileOfLife()
    const again = await ask(desk, 'job.import', { ...file, replace: true })
    expect(again).toEqual({ jobId, replaced: true, quotes: 0 })
    expect((await exported(desk)).quotes).toEqual(file.quotes)
  })

  it('leave another quote of their number as it is, and are named', async () => {
    const { file } = await fileOfLife()
    const there = await deskOfToday()
    await ask(there, 'quote.issue', { job: { ...job, jobId: 'another-job' } })
    expect(await ask(there, 'job.import', file)).toEqual({
      jobId,
      replaced: false,
      quotes: 0,
      leftOut: [
        'Q-2026-0001 was left out: this data file has another quote called Q-2026-0001, already.',
        'Q-2026-0001-R1 was left out: this data file has Q-2026-0001, of the number Q-2026-0001, already.',
      ],
    })
    expect((await ask(there, 'quote.list', {})).quotes.map((row) => row.jobId)).toEqual(['another-job'])
    expect((await ask(there, 'job.read', { jobId })).job.jobId).toBe(jobId)
  })

  it('keep the history that is noted here, and say so', async () => {
    const { desk, file } = await fileOfLife()
    await ask(desk, 'quote.mark', {
      quoteId: 'Q-2026-0001-R1',
      kind: 'withdrawn',
      reason: 'The house was sold',
    })
    const taken = await ask(desk, 'job.import', { ...file, replace: true })
    const says = 'Q-2026-0001-R1 is here already; what happened to it stays as it is noted here.'
    expect(taken).toEqual({ jobId, replaced: true, quotes: 0, leftOut: [says] })
    expect((await ask(desk, 'quote.read', { quoteId: 'Q-2026-0001-R1' })).quote.state).toBe('withdrawn')
  })

  it('move the series on to the highest of their numbers, and never back', async () => {
    const { file } = await fileOfLife()
    const [first] = file.quotes
    const renamed = (number: string) => ({
      job: file.job,
      replace: true,
      quotes: first === undefined ? [] : [{ ...first, quoteId: number, number }],
    })
    const there = await deskOfToday()
    await ask(there, 'job.import', renamed('Q-2026-0041'))
    expect(await nextNumber(there)).toBe('Q-2026-0042')
    await ask(there, 'job.import', renamed('Q-2026-0007'))
    expect(await nextNumber(there)).toBe('Q-2026-0042')
    // Of no series of this firm: nothing moves.
    await ask(there, 'job.import', renamed('OLD-0099'))
    expect(await nextNumber(there)).toBe('Q-2026-0042')
  })

  it('may have no PDF, where they were kept before there were any', async () => {
    const { file } = await fileOfLife()
    const quotes = file.quotes.map((quote) => ({ ...quote, pdf: null }))
    const there = await deskOfToday()
    expect(await ask(there, 'job.import', { ...file, quotes })).toMatchObject({ quotes: 2 })
    expect((await exported(there)).quotes).toEqual(quotes)
  })
})

const letter = Buffer.from('a letter, no quote').toString('base64')
const otherPdf = Buffer.from('%PDF-1.7 another').toString('base64')
type Wrong = readonly [
  what: string,
  at: number,
  change: (quote: FileQuote) => object,
  path: string,
  says: RegExp,
]

const wrongs: readonly Wrong[] = [
  [
    'a changed PDF',
    1,
    ({ pdf }) => ({ pdf: { ...pdf, base64: otherPdf } }),
    'pdf.base64',
    /has changed since/,
  ],
  ['a letter', 0, ({ pdf }) => ({ pdf: { ...pdf, base64: letter } }), 'pdf.base64', /no PDF.*%PDF-/],
  ['no base64', 1, ({ pdf }) => ({ pdf: { ...pdf, base64: 'abc' } }), 'pdf.base64', /not written in base64/],
  [
    'odd letters',
    1,
    ({ pdf }) => ({ pdf: { ...pdf, base64: 'ab c' } }),
    'pdf.base64',
    /not written in base64/,
  ],
  ['another name', 1, () => ({ quoteId: 'Q-2026-0001-R2' }), 'quoteId', /is called Q-2026-0001-R1/],
  ['the same name twice', 1, () => ({ quoteId: 'Q-2026-0001' }), 'quoteId', /in the file twice/],
  ['a day too early', 0, () => ({ validUntil: '2026-03-01' }), 'validUntil', /valid until 2026-03-01/],
  [
    'another sum',
    0,
    ({ grossPence }) => ({ grossPence: grossPence + 1 }),
    'grossPence',
    /comes to \d+ pence/,
  ],
  ['no job in it', 1, ({ snapshot: { job: _job, ...rest } }) => ({ snapshot: rest }), 'snapshot.job', /job/i],
  [
    'another job',
    0,
    ({ snapshot }) => ({ snapshot: { ...snapshot, job: { ...job, jobId: 'other' } } }),
    'snapshot.job.jobId',
    /for the job other/,
  ],
  [
    'a beginning without issue',
    1,
    ({ events }) => ({ events: events.slice(1) }),
    'events[0].kind',
    /begins with its issue, not with “sent”/,
  ],
  [
    'two issues',
    1,
    ({ events }) => ({ events: [...events.slice(0, 1), ...events] }),
    'events[1].kind',
    /issued once/,
  ],
  [
    'an issue on another day',
    1,
    ({ events }) => ({ events: events.map((event) => ({ ...event, onDay: '2026-03-01' })) }),
    'events[0].onDay',
    /not issued on 2026-03-01/,
  ],
  [
    'an issue that is to come',
    1,
    ({ events }) => ({
      issuedOn: '2026-03-03',
      events: events.map((event) => ({ ...event, onDay: '2026-03-03' })),
    }),
    'events[0].onDay',
    /2026-03-03 is still to come/,
  ],
  [
    'something after it was replaced',
    0,
    ({ events }) => ({ events: [...events, { ...events[0], kind: 'sent' }] }),
    'events[2].kind',
    /replaced by a later revision/,
  ],
  [
    'a day that runs back',
    1,
    ({ events }) => ({
      events: events.map((event, at) => (at === 2 ? { ...event, onDay: '2026-03-01' } : event)),
    }),
    'events[2].onDay',
    /before the last thing/,
  ],
  [
    'a job that nobody accepted',
    1,
    ({ events }) => ({ events: events.slice(0, 2) }),
    'afterJob',
    /never accepted/,
  ],
  [
    'a job that is closed tomorrow',
    1,
    () => ({ afterJob: { body: afterJob, closedOn: '2026-03-03' } }),
    'afterJob.closedOn',
    /still to come/,
  ],
]

describe('a job file with a quote that cannot be', () => {
  it('is refused with the place of what is wrong, and nothing at all is taken in', async () => {
    const { file } = await fileOfLife()
    const there = await deskOfToday()
    for (const [what, at, change, path, says] of wrongs) {
      const said = await answer('job.import', changed(file, at, change), there)
      const problems = said.ok ? [] : said.problems.map((one) => [one.path, one.message])
      expect([what, problems]).toEqual([what, [[`quotes[${at}].${path}`, expect.stringMatching(says)]]])
    }
    expect((await ask(there, 'quote.list', {})).quotes).toEqual([])
    expect(await answer('job.read', { jobId }, there)).toMatchObject({ ok: false })
    expect(await nextNumber(there)).toBe('Q-2026-0001')
  })

  it('tells all that is wrong at once', async () => {
    const { file } = await fileOfLife()
    const quotes = file.quotes.map((quote) => ({ ...quote, grossPence: 1, validUntil: '2026-01-01' }))
    const said = await answer('job.import', { ...file, quotes }, await deskOfToday())
    expect(said.ok ? [] : said.problems.map(({ path }) => path)).toEqual([
      'quotes[0].validUntil',
      'quotes[0].grossPence',
      'quotes[1].validUntil',
      'quotes[1].grossPence',
      // Its day was past when it was sent.
      'quotes[1].events[1].kind',
    ])
  })

  it('takes in no quote where the job itself stands already', async () => {
    const { file } = await fileOfLife()
    const there = await deskOfToday()
    await ask(there, 'job.save', { job })
    expect(await answer('job.import', file, there)).toMatchObject({
      ok: false,
      problems: [{ code: 'conflict', path: 'job.jobId' }],
    })
    expect((await ask(there, 'quote.list', {})).quotes).toEqual([])
  })
})

describe('the place of a number in its series', () => {
  it('is found for every number that a pattern gives', () => {
    const part = fc.stringMatching(/^[A-Za-z0-9._-]{0,6}$/)
    const pattern = fc
      .tuple(part, fc.constantFrom('', '{year}', '{yy}'), part, fc.integer({ min: 1, max: 8 }), part)
      .map(([a, year, b, digits, c]) => `${a}${year}${b}{${'n'.repeat(digits)}}${c}`)
    fc.assert(
      fc.property(pattern, fc.integer({ min: 1, max: 99_999_999 }), (written, nth) => {
        const series = seriesOf(written, '2026-03-02')
        expect(nthIn(series, numberIn(series, nth))).toBe(nth)
      }),
    )
  })

  it.each([
    'Q-2025-0001',
    'Q-2026-0000',
    'Q-2026-001',
    'Q-2026-00012',
    'Q-2026-',
    'Q-2026-1e3',
    'Q-2026-0001-A',
  ])('is none for %s, which is no number of Q-2026-{nnnn}', (number) => {
    expect(nthIn('Q-2026-{nnnn}', number)).toBeNull()
  })

  it('is none where beginning and end of the pattern run into each other', () => {
    expect(nthIn('AA{n}AA', 'AAA')).toBeNull()
  })
})
