import { spawnSync } from 'node:child_process'
import { expect, it } from 'vitest'

it('the lists of rules hold every rule file (npm run rules writes them)', () => {
  const run = spawnSync(process.execPath, ['src-main/shell/launch/make-rule-lists.mjs', '--check'], {
    encoding: 'utf8',
  })
  expect(run.stderr).toBe('')
  expect(run.status).toBe(0)
})
