import { Button } from '@mantine/core'
import { useDocumentTitle } from '@mantine/hooks'
import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { Job } from '../../src-main/domain/job.ts'
import { problemsOf } from '../bridge/call.ts'
import { useAsk } from '../bridge/use-ask.ts'
import { OpenJobContext } from '../draft/use-draft.ts'
import type { OpenJob, Saved } from '../draft/use-draft.ts'
import { useGoToField } from '../draft/go-to-field.ts'
import { clockTime } from '../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../parts/notice.tsx'
import styles from './frame.module.css'
import { useJobDraft } from './use-job-draft.ts'

type Frame = { readonly jobId: string; readonly tab: string; readonly children: ReactNode }

/** Opens a job and keeps it open while the person goes from survey to price to papers. */
export function JobFrame({ jobId, tab, children }: Frame) {
  const about = useAsk('app.about', {}, { staleMs: Infinity })
  const read = useAsk('job.read', { jobId }, { staleMs: Infinity })
  const problems = problemsOf(read.error ?? about.error)
  if (problems.length > 0) {
    return (
      <ProblemList title="This job can't be opened" problems={problems}>
        <p>
          <Link href="/">All jobs</Link>
        </p>
      </ProblemList>
    )
  }
  if (read.data === undefined || about.data === undefined) return <Waiting what="Opening the job" />
  return (
    <LoadedJob loaded={read.data.job} today={about.data.today} tab={tab}>
      {children}
    </LoadedJob>
  )
}

type Loaded = {
  readonly loaded: Job
  readonly today: string
  readonly tab: string
  readonly children: ReactNode
}

function LoadedJob({ loaded, today, tab, children }: Loaded) {
  const open = useJobDraft(loaded, today)
  useDocumentTitle(`${open.job.title}: Tailpiece`)
  return (
    <OpenJobContext value={open}>
      <JobHead open={open} />
      <div className={styles.tabRow}>
        <Tabs jobId={open.job.jobId} tab={tab} />
        <SavedWords saved={open.saved} />
      </div>
      <JobProblems open={open} />
      {children}
    </OpenJobContext>
  )
}

function JobHead({ open }: { readonly open: OpenJob }) {
  const { job, change, canUndo, canRedo } = open
  return (
    <div className={styles.head}>
      <div>
        <h1>{job.title === '' ? 'A job without a title' : job.title}</h1>
        <p className={styles.under}>
          {[job.customer.name, ...job.site.addressLines.slice(0, 2)].filter((part) => part !== '').join(', ')}
        </p>
      </div>
      <div className={styles.tools}>
        <Button variant="default" disabled={!canUndo} onClick={() => change({ kind: 'undo' })}>
          Undo
        </Button>
        <Button variant="default" disabled={!canRedo} onClick={() => change({ kind: 'redo' })}>
          Redo
        </Button>
      </div>
    </div>
  )
}

function SavedWords({ saved }: { readonly saved: Saved }) {
  return (
    <span className={styles.saved} role="status" data-bad={saved.kind === 'refused'}>
      {savedInWords(saved)}
    </span>
  )
}

function savedInWords(saved: Saved): string {
  if (saved.kind === 'waiting') return 'Saving …'
  if (saved.kind === 'saved') return saved.at === null ? 'Saved' : `Saved at ${clockTime(saved.at)}`
  const [first] = saved.problems
  return saved.problems.length > 1 || first === undefined
    ? `Not saved: ${saved.problems.length} things to put right`
    : `Not saved: ${first.message}`
}

const tabs = [
  { tab: 'survey', label: 'Survey' },
  { tab: 'price', label: 'Parts and price' },
  { tab: 'papers', label: 'Papers' },
] as const

function Tabs({ jobId, tab }: { readonly jobId: string; readonly tab: string }) {
  return (
    <nav className={styles.tabs} aria-label="This job">
      {tabs.map((one) => (
        <Link
          key={one.tab}
          href={`/job/${jobId}/${one.tab}`}
          className={styles.tab}
          {...(one.tab === tab ? { 'aria-current': 'page' } : {})}
        >
          {one.label}
        </Link>
      ))}
    </nav>
  )
}

function JobProblems({ open }: { readonly open: OpenJob }) {
  const goTo = useGoToField(open.job)
  if (open.problems.length === 0) return null
  const refused = open.saved.kind === 'refused'
  return (
    <div className={styles.problems}>
      <ProblemList
        title={
          refused
            ? 'Not saved until this is put right'
            : 'Saved, but it cannot be priced until this is put right'
        }
        problems={open.problems}
        goTo={goTo}
      />
    </div>
  )
}
