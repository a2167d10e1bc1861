import { mkdir, rm } from 'node:fs/promises'
import { dirname } from 'node:path'
import { openFile } from './open-file.ts'
import type { OpenFile } from './open-file.ts'

/** Copies an open data file by SQLite's own backup call, and reads the whole copy back before it counts. */
export async function copyFile(open: OpenFile, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true })
  await open.raw.backup(to)
  const copy = await openFile(to)
  try {
    // A copy is one file, without a log beside it.
    copy.raw.pragma('journal_mode = delete')
    const found = copy.raw.pragma('integrity_check', { simple: true })
    if (found === 'ok') return
  } finally {
    await copy.kysely.destroy()
    copy.raw.close()
  }
  await rm(to)
  throw Object.assign(new Error(`The copy of ${open.file} came out damaged`), { code: 'SQLITE_CORRUPT' })
}
