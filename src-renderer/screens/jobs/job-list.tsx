import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import { Confirm } from '../../parts/confirm.tsx'
import { dayAndTime } from '../../parts/figures-in-words.ts'
import styles from './jobs.module.css'
import type { JobRow } from './use-jobs.ts'

type List = { readonly jobs: readonly JobRow[]; readonly remove: (jobId: string) => void }

/** The jobs, the last saved first. */
export function JobList({ jobs, remove }: List) {
  const [doomed, setDoomed] = useState<JobRow | null>(null)
  return (
    <>
      <ul className={styles.list} aria-label="Jobs">
        {jobs.map((job) => (
          <Entry key={job.jobId} job={job} onRemove={() => setDoomed(job)} />
        ))}
      </ul>
      <Confirm
        opened={doomed !== null}
        title="Remove this job?"
        yes="Remove for good"
        onNo={() => setDoomed(null)}
        onYes={() => {
          if (doomed !== null) remove(doomed.jobId)
          setDoomed(null)
        }}
      >
        <p>“{doomed?.title}” will be gone for good, with its rooms, its survey and its price.</p>
      </Confirm>
    </>
  )
}

function Entry({ job, onRemove }: { readonly job: JobRow; readonly onRemove: () => void }) {
  return (
    <li className={styles.job}>
      <div>
        <Link href={`/job/${job.jobId}/survey`} className={styles.title}>
          {job.title}
        </Link>
        <p className={styles.under}>
          {[job.customerName, job.place].filter((part) => part !== '').join(', ')}
        </p>
      </div>
      <div className={styles.meta}>
        <p>
          {counted(job.rooms, 'room')}, {counted(job.swaps, 'swap')}
        </p>
        <p>Saved {dayAndTime(job.savedAt)}</p>
      </div>
      <Button variant="subtle" color="gray" onClick={onRemove} aria-label={`Remove ${job.title}`}>
        Remove
      </Button>
    </li>
  )
}

function counted(count: number, word: string): string {
  return `${count} ${count === 1 ? word : `${word}s`}`
}
