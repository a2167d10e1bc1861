// Makes a fresh copy ready: installs from the lock file and builds, each only when something changed. Runs before the
// other commands, under whatever Node the person has, so it needs no package. Standard output stays empty: the
// terminal's JSON goes there.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  openSync,
  closeSync,
  readFileSync,
  readdirSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { alone } from './alone.mjs'

const top = join(dirname(fileURLToPath(import.meta.url)), '../../..')
const out = join(top, 'out')
const lockFile = join(top, 'package-lock.json')
const installedStamp = join(top, 'node_modules/.installed-from')
const builtStamp = join(out, 'built-from')
const sources = [
  'src-main',
  'src-renderer',
  'migrations',
  'resources',
  'electron.vite.config.ts',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
]

const [major = 0] = process.versions.node.split('.').map(Number)
/** The Node of the lock file, which npm puts first in every script once it is there. */
const ownNode = join(top, 'node_modules/node/bin', process.platform === 'win32' ? 'node.exe' : 'node')

/** A sentence for the person; anything else that is thrown is our mistake. */
class CannotPrepare extends Error {}

function prepare() {
  if (major < 20)
    throw new CannotPrepare(`Tailpiece needs Node 20 or later; this is Node ${process.versions.node}.`)
  if (!isInstalled()) install()
  const now = sourcesHash()
  if (textOf(builtStamp) !== now) build(now)
}

function isInstalled() {
  const stamp = textOf(installedStamp)
  if (stamp !== null) return stamp === hashOf(readFileSync(lockFile))
  // Installed by hand: npm leaves its own copy of the lock file when it is done.
  const ownCopy = join(top, 'node_modules/.package-lock.json')
  return existsSync(ownCopy) && statSync(ownCopy).mtimeMs >= statSync(lockFile).mtimeMs
}

/** Some packages ask for a newer Node than npm may be running on. They get it: this same install brings it. So npm's
 *  warnings about that are left out, and its errors are kept. */
function install() {
  console.error('Installing the packages of the lock file. This happens once and takes about half a minute.')
  const words = ['ci', '--include=dev', '--loglevel=error', '--no-audit', '--no-fund', '--no-progress']
  const npm = process.env['npm_execpath']
  const [program, first] = npm?.endsWith('js') ? [process.execPath, [npm]] : ['npm', []]
  const log = run([program, ...first, ...words], {
    log: 'install.log',
    shell: program === 'npm' && process.platform === 'win32',
  })
  if (log !== null) {
    throw new CannotPrepare(`The packages could not be installed; ${log} says why. Is this machine online?`)
  }
  if (major < 22 && !existsSync(ownNode)) {
    throw new CannotPrepare(
      "The packages came without Node 24, because npm's settings refuse install scripts. Use Node 24.",
    )
  }
  writeFileSync(installedStamp, hashOf(readFileSync(lockFile)))
}

function build(hash) {
  console.error('Building.')
  const tool = join(top, 'node_modules/electron-vite/bin/electron-vite.js')
  const words = [existsSync(ownNode) ? ownNode : process.execPath, tool, 'build', '--logLevel', 'warn']
  const log = run(words, { log: 'build.log', shell: false })
  if (log !== null) throw new CannotPrepare(`The app could not be built; ${log} says why.`)
  writeFileSync(builtStamp, hash)
}

/** Runs a program with all that it says in a log. Gives the log's path when it failed, else null. */
function run([program, ...words], { log, shell }) {
  mkdirSync(out, { recursive: true })
  const path = join(out, log)
  const file = openSync(path, 'w')
  const done = spawnSync(program, words, { cwd: top, stdio: ['ignore', file, file], shell })
  if (done.error !== undefined) writeFileSync(file, `${done.error.message}\n`)
  closeSync(file)
  return done.status === 0 ? null : path
}

function sourcesHash() {
  const hash = createHash('sha256')
  for (const path of sources.flatMap(filesUnder))
    hash.update(`${path}\0`).update(readFileSync(join(top, path)))
  return hash.digest('hex')
}

function filesUnder(path) {
  const full = join(top, path)
  if (!statSync(full).isDirectory()) return [path]
  return readdirSync(full)
    .toSorted()
    .flatMap((name) => filesUnder(`${path}/${name}`))
}

function hashOf(bytes) {
  return createHash('sha256').update(bytes).digest('hex')
}

function textOf(file) {
  return existsSync(file) ? readFileSync(file, 'utf8') : null
}

try {
  await alone(join(out, 'preparing'), prepare)
} catch (error) {
  console.error(
    error instanceof CannotPrepare ? error.message : `Tailpiece could not be made ready: ${error.message}`,
  )
  process.exitCode = 1
}
