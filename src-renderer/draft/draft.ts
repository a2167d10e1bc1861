import type { Job } from '../../src-main/domain/job.ts'
import { valueAt, withValue } from './path.ts'

/** A job being written, with the way back and forth. What is in it may be wrong until the desk has accepted it. */
export type Draft = {
  readonly past: readonly Job[]
  readonly now: Job
  readonly future: readonly Job[]
  /** The field being typed in: further changes to it are one step of undo. */
  readonly typing: string | null
}

export type Change =
  | { readonly kind: 'set'; readonly path: string; readonly value: unknown }
  | { readonly kind: 'add'; readonly path: string; readonly value: unknown }
  | { readonly kind: 'remove'; readonly path: string }
  | { readonly kind: 'alter'; readonly alter: (job: Job) => Job }
  | { readonly kind: 'settle' }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }

const mostSteps = 200

export function startDraft(job: Job): Draft {
  return { past: [], now: job, future: [], typing: null }
}

/** The draft after one change. */
export function changeDraft(draft: Draft, change: Change): Draft {
  switch (change.kind) {
    case 'set':
      return typed(draft, change.path, change.value)
    case 'add':
      return stepped(
        draft,
        withValue(draft.now, change.path, [...listAt(draft.now, change.path), change.value]),
      )
    case 'remove':
      return stepped(draft, withValue(draft.now, change.path, undefined))
    case 'alter':
      return stepped(draft, change.alter(draft.now))
    case 'settle':
      return draft.typing === null ? draft : { ...draft, typing: null }
    case 'undo':
      return back(draft)
    case 'redo':
      return forth(draft)
  }
}

function listAt(job: Job, path: string): readonly unknown[] {
  const list = valueAt(job, path)
  return Array.isArray(list) ? list : []
}

function typed(draft: Draft, path: string, value: unknown): Draft {
  if (valueAt(draft.now, path) === value) return draft
  const now = withValue(draft.now, path, value)
  if (draft.typing === path) return { ...draft, now, future: [] }
  return { ...stepped(draft, now), typing: path }
}

function stepped(draft: Draft, now: Job): Draft {
  if (now === draft.now) return draft
  return { past: [...draft.past, draft.now].slice(-mostSteps), now, future: [], typing: null }
}

function back(draft: Draft): Draft {
  const before = draft.past.at(-1)
  if (before === undefined) return draft
  return { past: draft.past.slice(0, -1), now: before, future: [draft.now, ...draft.future], typing: null }
}

function forth(draft: Draft): Draft {
  const [next, ...future] = draft.future
  if (next === undefined) return draft
  return { past: [...draft.past, draft.now], now: next, future, typing: null }
}
