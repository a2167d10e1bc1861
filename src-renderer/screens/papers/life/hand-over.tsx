import { Button, TextInput } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { IssuedQuoteRow } from '../../../../src-main/domain/follow-up/quote-life.ts'
import { problemsOf } from '../../../bridge/call.ts'
import { Row } from '../../../parts/card.tsx'
import { ProblemList } from '../../../parts/notice.tsx'
import { FilePlace } from '../file-place.tsx'
import { useMailDraft, useOpenForm, usePaper } from '../use-papers.ts'
import type { MadeFile } from '../use-papers.ts'
import styles from './life.module.css'
import { words } from './life.words.ts'
import { PrintView } from './print-view.tsx'

type Quote = { readonly quote: IssuedQuoteRow }

/** The ways in which an issued quote reaches its customer: its PDF, on paper, by mail, or for another program. */
export function HandOver({ quote }: Quote) {
  const { quoteId, state } = quote
  const pdf = usePaper('quote.pdf', { quoteId })
  const print = usePaper('quote.pdf', { quoteId })
  const mail = useMailDraft(quoteId)
  const form = useOpenForm(quoteId)
  const stands = state !== 'replaced' && state !== 'withdrawn'
  return (
    <div className={styles.handOver} role="group" aria-label={words.handOver(quoteId)}>
      <Row>
        <Way says={words.getShort} name={words.get(quoteId)} make={pdf} />
        <Way says={words.print} name={words.printOf(quoteId)} make={print} />
        {stands ? (
          <Way
            says={words.mail}
            name={words.mailOf(quoteId)}
            make={{ ...mail, mutate: () => mail.mutate('') }}
          />
        ) : null}
        <Way says={words.form} name={words.formOf(quoteId)} make={form} />
      </Row>
      <Made file={pdf.data} says={words.pdfMade} error={pdf.error} />
      {print.data === undefined ? null : (
        <PrintView key={print.data.url} paper={print.data} name={quoteId} close={print.reset} />
      )}
      <Made file={undefined} says="" error={print.error} />
      <Made
        file={mail.data}
        says={mail.data === undefined ? '' : words.mailMade(mail.data.to)}
        error={null}
      />
      <MailWants quote={quote} error={mail.error} make={(to) => mail.mutate(to)} />
      <Made file={form.data} says={words.formMade} error={form.error} />
    </div>
  )
}

type WayProps = {
  readonly says: string
  readonly name: string
  readonly make: { readonly isPending: boolean; readonly mutate: () => void }
}

function Way({ says, name, make }: WayProps) {
  return (
    <Button variant="default" loading={make.isPending} aria-label={name} onClick={() => make.mutate()}>
      {says}
    </Button>
  )
}

type MadeProps = { readonly file: MadeFile | undefined; readonly says: ReactNode; readonly error: unknown }

/** What was made. The button that made it could not hold the focus meanwhile: saving is what comes next. */
function Made({ file, says, error }: MadeProps) {
  const save = useRef<HTMLAnchorElement>(null)
  useEffect(() => {
    if (file !== undefined && document.activeElement === document.body) save.current?.focus()
  }, [file])
  const problems = problemsOf(error)
  if (problems.length > 0) return <ProblemList title={words.notMade} problems={problems} />
  if (file === undefined) return null
  return (
    <div className={styles.made} role="status">
      <p>{says}</p>
      <Row>
        <a ref={save} className={styles.save} href={file.url} download={file.name}>
          {words.save(file.name)}
        </a>
        <FilePlace file={file} />
      </Row>
    </div>
  )
}

type Wants = Quote & { readonly error: unknown; readonly make: (to: string) => void }

/** What a draft still lacks: an address of the customer, or one of the firm. */
function MailWants({ quote: { quoteId, jobId }, error, make }: Wants) {
  const [to, setTo] = useState('')
  const problems = problemsOf(error)
  if (problems.length === 0) return null
  const lacks = (path: string) => problems.some((problem) => problem.path?.startsWith(path) === true)
  const sentences = problems.map(({ path: _path, ...problem }) => problem)
  return (
    <ProblemList title={words.notMade} problems={sentences}>
      {lacks('firm') ? (
        <Button mt="sm" component={Link} href={`/firm/${jobId}`}>
          {words.firmDetails}
        </Button>
      ) : null}
      {lacks('to') ? (
        <form
          className={styles.to}
          aria-label={words.mailOf(quoteId)}
          onSubmit={(event) => {
            event.preventDefault()
            make(to.trim())
          }}
        >
          <TextInput
            type="text"
            inputMode="email"
            label={words.mailTo}
            value={to}
            onChange={({ currentTarget }) => setTo(currentTarget.value)}
          />
          <Button type="submit">{words.mailAgain}</Button>
        </form>
      ) : null}
    </ProblemList>
  )
}
