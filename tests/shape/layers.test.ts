import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { cruise } from 'dependency-cruiser'
import type { ICruiseResult, IForbiddenRuleType } from 'dependency-cruiser'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { filesLike } from './source-files.ts'

/** Each floor, and the floors that it may import from besides its own. */
const floors: Readonly<Record<string, readonly string[]>> = {
  'src-main/domain': [],
  'src-main/engine': ['src-main/domain'],
  'src-main/documents': ['src-main/domain'],
  'src-main/exchange': ['src-main/domain'],
  'src-main/store': ['src-main/domain'],
  'src-main/contract': ['src-main/domain'],
  'src-main/desk': [
    'src-main/domain',
    'src-main/engine',
    'src-main/documents',
    'src-main/exchange',
    'src-main/store',
    'src-main/contract',
  ],
  'src-main/shell': ['src-main/desk', 'src-main/contract', 'src-main/domain'],
  'src-renderer': ['src-main/contract', 'src-main/engine', 'src-main/domain'],
}
/** Floors that know no machine: no files, clock, network or window. */
const pure = ['src-main/domain', 'src-main/engine', 'src-main/contract']
function rules(): IForbiddenRuleType[] {
  const at = (folders: readonly string[]) => `^(${folders.join('|')})/`
  const ownFloors = Object.entries(floors).map(([floor, below]) => ({
    name: `${floor} stands only on its own floors`,
    severity: 'error' as const,
    from: { path: at([floor]) },
    to: { path: '^(src-main|src-renderer|tests)/', pathNot: at([floor, ...below]) },
  }))
  return [
    ...ownFloors,
    {
      name: 'pure floors know no machine',
      severity: 'error',
      from: { path: at(pure) },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'nothing goes round',
      severity: 'error',
      from: { path: at(Object.keys(floors)) },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      // Of our own files; that a package's name leads somewhere is the compiler's to say.
      name: 'every import leads somewhere',
      severity: 'error',
      from: { path: at(Object.keys(floors)), pathNot: '\\.css$' },
      to: { couldNotResolve: true, path: '^\\.', pathNot: '\\?|(^|/)out/main/' },
    },
  ]
}

async function cruised(folders: readonly string[], baseDir: string): Promise<ICruiseResult> {
  const { output } = await cruise([...folders], {
    baseDir,
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    validate: true,
    ruleSet: { forbidden: rules() },
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.css'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  })
  if (typeof output === 'string') throw new Error('Expected a result, not a text')
  return output
}

const offences = ({ summary }: ICruiseResult) =>
  summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} imports ${to}`)

describe('the floors', () => {
  it('import only what stands below them, and every file was looked at', { timeout: 120_000 }, async () => {
    const result = await cruised(['src-main', 'src-renderer'], process.cwd())
    const looked = result.modules
      .map(({ source }) => source)
      .filter((path) => /^src-(main|renderer)\/.*\.tsx?$/.test(path))
    expect(looked.toSorted()).toEqual(filesLike(['src-main/**/*.{ts,tsx}', 'src-renderer/**/*.{ts,tsx}']))
    expect(offences(result)).toEqual([])
  })

  it('hold every source file', () => {
    const known = Object.keys(floors)
    const homeless = filesLike(['src-main/**/*.{ts,tsx}']).filter(
      (path) => !known.some((floor) => path.startsWith(`${floor}/`)),
    )
    expect(homeless).toEqual([])
  })
})

describe('a wrong import', () => {
  let folder = ''
  const put = (path: string, text: string) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'floors-'))
    put('src-main/store/save.ts', 'export type Save = string\nexport const save = 1\n')
    put('src-main/engine/wrong.ts', "import { save } from '../store/save.ts'\nexport const wrong = save\n")
    put(
      'src-main/engine/wrong-type.ts',
      "import type { Save } from '../store/save.ts'\nexport type Wrong = Save\n",
    )
    put('src-main/engine/clock.ts', "import { hrtime } from 'node:process'\nexport const now = hrtime\n")
    put('src-main/domain/around.ts', "import { back } from './back.ts'\nexport const around = () => back\n")
    put('src-main/domain/back.ts', "import { around } from './around.ts'\nexport const back = () => around\n")
    put('src-main/domain/lost.ts', "import { gone } from './gone.ts'\nexport const lost = gone\n")
    put('src-main/desk/right.ts', "import { save } from '../store/save.ts'\nexport const right = save\n")
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('is caught, be it of a value, a type, the machine, in a ring or of nothing; a right one is not', async () => {
    const found = offences(await cruised(['src-main'], folder))
    expect(found.toSorted()).toEqual([
      'every import leads somewhere: src-main/domain/lost.ts imports ./gone.ts',
      'nothing goes round: src-main/domain/around.ts imports src-main/domain/back.ts',
      'pure floors know no machine: src-main/engine/clock.ts imports process',
      'src-main/engine stands only on its own floors: src-main/engine/wrong-type.ts imports src-main/store/save.ts',
      'src-main/engine stands only on its own floors: src-main/engine/wrong.ts imports src-main/store/save.ts',
    ])
  })
})
