import { useDocumentTitle } from '@mantine/hooks'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { Done } from './done.tsx'
import type { Deed } from './done.tsx'
import { FirstSteps } from './first-steps.tsx'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'
import { Listed } from './listed.tsx'
import { NewJobForm } from './new-job-form.tsx'
import { Troubles } from './troubles.tsx'
import { useJobs } from './use-jobs.ts'
import { Ways } from './ways.tsx'

/** Every job, and the ways to begin one. `naming` shows the form for a new one. */
export function JobsScreen({ naming }: { readonly naming: boolean }) {
  const jobs = useJobs()
  const [, navigate] = useLocation()
  const [deed, setDeed] = useState<Deed | null>(null)
  useDocumentTitle(words.documentTitle)
  return (
    <>
      <div className={styles.head}>
        <div>
          <h1>{words.title}</h1>
          <p>{words.says}</p>
        </div>
        <Ways jobs={jobs} onNew={() => navigate('/new-job')} />
      </div>
      {naming ? (
        <div className={styles.section}>
          <NewJobForm start={jobs.start} onCancel={() => navigate('/')} />
        </div>
      ) : (
        <FirstSteps />
      )}
      <Troubles jobs={jobs} />
      <Done deed={deed} onBack={setDeed} mark={jobs.mark} />
      <Listed jobs={jobs} onDone={setDeed} />
    </>
  )
}
