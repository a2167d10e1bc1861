import { Button, NativeSelect } from '@mantine/core'
import { useDocumentTitle } from '@mantine/hooks'
import { memo, useEffect } from 'react'
import type { ReactNode } from 'react'
import { Link, useLocation } from 'wouter'
import type { Job, JobStage } from '../../src-main/domain/job.ts'
import { problemsOf } from '../bridge/call.ts'
import { useAsk } from '../bridge/use-ask.ts'
import { OpenJobContext } from '../draft/use-draft.ts'
import type { OpenJob, Saved } from '../draft/use-draft.ts'
import { useGoToField } from '../draft/go-to-field.ts'
import { clockTime } from '../parts/figures-in-words.ts'
import { stages } from '../parts/stages.ts'
import { ProblemList, Waiting } from '../parts/notice.tsx'
import { useJobCommands } from './commands/job-commands.ts'
import styles from './frame.module.css'
import { words } from './frame.words.ts'
import { NextLink } from './next-link.tsx'
import { useJobDraft } from './use-job-draft.ts'

type Frame = { readonly jobId: string; readonly tab: string; readonly children: ReactNode }

/** Opens a job and keeps it open while the person goes from survey to price to papers. */
export function JobFrame({ jobId, tab, children }: Frame) {
  const about = useAsk('app.about', {}, { staleMs: Infinity })
  const read = useAsk('job.read', { jobId }, { staleMs: Infinity })
  const problems = problemsOf(read.error ?? about.error)
  if (problems.length > 0) {
    return (
      <ProblemList title={words.job.cannotOpen} problems={problems}>
        <p>
          <Link href="/">{words.allJobs}</Link>
        </p>
      </ProblemList>
    )
  }
  if (read.data === undefined || about.data === undefined) return <Waiting what={words.job.opening} />
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
  useJobCommands(open)
  useFocusKept()
  return (
    <OpenJobContext value={open}>
      <JobHead open={open} />
      <div className={styles.tabRow}>
        <Tabs jobId={open.job.jobId} tab={tab} />
        <div className={styles.onward}>
          <SavedWords saved={open.saved} />
          <NextLink open={open} />
        </div>
      </div>
      <JobProblems open={open} />
      {children}
    </OpenJobContext>
  )
}

/** Where a page goes away with what was in focus, the focus goes to the page that came. */
function useFocusKept(): void {
  const [here] = useLocation()
  useEffect(() => {
    const later = setTimeout(() => {
      if (document.activeElement === document.body) document.getElementById('main')?.focus()
    }, 150)
    return () => clearTimeout(later)
  }, [here])
}

function JobHead({ open }: { readonly open: OpenJob }) {
  const { job, change, canUndo, canRedo } = open
  return (
    <div className={styles.head}>
      <div>
        <h1>{job.title === '' ? words.job.untitled : job.title}</h1>
        <p className={styles.under}>
          {[job.customer.name, ...job.site.addressLines.slice(0, 2)].filter((part) => part !== '').join(', ')}
        </p>
      </div>
      <Tools stage={job.stage ?? 'surveying'} canUndo={canUndo} canRedo={canRedo} change={change} />
    </div>
  )
}

type ToolsProps = Pick<OpenJob, 'canUndo' | 'canRedo' | 'change'> & { readonly stage: JobStage }

const Tools = memo(function Tools({ stage, canUndo, canRedo, change }: ToolsProps) {
  return (
    <div className={styles.tools}>
      <NativeSelect
        className={styles.stage ?? ''}
        aria-label={words.job.stage}
        value={stage}
        data={stages.map(({ value, label }) => ({ value, label }))}
        onChange={({ currentTarget }) => {
          change({ kind: 'set', path: 'stage', value: currentTarget.value })
          change({ kind: 'settle' })
        }}
      />
      <Button variant="default" disabled={!canUndo} onClick={() => change({ kind: 'undo' })}>
        {words.job.undo}
      </Button>
      <Button variant="default" disabled={!canRedo} onClick={() => change({ kind: 'redo' })}>
        {words.job.redo}
      </Button>
    </div>
  )
})

function SavedWords({ saved }: { readonly saved: Saved }) {
  return (
    <span className={styles.saved} role="status" data-bad={saved.kind === 'refused'}>
      {savedInWords(saved)}
    </span>
  )
}

function savedInWords(saved: Saved): string {
  if (saved.kind === 'waiting') return words.job.saving
  if (saved.kind === 'saved')
    return saved.at === null ? words.job.saved : words.job.savedAt(clockTime(saved.at))
  const [first] = saved.problems
  return saved.problems.length > 1 || first === undefined
    ? words.job.thingsWrong(saved.problems.length)
    : words.job.notSaved(first.message)
}

const tabs = [
  { tab: 'survey', label: words.job.survey },
  { tab: 'house', label: words.job.house },
  { tab: 'price', label: words.job.price },
  { tab: 'papers', label: words.job.papers },
  { tab: 'after', label: words.job.after },
] as const

function Tabs({ jobId, tab }: { readonly jobId: string; readonly tab: string }) {
  return (
    <nav className={styles.tabs} aria-label={words.job.tabs}>
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
        title={refused ? words.job.refused : words.job.unpriced}
        problems={open.problems}
        goTo={goTo}
      />
    </div>
  )
}
