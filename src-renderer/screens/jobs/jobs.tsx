import { Button, FileButton, TextInput } from '@mantine/core'
import { useDocumentTitle } from '@mantine/hooks'
import { useRef, useState } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { Row } from '../../parts/card.tsx'
import { Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import { JobList } from './job-list.tsx'
import styles from './jobs.module.css'
import { NewJobForm } from './new-job-form.tsx'
import { matching, useJobs } from './use-jobs.ts'

type Jobs = ReturnType<typeof useJobs>

/** Every job, and the ways to begin one. */
export function JobsScreen() {
  const jobs = useJobs()
  useDocumentTitle('Jobs: Tailpiece')
  const [naming, setNaming] = useState(false)
  const ways = <Ways jobs={jobs} onNew={() => setNaming(true)} />
  return (
    <>
      <div className={styles.head}>
        <div>
          <h1>Jobs</h1>
          <p>From the survey to the quote, the pick list and where to drill.</p>
        </div>
        {ways}
      </div>
      {naming ? (
        <div className={styles.section}>
          <NewJobForm start={jobs.start} onCancel={() => setNaming(false)} />
        </div>
      ) : null}
      <Troubles jobs={jobs} />
      <Listed jobs={jobs} />
    </>
  )
}

function Ways({ jobs, onNew }: { readonly jobs: Jobs; readonly onNew: () => void }) {
  const reset = useRef<() => void>(null)
  return (
    <Row>
      <Button onClick={onNew}>New job</Button>
      <Button variant="default" loading={jobs.sample.isPending} onClick={() => jobs.sample.mutate()}>
        Open the sample job
      </Button>
      <FileButton
        accept=".json,application/json"
        resetRef={reset}
        inputProps={{ 'aria-label': 'Job file to bring in', tabIndex: -1 }}
        onChange={(file) => {
          if (file !== null) jobs.bringIn.mutate({ file, replace: false })
          reset.current?.()
        }}
      >
        {(props) => (
          <Button variant="default" loading={jobs.bringIn.isPending} {...props}>
            Bring in a job file
          </Button>
        )}
      </FileButton>
    </Row>
  )
}

function Troubles({ jobs }: { readonly jobs: Jobs }) {
  const brought = problemsOf(jobs.bringIn.error)
  const others = [...problemsOf(jobs.sample.error), ...problemsOf(jobs.remove.error)]
  const again = jobs.bringIn.variables
  const known = brought.some((problem) => problem.code === 'conflict')
  return (
    <div aria-live="polite">
      {brought.length === 0 ? null : (
        <div className={styles.section}>
          <ProblemList
            title={`${again?.file.name ?? 'The file'} was not brought in`}
            problems={known ? brought.map(({ code, message }) => ({ code, message })) : brought}
          >
            {known && again !== undefined ? (
              <Button mt="md" onClick={() => jobs.bringIn.mutate({ file: again.file, replace: true })}>
                Put the file’s job in its place
              </Button>
            ) : null}
          </ProblemList>
        </div>
      )}
      {others.length === 0 ? null : (
        <div className={styles.section}>
          <ProblemList title="That did not work" problems={others} />
        </div>
      )}
    </div>
  )
}

function Listed({ jobs }: { readonly jobs: Jobs }) {
  const [text, setText] = useState('')
  const { asked } = jobs
  if (asked.isPending) return <Waiting what="Looking for your jobs" />
  if (asked.error !== null) {
    return (
      <ProblemList title="The jobs can't be shown" problems={problemsOf(asked.error)}>
        <Button mt="md" onClick={() => void asked.refetch()}>
          Try again
        </Button>
      </ProblemList>
    )
  }
  const all = asked.data.jobs
  if (all.length === 0) {
    return (
      <Nothing title="No jobs yet">
        <p>Begin one with New job, or open the sample job to see what comes out at the other end.</p>
      </Nothing>
    )
  }
  const found = matching(all, text)
  return (
    <>
      <div className={styles.bar}>
        <TextInput
          className={styles.search ?? ''}
          type="search"
          label="Find a job by title, customer or place"
          value={text}
          onChange={({ currentTarget }) => setText(currentTarget.value)}
        />
        <p role="status">
          {found.length === all.length ? `${all.length} in all` : `${found.length} of ${all.length}`}
        </p>
      </div>
      {found.length === 0 ? (
        <Nothing title="No job has these words">
          <Button variant="default" onClick={() => setText('')}>
            Show all jobs
          </Button>
        </Nothing>
      ) : (
        <JobList jobs={found} remove={(jobId) => jobs.remove.mutate(jobId)} />
      )}
    </>
  )
}
