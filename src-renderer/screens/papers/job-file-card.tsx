import { Button } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { call, sentencesOf } from '../../bridge/call.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, Row } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './papers.module.css'
import { words } from './papers.words.ts'

/** The job as its open file, with photos and issued quotes, to be kept or passed on. */
export function JobFileCard() {
  const { job } = useOpenJob()
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  const make = useMutation({
    mutationFn: async () => {
      const file = await call('job.export', { jobId: job.jobId, photos: true, quotes: true })
      return new Blob([JSON.stringify(file, null, 2)], { type: 'application/json' })
    },
    onSuccess: (blob) => setUrl(URL.createObjectURL(blob)),
  })
  const problems = sentencesOf(make.error)
  return (
    <Card title={words.jobFile.title}>
      <div className={styles.paper}>
        <p>{words.jobFile.says}</p>
        <Button variant="default" loading={make.isPending} onClick={() => make.mutate()}>
          {words.jobFile.make}
        </Button>
        {problems.length === 0 ? null : <ProblemList title={words.jobFile.notMade} problems={problems} />}
        {url === null ? null : (
          <div role="status">
            <Row>
              <a className={styles.save} href={url} download={`${job.jobId}.job.json`}>
                {words.jobFile.save}
              </a>
            </Row>
          </div>
        )}
      </div>
    </Card>
  )
}
