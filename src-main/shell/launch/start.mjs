// Opens the app: in Electron's window where its runtime is there or can be fetched, else in the system's browser.
import { spawn } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { electronRuntime } from './electron-runtime.mjs'

const top = join(dirname(fileURLToPath(import.meta.url)), '../../..')
/** A window that fails falls at once; one that was used does not count as failed. */
const failsWithinMs = 10_000

async function start(words) {
  const wrong = wrongWord(words)
  if (wrong !== null) {
    console.error(`There is nothing to do with ${wrong}; the only flag is --data FOLDER.`)
    process.exitCode = 1
    return
  }
  const runtime = await electronRuntime(top)
  const why = runtime.path === null ? runtime.why : await windowFailure(runtime.path, words)
  if (why === null) return
  console.log(`${why} Opening in your browser instead.`)
  await import('../../../out/main/host.js')
}

function wrongWord(words) {
  const [word, value, ...more] = words
  if (word === undefined) return null
  if (word.startsWith('--data=') && word !== '--data=') return value ?? null
  if (word !== '--data') return word
  return value === undefined ? '--data without a folder' : (more[0] ?? null)
}

/** Runs the window to its end. Null when it ran, a sentence when it could not. */
function windowFailure(electron, words) {
  const begun = Date.now()
  const child = spawn(electron, [top, ...words], { stdio: ['ignore', 'inherit', 'inherit'] })
  // Ctrl-C reaches the window by itself; this process waits for it to close its data file.
  const wait = () => undefined
  const end = () => child.kill('SIGTERM')
  process.on('SIGINT', wait)
  process.on('SIGTERM', end)
  return new Promise((resolve) => {
    child.once('error', (error) => resolve(`Electron's window could not be opened (${error.message}).`))
    child.once('exit', (code, signal) => {
      process.off('SIGINT', wait)
      process.off('SIGTERM', end)
      const told = signal === 'SIGINT' || signal === 'SIGTERM'
      const failed = code !== 0 && !told && Date.now() - begun < failsWithinMs
      if (code !== 0 && !told && !failed) process.exitCode = code ?? 1
      resolve(failed ? `Electron's window could not be opened (it ended with ${signal ?? code}).` : null)
    })
  })
}

// npm runs a script in this folder; the folder that a person names lies where that person stands.
if (process.env['npm_lifecycle_event'] === 'start') process.chdir(process.env['INIT_CWD'] ?? '.')
await start(process.argv.slice(2))
