import { spawnSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { filesLike, textOf } from './source-files.ts'

/** Every text file that is ours: what the repository tracks or would track. */
function ownFiles(): readonly string[] {
  const run = spawnSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    encoding: 'utf8',
  })
  if (run.status === 0) return run.stdout.split('\n').filter((path) => isText(path))
  return filesLike(['*.*', '{src-main,src-renderer,tests,resources,migrations,.ci}/**/*.*']).filter(isText)
}

function isText(path: string): boolean {
  return /\.(ts|tsx|mjs|cjs|js|json|md|css|html|svg|ya?ml|txt|csv)$/.test(path)
}

/** Places of somebody's machine: a home folder, a work folder, a drive. Built from parts so that this file has none. */
const machinePlaces = [
  new RegExp(['', '(home|Users|root|work)', '[A-Za-z0-9._-]+'].join('/')),
  new RegExp(`\\b[A-Z]:\\\\{1,2}(Users|Documents|work)\\b`, 'i'),
]

describe('the lock file', () => {
  it('holds no download addresses', () => {
    const addresses = textOf('package-lock.json').match(/"resolved": *"(https?|git)[^"]*"/g) ?? []
    expect(addresses).toEqual([])
  })
})

describe('our own files', () => {
  const files = ownFiles().filter((path) => path !== 'package-lock.json')

  it('are there to be read', () => {
    expect(files.length).toBeGreaterThan(20)
  })

  it('name no place on anybody’s machine', () => {
    const found = files.flatMap((path) =>
      textOf(path)
        .split('\n')
        .flatMap((line, index) =>
          machinePlaces.some((place) => place.test(line)) ? [`${path}:${index + 1}`] : [],
        ),
    )
    expect(found).toEqual([])
  })
})

describe('the looking itself', () => {
  it('knows such a place when it sees one', () => {
    const seen = (line: string) => machinePlaces.some((place) => place.test(line))
    expect(seen(['', 'home', 'ann', 'job.json'].join('/'))).toBe(true)
    expect(seen(['C:', 'Users', 'ann'].join('\\'))).toBe(true)
    expect(seen("import { a } from './work.ts'")).toBe(false)
    expect(seen('12 / 5 /home')).toBe(false)
  })
})
