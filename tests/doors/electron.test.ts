import { existsSync, readFileSync } from 'node:fs'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { _electron } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answered } from '../answered.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import { askTerminal, doorEnv, ended, removeFolder, tempFolder, top } from './doors-for-tests.ts'
import { spawnStandIn, startStandIn } from './stand-in/start-stand-in.ts'
import type { StandIn } from './stand-in/start-stand-in.ts'

type InWindow = (expression: string) => Promise<unknown>

const refusedSender = { ok: false, problems: [expect.objectContaining({ code: 'refused' })] }

/** What must be true of the window, whichever runtime it stands in. */
async function expectAWorkingWindow(inWindow: InWindow, folder: string): Promise<void> {
  expect(await inWindow(`document.title`)).toContain('Tailpiece')
  expect(await inWindow(`document.getElementById('root') !== null`)).toBe(true)
  expect(await inWindow(`[typeof require, typeof process, typeof module].join()`)).toBe(
    'undefined,undefined,undefined',
  )
  expect(await inWindow(`Object.keys(window.tailpiece).sort().join()`)).toBe('call,on')
  expect(await inWindow(`window.tailpiece.call('app.about', {})`)).toMatchObject({
    ok: true,
    value: { dataFolder: folder, today: '2026-03-02' },
  })
  expect(await inWindow(`window.tailpiece.call('emitter.output', {})`)).toMatchObject({
    ok: false,
    problems: [{ code: 'invalid', path: 'ratedW' }, {}, {}, {}, {}],
  })
}

