import { Loader } from '@mantine/core'
import type { ReactNode } from 'react'
import type { Problem } from '../../src-main/domain/outcome.ts'
import styles from './parts.module.css'
import { words } from './words.ts'

export type Tone = 'good' | 'warn' | 'bad'

type Notice = { readonly tone: Tone; readonly title: string; readonly children?: ReactNode }

/** Something that wants to be seen. Bad news is read out at once. */
export function Notice({ tone, title, children }: Notice) {
  return (
    <div
      className={styles.notice}
      data-tone={tone}
      role={tone === 'bad' ? 'alert' : 'note'}
      aria-label={title}
    >
      <p className={styles.noticeTitle}>{title}</p>
      {children}
    </div>
  )
}

type Problems = {
  readonly title: string
  readonly problems: readonly Problem[]
  /** Goes to the field that a problem names. */
  readonly goTo?: (path: string) => void
  readonly children?: ReactNode
}

/** What is wrong, each with the way to its field. */
export function ProblemList({ title, problems, goTo, children }: Problems) {
  return (
    <Notice tone="bad" title={title}>
      <ul>
        {problems.map((problem) => (
          <li key={`${problem.path}${problem.message}`}>
            <ProblemSentence problem={problem} {...(goTo === undefined ? {} : { goTo })} />
          </li>
        ))}
      </ul>
      {children}
    </Notice>
  )
}

function ProblemSentence({ problem, goTo }: { readonly problem: Problem } & Pick<Problems, 'goTo'>) {
  const { path, message, next } = problem
  const linked = path !== undefined && goTo !== undefined
  return (
    <>
      {linked ? (
        <button type="button" className={styles.toField} onClick={() => goTo(path)}>
          {message}
        </button>
      ) : (
        message
      )}
      {path !== undefined && !linked ? <span className={styles.next}>{words.where(path)}</span> : null}
      {next === undefined || linked ? null : <span className={styles.next}>{next}</span>}
    </>
  )
}

/** Shown while the desk is asked. */
export function Waiting({ what }: { readonly what: string }) {
  return (
    <div className={styles.empty} role="status">
      <Loader aria-hidden />
      <p>{what}</p>
    </div>
  )
}

/** Shown where there is nothing yet, with a way on. */
export function Nothing({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className={`${styles.card} ${styles.empty}`}>
      <h2>{title}</h2>
      {children}
    </div>
  )
}

/** Marks a figure made from generic rules rather than a maker's list. */
export function GenericMark() {
  return <span className={styles.mark}>{words.generic}</span>
}

const signs: Readonly<Record<Tone, string>> = { good: '✓', warn: '!', bad: '✕' }

/** A short judgement, told by word and sign as well as by colour. */
export function Verdict({ tone, children }: { readonly tone: Tone; readonly children: ReactNode }) {
  return (
    <span className={styles.verdict} data-tone={tone}>
      <span aria-hidden>{signs[tone]}</span>
      <span>{children}</span>
    </span>
  )
}
