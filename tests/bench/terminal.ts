/** The terminal door, cold, beside a bare start of the same Node. It prints; it holds nothing to it. */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { printBeside, took } from './measure.ts'

const terminal = join(import.meta.dirname, '../../out/main/terminal.js')
if (!existsSync(terminal)) throw new Error('Build first: npm run build')
const folder = mkdtempSync(join(tmpdir(), 'tailpiece-bench-'))
const input = join(folder, 'input.json')
writeFileSync(input, JSON.stringify({ watts: 1000, flowC: 55, returnC: 45 }))

function run(...words: readonly string[]): void {
  const done = spawnSync(process.execPath, words, { encoding: 'utf8', timeout: 60_000 })
  if (done.status !== 0) throw new Error(done.stderr)
}

printBeside('A program from start to end', [
  await took('node -e 0', () => run('-e', '0')),
  await took('one engine request at the terminal', () => run(terminal, 'water.flow', '--in', input)),
])
