// Measures, in one run each: `npm run bench` for all, `npm run bench -- prices` for one. Nothing here passes or fails.
import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'

const notSubjects = new Set(['measure.ts'])
const subjects = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith('.ts') && !notSubjects.has(file))
  .map((file) => file.slice(0, -3))
const wanted = process.argv.slice(2)
const unknown = wanted.filter((name) => !subjects.includes(name))
if (unknown.length > 0) {
  console.error(
    `There is nothing to measure by the name ${unknown.join(', ')}. There are: ${subjects.join(', ')}.`,
  )
  process.exitCode = 1
} else {
  for (const name of wanted.length > 0 ? wanted : subjects) {
    console.log(`\n== ${name}`)
    const { status } = spawnSync(process.execPath, [join(import.meta.dirname, `${name}.ts`)], {
      stdio: 'inherit',
    })
    if (status !== 0) process.exitCode = 1
  }
}
