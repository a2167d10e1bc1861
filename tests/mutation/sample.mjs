// A sample of the mutation hunt: `npm run mutation:sample` takes 300 lines of the engine by lot (another number, and
// another lot, as `-- 500 7`). Every line has the same chance, so the score is an estimate of the whole hunt's.
import { spawnSync } from 'node:child_process'
import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

const top = join(import.meta.dirname, '../..')
const [howMany = 300, lot = 1] = process.argv.slice(2).map(Number)

/** Numbers from 0 to 1, the same for the same lot. */
function drawnFrom(seed) {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

const lines = globSync('src-main/engine/**/*.ts', { cwd: top })
  .filter((file) => !file.endsWith('-list.ts'))
  .toSorted()
  .flatMap((file) =>
    readFileSync(join(top, file), 'utf8')
      .split('\n')
      .flatMap((text, at) =>
        /^\s*(\/?\*|\/\/|import |export type|type |$)/.test(text) ? [] : [`${file}:${at + 1}-${at + 1}`],
      ),
  )
const draw = drawnFrom(lot)
for (let warmUp = 0; warmUp < 10; warmUp += 1) draw()
const taken = new Set()
while (taken.size < Math.min(howMany, lines.length)) taken.add(lines[Math.floor(draw() * lines.length)])
console.log(`${taken.size} of ${lines.length} lines of the engine, lot ${lot}`)
const stryker = join(top, 'node_modules/@stryker-mutator/core/bin/stryker.js')
const config = 'tests/mutation/stryker.config.mjs'
const words = [
  'run',
  config,
  '--force',
  '--incrementalFile',
  'out/mutation/sample.json',
  '-m',
  [...taken].join(','),
]
const { status } = spawnSync(process.execPath, [stryker, ...words], { cwd: top, stdio: 'inherit' })
process.exitCode = status ?? 1
