import { resolve } from 'node:path'
import { isRequestName } from '../../contract/requests.ts'
import { openDesk } from '../../desk/open-desk.ts'
import { answer, nearestNames } from '../../desk/router.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { readFlags } from '../read-flags.ts'
import { readInput } from './read-input.ts'

type Asked = { readonly name: string; readonly file?: string; readonly dataFolder: string | null }

/** JSON in, JSON out: the answer alone on standard output, or what was wrong on standard error. */
async function run(given: readonly string[]): Promise<void> {
  const asked = readAsked(given)
  if (!asked.ok) return print(asked, 1)
  const { name } = asked.value
  if (name === 'list') {
    const { listRequests } = await import('./list-requests.ts')
    return print({ ok: true, value: listRequests() }, 0)
  }
  if (!isRequestName(name)) return print(unknownRequest(name), 2)
  return print(await ask(asked.value), 1)
}

function readAsked(given: readonly string[]): Outcome<Asked> {
  const read = readFlags(given, ['in', 'data'])
  if (!read.ok) return read
  const { words, flags } = read.value
  const [name, extra] = words
  if (name === undefined) return refuse('invalid', 'No request is named; list prints them all.')
  if (extra !== undefined) {
    return refuse('invalid', `One request at a time: ${extra} is too much. An input comes with --in FILE.`)
  }
  const dataFolder = flags.data === undefined ? null : resolve(flags.data)
  return { ok: true, value: { name, file: flags.in, dataFolder } }
}

async function ask({ name, file, dataFolder }: Asked): Promise<Outcome<unknown>> {
  const input = await readInput(file)
  if (!input.ok) return input
  const opened = await openDesk({ dataFolder, mayChoosePath: true })
  if (!opened.ok) return opened
  try {
    return await answer(name, input.value, opened.value.desk())
  } finally {
    await opened.value.close()
  }
}

function unknownRequest(name: string): Outcome<never> {
  const next = `Nearest: ${nearestNames(name).join(', ')}. list prints them all.`
  return refuse('not-found', `There is no request called ${name}.`, undefined, next)
}

/** The exit code is only set, so that what was printed reaches the other end of a pipe before the end. */
function print(outcome: Outcome<unknown>, codeWhenRefused: number): void {
  if (outcome.ok) {
    process.stdout.write(`${JSON.stringify(outcome.value, null, 2)}\n`)
    return
  }
  process.stderr.write(`${JSON.stringify({ problems: outcome.problems }, null, 2)}\n`)
  process.exitCode = codeWhenRefused
}

// A reader that has seen enough (head, less) closes its end: no reason to complain.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})
// npm runs a script in this folder; the files that a person names lie where that person stands.
if (process.env['npm_lifecycle_event'] === 'cli') process.chdir(process.env['INIT_CWD'] ?? '.')
await run(process.argv.slice(2))
