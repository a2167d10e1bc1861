import type { Problem } from '../../domain/outcome.ts'

type Sentence = { readonly says: string; readonly next: string }

const sentences: Readonly<Record<string, Sentence>> = {
  BUSY: {
    says: 'The data file is in use by another program that does not let go.',
    next: 'Close the other window or program that has it open, and try again.',
  },
  FULL: { says: 'The disk is full, so nothing was saved.', next: 'Make room on the disk, and try again.' },
  READONLY: {
    says: 'The data file may be read but not written.',
    next: 'Give yourself leave to write to it, or name another data folder.',
  },
  CANTOPEN: { says: 'The data file cannot be opened.', next: 'Look whether the data folder is still there.' },
  PERM: {
    says: 'The data file may not be opened by you.',
    next: 'Give yourself leave to read and write it.',
  },
  AUTH: {
    says: 'The data file may not be opened by you.',
    next: 'Give yourself leave to read and write it.',
  },
  IOERR: {
    says: 'The disk failed while the data file was read or written.',
    next: 'Check the disk, and try again.',
  },
  NOTADB: {
    says: 'The data file is not a Tailpiece data file.',
    next: 'Name another data folder, or put a copy from its backups folder in its place.',
  },
  CORRUPT: {
    says: 'The data file is damaged.',
    next: 'Put the newest copy from its backups folder in its place.',
  },
  ROW: {
    says: 'The data file holds something that cannot be read',
    next: 'Put the newest copy from its backups folder in its place.',
  },
}

/** Another process has the file just now. */
export function isBusy(error: unknown): boolean {
  return troubleOf(error) === 'BUSY'
}

/** The problem that an error of the data file comes to; null when it is our own mistake. */
export function ioProblem(error: unknown): Problem | null {
  const trouble = troubleOf(error)
  const sentence = trouble === null ? undefined : sentences[trouble]
  if (sentence === undefined) return null
  const message =
    trouble === 'ROW' && error instanceof Error ? `${sentence.says}: ${error.message}` : sentence.says
  return { code: 'io', message, next: sentence.next }
}

/** An error for a row whose text is not what it was when it was written. */
export function unreadableRow(what: string, cause: unknown): Error {
  return Object.assign(new Error(`${what} is not as it was saved.`, { cause }), { code: 'SQLITE_ROW' })
}

/** `BUSY` for SQLITE_BUSY_SNAPSHOT and its like. */
function troubleOf(error: unknown): string | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return /^SQLITE_([A-Z]+)/.exec(code)?.[1] ?? null
}
