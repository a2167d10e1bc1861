import { spawn, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { cp, readFile, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { doorEnv, ended, removeFolder, tempFolder, top } from './doors-for-tests.ts'

const launch = join(top, 'src-main/shell/launch')
let folder = ''
beforeAll(async () => {
  folder = await tempFolder()
})
afterAll(() => removeFolder(folder))

const copied = [
  'src-main',
  'src-renderer',
  'migrations',
  'resources',
  'out',
  'electron.vite.config.ts',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
]

/** A copy of the program to change, with the packages of this one. */
async function copyOfAll(): Promise<string> {
  const copy = join(folder, 'copy')
  for (const name of copied) {
    await cp(join(top, name), join(copy, name), { recursive: true, preserveTimestamps: true })
  }
  await symlink(join(top, 'node_modules'), join(copy, 'node_modules'), 'junction')
  return copy
}

describe('Getting ready', () => {
  it('builds when a source changed and only then, and never says anything on standard output', async () => {
    const copy = await copyOfAll()
    const prepare = () =>
      spawnSync(process.execPath, [join(copy, 'src-main/shell/launch/prepare.mjs')], { encoding: 'utf8' })
    expect(prepare()).toMatchObject({ status: 0, stdout: '' })
    expect(prepare()).toMatchObject({ status: 0, stdout: '', stderr: '' })
    const source = join(copy, 'src-main/shell/host/host.ts')
    const before = await readFile(source, 'utf8')
    await writeFile(source, before.replace('It keeps running', 'Changed'))
    expect(prepare()).toMatchObject({ status: 0, stdout: '', stderr: 'Building.\n' })
    expect(await readFile(join(copy, 'out/main/host.js'), 'utf8')).toContain('Changed')
    await writeFile(source, `${before}\nconst broken = (`)
    const refused = prepare()
    expect(refused).toMatchObject({ status: 1, stdout: '' })
    expect(refused.stderr).toMatch(/^Building\.\nThe app could not be built; \S+build\.log says why\.\n$/)
    expect(await readFile(join(copy, 'out/build.log'), 'utf8')).toContain('host.ts')
    await writeFile(source, before)
    expect(prepare()).toMatchObject({ status: 0, stdout: '', stderr: 'Building.\n' })
  })

  it('is done by one process at a time, also when the one before died over it', async () => {
    const lock = join(folder, 'lock')
    const log = join(folder, 'log')
    const worker = join(folder, 'worker.mjs')
    await writeFile(
      worker,
      `import { appendFileSync } from 'node:fs'
       import { setTimeout as wait } from 'node:timers/promises'
       import { alone } from ${JSON.stringify(join(launch, 'alone.mjs'))}
       await alone(${JSON.stringify(lock)}, async () => {
         appendFileSync(${JSON.stringify(log)}, 'in ')
         await wait(100)
         appendFileSync(${JSON.stringify(log)}, 'out ')
       })`,
    )
    const dead = spawnSync(process.execPath, ['-e', ''])
    await writeFile(lock, String(dead.pid))
    const workers = [1, 2, 3, 4].map(() => spawn(process.execPath, [worker], { stdio: 'inherit' }))
    await Promise.all(workers.map(ended))
    expect(workers.map(({ exitCode }) => exitCode)).toEqual([0, 0, 0, 0])
    expect(await readFile(log, 'utf8')).toBe('in out '.repeat(4))
    expect(existsSync(lock)).toBe(false)
  })
})

describe('Starting', () => {
  const start = (words: readonly string[]) =>
    spawn(process.execPath, [join(launch, 'start.mjs'), ...words], {
      env: { ...doorEnv, CI: '1', DISPLAY: '', WAYLAND_DISPLAY: '' },
    })

  it.each([[['--port', '80']], [['somewhere']], [['--data']]])(
    'refuses %j in one sentence',
    async (words) => {
      const child = start(words)
      const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr), ended(child)])
      expect(child.exitCode).toBe(1)
      expect(stdout).toBe('')
      expect(stderr.trim()).toMatch(/^There is nothing to do with .*\.$/)
    },
  )

  it('opens the app for a browser where no window can be opened, and ends on Ctrl-C', async () => {
    const child = start(['--data', join(folder, 'data')])
    let printed = ''
    for await (const part of child.stdout) {
      printed += String(part)
      if (printed.includes('Ctrl-C')) break
    }
    expect(printed).toContain('Opening in your browser instead.')
    const [address = ''] = /http:\S+/.exec(printed) ?? []
    expect((await fetch(address, { redirect: 'manual' })).status).toBe(303)
    child.kill('SIGINT')
    await ended(child)
    expect(child.exitCode).toBe(0)
    expect(existsSync(join(folder, 'data/tailpiece.db'))).toBe(true)
  })
})
