import { Button } from '@mantine/core'
import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import { Row } from '../../parts/card.tsx'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'
import type { useJobs } from './use-jobs.ts'

/** What was just done to a job of the list. */
export type Deed = {
  readonly kind: 'archived' | 'takenOut' | 'copied'
  readonly jobId: string
  readonly title: string
}

type Done = {
  readonly deed: Deed | null
  readonly onBack: (deed: null) => void
  readonly mark: ReturnType<typeof useJobs>['mark']
}

/** Says what was done and how to go back. The row it was done to may be gone, so the focus comes here. */
export function Done({ deed, onBack, mark }: Done) {
  const line = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (deed !== null) line.current?.focus()
  }, [deed])
  return (
    <div role="status" ref={line} tabIndex={-1} className={styles.done} data-shown={deed !== null}>
      {deed === null ? null : (
        <Row>
          <span>{words[deed.kind](deed.title)}</span>
          {deed.kind === 'copied' ? (
            <Button component={Link} href={`/job/${deed.jobId}/survey`} variant="default">
              {words.openIt}
            </Button>
          ) : (
            <Button
              variant="default"
              onClick={() => {
                mark.mutate({ jobId: deed.jobId, archived: deed.kind === 'takenOut' })
                document.getElementById('main')?.focus()
                onBack(null)
              }}
            >
              {words.back}
            </Button>
          )}
        </Row>
      )}
    </div>
  )
}
