import { execFile, spawn } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { existsSync } from 'node:fs'
import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, vi } from 'vitest'
import { launchBrowser } from '../browser.ts'

// A story starts a program and a browser and reads many pages: on a busy machine it may take its time.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 60_000 })

/** One browser for all stories of a file; each has a window and a data folder of its own. */
let shared: Promise<Browser> | undefined

/** A data file that has the shipped catalogue and nothing else, made once for all stories of a file. */
let begun: Promise<string> | undefined

afterAll(async () => {
  await (await shared)?.close()
  if (begun !== undefined) await rm(await begun, { recursive: true, force: true })
})

const host = join(import.meta.dirname, '../../out/main/host.js')
const terminal = join(import.meta.dirname, '../../out/main/terminal.js')

/** The day that every story is told on. */
export const storyDay = '2026-11-25'

/** Where a story is told, and under which colour scheme. */
export type Surroundings = {
  readonly zone?: string
  readonly scheme?: 'light' | 'dark'
  readonly width?: number
  readonly height?: number
}

/** The built app in a real browser, with a data folder of its own. */
export type OpenApp = {
  readonly page: Page
  /** What went wrong in the page without anybody being told. */
  readonly faults: readonly string[]
  readonly close: () => Promise<void>
}

/** Starts the built host and opens its window in Chromium. */
export async function openApp(surroundings: Surroundings = {}): Promise<OpenApp> {
  if (!existsSync(host)) throw new Error(`${host} is not there: build first, with npm run build.`)
  const { zone = 'UTC', scheme = 'light', width = 1280, height = 800 } = surroundings
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-story-'))
  begun ??= beginData()
  await cp(await begun, folder, { recursive: true })
  const child = startHost(folder, zone)
  const address = await addressOf(child)
  shared ??= launchBrowser()
  const browser = await shared
  const context = await browser.newContext({
    timezoneId: zone,
    locale: 'en-GB',
    colorScheme: scheme,
    viewport: { width, height },
    acceptDownloads: true,
  })
  context.setDefaultTimeout(15_000)
  const page = await context.newPage()
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
  await page.goto(address)
  await page.getByRole('heading', { name: 'Jobs', level: 1 }).waitFor()
  return { page, faults, close: () => closeAll(context, child, folder) }
}

async function beginData(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-begun-'))
  await promisify(execFile)(process.execPath, [terminal, 'job.list', '--data', folder], { timeout: 60_000 })
  return folder
}

function startHost(folder: string, zone: string): ChildProcess {
  return spawn(process.execPath, [host, '--data', folder], {
    env: { ...process.env, TZ: zone, TAILPIECE_TODAY: storyDay, TAILPIECE_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
    timeout: 300_000,
  })
}

/** The address that the host prints, with its key. */
async function addressOf(child: ChildProcess): Promise<string> {
  let printed = ''
  return new Promise((found, failed) => {
    child.stdout?.on('data', (part: Buffer) => {
      printed += part.toString()
      const address = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(printed)?.[0]
      if (address !== undefined) found(address)
    })
    child.once('exit', (code) =>
      failed(new Error(`The host stopped with ${code} before it said where it is.`)),
    )
  })
}

async function closeAll(context: BrowserContext, child: ChildProcess, folder: string): Promise<void> {
  await context.close()
  if (child.exitCode === null && child.signalCode === null) {
    const gone = once(child, 'exit')
    child.kill('SIGTERM')
    await gone
  }
  await rm(folder, { recursive: true, force: true })
}
