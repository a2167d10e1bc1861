import { Button } from '@mantine/core'
import { Link } from 'wouter'
import { problemsOf } from '../../bridge/call.ts'
import { Notice, ProblemList } from '../../parts/notice.tsx'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'
import type { useJobs } from './use-jobs.ts'

/** What was refused, each with a way on. */
export function Troubles({ jobs }: { readonly jobs: ReturnType<typeof useJobs> }) {
  const brought = problemsOf(jobs.bringIn.error)
  const failed = [jobs.sample, jobs.remove, jobs.mark, jobs.copy]
  const others = failed.flatMap(({ error }) => problemsOf(error))
  const again = jobs.bringIn.variables
  const known = brought.some((problem) => problem.code === 'conflict')
  return (
    <div aria-live="polite">
      {brought.length === 0 ? null : (
        <div className={styles.section}>
          <ProblemList
            title={words.notBroughtIn(again?.file.name)}
            problems={known ? brought.map(({ code, message }) => ({ code, message })) : brought}
          >
            {known && again !== undefined ? (
              <Button mt="md" onClick={() => jobs.bringIn.mutate({ file: again.file, replace: true })}>
                {words.inItsPlace}
              </Button>
            ) : null}
          </ProblemList>
        </div>
      )}
      {jobs.bringIn.data?.leftOut === undefined ? null : <LeftOut brought={jobs.bringIn.data} />}
      {others.length === 0 ? null : (
        <div className={styles.section}>
          <ProblemList title={words.didNotWork} problems={others} />
        </div>
      )}
    </div>
  )
}

type Brought = NonNullable<ReturnType<typeof useJobs>['bringIn']['data']>

/** What a job file held and this data file did not take, with the way to the job that it did. */
function LeftOut({ brought }: { readonly brought: Brought }) {
  return (
    <div className={styles.section}>
      <Notice tone="warn" title={words.leftOut}>
        <ul>
          {(brought.leftOut ?? []).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <Button mt="md" component={Link} href={`/job/${brought.jobId}/survey`}>
          {words.openBrought}
        </Button>
      </Notice>
    </div>
  )
}
