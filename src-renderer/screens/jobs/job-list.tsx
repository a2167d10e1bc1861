import { Button, Menu, NativeSelect } from '@mantine/core'
import { useIntersection } from '@mantine/hooks'
import { useEffect, useState } from 'react'
import { Link } from 'wouter'
import type { JobStage } from '../../../src-main/domain/job.ts'
import { problemsOf } from '../../bridge/call.ts'
import { Confirm } from '../../parts/confirm.tsx'
import { dayAndTime, dayInWords, money } from '../../parts/figures-in-words.ts'
import { stages } from '../../parts/stages.ts'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'
import type { JobRow } from './use-jobs.ts'
import { useSummary } from './use-summary.ts'

export type JobDeeds = {
  readonly remove: (jobId: string) => void
  readonly copy: (job: JobRow) => void
  readonly archive: (job: JobRow, archived: boolean) => void
  readonly setStage: (job: JobRow, stage: JobStage) => void
}

type List = { readonly jobs: readonly JobRow[]; readonly deeds: JobDeeds }

const atATime = 50

/** The jobs, the last saved first, so many at a time. */
export function JobList({ jobs, deeds }: List) {
  const [doomed, setDoomed] = useState<JobRow | null>(null)
  const [most, setMost] = useState(atATime)
  const more = Math.min(atATime, jobs.length - most)
  return (
    <>
      <ul className={styles.list} aria-label={words.list}>
        {jobs.slice(0, most).map((job) => (
          <Entry key={job.jobId} job={job} deeds={deeds} onRemove={() => setDoomed(job)} />
        ))}
      </ul>
      {more <= 0 ? null : (
        <Button mt="md" variant="default" onClick={() => setMost(most + atATime)}>
          {words.more(more)}
        </Button>
      )}
      <Confirm
        opened={doomed !== null}
        title={words.removeTitle}
        yes={words.removeYes}
        onNo={() => setDoomed(null)}
        onYes={() => {
          if (doomed !== null) deeds.remove(doomed.jobId)
          setDoomed(null)
        }}
      >
        <p>{words.removeSays(doomed?.title ?? '')}</p>
      </Confirm>
    </>
  )
}

type EntryProps = { readonly job: JobRow; readonly deeds: JobDeeds; readonly onRemove: () => void }

function Entry({ job, deeds, onRemove }: EntryProps) {
  const { ref, seen } = useSeen()
  return (
    <li className={styles.job} ref={ref}>
      <div className={styles.who}>
        <Link href={`/job/${job.jobId}/survey`} className={styles.title}>
          {job.title}
        </Link>
        <p className={styles.under}>
          {[job.customerName, job.place].filter((part) => part !== '').join(', ')}
        </p>
        <p className={styles.under}>
          {words.begun(dayInWords(job.createdOn))}; {words.counted(job.rooms, job.swaps)}
        </p>
      </div>
      <NativeSelect
        className={styles.stage ?? ''}
        aria-label={words.stageOf(job.title)}
        title={words.savedOn(dayAndTime(job.savedAt))}
        value={job.stage}
        data={stages.map(({ value, label }) => ({ value, label }))}
        onChange={({ currentTarget }) => {
          const stage = stages.find(({ value }) => value === currentTarget.value)?.value
          if (stage !== undefined) deeds.setStage(job, stage)
        }}
      />
      <Summary jobId={job.jobId} seen={seen} />
      <More job={job} deeds={deeds} onRemove={onRemove} />
    </li>
  )
}

/** Whether a thing has ever been in sight. */
function useSeen() {
  const { ref, entry } = useIntersection()
  const [seen, setSeen] = useState(false)
  const inSight = entry?.isIntersecting === true
  useEffect(() => {
    if (inSight) setSeen(true)
  }, [inSight])
  return { ref, seen }
}

function Summary({ jobId, seen }: { readonly jobId: string; readonly seen: boolean }) {
  const { data, error, isPending } = useSummary(jobId, seen)
  if (error !== null) return <p className={styles.sum}>{problemsOf(error)[0]?.message}</p>
  if (isPending) return <p className={`${styles.sum} ${styles.under}`}>{words.working}</p>
  const { grossPence, next } = data
  return (
    <div className={styles.sum}>
      <p>
        {grossPence === null ? (
          <span className={styles.under}>{words.noPrice}</span>
        ) : (
          <>
            <strong className={styles.gross}>{money(grossPence)}</strong>{' '}
            <span className={styles.under}>{words.withVat}</span>
          </>
        )}
      </p>
      {next === null ? null : (
        <p>
          <span className={styles.under}>{words.next}</span> {next}
        </p>
      )}
    </div>
  )
}

function More({ job, deeds, onRemove }: EntryProps) {
  return (
    <Menu position="bottom-end" width={250} withinPortal={false} withInitialFocusPlaceholder={false}>
      <Menu.Target>
        <Button variant="subtle" color="gray" px="sm" aria-label={words.moreFor(job.title)}>
          <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden>
            <g fill="currentColor">
              <circle cx="4" cy="11" r="2.2" />
              <circle cx="11" cy="11" r="2.2" />
              <circle cx="18" cy="11" r="2.2" />
            </g>
          </svg>
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Item onClick={() => deeds.copy(job)}>{words.duplicate}</Menu.Item>
        <Menu.Item onClick={() => deeds.archive(job, !job.archived)}>
          {job.archived ? words.unarchive : words.archive}
        </Menu.Item>
        <Menu.Item onClick={onRemove}>{words.remove}</Menu.Item>
      </Menu.Dropdown>
    </Menu>
  )
}
