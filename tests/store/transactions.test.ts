import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { sql } from 'kysely'
import { describe, expect, it } from 'vitest'
import { refuse } from '../../src-main/domain/outcome.ts'
import { listJobs, readJob, saveJob } from '../../src-main/store/jobs.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import type { ReadTx, Store } from '../../src-main/store/store.ts'
import { ioProblem } from '../../src-main/store/sqlite/troubles.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { now, opened, tempFolder } from './store-for-tests.ts'

const script = join(import.meta.dirname, 'save-until-killed.ts')
const save = (store: Store, jobId: string) =>
  writing(store, (tx) => saveJob(tx, bedroomJob({ jobId }), now()))
const savedIds = async (store: Store) => (await reading(store, listJobs)).map(({ jobId }) => jobId).sort()

function child(folder: string, prefix: string, most: number) {
  return spawn(process.execPath, [script, folder, prefix, String(most)], {
    stdio: ['ignore', 'pipe', 'inherit'],
    timeout: 60_000,
    killSignal: 'SIGKILL',
  })
}

describe('a transaction', () => {
  it('keeps nothing of what it did when it throws', async () => {
    const store = await opened(await tempFolder())
    const broken = writing(store, async (tx) => {
      await saveJob(tx, bedroomJob(), now())
      throw new Error('half way')
    })
    await expect(broken).rejects.toThrow('half way')
    expect(await savedIds(store)).toEqual([])
  })

  it('keeps nothing when its answer is a refusal', async () => {
    const store = await opened(await tempFolder())
    const answer = await writing(store, async (tx) => {
      await saveJob(tx, bedroomJob(), now())
      return refuse('refused', 'Not today.')
    })
    expect(answer.ok).toBe(false)
    expect(await savedIds(store)).toEqual([])
  })

  it('cannot write when it is for reading', async () => {
    const store = await opened(await tempFolder())
    const remove = (tx: ReadTx) => sql`delete from job`.execute(tx)
    await expect(reading(store, remove)).rejects.toThrow(/readonly/)
    await save(store, 'afterwards')
    expect(await savedIds(store)).toEqual(['afterwards'])
  })

  it('inside another is our mistake and says so, instead of waiting for ever', async () => {
    const store = await opened(await tempFolder())
    await expect(writing(store, () => reading(store, listJobs))).rejects.toThrow(
      'A transaction is open here already',
    )
    await expect(reading(store, () => save(store, 'inner'))).rejects.toThrow(
      'A transaction is open here already',
    )
  })

  it('waits its turn when many are asked for at once', async () => {
    const store = await opened(await tempFolder())
    const ids = Array.from({ length: 20 }, (_, at) => `job-${at}`)
    await Promise.all(ids.map((jobId) => save(store, jobId)))
    expect(await savedIds(store)).toEqual(ids.toSorted())
  })
})

describe('two openings of one folder', () => {
  it('see what the other has saved, and one state throughout a reading', async () => {
    const folder = await tempFolder()
    const [one, other] = [await opened(folder), await opened(folder)]
    await save(one, 'first')
    expect(await savedIds(other)).toEqual(['first'])
    await reading(other, async (tx) => {
      expect(await readJob(tx, 'second')).toBeNull()
      await save(one, 'second')
      expect(await readJob(tx, 'second')).toBeNull()
    })
    expect(await savedIds(other)).toEqual(['first', 'second'])
  })

  it('wait for each other when both write', async () => {
    const folder = await tempFolder()
    const [one, other] = [await opened(folder), await opened(folder)]
    let finish = () => {}
    const finished = new Promise<void>((resolve) => (finish = resolve))
    const slow = writing(one, async (tx) => {
      await saveJob(tx, bedroomJob({ jobId: 'slow' }), now())
      await finished
    })
    const waiting = save(other, 'waiting')
    finish()
    await Promise.all([slow, waiting])
    expect(await savedIds(one)).toEqual(['slow', 'waiting'])
  })

  it('lose nothing when three processes make the folder and write to it at once', async () => {
    const folder = await tempFolder()
    const prefixes = ['a', 'b', 'c']
    const ends = await Promise.all(
      prefixes.map((prefix) => {
        const process = child(folder, prefix, 40)
        process.stdout.resume()
        return once(process, 'exit')
      }),
    )
    expect(ends.map(([code]) => code)).toEqual([0, 0, 0])
    const ids = prefixes.flatMap((prefix) => Array.from({ length: 40 }, (_, at) => `${prefix}-${at + 1}`))
    expect(await savedIds(await opened(folder))).toEqual(ids.sort())
  }, 90_000)
})

describe('a process killed while it saves', () => {
  it.each([1, 30, 75])(
    'leaves each job that it had said was saved, killed after %i of them',
    async (many) => {
      const folder = await tempFolder()
      const process = child(folder, 'kept', 1_000_000)
      const end = once(process, 'exit')
      const said: string[] = []
      for await (const jobId of createInterface({ input: process.stdout })) {
        said.push(jobId)
        if (said.length === many) process.kill('SIGKILL')
      }
      expect(said.length).toBeGreaterThanOrEqual(many)
      expect(await end).toEqual([null, 'SIGKILL'])
      const store = await opened(folder)
      const saved = new Set(await savedIds(store))
      expect(said.filter((jobId) => !saved.has(jobId))).toEqual([])
      const job = await reading(store, (tx) => readJob(tx, said.at(-1) ?? ''))
      expect(job).toEqual(bedroomJob({ jobId: said.at(-1) ?? '' }))
      const check = await reading(store, (tx) =>
        sql<{ integrity_check: string }>`pragma integrity_check`.execute(tx),
      )
      expect(check.rows).toEqual([{ integrity_check: 'ok' }])
    },
    90_000,
  )
})

describe('troubles with the file', () => {
  it('come as sentences, and our own mistakes do not', () => {
    const busy = Object.assign(new Error('database is locked'), { code: 'SQLITE_BUSY_SNAPSHOT' })
    expect(ioProblem(busy)).toMatchObject({
      code: 'io',
      message: expect.stringContaining('in use by another program'),
    })
    const full = Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' })
    expect(ioProblem(full)).toMatchObject({ code: 'io', message: expect.stringContaining('disk is full') })
    expect(ioProblem(Object.assign(new Error('no such column'), { code: 'SQLITE_ERROR' }))).toBeNull()
    expect(ioProblem(new Error('ours'))).toBeNull()
  })
})
