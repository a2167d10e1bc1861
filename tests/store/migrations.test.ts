import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { sql } from 'kysely'
import type { Kysely } from 'kysely'
import { describe, expect, it } from 'vitest'
import { readJob, saveJob } from '../../src-main/store/jobs.ts'
import { migrationList } from '../../src-main/store/migration-list.ts'
import type { Step } from '../../src-main/store/migration.ts'
import { closeStore, openStore, reading, writing } from '../../src-main/store/store.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { filledStore, now, opened, tempFolder } from './store-for-tests.ts'

const migrationsFolder = join(import.meta.dirname, '../../migrations')

/** A step for tests only, after those of this version. */
const step = (id: string, up: Step['up'], changesRowsOf: readonly string[] = []): Step => ({
  id,
  name: `test step ${id}`,
  hash: `hash of ${id}`,
  up,
  changesRowsOf,
})
const run = (tx: Kysely<unknown>, text: string) => sql.raw(text).execute(tx)
const withStep = (...steps: readonly Step[]) => ({ now, steps: [...migrationList, ...steps] })

/** Every table of a file with its rows and its own definition. */
function everything(file: string): unknown {
  const raw = new Database(file, { readonly: true })
  const tables = raw
    .prepare<[], { name: string; sql: string }>('select name, sql from sqlite_schema order by name')
    .all()
  const rows = tables
    .filter(({ sql }) => /^create (virtual )?table/i.test(sql ?? ''))
    .map(({ name }) => [name, raw.prepare(`select * from "${name}"`).all()])
  raw.close()
  return { tables, rows }
}

async function filledFolder(): Promise<string> {
  const store = await filledStore()
  await writing(store, (tx) => saveJob(tx, bedroomJob(), now()))
  await closeStore(store)
  return store.folder
}

