// Finds Electron's runtime, which comes apart from its package, or fetches it within a set time.
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const patienceMs = 20_000

/** `{path}` to run, or `{path: null, why}`: a sentence for the person. */
export async function electronRuntime(top) {
  const obstacle = windowObstacle()
  if (obstacle !== null) return { path: null, why: obstacle }
  const there = runtimePath(top)
  if (there !== null) return { path: there }
  const why = "Electron's runtime is not here and could not be fetched."
  if (process.env['CI'] !== undefined || failedToday(top)) return { path: null, why }
  console.log("Fetching Electron's runtime, which opens the app in a window of its own.")
  await fetchRuntime(top)
  const path = runtimePath(top)
  if (path !== null) return { path }
  mkdirSync(join(top, 'out'), { recursive: true })
  writeFileSync(failureFile(top), today())
  return { path: null, why }
}

/** Why no window could be opened even with the runtime. */
function windowObstacle() {
  if (process.platform !== 'linux') return null
  const { DISPLAY, WAYLAND_DISPLAY } = process.env
  if (!DISPLAY && !WAYLAND_DISPLAY) return 'There is no screen to open a window on.'
  return process.getuid?.() === 0 ? 'Electron opens no window for root.' : null
}

/** The package notes its runtime's place in path.txt once it has one; asking the package itself would start a download. */
function runtimePath(top) {
  const folder = join(top, 'node_modules/electron')
  const note = join(folder, 'path.txt')
  if (!existsSync(note)) return null
  const path = join(
    process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(folder, 'dist'),
    readFileSync(note, 'utf8'),
  )
  return existsSync(path) ? path : null
}

/** Runs the package's own download. One that takes longer is ended; the rest of the day does not try again. */
function fetchRuntime(top) {
  const child = spawn(process.execPath, [join(top, 'node_modules/electron/install.js')], { stdio: 'ignore' })
  const end = setTimeout(() => child.kill(), patienceMs)
  return new Promise((resolve) => {
    child.once('error', resolve)
    child.once('exit', resolve)
  }).finally(() => clearTimeout(end))
}

function failedToday(top) {
  return existsSync(failureFile(top)) && readFileSync(failureFile(top), 'utf8') === today()
}

const failureFile = (top) => join(top, 'out/no-electron-runtime')
const today = () => new Date().toISOString().slice(0, 10)
