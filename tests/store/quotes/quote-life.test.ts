import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { openDesk } from '../../../src-main/desk/open-desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import type { QuoteState } from '../../../src-main/domain/follow-up/quote-life.ts'
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { valueOf } from '../store-for-tests.ts'

const firm = { name: 'Sampleton Test Heating', addressLines: ['2 Example Row'] }
const job: Job = { ...jobSchema.parse(sample), firm }

async function ask<N extends RequestName>(desk: Desk, name: N, input: InputOf<N>): Promise<AnswerOf<N>> {
  return valueOf(await answer(name, input, desk)) as AnswerOf<N>
}

/** A data file with the shipped catalogue, made once and copied for every story. */
let begun: string
beforeAll(async () => {
  begun = await mkdtemp(join(tmpdir(), 'tailpiece-life-'))
  const open = valueOf(await openDesk({ dataFolder: begun, mayChoosePath: false }))
  await open.close()
})
afterAll(() => rm(begun, { recursive: true }))

/** What two windows on one data file do. */
async function inTwoWindows(story: (first: Desk, second: Desk) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-life-'))
  await cp(begun, folder, { recursive: true })
  const first = valueOf(await openDesk({ dataFolder: folder, mayChoosePath: false }))
  const second = valueOf(await openDesk({ dataFolder: folder, mayChoosePath: false }))
  const today = '2026-03-02'
  try {
    await story({ ...first.desk(), today }, { ...second.desk(), today })
  } finally {
    await first.close()
    await second.close()
    await rm(folder, { recursive: true })
  }
}

describe('numbers of quotes', () => {
  it('have no gap and no repeat while two windows issue at once', async () => {
    await inTwoWindows(async (first, second) => {
      const issued = await Promise.all(
        [first, second, first, second].map((desk) => ask(desk, 'quote.issue', { job })),
      )
      const numbers = issued.map(({ number }) => number).toSorted()
      expect(numbers).toEqual([1, 2, 3, 4].map((nth) => `Q-2026-000${nth}`))
    })
  })

  it('pass over a number that another pattern gave already', async () => {
    await inTwoWindows(async (desk) => {
      const number = async (quoteNumbers: string) => {
        const issued = await ask(desk, 'quote.issue', { job: { ...job, firm: { ...firm, quoteNumbers } } })
        return issued.number
      }
      expect([await number('A{n}'), await number('A{n}')]).toEqual(['A1', 'A2'])
      // The series 26{n} and {yy}{n} of 2026 both begin with 261: the later one passes over what stands.
      expect([await number('{yy}{n}'), await number('{yy}{n}')]).toEqual(['261', '262'])
      expect([await number('2{nn}'), await number('26{n}')]).toEqual(['201', '263'])
    })
  })
})

type Known = { state: Exclude<QuoteState, 'lapsed'>; readonly quoteId: string; validUntil: string }
type Model = { readonly numbers: Known[][]; day: number }

const dayOf = ({ day }: Model) => new Date(Date.UTC(2026, 2, 2 + day)).toISOString().slice(0, 10)
const stateOf = (known: Known, today: string): QuoteState =>
  (known.state === 'issued' || known.state === 'sent') && today > known.validUntil ? 'lapsed' : known.state

/** What may follow, written down a second time and another way: by what is over. */
function allowed(state: QuoteState, kind: 'sent' | 'accepted' | 'declined' | 'withdrawn'): boolean {
  if (state === 'withdrawn' || state === 'replaced') return false
  if (kind === 'withdrawn') return true
  if (state === 'accepted') return false
  if (kind === 'sent') return state === 'issued' || state === 'sent'
  return kind === 'accepted' || state !== 'declined'
}

type Step =
  | { readonly does: 'issue'; readonly window: 0 | 1 }
  | { readonly does: 'revise'; readonly window: 0 | 1; readonly at: number; readonly old: boolean }
  | {
      readonly does: 'mark'
      readonly window: 0 | 1
      readonly at: number
      readonly revision: number
      readonly kind: 'sent' | 'accepted' | 'declined' | 'withdrawn'
    }
  | { readonly does: 'wait'; readonly days: number }

const window = fc.constantFrom(0 as const, 1 as const)
const at = fc.nat(5)
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 2, arbitrary: fc.record({ does: fc.constant('issue' as const), window }) },
  {
    weight: 2,
    arbitrary: fc.record({ does: fc.constant('revise' as const), window, at, old: fc.boolean() }),
  },
  {
    weight: 6,
    arbitrary: fc.record({
      does: fc.constant('mark' as const),
      window,
      at,
      revision: fc.nat(3),
      kind: fc.constantFrom('sent' as const, 'accepted' as const, 'declined' as const, 'withdrawn' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ does: fc.constant('wait' as const), days: fc.integer({ min: 1, max: 40 }) }),
  },
)

async function take(model: Model, windows: readonly [Desk, Desk], one: Step): Promise<void> {
  if (one.does === 'wait') {
    model.day += one.days
    return
  }
  const today = dayOf(model)
  const desk: Desk = { ...windows[one.window], today }
  if (one.does === 'issue') {
    const { quoteId, number, validUntil } = await ask(desk, 'quote.issue', { job })
    expect(number).toBe(`Q-2026-${String(model.numbers.length + 1).padStart(4, '0')}`)
    model.numbers.push([{ quoteId, state: 'issued', validUntil }])
    return
  }
  if (model.numbers.length === 0) return
  const revisions = model.numbers[one.at % model.numbers.length] ?? []
  if (one.does === 'revise') await revise(revisions, { desk, today, old: one.old })
  else {
    const known = revisions[one.revision % revisions.length]
    if (known === undefined) return
    const outcome = await answer(
      'quote.mark',
      { quoteId: known.quoteId, kind: one.kind, reason: 'so it was' },
      desk,
    )
    const may = allowed(stateOf(known, today), one.kind)
    expect([one.kind, stateOf(known, today), outcome.ok]).toEqual([one.kind, stateOf(known, today), may])
    if (may) known.state = one.kind
  }
}

async function revise(
  revisions: Known[],
  { desk, today, old }: { readonly desk: Desk; readonly today: string; readonly old: boolean },
): Promise<void> {
  const revised = old ? revisions[0] : revisions.at(-1)
  if (revised === undefined) return
  const outcome = await answer('quote.issue', { job, revises: revised.quoteId }, desk)
  const open = ['issued', 'sent', 'lapsed', 'declined'].includes(stateOf(revised, today))
  expect(outcome.ok).toBe(open && revised === revisions.at(-1))
  if (!outcome.ok) return
  const { quoteId, revision, validUntil } = outcome.value as AnswerOf<'quote.issue'>
  expect(revision).toBe(revisions.length)
  revised.state = 'replaced'
  revisions.push({ quoteId, state: 'issued', validUntil })
}

describe('the life of quotes', () => {
  it('goes as a plain model says, whatever two windows do in whatever order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 14 }), async (steps) => {
        const model: Model = { numbers: [], day: 0 }
        await inTwoWindows(async (first, second) => {
          for (const one of steps) await take(model, [first, second], one)
          const today = dayOf(model)
          const { quotes } = await ask({ ...second, today }, 'quote.list', {})
          expect(Object.fromEntries(quotes.map(({ quoteId, state }) => [quoteId, state]))).toEqual(
            Object.fromEntries(model.numbers.flat().map((known) => [known.quoteId, stateOf(known, today)])),
          )
        })
      }),
      { numRuns: 4 },
    )
  })
})
