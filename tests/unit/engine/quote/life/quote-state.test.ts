import { describe, expect, it } from 'vitest'
import type { QuoteEventKind } from '../../../../../src-main/domain/follow-up/quote-life.ts'
import { mayHappen, standing } from '../../../../../src-main/engine/quote/life/quote-state.ts'

const event = (kind: QuoteEventKind, onDay: string) => ({ kind, onDay })
const issued = event('issued', '2026-01-05')
const life = (...later: readonly ReturnType<typeof event>[]) => ({
  events: [issued, ...later],
  validUntil: '2026-02-04',
})
const problem = (...[of, happening, today]: Parameters<typeof mayHappen>) => {
  const outcome = mayHappen(of, happening, today)
  return outcome.ok ? null : outcome.problems[0]
}

describe('how a quote stands', () => {
  it('is what happened last, since that day', () => {
    expect(standing(life(), '2026-01-06')).toEqual({ state: 'issued', since: '2026-01-05' })
    expect(standing(life(event('sent', '2026-01-07')), '2026-01-08')).toEqual({
      state: 'sent',
      since: '2026-01-07',
    })
  })

  it('is lapsed from the day after its last valid one, across the end of a month', () => {
    const month = { events: [issued], validUntil: '2026-02-28' }
    expect(standing(month, '2026-02-28').state).toBe('issued')
    expect(standing(month, '2026-03-01')).toEqual({ state: 'lapsed', since: '2026-03-01' })
    expect(standing(life(event('sent', '2026-01-07')), '2026-02-05').state).toBe('lapsed')
  })

  it('never lapses once it is accepted, declined, withdrawn or replaced', () => {
    for (const kind of ['accepted', 'declined', 'withdrawn', 'replaced'] as const)
      expect(standing(life(event(kind, '2026-01-09')), '2030-01-01')).toEqual({
        state: kind,
        since: '2026-01-09',
      })
  })

  it('is no question for a quote that was never issued', () => {
    expect(() => standing({ events: [], validUntil: '2026-02-04' }, '2026-01-01')).toThrow(
      'without its issue',
    )
  })
})

describe('what may happen to a quote', () => {
  const day = '2026-01-10'
  const kinds = ['sent', 'accepted', 'declined', 'withdrawn', 'replaced'] as const
  const allowed = (of: Parameters<typeof mayHappen>[0], onDay = day) =>
    kinds.filter((kind) => mayHappen(of, { kind, onDay, reason: 'because' }, '2026-12-31').ok)

  it('follows from how it stands', () => {
    expect(allowed(life())).toEqual([...kinds])
    expect(allowed(life(event('sent', day)))).toEqual([...kinds])
    expect(allowed(life(event('accepted', day)))).toEqual(['withdrawn'])
    expect(allowed(life(event('declined', day)))).toEqual(['accepted', 'withdrawn', 'replaced'])
    expect(allowed(life(event('withdrawn', day)))).toEqual([])
    expect(allowed(life(event('replaced', day)))).toEqual([])
    expect(allowed(life(), '2026-02-05')).toEqual(['accepted', 'declined', 'withdrawn', 'replaced'])
  })

  it('goes by the day on which it happened: accepted on the last valid day is in time, told of later', () => {
    const accepted = { kind: 'accepted', onDay: '2026-02-04' } as const
    expect(mayHappen(life(), accepted, '2026-02-20').ok).toBe(true)
    expect(problem(life(), { ...accepted, onDay: '2026-02-05' }, '2026-02-20')).toMatchObject({
      path: 'reason',
      message: 'This quote is past its last valid day; say why it is accepted all the same.',
    })
  })

  it('wants a reason where the customer or the firm says no, or where yes comes after no', () => {
    const empty = { onDay: day, reason: '  ' }
    expect(problem(life(), { kind: 'declined', ...empty }, day)?.message).toBe(
      'Say why the quote is declined.',
    )
    expect(problem(life(), { kind: 'withdrawn', ...empty }, day)?.message).toBe(
      'Say why the quote is withdrawn.',
    )
    expect(problem(life(event('declined', day)), { kind: 'accepted', ...empty }, day)).toEqual({
      code: 'invalid',
      message: 'This quote is declined; say why it is accepted all the same.',
      path: 'reason',
    })
    expect(problem(life(), { kind: 'accepted', ...empty }, day)).toBeNull()
    expect(problem(life(), { kind: 'sent', onDay: day }, day)).toBeNull()
  })

  it('is not told of a day to come, nor of one before the last that happened', () => {
    expect(problem(life(), { kind: 'sent', onDay: '2026-01-11' }, day)).toEqual({
      code: 'invalid',
      message: '2026-01-11 is still to come; give a day up to today.',
      path: 'onDay',
    })
    expect(problem(life(), { kind: 'sent', onDay: '2026-01-04' }, day)).toEqual({
      code: 'invalid',
      message:
        '2026-01-04 is before the last thing that happened to this quote, on 2026-01-05; give that day or a later one.',
      path: 'onDay',
    })
    expect(problem(life(), { kind: 'sent', onDay: '2026-01-05' }, day)).toBeNull()
  })

  it('says what stands in the way, and the way on', () => {
    const refused = (kind: 'accepted' | 'withdrawn' | 'replaced' | 'declined', then: 'sent' | 'declined') =>
      problem(life(event(kind, day)), { kind: then, onDay: day, reason: 'because' }, day)
    expect(refused('accepted', 'declined')).toEqual({
      code: 'conflict',
      message: 'This quote is accepted, so it can’t be declined any more.',
      path: 'kind',
      next: 'Withdraw it with a reason, or note what changes as a variation.',
    })
    expect(refused('withdrawn', 'sent')?.next).toBe('Issue the job as a new quote.')
    expect(refused('replaced', 'sent')).toMatchObject({
      message: 'This quote is replaced by a later revision, so it can’t be sent any more.',
      next: 'Open its newest revision.',
    })
    expect(refused('declined', 'sent')?.next).toBe('Issue a revision.')
    expect(problem(life(), { kind: 'sent', onDay: '2026-02-05' }, '2026-02-05')?.next).toBe(
      'Issue a revision with today’s prices.',
    )
  })
})
