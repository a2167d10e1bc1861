import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { applyOver } from '../../../../src-main/desk/price-files/apply-work.ts'
import { storeOf } from '../../../../src-main/desk/store-of.ts'
import { newShared, watchOf } from '../../../../src-main/desk/running/watch.ts'
import { ioProblem } from '../../../../src-main/store/sqlite/troubles.ts'
import { valueOf } from '../../../store/store-for-tests.ts'
import {
  ask,
  compare,
  everyTable,
  header,
  listOf,
  problemOf,
  reading,
  room,
  take,
} from './price-files-for-tests.ts'

const killed = join(import.meta.dirname, 'apply-until-killed.ts')

describe('a price file that is being taken in', () => {
  it('leaves every table as it was when the process is killed while the list is written', async () => {
    const { desk, put } = await room()
    const { folder, file } = storeOf(desk)
    await take(desk, await put('old.csv', listOf(20_000)))
    const path = await put(
      'new.csv',
      listOf(40_000, (at) => at % 2 === 0),
    )
    const { fileHash, counts } = valueOf(await compare(desk, path))
    expect([counts.new, counts.changed]).toEqual([20_000, 10_000])
    const before = everyTable(file)
    const child = spawn(process.execPath, [killed, folder, path, fileHash, JSON.stringify(reading)], {
      stdio: ['ignore', 'pipe', 'inherit'],
      timeout: 120_000,
      killSignal: 'SIGKILL',
    })
    const end = once(child, 'exit')
    const said: string[] = []
    for await (const says of createInterface({ input: child.stdout })) {
      said.push(says)
      if (says === 'Writing the list') child.kill('SIGKILL')
    }
    expect(await end).toEqual([null, 'SIGKILL'])
    expect(said.at(-1)).toBe('Writing the list')
    expect(everyTable(file)).toEqual(before)
    // And what was left takes the file as if nothing had been.
    expect(valueOf(await take(desk, path)).counts).toEqual(counts)
  }, 180_000)

  it('leaves every table as it was when it is stopped, and says that it was', async () => {
    const { desk, put } = await room()
    const path = await put('list.csv', listOf(60_000))
    const { fileHash } = valueOf(await compare(desk, path))
    const before = everyTable(storeOf(desk).file)
    const input = { file: { path }, supplierId: 'north', reading, fileHash, workId: 'mine' }
    const working = ask(desk, 'priceFile.apply', input)
    let seen = ''
    while (seen !== 'Reading the file') {
      await new Promise((resolve) => setTimeout(resolve, 2))
      seen = valueOf(await ask(desk, 'work.progress', { workId: 'mine' })).says
    }
    expect(problemOf(await ask(desk, 'priceFile.apply', input))).toMatchObject({
      code: 'conflict',
      path: 'workId',
    })
    expect(valueOf(await ask(desk, 'work.cancel', { workId: 'mine' }))).toEqual({ stopped: true })
    expect(problemOf(await working)).toMatchObject({
      code: 'refused',
      message: 'It was stopped. Nothing was changed.',
    })
    expect(everyTable(storeOf(desk).file)).toEqual(before)
    expect(valueOf(await ask(desk, 'work.progress', { workId: 'mine' })).running).toBe(false)
    expect(valueOf(await ask(desk, 'work.cancel', { workId: 'mine' }))).toEqual({ stopped: false })
  }, 120_000)

  it('leaves every table as it was when the disk is full, and says so in a sentence', async () => {
    const { desk, put } = await room()
    const { file } = storeOf(desk)
    const path = await put('list.csv', listOf(5000))
    const { fileHash } = valueOf(await compare(desk, path))
    const before = everyTable(file)
    const db = new Database(file)
    db.pragma(`max_page_count = ${Number(db.pragma('page_count', { simple: true })) + 20}`)
    const task = {
      file,
      source: { path, name: 'list.csv' },
      supplierId: 'north',
      reading,
      today: desk.today,
      most: 0,
    }
    const full: unknown = await applyOver(
      db,
      { ...task, kind: 'apply', at: desk.now(), fileHash, links: [] },
      watchOf(newShared()),
    ).then(
      () => null,
      (error: unknown) => error,
    )
    db.close()
    expect(ioProblem(full)).toMatchObject({ code: 'io', message: 'The disk is full, so nothing was saved.' })
    expect(everyTable(file)).toEqual(before)
  })
})