describe("The built desktop program, in a stand-in for Electron's runtime", () => {
  let folder = ''
  let program: StandIn
  beforeAll(async () => {
    folder = await tempFolder()
    program = await startStandIn(folder)
  })
  afterAll(async () => {
    await program.end()
    await removeFolder(folder)
  })

  it('opens its window on its own scheme, and a call goes to the real desk and back', async () => {
    await expectAWorkingWindow(program.evaluate, folder)
  })

  it('shuts the window in: sandboxed, isolated, no Node, no permission, no second window', async () => {
    expect(await program.facts()).toMatchObject({
      webPreferences: { contextIsolation: true, sandbox: true, nodeIntegration: false, webviewTag: false },
      sandboxed: true,
      mayHaveCamera: [false, false],
      newWindow: 'deny',
    })
  })

  it('lets only plain data across', async () => {
    const withFunction = `(async () => window.tailpiece.call('app.about', {f: () => 1}))().catch(({name}) => name)`
    expect(await program.evaluate(withFunction)).toBe('DataCloneError')
    // An instance of a class arrives as its fields alone.
    const instance = `window.tailpiece.call('app.about', new (class { a = 1; get b() { return 2 } })())`
    expect(await program.evaluate(instance)).toMatchObject({
      ok: false,
      problems: [{ code: 'invalid', path: 'a' }],
    })
  })

  it('answers its own window alone', async () => {
    const own = { url: 'app://tailpiece/index.html', parent: null }
    expect(await program.askAs(own, 'app.about', {})).toMatchObject({ ok: true })
    for (const other of [
      { url: 'https://example.com/', parent: null },
      { url: 'app://tailpiece.example.com/', parent: null },
      { ...own, parent: {} },
      null,
    ]) {
      expect(await program.askAs(other, 'app.about', {})).toEqual(refusedSender)
    }
  })

  it('takes any nonsense for a refusal', async () => {
    const own = { url: 'app://tailpiece/', parent: null }
    for (const args of [[], [7], [{ name: 'app.about' }], ['constructor', {}]]) {
      expect(await program.askAs(own, ...args)).toMatchObject({
        ok: false,
        problems: [{ code: 'not-found' }],
      })
    }
  })

  it('shows a paper in its folder, and no file that is anywhere else', async () => {
    const papers = join(folder, 'papers')
    await mkdir(papers, { recursive: true })
    await writeFile(join(papers, 'quote-Q-1.eml'), 'X-Unsent: 1')
    await writeFile(join(folder, 'beside.pdf'), '')
    const show = (name: string) =>
      program.evaluate(`window.tailpiece.call('window.showPaper', {name: ${JSON.stringify(name)}})`)
    expect(await show('quote-Q-1.eml')).toEqual({ ok: true, value: { path: join(papers, 'quote-Q-1.eml') } })
    for (const name of ['../beside.pdf', '/etc/hosts', 'quote-Q-1', '.pdf', '', 'a\\..\\beside.pdf']) {
      expect(await show(name), name).toMatchObject({ ok: false, problems: [{ code: 'invalid' }] })
    }
    expect(await show('never-made.pdf')).toMatchObject({ ok: false, problems: [{ code: 'not-found' }] })
    const other = { url: 'https://example.com/', parent: null }
    expect(await program.askAs(other, 'window.showPaper', { name: 'quote-Q-1.eml' })).toEqual(refusedSender)
    expect((await program.facts()).shown).toEqual([join(papers, 'quote-Q-1.eml')])
  })

  it('goes nowhere else', async () => {
    await program.evaluate(`void (location.href = 'https://example.com/away')`)
    await expect
      .poll(async () => (await program.facts()).blocked)
      .toContain('prevented https://example.com/away')
    expect(await program.evaluate('document.title')).toContain('Tailpiece')
  })

  it('serves its own files and nothing beside them', async () => {
    const status = (path: string) =>
      program.evaluate(`fetch(${JSON.stringify(path)}).then((got) => got.status)`)
    expect(await status('/index.html')).toBe(200)
    expect(await status('/..%2f..%2fpackage.json')).toBe(404)
    expect(await status('/assets/')).toBe(404)
  })

  it('gives way to the one that has the data folder open', async () => {
    const second = spawnStandIn(folder)
    await ended(second)
    expect(second.exitCode).toBe(0)
    await program.secondStart()
    expect(await program.evaluate('document.title')).toContain('Tailpiece')
  })

  it('lets a closing window save, closes the data file, and ends', async () => {
    const { job } = answered((await program.call('job.sample', {})) as Outcome<{ readonly job: Job }>)
    await program.evaluate(`(() => {
      window.tailpiece.on('closing', (...heard) => {
        const title = 'Saved with ' + heard.length + ' arguments'
        void window.tailpiece.call('job.save', { job: { ...${JSON.stringify(job)}, title } })
      })
    })()`)
    expect(await program.close()).toBe(0)
    await expect(readFile(join(folder, 'tailpiece.db-wal'))).rejects.toThrow('ENOENT')
    const { stdout } = await askTerminal(['job.read', '--in', '-', '--data', folder], {
      stdin: JSON.stringify({ jobId: job.jobId }),
    })
    // The page heard that the window closes, and never the event behind it.
    expect(JSON.parse(stdout)).toMatchObject({ job: { title: 'Saved with 0 arguments' } })
  })
})

describe('The built desktop program, in Electron itself', () => {
  const note = join(top, 'node_modules/electron/path.txt')
  const runtime = existsSync(note)
    ? join(top, 'node_modules/electron/dist', readFileSync(note, 'utf8'))
    : null

  it('opens its window, answers, and ends', async ({ skip }) => {
    if (runtime === null || !existsSync(runtime)) return skip("Electron's runtime is not on this machine")
    const onScreen = process.platform !== 'linux' || process.env['DISPLAY'] !== undefined
    if (!onScreen) return skip('there is no screen for a window of Electron')
    const folder = await tempFolder()
    const rootFlags = process.getuid?.() === 0 ? ['--no-sandbox'] : []
    const program = await _electron.launch({
      executablePath: runtime,
      args: [...rootFlags, top, '--data', folder],
      env: { ...(doorEnv as Record<string, string>) },
    })
    const page = await program.firstWindow()
    await expectAWorkingWindow((expression) => page.evaluate(expression), folder)
    expect(await page.evaluate('location.href')).toMatch(/^app:\/\/tailpiece\//)
    await program.close()
    await expect(readFile(join(folder, 'tailpiece.db-wal'))).rejects.toThrow('ENOENT')
    await removeFolder(folder)
  })
})
