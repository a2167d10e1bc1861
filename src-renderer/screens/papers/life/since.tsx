import type { IssuedQuoteRow } from '../../../../src-main/domain/follow-up/quote-life.ts'
import { problemsOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Stack } from '../../../parts/card.tsx'
import { dayInWords, money } from '../../../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../../../parts/notice.tsx'
import { ChangeTable } from './change-table.tsx'
import { Drift } from './drift.tsx'
import styles from './life.module.css'
import { words } from './life.words.ts'

/** What happened to an issued quote, what its prices have done, and how the job differs from it now. */
export function Since({ quote }: { readonly quote: IssuedQuoteRow }) {
  const { quoteId, state } = quote
  const over = state === 'replaced' || state === 'withdrawn'
  return (
    <div className={styles.form}>
      <Stack>
        <History quoteId={quoteId} />
        {over ? null : <Drift quoteId={quoteId} />}
        <Compared quoteId={quoteId} />
      </Stack>
    </div>
  )
}

function History({ quoteId }: { readonly quoteId: string }) {
  const read = useAsk('quote.read', { quoteId })
  const problems = problemsOf(read.error)
  if (problems.length > 0) return <ProblemList title={words.history} problems={problems} />
  return (
    <div>
      <h4>{words.history}</h4>
      <ol className={styles.history}>
        {(read.data?.events ?? []).map(({ kind, onDay, at, reason, driftPence }) => (
          <li key={`${kind}${at}`}>
            <strong>{dayInWords(onDay)}</strong> {words.happened[kind]}
            {reason === undefined ? null : <span>: {reason}</span>}
            {driftPence === undefined || driftPence === 0 ? null : (
              <span className={styles.says}>
                {words.driftWith(money(quoteSum(read.data?.quote, driftPence)))}
              </span>
            )}
          </li>
        ))}
      </ol>
    </div>
  )
}

function quoteSum(quote: IssuedQuoteRow | undefined, driftPence: number): number {
  return (quote?.grossPence ?? 0) + driftPence
}

function Compared({ quoteId }: { readonly quoteId: string }) {
  const { job } = useOpenJob()
  const compared = useAsk('quote.compare', { quoteId, job }, { keepOld: true })
  const problems = problemsOf(compared.error)
  if (problems.length > 0) return <ProblemList title={words.compare} problems={problems} />
  if (compared.data === undefined) return <Waiting what={words.driftLooking} />
  const { lines, wasGrossPence, isGrossPence, changeGrossPence } = compared.data
  const total = {
    name: words.table.total,
    was: wasGrossPence,
    is: isGrossPence,
    changePence: changeGrossPence,
    says: '',
  }
  return (
    <div>
      <h4>{words.compare}</h4>
      {lines.length === 0 ? (
        <p>{words.same}</p>
      ) : (
        <ChangeTable
          name={words.compareOf(quoteId)}
          words={words.table}
          lines={lines.map((line) => ({
            ...line,
            was: line.was?.netPence ?? null,
            is: line.is?.netPence ?? null,
          }))}
          total={total}
        />
      )}
    </div>
  )
}
