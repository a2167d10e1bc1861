import { Button, NativeSelect } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Link, useLocation } from 'wouter'
import type { IssuedQuoteRow } from '../../../../src-main/domain/follow-up/quote-life.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { useAsk, useCommand } from '../../../bridge/use-ask.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { dayInWords, money } from '../../../parts/figures-in-words.ts'
import { Nothing, ProblemList, Waiting } from '../../../parts/notice.tsx'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import type { PickingRow } from './picks-part.tsx'

/** Accepted quotes that are on no pick list yet, to be picked alone or together. */
export function ToPick({ pickings }: { readonly pickings: readonly PickingRow[] }) {
  const accepted = useAsk('quote.list', { state: 'accepted' })
  const problems = sentencesOf(accepted.error)
  if (problems.length > 0) return <ProblemList title={words.notFound} problems={problems} />
  if (accepted.data === undefined) return <Waiting what={words.toPick.looking} />
  const picked = new Set(pickings.flatMap(({ quoteIds }) => quoteIds))
  const quotes = accepted.data.quotes.filter(({ quoteId }) => !picked.has(quoteId))
  if (quotes.length > 0) return <Choose quotes={quotes} />
  return (
    <Nothing title={words.toPick.none}>
      <p>{accepted.data.quotes.length === 0 ? words.toPick.noneSays : words.toPick.allPicked}</p>
      <Button component={Link} href="/" variant="default">
        {words.toPick.toJobs}
      </Button>
    </Nothing>
  )
}

type Way = keyof typeof words.toPick.ways
const ways = Object.entries(words.toPick.ways).map(([value, label]) => ({ value, label }))

function Choose({ quotes }: { readonly quotes: readonly IssuedQuoteRow[] }) {
  const [ticked, setTicked] = useState<ReadonlySet<string>>(() => new Set(firstTicked(quotes)))
  const [by, setBy] = useState<Way>('cheapestEach')
  const [tried, setTried] = useState(false)
  const queries = useQueryClient()
  const [, goTo] = useLocation()
  const make = useCommand('picking.make')
  const quoteIds = quotes.map(({ quoteId }) => quoteId).filter((quoteId) => ticked.has(quoteId))
  const problems = sentencesOf(make.error)
  const go = () => {
    setTried(true)
    if (quoteIds.length === 0) return
    make.mutate(
      { quoteIds, by },
      {
        onSuccess: ({ picking }) => {
          goTo(`/van/pick/${picking.pickingNo}`)
          void queries.invalidateQueries({ queryKey: ['picking.list'] })
        },
      },
    )
  }
  return (
    <Card title={words.toPick.title} says={words.toPick.says}>
      <Stack>
        <ul className={styles.plain} aria-label={words.toPick.title}>
          {quotes.map((quote) => (
            <li key={quote.quoteId}>
              <QuoteBox
                quote={quote}
                checked={ticked.has(quote.quoteId)}
                flip={() => setTicked(flipped(ticked, quote.quoteId))}
              />
            </li>
          ))}
        </ul>
        <MakeRow
          by={by}
          setBy={setBy}
          make={go}
          busy={make.isPending}
          wants={tried && quoteIds.length === 0}
        />
        {problems.length === 0 ? null : <ProblemList title={words.toPick.notMade} problems={problems} />}
      </Stack>
    </Card>
  )
}

type Row = {
  readonly by: Way
  readonly setBy: (by: Way) => void
  readonly make: () => void
  readonly busy: boolean
  /** True once it was pressed with no quote ticked. */
  readonly wants: boolean
}

function MakeRow({ by, setBy, make, busy, wants }: Row) {
  return (
    <>
      <div className={styles.makeRow}>
        <NativeSelect
          label={words.toPick.how}
          data={ways}
          value={by}
          onChange={({ currentTarget }) =>
            setBy(currentTarget.value === 'cheapestSplit' ? 'cheapestSplit' : 'cheapestEach')
          }
        />
        <Button loading={busy} onClick={make}>
          {words.toPick.make}
        </Button>
      </div>
      <p role="status" className={styles.soft}>
        {busy ? words.toPick.working : wants ? words.toPick.tickFirst : ''}
      </p>
    </>
  )
}

/** The only quote that waits is the one that is meant. */
function firstTicked(quotes: readonly IssuedQuoteRow[]): readonly string[] {
  return quotes.length === 1 ? quotes.map(({ quoteId }) => quoteId) : []
}

function flipped(ticked: ReadonlySet<string>, quoteId: string): ReadonlySet<string> {
  const others = [...ticked].filter((one) => one !== quoteId)
  return new Set(ticked.has(quoteId) ? others : [...others, quoteId])
}

type QuoteBoxProps = {
  readonly quote: IssuedQuoteRow
  readonly checked: boolean
  readonly flip: () => void
}

function QuoteBox({ quote, checked, flip }: QuoteBoxProps) {
  const { quoteId, title, customerName, since, grossPence } = quote
  return (
    <label className={styles.tickRow}>
      <input type="checkbox" className={styles.box} checked={checked} onChange={flip} />
      <span className={styles.grow}>
        <span className={styles.strong}>{customerName === '' ? title : customerName}</span>
        <span className={styles.soft}>
          {[quoteId, ...(customerName === '' ? [] : [title]), words.toPick.accepted(dayInWords(since))].join(
            ' · ',
          )}
        </span>
      </span>
      <span className={styles.number}>{money(grossPence)}</span>
    </label>
  )
}
