import { spawnSync } from 'node:child_process'
import { chmod, mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { sql } from 'kysely'
import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import { closeStore, openStore, reading, writing } from '../../src-main/store/store.ts'
import type { Store } from '../../src-main/store/store.ts'
import { listJobs, saveJob } from '../../src-main/store/jobs.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { now, opened, tempFolder } from './store-for-tests.ts'

const open = (folder: string) => openStore({ folder, now })

function refusal(outcome: Outcome<Store>): string {
  if (outcome.ok) throw new Error('It opened')
  expect(outcome.problems).toHaveLength(1)
  expect(outcome.problems[0]?.code).toBe('io')
  return outcome.problems[0]?.message ?? ''
}

describe('opening a data folder', () => {
  it('makes the folder when it is new, and leaves one file in it when closed', async () => {
    const folder = join(await tempFolder(), 'new', 'folder')
    const store = await opened(folder)
    await writing(store, (tx) => saveJob(tx, bedroomJob(), now()))
    await closeStore(store)
    expect(await readdir(folder)).toEqual(['tailpiece.db'])
    await closeStore(store)
    expect(() => reading(store, listJobs)).toThrow('not open')
  })

  it('keeps a log that survives a crash, holds references and syncs every commit', async () => {
    const folder = await tempFolder()
    const store = await opened(folder)
    const pragma = (name: string) =>
      reading(store, async (tx) => (await sql.raw(`pragma ${name}`).execute(tx)).rows)
    expect(await pragma('journal_mode')).toEqual([{ journal_mode: 'wal' }])
    // SQLite's documentation of the pragma: 2 is FULL.
    expect(await pragma('synchronous')).toEqual([{ synchronous: 2 }])
    expect(await pragma('foreign_keys')).toEqual([{ foreign_keys: 1 }])
    const orphan = { job_id: 'none', room_id: 'r', position: 0, name: 'R', body: '{}' }
    await expect(writing(store, (tx) => tx.insertInto('room').values(orphan).execute())).rejects.toThrow(
      /FOREIGN KEY/,
    )
  })

  it('opens an empty file as a new one', async () => {
    const folder = await tempFolder()
    await writeFile(join(folder, 'tailpiece.db'), '')
    expect((await opened(folder)).folder).toBe(folder)
  })

  it('refuses a folder that is a file', async () => {
    const file = join(await tempFolder(), 'notes.txt')
    await writeFile(file, 'notes')
    expect(refusal(await open(file))).toContain(`${file} is a file`)
    expect(refusal(await open(join(file, 'deeper')))).toContain('lies under one')
  })

  it('refuses a file that is not SQLite, and leaves it as it is', async () => {
    const folder = await tempFolder()
    const file = join(folder, 'tailpiece.db')
    const text = 'These are notes, not a data file. '.repeat(100)
    await writeFile(file, text)
    expect(refusal(await open(folder))).toContain('is not a Tailpiece data file')
    expect(await readFile(file, 'utf8')).toBe(text)
    expect(await readdir(folder)).toEqual(['tailpiece.db'])
  })

  it("refuses another program's SQLite file, and leaves it as it is", async () => {
    const folder = await tempFolder()
    const file = join(folder, 'tailpiece.db')
    const other = new Database(file)
    other.exec('create table stamp (country text)')
    other.close()
    const before = await readFile(file)
    expect(refusal(await open(folder))).toContain('is not a Tailpiece data file')
    expect(await readFile(file)).toEqual(before)
  })

  it('refuses a folder that lies where the data file should', async () => {
    const folder = await tempFolder()
    await mkdir(join(folder, 'tailpiece.db'))
    expect(refusal(await open(folder))).toContain('cannot be opened')
  })

  it('refuses a folder that may not be written to', async (context) => {
    if (process.platform === 'win32') context.skip('Windows has no permission bits to take away')
    const folder = await tempFolder()
    await chmod(folder, 0o555)
    expect(refusalOfNobody(folder)).toMatch(/cannot be written to \(EACCES\)/)
    await chmod(folder, 0o755)
  })
})

/** Opens the folder in a process without root's rights, because root may write anywhere. */
function refusalOfNobody(folder: string): string {
  const script = join(import.meta.dirname, 'open-and-report.ts')
  const isRoot = process.getuid?.() === 0
  const child = spawnSync(process.execPath, [script, folder], {
    encoding: 'utf8',
    timeout: 30_000,
    ...(isRoot ? { uid: 65_534, gid: 65_534 } : {}),
  })
  return child.stdout + child.stderr
}
