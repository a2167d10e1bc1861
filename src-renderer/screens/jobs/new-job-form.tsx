import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { Card, Row, Stack } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'
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
    <Card title={words.form.title} says={words.form.says}>
      <form onSubmit={submit} noValidate>
        <Stack>
          {others.length === 0 ? null : <ProblemList title={words.form.notBegun} problems={others} />}
          <div className={styles.form}>
            <TextInput
              label={words.form.what}
              description={words.form.whatSays}
              autoFocus
              value={title}
              error={at('job.title')}
              onChange={({ currentTarget }) => setTitle(currentTarget.value)}
            />
            <TextInput
              label={words.form.customer}
              description={words.form.customerSays}
              value={customer}
              error={at('job.customer.name')}
              onChange={({ currentTarget }) => setCustomer(currentTarget.value)}
            />
          </div>
          <Row>
            <Button type="submit" loading={start.isPending}>
              {words.form.begin}
            </Button>
            <Button variant="default" onClick={onCancel}>
              {words.form.notNow}
            </Button>
          </Row>
        </Stack>
      </form>
    </Card>
  )
}