describe('migrations', () => {
  it('are as they were when they landed', async () => {
    const files = (await readdir(migrationsFolder)).filter((name) => name.endsWith('.ts')).sort()
    expect(files.map((name) => name.slice(0, 4))).toEqual(migrationList.map(({ id }) => id))
    for (const [at, name] of files.entries()) {
      const text = (await readFile(join(migrationsFolder, name), 'utf8')).replaceAll('\r\n', '\n')
      expect(createHash('sha256').update(text).digest('hex'), name).toBe(migrationList[at]?.hash)
    }
  })

  it('make strict tables from nothing, each in the order of the list', async () => {
    const store = await opened(await tempFolder())
    await closeStore(store)
    const raw = new Database(store.file, { readonly: true })
    const loose = raw.prepare(`select name from pragma_table_list
      where schema = 'main' and type = 'table' and not strict and name not like 'sqlite%'`)
    expect(loose.all()).toEqual([])
    expect(raw.prepare('select id from schema_step').all()).toEqual(migrationList.map(({ id }) => ({ id })))
    expect(raw.pragma('foreign_key_check')).toEqual([])
    raw.close()
  })

  it('take a filled file on, after a dated copy that can be opened', async () => {
    const folder = await filledFolder()
    const before = everything(join(folder, 'tailpiece.db'))
    const store = await opened(
      folder,
      withStep(step('0910', (tx) => run(tx, 'alter table job add column van text').then())),
    )
    expect(await reading(store, (tx) => readJob(tx, 'bedroom-1'))).toEqual(bedroomJob())
    const copies = await readdir(join(folder, 'backups'))
    expect(copies).toEqual(['tailpiece 2026-03-02T09-00-00.000Z before 0910.db'])
    expect(everything(join(folder, 'backups', copies[0] ?? ''))).toEqual(before)
  })

  it('copy nothing when there is nothing to do', async () => {
    const folder = await filledFolder()
    await opened(folder)
    expect(await readdir(folder)).not.toContain('backups')
  })

  it('rebuild a table that others refer to without losing what refers to it', async () => {
    const folder = await filledFolder()
    const rebuild = step('0910', async (tx) => {
      await run(
        tx,
        'create table job_new (job_id text primary key not null, title text, customer_name text, place text, created_on text, saved_at text, body text) strict',
      )
      await run(tx, 'insert into job_new select * from job')
      await run(tx, 'drop table job')
      await run(tx, 'alter table job_new rename to job')
    })
    const store = await opened(folder, withStep(rebuild))
    expect(await reading(store, (tx) => readJob(tx, 'bedroom-1'))).toEqual(bedroomJob())
    const orphan = { job_id: 'none', room_id: 'r', position: 0, name: 'R', body: '{}' }
    await expect(writing(store, (tx) => tx.insertInto('room').values(orphan).execute())).rejects.toThrow(
      /FOREIGN KEY/,
    )
  })

  it.each([
    [
      'throws half way',
      step('0920', (tx) => run(tx, 'insert into no_such_table values (1)').then()),
      /no_such_table/,
    ],
    [
      'loses rows',
      step('0920', (tx) => run(tx, 'delete from swap').then()),
      /swap had 1 rows and would have 0/,
    ],
    [
      'leaves a reference to nothing',
      step('0920', (tx) => run(tx, 'delete from room').then(), ['room']),
      /refer to nothing/,
    ],
    ['drops a table it does not name', step('0920', (tx) => run(tx, 'drop table firm').then()), null],
  ])('leave the file as it was when a step %s', async (_what, failing, says) => {
    const folder = await filledFolder()
    await writeFirm(folder)
    const before = everything(join(folder, 'tailpiece.db'))
    const good = step('0910', (tx) => run(tx, 'create table van (van_id text) strict').then())
    const outcome = await openStore({ folder, ...withStep(good, failing) })
    if (outcome.ok) throw new Error('It opened')
    expect(outcome.problems[0]?.code).toBe('io')
    expect(outcome.problems[0]?.message).toMatch(says ?? /firm had 1 rows and would have 0/)
    expect(outcome.problems[0]?.message).toContain('It is as it was')
    expect(everything(join(folder, 'tailpiece.db'))).toEqual(before)
    const store = await opened(folder)
    expect(await reading(store, (tx) => readJob(tx, 'bedroom-1'))).toEqual(bedroomJob())
  })

  it('let a step change the rows of a table that it names', async () => {
    const folder = await filledFolder()
    const store = await opened(
      folder,
      withStep(step('0910', (tx) => run(tx, 'delete from swap').then(), ['swap'])),
    )
    expect((await reading(store, (tx) => readJob(tx, 'bedroom-1')))?.swaps).toEqual([])
  })

  it('refuse a file from a newer version, untouched', async () => {
    const folder = await filledFolder()
    const newer = step('0990', (tx) => run(tx, 'create table later (a text) strict').then())
    await closeStore(await opened(folder, withStep(newer)))
    const before = await readFile(join(folder, 'tailpiece.db'))
    const outcome = await openStore({ folder, now })
    expect(outcome.ok).toBe(false)
    expect(outcome.ok ? '' : outcome.problems[0]?.message).toMatch(
      /written by a newer version of Tailpiece \(step 0990\)/,
    )
    expect(await readFile(join(folder, 'tailpiece.db'))).toEqual(before)
  })

  it('refuse a file whose step had another text', async () => {
    const folder = await filledFolder()
    const edited = migrationList.map((one) => ({ ...one, hash: 'another' }))
    const outcome = await openStore({ folder, now, steps: edited })
    expect(outcome.ok ? '' : outcome.problems[0]?.message).toMatch(
      /another build of Tailpiece \(step 0010 differs\)/,
    )
  })
})

async function writeFirm(folder: string): Promise<void> {
  const store = await opened(folder)
  await writing(store, (tx) =>
    tx.insertInto('firm').values({ one: 1, name: 'Test Heating', body: '{"addressLines":[]}' }).execute(),
  )
  await closeStore(store)
}
