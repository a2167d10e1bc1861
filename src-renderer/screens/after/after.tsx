import { Button } from '@mantine/core'
import { Link } from 'wouter'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Stack } from '../../parts/card.tsx'
import { dayInWords } from '../../parts/figures-in-words.ts'
import { Notice, Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import { AccountCard } from './account-card.tsx'
import styles from './after.module.css'
import { words } from './after.words.ts'
import { CloseCard, LearnedCard } from './close-card.tsx'
import { HoursCard } from './hours-card.tsx'
import { PartsCard } from './parts-card.tsx'
import { MoneyCard, PromisesCard } from './promises-card.tsx'
import { RecordCard } from './record-card.tsx'
import { useNotes } from './use-after.ts'
import type { Notes } from './use-after.ts'
import { VariationsCard } from './variations-card.tsx'

/** What really happened on the job, once its quote is accepted. */
export function AfterScreen() {
  const { job } = useOpenJob()
  const quotes = useAsk('quote.list', { jobId: job.jobId, state: 'accepted' })
  const problems = problemsOf(quotes.error)
  if (problems.length > 0) return <ProblemList title={words.cannot} problems={problems} />
  if (quotes.data === undefined) return <Waiting what={words.looking} />
  const [accepted] = quotes.data.quotes
  if (accepted === undefined) {
    return (
      <Nothing title={words.none}>
        <p>{words.noneSays}</p>
        <Button component={Link} href={`/job/${job.jobId}/papers`}>
          {words.toPapers}
        </Button>
      </Nothing>
    )
  }
  return <AfterQuote key={accepted.quoteId} quoteId={accepted.quoteId} />
}

function AfterQuote({ quoteId }: { readonly quoteId: string }) {
  const read = useAsk('afterJob.read', { quoteId }, { staleMs: Infinity })
  const problems = problemsOf(read.error)
  if (problems.length > 0) return <ProblemList title={words.cannot} problems={problems} />
  if (read.data === undefined) return <Waiting what={words.opening} />
  return <Noting quoteId={quoteId} read={read.data} />
}

type Noted = { readonly quoteId: string; readonly read: AnswerOf<'afterJob.read'> }

function Noting({ quoteId, read }: Noted) {
  const { today } = useOpenJob()
  const notes = useNotes(quoteId, read)
  return (
    <div className={styles.page}>
      <Stack>
        <Standing notes={notes} closedOn={read.closedOn} />
        <HoursCard notes={notes} />
        <PartsCard notes={notes} />
        <VariationsCard notes={notes} today={today} />
        <RecordCard notes={notes} today={today} />
        <PromisesCard notes={notes} />
        <MoneyCard notes={notes} />
        <CloseCard notes={notes} />
        <LearnedCard />
      </Stack>
      <div className={styles.side}>
        <AccountCard notes={notes} />
      </div>
    </div>
  )
}

/** Whether what is noted is kept, or that the job is closed. */
function Standing({ notes, closedOn }: { readonly notes: Notes; readonly closedOn: string | null }) {
  if (closedOn !== null) {
    return (
      <Notice tone="good" title={words.closedOn(dayInWords(closedOn))}>
        <p>{words.closedSays}</p>
      </Notice>
    )
  }
  return (
    <>
      <p role="status" className={styles.soft}>
        {notes.saving ? words.saving : notes.problems.length > 0 ? words.notSaved : words.typed}
      </p>
      {notes.problems.length === 0 ? null : <ProblemList title={words.notSaved} problems={notes.problems} />}
    </>
  )
}
