import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { IssuedQuoteRow } from '../../../../src-main/domain/follow-up/quote-life.ts'
import { problemsOf } from '../../../bridge/call.ts'
import { useGoToField } from '../../../draft/go-to-field.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { Notice, ProblemList, Waiting } from '../../../parts/notice.tsx'
import { IssuedQuote } from './issued-quote.tsx'
import styles from './life.module.css'
import { words } from './life.words.ts'
import { useLife } from './use-life.ts'
import type { Life } from './use-life.ts'

/** The open job's issued quotes: issue one, and note what becomes of each. */
export function IssuedCard() {
  const life = useLife()
  const { quotes } = life
  const problems = problemsOf(quotes.error)
  return (
    <div className={styles.life}>
      <Card title={words.title} says={words.says}>
        {problems.length > 0 ? <ProblemList title={words.title} problems={problems} /> : null}
        {quotes.data === undefined ? (
          quotes.error === null ? (
            <Waiting what={words.looking} />
          ) : null
        ) : (
          <Stack>
            <IssueNow life={life} issued={quotes.data.quotes} />
            {quotes.data.quotes.length === 0 ? (
              <p className={styles.soft}>{words.none}</p>
            ) : (
              <ul className={styles.quotes} aria-label={words.title}>
                {quotes.data.quotes.map((quote) => (
                  <IssuedQuote key={quote.quoteId} quote={quote} life={life} />
                ))}
              </ul>
            )}
          </Stack>
        )}
      </Card>
    </div>
  )
}

type Issue = { readonly life: Life; readonly issued: readonly IssuedQuoteRow[] }

/** A first quote is issued anew, one that is open as its next revision; one that is accepted stays. */
function IssueNow({ life, issued }: Issue) {
  const [reason, setReason] = useState('')
  const { job, issue, toStage } = life
  const goTo = useGoToField(job)
  const open = issued.find(({ state }) => ['issued', 'sent', 'lapsed', 'declined'].includes(state))
  const accepted = issued.some(({ state }) => state === 'accepted')
  const give = (revises?: string) =>
    issue.mutate(
      { job, ...(revises === undefined ? {} : { revises }), ...(reason.trim() === '' ? {} : { reason }) },
      {
        onSuccess: () => {
          setReason('')
          toStage('quoted')
        },
      },
    )
  const problems = problemsOf(issue.error)
  return (
    <Stack>
      {accepted && open === undefined ? <p>{words.accepted}</p> : null}
      {open === undefined ? null : (
        <TextInput
          label={words.whyRevised}
          value={reason}
          onChange={({ currentTarget }) => setReason(currentTarget.value)}
        />
      )}
      {accepted && open === undefined ? null : (
        <div>
          <Button loading={issue.isPending} onClick={() => give(open?.quoteId)}>
            {open === undefined
              ? issued.length === 0
                ? words.issue
                : words.issueNew
              : words.issueRevision(open.revision + 1)}
          </Button>
        </div>
      )}
      {problems.length === 0 ? null : <ProblemList title={words.notIssued} problems={problems} goTo={goTo} />}
      {issue.data === undefined ? null : <Notice tone="good" title={words.issued(issue.data.quoteId)} />}
    </Stack>
  )
}
