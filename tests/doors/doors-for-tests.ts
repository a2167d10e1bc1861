import { spawn } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'

export const top = join(import.meta.dirname, '../..')
const main = join(top, 'out/main')

/** The day on which every door in a test stands. */
export const doorDay = '2026-03-02'

/** Surroundings of a started program: the same day for all, no browser, and nothing of the npm script that runs us. */
export const doorEnv: NodeJS.ProcessEnv = {
  ...process.env,
  TAILPIECE_TODAY: doorDay,
  TAILPIECE_NO_BROWSER: '1',
  npm_lifecycle_event: '',
}

export async function tempFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'tailpiece-door-'))
}

export const removeFolder = (folder: string) => rm(folder, { recursive: true, force: true })

export type Said = { readonly code: number | null; readonly stdout: string; readonly stderr: string }

/** Asks at the terminal and waits for its end. `stdin` is what is piped in. */
export async function askTerminal(
  words: readonly string[],
  how: { stdin?: string; cwd?: string } = {},
): Promise<Said> {
  const child = spawn(process.execPath, [join(main, 'terminal.js'), ...words], {
    env: doorEnv,
    timeout: 60_000,
    cwd: how.cwd ?? top,
  })
  child.stdin.end(how.stdin ?? '')
  const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr), ended(child)])
  return { code: child.exitCode, stdout, stderr }
}

export type StartedHost = {
  readonly home: string
  readonly key: string
  readonly child: ChildProcess
  readonly stop: (signal?: NodeJS.Signals) => Promise<number | null>
}

/** Starts the loopback host and waits for the address that it prints. */
export async function startHost(dataFolder: string): Promise<StartedHost> {
  const child = spawn(process.execPath, [join(main, 'host.js'), '--data', dataFolder], {
    env: doorEnv,
    timeout: 240_000,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let printed = ''
  for await (const part of child.stdout) {
    printed += String(part)
    if (printed.includes('?key=') && printed.includes('\n')) break
  }
  const [, home, key] = /(http:\/\/127\.0\.0\.1:\d+)\/\?key=([\w-]+)/.exec(printed) ?? []
  if (home === undefined || key === undefined) throw new Error(`The host printed no address: ${printed}`)
  const stop = async (signal: NodeJS.Signals = 'SIGINT') => {
    child.kill(signal)
    await ended(child)
    return child.exitCode
  }
  return { home, key, child, stop }
}

/** Waits for a program's end; says so when it takes too long, and ends it. */
export async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const late = setTimeout(() => child.kill('SIGKILL'), 30_000)
  await once(child, 'exit')
  clearTimeout(late)
}