describe('undoing', () => {
  const but = ['price_change']

  it('puts every row of every table back as it was, new, changed and missing ones alike', async () => {
    const { desk, put } = await room()
    const { file } = storeOf(desk)
    await take(desk, await put('old.csv', listOf(300)), { validFrom: '2026-01-01' })
    const before = everyTable(file, but)
    const other = `${listOf(400, (at) => at % 3 === 0)
      .split('\n')
      .slice(0, 2)
      .join('\n')}\nT000001,Another name,5012345678900,10,10.10,\n${listOf(400, (at) => at % 3 === 0)
      .split('\n')
      .slice(20)
      .join('\n')}`
    const taken = valueOf(
      await take(desk, await put('new.csv', other), {
        validFrom: '2026-02-01',
        links: [{ code: 'T000001', itemId: 'test-pipe-8' }],
      }),
    )
    expect(taken.counts.new).toBe(100)
    expect(taken.counts.missing).toBeGreaterThan(0)
    expect(everyTable(file, but)).not.toEqual(before)
    const { changeNo } = taken
    expect(valueOf(await ask(desk, 'price.undo', { changeNo: changeNo ?? 0 })).counts).toEqual(taken.counts)
    expect(everyTable(file, but)).toEqual(before)
    expect(problemOf(await ask(desk, 'price.undo', { changeNo: changeNo ?? 0 })).message).toBe(
      '“new.csv” was undone already.',
    )
    // The file that was undone can be taken again, and undone again.
    const again = valueOf(await take(desk, await put('new.csv', other), { validFrom: '2026-02-01' }))
    expect(again.counts).toEqual(taken.counts)
    await ask(desk, 'price.undo', { changeNo: again.changeNo ?? 0 })
    expect(everyTable(file, but)).toEqual(before)
  }, 120_000)

  it('is refused when a later change wrote to the same rows, until that one is undone', async () => {
    const { desk, put } = await room()
    const { file } = storeOf(desk)
    const before = everyTable(file, but)
    const first = valueOf(await take(desk, await put('a.csv', `${header}\nA,One,,1,1.00,\nB,Two,,1,2.00,`)))
    const rowNo = valueOf(await ask(desk, 'priceList.search', { text: 'One' })).rows[0]?.rowNo ?? 0
    const link = { rowNo, itemId: 'test-pipe-8', itemHolds: 3 }
    expect(valueOf(await ask(desk, 'priceList.link', link)).row).toMatchObject({
      itemId: 'test-pipe-8',
      itemHolds: 3,
    })
    const refused = problemOf(await ask(desk, 'price.undo', { changeNo: first.changeNo ?? 0 }))
    expect(refused).toMatchObject({
      code: 'conflict',
      message:
        '“A is Copper pipe 8 mm” changed some of the same rows later, so “a.csv” cannot be undone before it.',
    })
    const [later] = valueOf(await ask(desk, 'price.changes', { most: 1 })).changes
    await ask(desk, 'price.undo', { changeNo: later?.changeNo ?? 0 })
    await ask(desk, 'price.undo', { changeNo: first.changeNo ?? 0 })
    expect(everyTable(file, but)).toEqual(before)
    expect(problemOf(await ask(desk, 'price.undo', { changeNo: 99 })).code).toBe('not-found')
  }, 120_000)

  it('puts a single price back too', async () => {
    const { desk } = await room()
    const { file } = storeOf(desk)
    const before = everyTable(file, but)
    const price = { itemId: 'test-pipe-15', supplierId: 'north', packHolds: 3, packPence: 1500 }
    await ask(desk, 'price.set', price)
    await ask(desk, 'price.set', { ...price, code: 'NEW15', validFrom: '2026-04-01' })
    for (const { changeNo } of valueOf(await ask(desk, 'price.changes', {})).changes)
      valueOf(await ask(desk, 'price.undo', { changeNo }))
    expect(everyTable(file, but)).toEqual(before)
  }, 120_000)
})
