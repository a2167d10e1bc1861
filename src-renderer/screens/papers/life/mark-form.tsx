import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { JobStage } from '../../../../src-main/domain/job.ts'
import type { IssuedQuoteRow, QuoteEventKind } from '../../../../src-main/domain/follow-up/quote-life.ts'
import { problemsOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { FieldGrid, Row, Stack } from '../../../parts/card.tsx'
import { ProblemList } from '../../../parts/notice.tsx'
import { Drift } from './drift.tsx'
import styles from './life.module.css'
import { words } from './life.words.ts'
import type { Life } from './use-life.ts'

export type Mark = Exclude<QuoteEventKind, 'issued' | 'replaced'>

const stageAfter: Readonly<Record<Mark, JobStage>> = {
  sent: 'quoted',
  accepted: 'accepted',
  declined: 'lost',
  withdrawn: 'lost',
}

type Form = {
  readonly quote: IssuedQuoteRow
  readonly mark: Mark
  readonly life: Life
  readonly close: () => void
}

/** Notes what happened to a quote, with its day and why. Before a yes is noted, what prices have done since is shown. */
export function MarkForm({ quote, mark, life, close }: Form) {
  const [onDay, setOnDay] = useState<string | null>(null)
  const [reason, setReason] = useState('')
  const problems = problemsOf(life.mark.error)
  const keep = () =>
    life.mark.mutate(
      {
        quoteId: quote.quoteId,
        kind: mark,
        ...(onDay === null || onDay === '' ? {} : { onDay }),
        ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
      },
      {
        onSuccess: () => {
          life.toStage(stageAfter[mark])
          close()
        },
      },
    )
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <Stack>
        {mark === 'accepted' ? <Drift quoteId={quote.quoteId} /> : null}
        <WhenAndWhy onDay={onDay} setOnDay={setOnDay} reason={reason} setReason={setReason} />
        {problems.length === 0 ? null : <ProblemList title={words.notNoted} problems={problems} />}
        <Row>
          <Button type="submit" loading={life.mark.isPending}>
            {words.keep[mark]}
          </Button>
          <Button
            variant="default"
            onClick={() => {
              life.mark.reset()
              close()
            }}
          >
            {words.leave}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}

type WhenAndWhyProps = {
  readonly onDay: string | null
  readonly setOnDay: (day: string) => void
  readonly reason: string
  readonly setReason: (reason: string) => void
}

function WhenAndWhy({ onDay, setOnDay, reason, setReason }: WhenAndWhyProps) {
  const about = useAsk('app.about', {}, { staleMs: Infinity })
  return (
    <FieldGrid>
      <TextInput
        type="date"
        label={words.onDay}
        value={onDay ?? about.data?.today ?? ''}
        max={about.data?.today ?? ''}
        onChange={({ currentTarget }) => setOnDay(currentTarget.value)}
      />
      <TextInput
        label={words.reason}
        value={reason}
        onChange={({ currentTarget }) => setReason(currentTarget.value)}
      />
    </FieldGrid>
  )
}
