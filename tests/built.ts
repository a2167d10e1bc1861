import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const prepare = join(import.meta.dirname, '../src-main/shell/launch/prepare.mjs')

/** Before any test: builds what is older than its sources, so that no door is tested as it was yesterday. */
export function setup(): void {
  const done = spawnSync(process.execPath, [prepare], { stdio: 'inherit' })
  if (done.status !== 0) throw new Error('The app could not be built, so its doors cannot be tested.')
}
