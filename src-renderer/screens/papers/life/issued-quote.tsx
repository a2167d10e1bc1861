import { Button } from '@mantine/core'
import { useState } from 'react'
import type { IssuedQuoteRow, QuoteState } from '../../../../src-main/domain/follow-up/quote-life.ts'
import { Row } from '../../../parts/card.tsx'
import { dayInWords, money } from '../../../parts/figures-in-words.ts'
import { Verdict } from '../../../parts/notice.tsx'
import { HandOver } from './hand-over.tsx'
import { MarkForm } from './mark-form.tsx'
import type { Mark } from './mark-form.tsx'
import { Since } from './since.tsx'
import styles from './life.module.css'
import { words } from './life.words.ts'
import type { Life } from './use-life.ts'

const tones: Readonly<Record<QuoteState, 'good' | 'warn' | 'bad'>> = {
  issued: 'warn',
  sent: 'warn',
  accepted: 'good',
  declined: 'bad',
  withdrawn: 'bad',
  replaced: 'warn',
  lapsed: 'bad',
}

/** What may still be noted of a quote as it stands. */
const marksFrom: Readonly<Record<QuoteState, readonly Mark[]>> = {
  issued: ['sent', 'accepted', 'declined', 'withdrawn'],
  sent: ['accepted', 'declined', 'withdrawn'],
  accepted: ['withdrawn'],
  declined: ['accepted', 'withdrawn'],
  withdrawn: [],
  replaced: [],
  lapsed: ['accepted', 'declined', 'withdrawn'],
}

type Issued = { readonly quote: IssuedQuoteRow; readonly life: Life }

/** One issued quote: how it stands, its PDF as it went out, and what may be noted of it. */
export function IssuedQuote({ quote, life }: Issued) {
  const [marking, setMarking] = useState<Mark | null>(null)
  const [open, setOpen] = useState(false)
  const { quoteId, state } = quote
  return (
    <li className={styles.quote}>
      <div className={styles.head}>
        <h3>{quoteId}</h3>
        <Verdict tone={tones[state]}>{words.states[state]}</Verdict>
        <span className={styles.sum}>{money(quote.grossPence)}</span>
      </div>
      <p className={styles.soft}>
        {[
          words.since(dayInWords(quote.since)),
          words.revision(quote.revision),
          words.validUntil(dayInWords(quote.validUntil)),
        ].join(' · ')}
      </p>
      <HandOver quote={quote} />
      <Row>
        {marksFrom[state].map((mark) => (
          <Button
            key={mark}
            variant="default"
            aria-expanded={marking === mark}
            aria-label={words.markNamed(words.mark[mark], quoteId)}
            onClick={() => setMarking(marking === mark ? null : mark)}
          >
            {words.mark[mark]}
          </Button>
        ))}
        <Button
          variant="default"
          aria-expanded={open}
          aria-label={words.more(quoteId)}
          onClick={() => setOpen(!open)}
        >
          {words.moreShort}
        </Button>
      </Row>
      {marking === null ? null : (
        <MarkForm key={marking} quote={quote} mark={marking} life={life} close={() => setMarking(null)} />
      )}
      {open ? <Since quote={quote} /> : null}
    </li>
  )
}
