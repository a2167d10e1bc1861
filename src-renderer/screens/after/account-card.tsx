import { Button } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { FinalAccount } from '../../../src-main/domain/follow-up/after-job.ts'
import { call, sentencesOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { Card } from '../../parts/card.tsx'
import { hoursAndMinutes, money } from '../../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { Why } from '../../parts/why.tsx'
import styles from './after.module.css'
import { words } from './after.words.ts'
import type { Notes } from './use-after.ts'

const own = words.account
type PaperKind = keyof typeof own.papers
const kinds: readonly PaperKind[] = ['finalAccount.pdf', 'commissioning.pdf', 'handover.pdf']

/** The final account as it stands, always beside what is being noted, and the papers that come of it. */
export function AccountCard({ notes }: { readonly notes: Notes }) {
  const asked = useAsk('afterJob.account', { quoteId: notes.quoteId }, { keepOld: true })
  const problems = sentencesOf(asked.error)
  return (
    <Card title={own.title}>
      {problems.length > 0 ? <ProblemList title={words.cannot} problems={problems} /> : null}
      {asked.data === undefined ? (
        asked.error === null ? (
          <Waiting what={own.title} />
        ) : null
      ) : (
        <Sums account={asked.data} />
      )}
      <Papers notes={notes} />
    </Card>
  )
}

function Sums({ account }: { readonly account: FinalAccount }) {
  const { quoteNetPence, variationsNetPence, netPence, grossPence, paidPence, toPayPence, internal, why } =
    account
  const rows = [
    [own.quote, money(quoteNetPence)],
    [own.since, money(variationsNetPence)],
    [own.tax, money(grossPence - netPence)],
    [own.gross, money(grossPence)],
    [own.paid, money(paidPence)],
  ] as const
  return (
    <>
      <dl className={styles.sums}>
        {rows.map(([label, amount]) => (
          <Sum key={label} label={label} amount={amount} />
        ))}
        <Sum total label={toPayPence < 0 ? own.toGiveBack : own.toPay} amount={money(Math.abs(toPayPence))} />
        <Sum label={own.hours} amount={hoursAndMinutes(internal.realMin)} />
      </dl>
      <p className={styles.soft}>{own.of(hoursAndMinutes(internal.quotedMin))}</p>
      <Why of={own.why} why={why} />
    </>
  )
}

type SumRow = { readonly label: string; readonly amount: string; readonly total?: boolean }

function Sum({ label, amount, total = false }: SumRow) {
  const name = total ? styles.total : undefined
  return (
    <>
      <dt className={name}>{label}</dt>
      <dd className={name}>{amount}</dd>
    </>
  )
}

/** Has a paper printed and fetches it, so that the window can hand it over. */
function usePapers({ quoteId, settle }: Notes) {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  return useMutation({
    mutationFn: async (kind: PaperKind) => {
      await settle()
      const { path } = await call(kind, { quoteId })
      const name = path.split(/[\\/]/).at(-1) ?? path
      const { base64 } = await call('paper.read', { name })
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      const fresh = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }))
      setUrl(fresh)
      return { name, url: fresh }
    },
  })
}

function Papers({ notes }: { readonly notes: Notes }) {
  const make = usePapers(notes)
  const problems = sentencesOf(make.error)
  return (
    <div className={styles.papers}>
      {kinds.map((kind) => (
        <Button
          key={kind}
          variant="default"
          loading={make.isPending && make.variables === kind}
          onClick={() => make.mutate(kind)}
        >
          {own.papers[kind]}
        </Button>
      ))}
      <span role="status">
        {make.data === undefined ? null : (
          <a className={styles.save} href={make.data.url} download={make.data.name}>
            {own.save(make.data.name)}
          </a>
        )}
      </span>
      {problems.length === 0 ? null : <ProblemList title={own.notMade} problems={problems} />}
    </div>
  )
}
