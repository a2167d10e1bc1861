import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { QuoteEvent, QuoteEventKind, QuoteState } from '../../../domain/follow-up/quote-life.ts'

type Life = { readonly events: readonly Pick<QuoteEvent, 'kind' | 'onDay'>[]; readonly validUntil: string }

/** How a quote stands on a day, and since when. */
export type Standing = { readonly state: QuoteState; readonly since: string }

/**
 * How a quote stands: what happened last, or lapsed when the customer let its last valid day go by.
 * @param life what happened to it, in order, from its issue on; the last day it may be accepted without more ado
 * @param today YYYY-MM-DD
 * @source practice, no published source
 * @example standing({ events: [{ kind: 'issued', onDay: '2026-01-05' }], validUntil: '2026-02-04' }, '2026-02-05').state // => 'lapsed'
 */
export function standing({ events, validUntil }: Life, today: string): Standing {
  const last = events.at(-1)
  if (last === undefined) throw new Error('A quote without its issue')
  const waits = last.kind === 'issued' || last.kind === 'sent'
  return waits && today > validUntil
    ? { state: 'lapsed', since: dayAfter(validUntil) }
    : { state: last.kind, since: last.onDay }
}

function dayAfter(day: string): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)
}

/** From where each thing may happen; what is not named may not. */
const from: Readonly<Record<Exclude<QuoteEventKind, 'issued'>, readonly QuoteState[]>> = {
  sent: ['issued', 'sent'],
  accepted: ['issued', 'sent', 'lapsed', 'declined'],
  declined: ['issued', 'sent', 'lapsed'],
  withdrawn: ['issued', 'sent', 'lapsed', 'declined', 'accepted'],
  replaced: ['issued', 'sent', 'lapsed', 'declined'],
}

const inWords: Readonly<Record<QuoteState, string>> = {
  issued: 'issued and not yet sent',
  sent: 'with the customer',
  accepted: 'accepted',
  declined: 'declined',
  withdrawn: 'withdrawn',
  replaced: 'replaced by a later revision',
  lapsed: 'past its last valid day',
}

type Happening = {
  readonly kind: Exclude<QuoteEventKind, 'issued'>
  readonly onDay: string
  readonly reason?: string | undefined
}

/**
 * Whether something may happen to a quote as it stands: its order, its day and the reason it needs.
 * @param life what happened so far
 * @param happening what is to happen, on which day, and why
 * @param today YYYY-MM-DD; nothing happens later than today
 * @source practice, no published source
 * @example mayHappen({ events: [{ kind: 'issued', onDay: '2026-01-05' }], validUntil: '2026-02-04' }, { kind: 'sent', onDay: '2026-01-05' }, '2026-01-05').ok // => true
 */
export function mayHappen(life: Life, happening: Happening, today: string): Outcome<true> {
  const { kind, onDay, reason = '' } = happening
  const latest = life.events.at(-1)?.onDay ?? onDay
  if (onDay > today) return refuse('invalid', `${onDay} is still to come; give a day up to today.`, 'onDay')
  if (onDay < latest) {
    const message = `${onDay} is before the last thing that happened to this quote, on ${latest}; give that day or a later one.`
    return refuse('invalid', message, 'onDay')
  }
  const { state } = standing(life, onDay)
  if (!from[kind].includes(state)) {
    const message = `This quote is ${inWords[state]}, so it can’t be ${kind} any more.`
    return refuse('conflict', message, 'kind', wayOn[state])
  }
  const unusual = kind === 'accepted' && (state === 'lapsed' || state === 'declined')
  if (reason.trim() === '' && (unusual || kind === 'declined' || kind === 'withdrawn')) {
    const message = unusual
      ? `This quote is ${inWords[state]}; say why it is accepted all the same.`
      : `Say why the quote is ${kind}.`
    return refuse('invalid', message, 'reason')
  }
  return accept(true)
}

const wayOn: Readonly<Partial<Record<QuoteState, string>>> = {
  accepted: 'Withdraw it with a reason, or note what changes as a variation.',
  withdrawn: 'Issue the job as a new quote.',
  replaced: 'Open its newest revision.',
  lapsed: 'Issue a revision with today’s prices.',
  declined: 'Issue a revision.',
}
