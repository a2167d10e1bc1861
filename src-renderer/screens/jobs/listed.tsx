import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { problemsOf } from '../../bridge/call.ts'
import { Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import { stages } from '../../parts/stages.ts'
import type { Deed } from './done.tsx'
import { matching, ofChoice } from './job-filter.ts'
import type { Shown } from './job-filter.ts'
import { JobList } from './job-list.tsx'
import type { JobDeeds } from './job-list.tsx'
import styles from './jobs.module.css'
import { words } from './jobs.words.ts'
import type { JobRow, useJobs } from './use-jobs.ts'

type Jobs = ReturnType<typeof useJobs>
type ListedProps = { readonly jobs: Jobs; readonly onDone: (deed: Deed) => void }

/** The jobs that are asked for, or why there are none. */
export function Listed({ jobs, onDone }: ListedProps) {
  const { asked } = jobs
  if (asked.isPending) return <Waiting what={words.looking} />
  if (asked.error !== null) {
    return (
      <ProblemList title={words.cannotShow} problems={problemsOf(asked.error)}>
        <Button mt="md" onClick={() => void asked.refetch()}>
          {words.tryAgain}
        </Button>
      </ProblemList>
    )
  }
  const all = asked.data.jobs
  if (all.length === 0) {
    return (
      <Nothing title={words.none}>
        <p>{words.noneSays}</p>
      </Nothing>
    )
  }
  return <Chosen all={all} deeds={deedsOf(jobs, onDone)} />
}

function deedsOf({ remove, copy, mark }: Jobs, onDone: (deed: Deed) => void): JobDeeds {
  return {
    remove: (jobId) => remove.mutate(jobId),
    setStage: ({ jobId }, stage) => mark.mutate({ jobId, stage }),
    copy: ({ jobId }) => copy.mutate(jobId, { onSuccess: (made) => onDone({ kind: 'copied', ...made }) }),
    archive: ({ jobId, title }, archived) =>
      mark.mutate(
        { jobId, archived },
        { onSuccess: () => onDone({ kind: archived ? 'archived' : 'takenOut', jobId, title }) },
      ),
  }
}

function Chosen({ all, deeds }: { readonly all: readonly JobRow[]; readonly deeds: JobDeeds }) {
  const [text, setText] = useState('')
  const [shown, setShown] = useState<Shown>('all')
  const here = ofChoice(all, shown)
  const found = matching(here, text)
  return (
    <>
      <div className={styles.bar}>
        <TextInput
          className={styles.search ?? ''}
          type="search"
          label={words.search}
          value={text}
          onChange={({ currentTarget }) => setText(currentTarget.value)}
        />
        <ShownChoice all={all} shown={shown} setShown={setShown} />
        <p role="status" className={styles.count}>
          {words.countOfAll(found.length, here.length)}
        </p>
      </div>
      {found.length === 0 ? (
        <Nothing title={text.trim() === '' ? words.noneOfThese : words.noMatch}>
          <Button
            variant="default"
            onClick={() => {
              setText('')
              setShown('all')
            }}
          >
            {words.showThemAll}
          </Button>
        </Nothing>
      ) : (
        <JobList key={`${shown} ${text}`} jobs={found} deeds={deeds} />
      )}
    </>
  )
}

type ChoiceProps = {
  readonly all: readonly JobRow[]
  readonly shown: Shown
  readonly setShown: (shown: Shown) => void
}

function ShownChoice({ all, shown, setShown }: ChoiceProps) {
  const choices: readonly { readonly value: Shown; readonly label: string }[] = [
    { value: 'all', label: words.showAll },
    ...stages,
    { value: 'archived', label: words.showArchived },
  ]
  return (
    <NativeSelect
      label={words.show}
      value={shown}
      data={choices.map(({ value, label }) => ({
        value,
        label: `${label} (${ofChoice(all, value).length})`,
      }))}
      onChange={({ currentTarget }) =>
        setShown(choices.find(({ value }) => value === currentTarget.value)?.value ?? 'all')
      }
    />
  )
}
