/** What long work says while it goes on, and how it hears that it should stop. */
export type Watch = {
  /** Says what is being done and the share done (null when that is not known); false when it should stop. */
  readonly goesOn: (says: string, doneRatio: number | null) => boolean
  readonly stopped: () => boolean
}

/** Words of progress, by number, because threads share numbers only. */
const sayings = [
  'Starting',
  'Reading the file',
  'Comparing',
  'Working out open jobs',
  'Writing the list',
  'Done',
] as const

const wholeRatio = 10_000
const unknown = -1
/** What the shared numbers are, in order. */
const [stopAt, saysAt, doneAt] = [0, 1, 2] as const

export type Shared = Int32Array

export function newShared(): Shared {
  const shared = new Int32Array(new SharedArrayBuffer(12))
  shared[doneAt] = unknown
  return shared
}

/** The watch that work on another thread keeps. */
export function watchOf(shared: Shared): Watch {
  const stopped = () => Atomics.load(shared, stopAt) !== 0
  return {
    goesOn: (says, doneRatio) => {
      Atomics.store(shared, saysAt, Math.max(0, sayings.indexOf(says as (typeof sayings)[number])))
      Atomics.store(shared, doneAt, doneRatio === null ? unknown : Math.round(doneRatio * wholeRatio))
      return !stopped()
    },
    stopped,
  }
}

export function askToStop(shared: Shared): void {
  Atomics.store(shared, stopAt, 1)
}

export function progressOf(shared: Shared): { readonly says: string; readonly done: number | null } {
  const done = Atomics.load(shared, doneAt)
  return {
    says: sayings[Atomics.load(shared, saysAt)] ?? sayings[0],
    done: done < 0 ? null : Math.min(1, done / wholeRatio),
  }
}
