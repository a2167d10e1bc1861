import { Button } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef } from 'react'
import { Link, useLocation } from 'wouter'
import { call, problemsOf } from '../../bridge/call.ts'
import { Row, Stack } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import { newJobId } from '../../parts/new-job-id.ts'
import styles from './firm.module.css'
import { words } from './firm.words.ts'

/** After the form: the sample job, clearly a sample, or a job of one's own. */
export function WhatNext() {
  const title = useRef<HTMLHeadingElement>(null)
  const queries = useQueryClient()
  const [, navigate] = useLocation()
  const sample = useMutation({
    mutationFn: async () => {
      const { job } = await call('job.sample', {})
      return call('job.save', { job: { ...job, jobId: newJobId() } })
    },
    onSuccess: async ({ jobId }) => {
      await queries.invalidateQueries({ queryKey: ['job.list'] })
      navigate(`/job/${jobId}/survey`)
    },
  })
  const problems = problemsOf(sample.error)
  useEffect(() => title.current?.focus(), [])
  return (
    <div className={styles.page}>
      <Stack>
        <div>
          <h1 ref={title} tabIndex={-1}>
            {words.start.doneTitle}
          </h1>
          <p>{words.start.doneSays}</p>
        </div>
        {problems.length === 0 ? null : <ProblemList title={words.notSaved} problems={problems} />}
        <Row>
          <Button component={Link} href="/new-job">
            {words.start.begin}
          </Button>
          <Button variant="default" loading={sample.isPending} onClick={() => sample.mutate()}>
            {words.start.sample}
          </Button>
          <Button component={Link} href="/prices/file" variant="default">
            {words.start.prefer}
          </Button>
        </Row>
        <Link href="/">{words.start.all}</Link>
      </Stack>
    </div>
  )
}
