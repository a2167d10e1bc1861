import { open, stat } from 'node:fs/promises'
import type { FileHandle } from 'node:fs/promises'
import { createHash } from 'node:crypto'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { priceFileLimits } from '../limits.ts'

/** Where a supplier's file lies, and what the person calls it. */
export type PriceSource = { readonly path: string; readonly name: string }

export type OpenFile = {
  readonly handle: FileHandle
  readonly name: string
  readonly path: string
  readonly bytes: number
  /** The file's first bytes. */
  readonly head: Buffer
}

const headBytes = 64 * 1024

/** Opens a file for as long as `work` takes, and refuses what came of it when the file has changed meanwhile. */
export async function withOpenFile<T>(
  source: PriceSource,
  work: (file: OpenFile) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  let handle: FileHandle | undefined
  try {
    handle = await open(source.path, 'r')
    const before = await handle.stat({ bigint: true })
    const wrong = wrongFile(source.name, before.isFile(), Number(before.size))
    if (!wrong.ok) return wrong
    const head = Buffer.alloc(Math.min(headBytes, Number(before.size)))
    await handle.read(head, 0, head.length, 0)
    const done = await work({ handle, ...source, bytes: Number(before.size), head })
    if (!done.ok) return done
    const after = await stat(source.path, { bigint: true })
    const same = after.size === before.size && after.mtimeNs === before.mtimeNs && after.ino === before.ino
    return same ? done : changed(source.name)
  } catch (error) {
    return notReadable(source.name, error, handle !== undefined)
  } finally {
    await handle?.close()
  }
}

function wrongFile(name: string, isFile: boolean, bytes: number): Outcome<null> {
  const { textBytes } = priceFileLimits
  if (!isFile)
    return refuse('invalid', `"${name}" is a folder or a device, not a file: name the price file in it.`)
  if (bytes === 0) return refuse('invalid', `"${name}" is empty: it holds not one byte.`)
  if (bytes > textBytes)
    return refuse(
      'refused',
      `"${name}" has ${inMb(bytes)}; a price file may have ${inMb(textBytes)} at most.`,
    )
  return accept(null)
}

export const inMb = (bytes: number) => `${Math.ceil(bytes / 1024 / 1024)} MB`

function changed(name: string): Outcome<never> {
  return refuse(
    'conflict',
    `"${name}" changed while it was being read. Read it again when nothing is writing to it.`,
  )
}

/** What the machine says about a file, in words; what is not about a file is our mistake and goes on. */
function notReadable(name: string, error: unknown, wasOpen: boolean): Outcome<never> {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  if (code === 'ENOENT')
    return refuse(
      'not-found',
      wasOpen
        ? `"${name}" vanished while it was being read.`
        : `"${name}" is not there: it was moved, renamed or deleted.`,
    )
  if (code === 'EISDIR') return wrongFile(name, false, 0) as Outcome<never>
  if (code === 'EACCES' || code === 'EPERM')
    return refuse('io', `"${name}" may not be opened: this user has no right to read it.`)
  if (/^E[A-Z]+$/.test(code)) return refuse('io', `"${name}" could not be read from the disk (${code}).`)
  throw error
}

/** The whole of a file, as it was when it was opened. */
export async function wholeFile({ handle, bytes }: OpenFile): Promise<Buffer> {
  const whole = Buffer.alloc(bytes)
  let at = 0
  while (at < bytes) {
    const { bytesRead } = await handle.read(whole, at, bytes - at, at)
    if (bytesRead === 0) break
    at += bytesRead
  }
  return whole.subarray(0, at)
}

export function hashOf(bytes: Buffer): string {
  return createHash('sha256').update(bytes).digest('hex')
}
