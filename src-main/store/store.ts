import { access, constants, mkdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { accept, refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'
import { migrationList } from './migration-list.ts'
import type { Step } from './migration.ts'
import { copyFile } from './sqlite/copy-file.ts'
import { appliedSteps, migrate } from './sqlite/migrate.ts'
import type { AppliedStep } from './sqlite/migrate.ts'
import { closeFile, makeDurable, openFile } from './sqlite/open-file.ts'
import type { OpenFile } from './sqlite/open-file.ts'
import { read, write } from './sqlite/transact.ts'
import { watchCatalogue } from './sqlite/file-state.ts'
import { ioProblem } from './sqlite/troubles.ts'
import type { ReadTx, WriteTx } from './tables.ts'

export type { ReadTx, WriteTx } from './tables.ts'

/** An open data folder. What is in it is reached by `reading` and `writing` only. */
export type Store = { readonly folder: string; readonly file: string }

export type StoreOptions = {
  readonly folder: string
  /** This moment as an ISO date and time. */
  readonly now: () => string
  /** The migrations; those of this version when absent. */
  readonly steps?: readonly Step[]
}

export const dataFileName = 'tailpiece.db'

const openFiles = new WeakMap<Store, OpenFile>()

/** Opens the data folder, makes it when it is new, and brings an older file up to this version after copying it. */
export async function openStore(options: StoreOptions): Promise<Outcome<Store>> {
  const { folder, now, steps = migrationList } = options
  const writable = await writableFolder(folder)
  if (!writable.ok) return writable
  const file = join(folder, dataFileName)
  let open: OpenFile | undefined
  try {
    open = await openFile(file)
    const ready = await upToDate(open, { folder, steps, now: now() })
    if (!ready.ok) {
      await closeFile(open)
      return ready
    }
  } catch (error) {
    if (open !== undefined) abandon(open)
    const problem = ioProblem(error)
    if (problem === null) throw error
    return refuse('io', `${file}: ${problem.message}`, undefined, problem.next)
  }
  const store: Store = { folder, file }
  openFiles.set(store, open)
  return accept(store)
}

/** Closes the data file; what lies on disk is then one file. Closing it again does nothing. */
export async function closeStore(store: Store): Promise<void> {
  const open = openFiles.get(store)
  openFiles.delete(store)
  for (const close of closedBefore.get(store) ?? []) await close()
  closedBefore.delete(store)
  if (open !== undefined) await closeFile(open)
}

const closedBefore = new WeakMap<Store, (() => Promise<void>)[]>()

/** Has something done before the data file is closed: another connection to it would keep its log on the disk. */
export function beforeClose(store: Store, close: () => Promise<void>): void {
  closedBefore.set(store, [...(closedBefore.get(store) ?? []), close])
}

const watched = new WeakSet<Store>()

/** Has writes to the catalogue counted from now on, for `catalogueState`. Asking again does nothing. */
export async function watchingCatalogue(store: Store): Promise<void> {
  if (watched.has(store)) return
  const { kysely, raw } = openFileOf(store)
  await kysely.connection().execute(async () => watchCatalogue(raw))
  watched.add(store)
}

/** Reads one state of the data file, however many questions are asked of it. */
export function reading<T>(store: Store, work: (tx: ReadTx) => T | Promise<T>): Promise<T> {
  return read(openFileOf(store), work)
}

/** Writes all or nothing: what `work` did is undone when it throws, and when its answer is a refusal. */
export function writing<T>(store: Store, work: (tx: WriteTx) => T | Promise<T>): Promise<T> {
  return write(openFileOf(store), work, (answer) => !isRefusal(answer))
}

function openFileOf(store: Store): OpenFile {
  const open = openFiles.get(store)
  if (open === undefined) throw new Error('This store is not open')
  return open
}

function isRefusal(answer: unknown): boolean {
  return typeof answer === 'object' && answer !== null && 'ok' in answer && answer.ok === false
}

async function upToDate(
  open: OpenFile,
  { folder, steps, now }: { readonly folder: string; readonly steps: readonly Step[]; readonly now: string },
): Promise<Outcome<null>> {
  const applied = appliedSteps(open)
  const known = knownFile(open.file, applied, steps)
  if (!known.ok) return known
  await makeDurable(open)
  const pending = steps.filter(({ id }) => !known.value.some((step) => step.id === id))
  if (pending.length === 0) return accept(null)
  if (known.value.length > 0) {
    await copyFile(
      open,
      join(folder, 'backups', `tailpiece ${now.replaceAll(':', '-')} before ${pending[0]?.id}.db`),
    )
  }
  try {
    await migrate(open, steps, now)
    return accept(null)
  } catch (error) {
    if (ioProblem(error) !== null) throw error
    const why = error instanceof Error ? error.message : String(error)
    return refuse('io', `${open.file} could not be brought up to this version (${why}). It is as it was.`)
  }
}

/** Refuses a file that is not ours, or that a newer or another version made. */
function knownFile(
  file: string,
  applied: readonly AppliedStep[] | null,
  steps: readonly Step[],
): Outcome<readonly AppliedStep[]> {
  if (applied === null) {
    return refuse(
      'io',
      `${file} is not a Tailpiece data file. Name a folder that has none, or has Tailpiece's own.`,
    )
  }
  const newer = applied.filter(({ id }) => !steps.some((step) => step.id === id))
  if (newer.length > 0) {
    const which = newer.map(({ id }) => id).join(', ')
    return refuse(
      'io',
      `${file} was written by a newer version of Tailpiece (step ${which}). Open it with that version.`,
    )
  }
  const other = applied.find(({ id, hash }) => steps.some((step) => step.id === id && step.hash !== hash))
  if (other !== undefined) {
    return refuse(
      'io',
      `${file} was made by another build of Tailpiece (step ${other.id} differs). Open it with that one.`,
    )
  }
  return accept(applied)
}

async function writableFolder(folder: string): Promise<Outcome<null>> {
  try {
    await mkdir(folder, { recursive: true })
    if (!(await stat(folder)).isDirectory()) return notAFolder(folder)
    await access(folder, constants.R_OK | constants.W_OK | constants.X_OK)
    return accept(null)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    if (code === 'EEXIST' || code === 'ENOTDIR') return notAFolder(folder)
    if (code === '') throw error
    return refuse(
      'io',
      `The data folder ${folder} cannot be written to (${code}). Name a folder that you may write to.`,
    )
  }
}

function notAFolder(folder: string): Outcome<never> {
  return refuse('io', `${folder} is a file, or lies under one. Name a folder for the data.`)
}

/** Lets go of a file that never became a store. */
function abandon({ raw }: OpenFile): void {
  raw.close()
}
