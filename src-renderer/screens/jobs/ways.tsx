import { Button, FileButton } from '@mantine/core'
import { useRef } from 'react'
import { Row } from '../../parts/card.tsx'
import { words } from './jobs.words.ts'
import type { useJobs } from './use-jobs.ts'

type Ways = { readonly jobs: ReturnType<typeof useJobs>; readonly onNew: () => void }

/** The ways to begin a job. */
export function Ways({ jobs, onNew }: Ways) {
  const reset = useRef<() => void>(null)
  return (
    <Row>
      <Button onClick={onNew}>{words.newJob}</Button>
      <Button variant="default" loading={jobs.sample.isPending} onClick={() => jobs.sample.mutate()}>
        {words.sample}
      </Button>
      <FileButton
        accept=".json,application/json"
        resetRef={reset}
        inputProps={{ 'aria-label': words.bringInBox, tabIndex: -1 }}
        onChange={(file) => {
          if (file !== null) jobs.bringIn.mutate({ file, replace: false })
          reset.current?.()
        }}
      >
        {(props) => (
          <Button variant="default" loading={jobs.bringIn.isPending} {...props}>
            {words.bringIn}
          </Button>
        )}
      </FileButton>
    </Row>
  )
}
