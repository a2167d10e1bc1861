import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { Card, Row, Stack } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './jobs.module.css'
import type { useJobs } from './use-jobs.ts'

type Form = { readonly start: ReturnType<typeof useJobs>['start']; readonly onCancel: () => void }

/** A job begins with what it is and who it is for; everything else has time. */
export function NewJobForm({ start, onCancel }: Form) {
  const [title, setTitle] = useState('')
  const [customer, setCustomer] = useState('')
  const problems = problemsOf(start.error)
  const at = (path: string) => problems.find((problem) => problem.path === path)?.message
  const others = problems.filter(({ path }) => path !== 'job.title' && path !== 'job.customer.name')
  const submit = (event: FormEvent) => {
    event.preventDefault()
    start.mutate({ title, customer })
  }
  return (
    <Card title="New job" says="What it is and who it is for. The survey comes next.">
      <form onSubmit={submit} noValidate>
        <Stack>
          {others.length === 0 ? null : <ProblemList title="The job was not begun" problems={others} />}
          <div className={styles.form}>
            <TextInput
              label="What the job is"
              description="For example: bigger radiator for the back bedroom"
              autoFocus
              value={title}
              error={at('job.title')}
              onChange={({ currentTarget }) => setTitle(currentTarget.value)}
            />
            <TextInput
              label="Customer"
              description="The name that the quote is made out to"
              value={customer}
              error={at('job.customer.name')}
              onChange={({ currentTarget }) => setCustomer(currentTarget.value)}
            />
          </div>
          <Row>
            <Button type="submit" loading={start.isPending}>
              Begin the job
            </Button>
            <Button variant="default" onClick={onCancel}>
              Not now
            </Button>
          </Row>
        </Stack>
      </form>
    </Card>
  )
}
