// Checks everything, cheapest first, and stops at the first thing that is wrong. `--checks-only` leaves out the tests.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const top = join(import.meta.dirname, '..')
const tsconfigs = [
  'src-main/tsconfig.pure.json',
  'src-main/tsconfig.json',
  'src-renderer/tsconfig.json',
  'tests/tsconfig.json',
]
const checks = [
  ...tsconfigs.map((file) => ({
    tool: 'typescript/bin/tsc',
    words: ['-p', file],
    wrong: `The types do not fit (${file}).`,
  })),
  {
    tool: 'oxlint/bin/oxlint',
    words: ['--type-aware', '--deny-warnings', '--report-unused-disable-directives'],
    wrong: 'The lint found something to mend.',
  },
  {
    tool: 'prettier/bin/prettier.cjs',
    words: ['--check', '--log-level', 'warn', '.'],
    wrong: 'Some files are not in the house format; `npm run format` mends that.',
  },
]
const tests = {
  tool: 'vitest/vitest.mjs',
  words: ['run', '--config', 'tests/vitest.config.ts'],
  wrong: 'Some tests failed.',
}

const steps = process.argv.includes('--checks-only') ? checks : [...checks, tests]
const failed = steps.find(({ tool, words }) => {
  const program = join(top, 'node_modules', tool)
  return spawnSync(process.execPath, [program, ...words], { cwd: top, stdio: 'inherit' }).status !== 0
})
if (failed !== undefined) {
  console.error(failed.wrong)
  process.exitCode = 1
} else if (!steps.includes(tests)) {
  console.log('Types, lint and format are in order.')
}
