import { Button } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk, useCommand } from '../../bridge/use-ask.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card } from '../../parts/card.tsx'
import { Confirm } from '../../parts/confirm.tsx'
import { plain } from '../../parts/figures-in-words.ts'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './after.module.css'
import { words } from './after.words.ts'
import type { Notes } from './use-after.ts'

/** Closes the job for good, and says first what that does. */
export function CloseCard({ notes }: { readonly notes: Notes }) {
  const { quoteId, after, settle, shut } = notes
  const queries = useQueryClient()
  const { change } = useOpenJob()
  const [asking, setAsking] = useState(false)
  const close = useCommand('afterJob.close', () => {
    // The open job is saved as a whole, so it must know the stage that the desk gave it.
    change({ kind: 'set', path: 'stage', value: 'done' })
    change({ kind: 'settle' })
    return queries.invalidateQueries()
  })
  if (shut) return null
  const back = after.parts.filter(({ backToVan = 0 }) => backToVan > 0).length
  const problems = sentencesOf(close.error)
  const sure = async () => {
    setAsking(false)
    if (await settle()) close.mutate({ quoteId })
  }
  const noted = after.tasks.length + after.parts.length + after.variations.length > 0
  return (
    <Card title={words.close.title} says={noted ? words.close.says(back) : words.close.first}>
      <Button disabled={!noted} loading={close.isPending} onClick={() => setAsking(true)}>
        {words.close.button}
      </Button>
      {problems.length === 0 ? null : <ProblemList title={words.close.not} problems={problems} />}
      <Confirm
        opened={asking}
        title={words.close.sure}
        yes={words.close.yes}
        no={words.close.no}
        onYes={() => void sure()}
        onNo={() => setAsking(false)}
      >
        <p>{words.close.says(back)}</p>
      </Confirm>
    </Card>
  )
}

/** What the firm's closed jobs have taught, and how many stand behind each figure. */
export function LearnedCard() {
  const { data } = useAsk('labour.learned', {})
  const own = words.learned
  const tasks = data?.tasks ?? []
  return (
    <Card title={own.title} says={own.says}>
      {tasks.length === 0 ? (
        <p className={styles.soft}>{own.none}</p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{own.task}</th>
              <th scope="col">{own.was}</th>
              <th scope="col">{own.is}</th>
              <th scope="col">{own.jobs}</th>
            </tr>
          </thead>
          <tbody>
            {tasks.map(({ taskId, name, priorMin, expectedMin, jobs }) => (
              <tr key={taskId}>
                <th scope="row">{name}</th>
                <td>{own.minutes(plain(Math.round(priorMin * 10) / 10))}</td>
                <td>{own.minutes(plain(Math.round(expectedMin * 10) / 10))}</td>
                <td>{own.many(jobs)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Card>
  )
}
