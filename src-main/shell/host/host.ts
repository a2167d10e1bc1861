import { join, resolve } from 'node:path'
import { openDesk } from '../../desk/open-desk.ts'
import { callsTo } from '../calls-under-way.ts'
import { defaultDataFolder } from '../data-folder.ts'
import { readFlags } from '../read-flags.ts'
import { openBrowser } from './open-browser.ts'
import { startHost } from './server.ts'

/** Runs the app in the system's browser until it is told to stop. */
async function run(): Promise<void> {
  const asked = readFlags(process.argv.slice(2), ['data'])
  if (!asked.ok) return refused(asked.problems[0]?.message)
  const [word] = asked.value.words
  if (word !== undefined)
    return refused(`There is nothing to do with ${word}; the only flag is --data FOLDER.`)
  const dataFolder = resolve(asked.value.flags.data ?? defaultDataFolder(process))
  const desk = await openDesk({ dataFolder, mayChoosePath: false })
  if (!desk.ok) return refused(desk.problems[0]?.message)
  const host = await startHost(join(import.meta.dirname, '../renderer'), callsTo(desk.value))
  untilStopped(host.close)
  console.log(`Tailpiece is open at ${host.address}`)
  console.log('It keeps running until you press Ctrl-C here.')
  if (process.env['TAILPIECE_NO_BROWSER'] === '1') return
  if (!(await openBrowser(host.address))) {
    console.log('No browser could be opened from here: open that address in one yourself.')
  }
}

function untilStopped(close: () => Promise<void>): void {
  const stop = () => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, stop)
    close().catch((error: unknown) => {
      console.error(error)
      process.exitCode = 1
    })
  }
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, stop)
}

function refused(message: string | undefined): void {
  console.error(message ?? 'Tailpiece could not start.')
  process.exitCode = 1
}

void run()
